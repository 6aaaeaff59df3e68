import { cpus } from 'node:os';
import { plansBenchmark } from './plans.ts';

/** The benchmarks, seeded, each with a checksum of its result: `npm run bench`, with `-- --json` as one document. */
const results = await plansBenchmark();
const machine = `${cpus()[0]?.model ?? 'unknown processor'}, ${cpus().length} cores, Node ${process.version}`;
if (process.argv.includes('--json')) process.stdout.write(`${JSON.stringify({ machine, results }, null, 2)}\n`);
else {
  process.stdout.write(`${machine}\n`);
  for (const { name, value, unit, checksum } of results) process.stdout.write(`${name.padEnd(60)} ${value.toPrecision(4).padStart(10)} ${unit}  ${checksum}\n`);
}
