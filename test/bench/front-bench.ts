import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Cabin, Source } from '../../src/cabin/cabin.ts';
import { parseCabin } from '../../src/cabin/index.ts';
import { chooseSources } from '../../src/plan/index.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { provideMathjs } from '../../src/rules/mathjs-parser.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { spreadOf } from './bench-line.ts';
import type { BenchLine } from './bench-line.ts';

/** Points of the front that are asked for. */
const points = 20;

/**
 * The demo cabin with one more source for every part that may change, since its own sources give a front of a dozen points: each a copy of the first one
 * whose reflectance is up to 5 % higher or lower and whose piece is the cheaper the farther off it is, drawn with a seed.
 */
export function richerDemo(seed: number): Cabin {
  const text = readFileSync(join(process.cwd(), 'demo-data', 'shuttle-slate.cabin.json'), 'utf8');
  const { value } = parseCabin(text);
  if (value === undefined) throw new Error('the demo cabin cannot be read');
  const random = seededNumbers(seed);
  const more = (source: Source, id: string): Source => {
    const off = 0.1 * (random() - 0.5);
    const [level, price] = [1 + off, 1.01 - 2 * Math.abs(off) + 0.02 * random()];
    return {
      ...source, id, status: 'candidate', ...(source.piecePrice === undefined ? {} : { piecePrice: cents(source.piecePrice * price) }),
      ...(source.volumePrices === undefined ? {} : { volumePrices: source.volumePrices.map((step) => ({ ...step, piecePrice: cents(step.piecePrice * price) })) }),
      specimens: source.specimens.map((specimen) => ({
        ...specimen, id: `${specimen.id}-${id}`, readings: specimen.readings.map((reading) => (reading.quantity === 'spectrum' ? { ...reading, values: reading.values.map((each) => each * level) } : reading)),
      })),
    };
  };
  return { ...value, parts: value.parts.map((part) => (part.frozen === true || part.module !== undefined ? part : { ...part, sources: [...part.sources, more(part.sources[0], `${part.id}-more`)] })) };
}

const cents = (money: number): number => Math.round(100 * money) / 100;

/** The whole choice with a front of 20 points, joints judged under every pair of sources included; every point must be proved. */
export async function frontBenchmark(repeats = 3): Promise<readonly BenchLine[]> {
  provideMathjs();
  const times: number[] = [];
  let checksum = 0;
  for (let seed = 1; seed <= repeats; seed++) {
    const cabin = richerDemo(seed);
    const start = performance.now();
    const plan = await chooseSources(cabin, builtInRuleBooks[0], { front: points, withoutReasons: true });
    times.push(performance.now() - start);
    const sets = plan.front?.sets ?? [];
    if (sets.length < points || !sets.every(({ proved }) => proved)) throw new Error(`front, cabin ${seed}: ${sets.length} points, not all of them proved`);
    checksum = sets.reduce((sum, { cost }) => (sum * 31 + Math.round(cost)) % 2147483647, checksum);
  }
  return [{ name: 'choose, demo cabin with a further source a part, front of 20 points', unit: 'ms', own: spreadOf(times), wanted: 'at most 5 s', checksum: checksum.toString(16) }];
}
