import { expect, test } from 'vitest';
import { verifySpectra } from '../../src/colour/verify-spectra.ts';
import { derived } from '../../src/colour/value-origin.ts';
import { worstCheck } from '../../src/colour/verification/worst-check.ts';

test.each(verifySpectra().map((row) => [`${row.formula}: ${row.input} (${row.source})`, row] as const))('%s', (_, row) => {
  expect(row.deviation).toBe(Math.abs(row.got - row.expected));
  expect(row.deviation).toBeLessThanOrEqual(row.tolerance);
  expect(row.ok).toBe(true);
});

test('a row of several numbers shows the worst of them, and a missing one fails', () => {
  const labels = ['X', 'Y', 'Z'];
  expect(worstCheck('f', derived('s'), 'in', labels, [1, 2, 3], [1, 2.2, 3.1], 0.3)).toMatchObject({ input: 'in: Y', expected: 2, got: 2.2, ok: true });
  expect(worstCheck('f', derived('s'), 'in', labels, [1, 2, 3], [1, 2.2, 3.1], 0.1).ok).toBe(false);
  expect(worstCheck('f', derived('s'), 'in', labels, [1, 2, 3], [1, 2], 0.1)).toMatchObject({ input: 'in: Z', ok: false });
  expect(worstCheck('f', derived('s'), 'in', labels, [1, 2, 3], [NaN, 2, 9], 0.1)).toMatchObject({ input: 'in: X', ok: false });
});
