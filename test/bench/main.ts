import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import type { BenchLine } from './bench-line.ts';
import { benchResults, benchTable } from './bench-table.ts';
import { checkBenchmark, shareBenchmark } from './check-bench.ts';
import { differenceBenchmark } from './difference-bench.ts';
import { memoryBenchmark } from './memory-bench.ts';
import { frontBenchmark } from './front-bench.ts';
import { plansBenchmark } from './plans-bench.ts';
import { probabilityBenchmark } from './probability-bench.ts';
import { spectraBenchmark } from './spectra-bench.ts';

/**
 * The benchmarks, seeded, each with a checksum of its result: `npm run bench`, with `-- --json` as one document, with `-- --readme` as the
 * table of the readme, with `-- --quick` without the largest cabins.
 */
const quick = process.argv.includes('--quick');
const begin = '<!-- benchmarks -->';
const end = '<!-- end of benchmarks -->';

const lines: readonly BenchLine[] = [
  ...differenceBenchmark(), ...spectraBenchmark(), ...probabilityBenchmark(), ...memoryBenchmark(),
  // Before the largest cabins, whose remains would be cleared away at its cost.
  ...await shareBenchmark(quick ? 1_000 : 10_000), ...checkBenchmark(quick ? [100, 1_000] : [100, 1_000, 10_000, 100_000]), ...await plansBenchmark(), ...await frontBenchmark(),
];
const machine = `${cpus()[0]?.model.trim() || 'unknown processor'}, ${cpus().length} cores, Node ${process.version}, one thread`;
if (process.argv.includes('--json')) process.stdout.write(`${JSON.stringify({ machine, results: benchResults(lines) }, null, 2)}\n`);
else process.stdout.write(`${machine}\n\n${benchTable(lines)}\n`);
if (process.argv.includes('--readme')) {
  const readme = readFileSync('README.md', 'utf8');
  const [from, to] = [readme.indexOf(begin), readme.indexOf(end)];
  if (from < 0 || to < from) throw new Error('the readme has no place for the benchmarks');
  writeFileSync('README.md', `${readme.slice(0, from)}${begin}\n${machine}; medians with quartiles.\n\n${benchTable(lines)}\n${readme.slice(to)}`);
}
