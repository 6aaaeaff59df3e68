import { fuzzReader, fuzzSeeds } from './fuzz-readers.ts';

/**
 * The large fuzz run, by hand: `node --import tsx test/support/fuzz-formats.ts [files a reader] [seed] [reader]`.
 * Prints a line a reader and ends with 1 where anything failed.
 */
const [count = '100000', seed = '1', only] = process.argv.slice(2);
for (const id of Object.keys(fuzzSeeds).filter((name) => only === undefined || name === only)) {
  const { failures, slowestMs, ...figures } = fuzzReader(id, Number(count), Number(seed));
  console.log(`${id} ${JSON.stringify({ ...figures, failures: failures.length, slowestMs: Math.round(slowestMs) })}`);
  for (const failure of failures.slice(0, 5)) console.log(`  ${failure}`);
  if (failures.length > 0) process.exitCode = 1;
}
