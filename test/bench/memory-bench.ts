import { parseCabin, serialiseCabin } from '../../src/cabin/index.ts';
import { judgeCabin } from '../../src/harmony/judge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { bigCabin } from './big-cabin.ts';
import { spreadOf } from './bench-line.ts';
import type { BenchLine } from './bench-line.ts';

const [parts, spots, joints] = [1000, 50, 1800];
const megabyte = 1024 * 1024;

/** Memory that a cabin of 100 000 readings holds once it is read from its file and judged; needs `--expose-gc`. */
export function memoryBenchmark(): readonly BenchLine[] {
  const { gc } = globalThis as { gc?: () => void };
  if (gc === undefined) return [];
  const text = serialiseCabin(bigCabin({ parts, joints, seed: 3, spots }));
  gc();
  const before = process.memoryUsage();
  const { value: cabin } = parseCabin(text);
  if (cabin === undefined) throw new Error('the cabin was refused');
  const judged = judgeCabin(cabin, builtInRuleBooks[0]!);
  gc();
  const after = process.memoryUsage();
  const readings = cabin.parts.reduce((sum, part) => sum + part.sources.reduce((all, source) => all + source.specimens.reduce((count, { readings: own }) => count + own.length, 0), 0), 0);
  return [{
    name: `a cabin of ${readings.toLocaleString('en-GB').replaceAll(',', ' ')} readings, read and judged`, unit: 'MB',
    own: spreadOf([(after.heapUsed + after.arrayBuffers - before.heapUsed - before.arrayBuffers) / megabyte]), wanted: 'below 400', checksum: `${judged.judgement.joints.length} joints`,
  }];
}
