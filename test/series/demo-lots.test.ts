import { expect, test } from 'vitest';
import { defaultBook } from '../../src/rules/default-book.ts';
import { cabinSeries } from '../../src/series/index.ts';
import { demoCabin } from '../demo-data/demo-cabins.ts';

test('the cabin of lots is what its note says: the top roll drifts, a lot of the panel is astray, two shades are told apart', async () => {
  const { parts, joints, first, pairs } = await cabinSeries(demoCabin('lots'), defaultBook);
  expect(parts.filter(({ trend }) => trend.state === 'trend').map(({ part }) => part)).toEqual(['top-roll']);
  // Made with 0.058 b* from lot to lot every 18 days; the range is that of the 95 % interval.
  const { slope, reach } = parts[0].trend;
  expect(Math.abs(slope![2] - 0.058 / 18)).toBeLessThan(reach![2]);
  expect(parts.find(({ part }) => part === 'upper-panel')!.chart.outside).toContain('Up-7');
  expect(first).toBe('top-roll--upper-panel');
  expect(joints[0]).toMatchObject({ state: 'will clash', unit: 'day' });
  expect(pairs[0]).toMatchObject({ parts: ['map-pocket', 'sill'], proved: true });
  expect(pairs[0].best.clashes).toBeLessThan(0.01);
  expect(pairs[0].asProduced.clashes).toBeCloseTo(4, 1);
});
