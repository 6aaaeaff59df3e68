import { expect, test } from 'vitest';
import { fuzzReader, fuzzSeeds } from '../support/fuzz-readers.ts';

// A few hundred files a reader; the run of 100,000 is test/support/fuzz-formats.ts.
test.each(Object.keys(fuzzSeeds))('the reader %s answers mutated files with a set or with issues', (id) => {
  const { failures, accepted, refused } = fuzzReader(id, 400, 31);
  expect(failures).toEqual([]);
  // Both ways out are met, or the mutations prove little.
  expect(accepted).toBeGreaterThan(10);
  expect(refused).toBeGreaterThan(100);
});
