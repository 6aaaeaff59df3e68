import { describe, expect, test } from 'vitest';
import { runCommand } from '../../src/cli/router.ts';
import type { Issue } from '../../src/issue.ts';
import type { CabinSeries } from '../../src/series/index.ts';
import type { PlannedLot } from '../series/support/lot-cabin.ts';
import { dayOf, lotCabin } from '../series/support/lot-cabin.ts';
import { memoryIo, parsed } from './memory-io.ts';

/** Eight lots that become yellower by 0.05 b* every ten days, and four of a neighbour that stay. */
const drifting: PlannedLot[] = Array.from({ length: 8 }, (_, lot) => ({ id: `A${lot}`, day: 10 * lot, lab: [30, 0.4, -1 + 0.05 * lot] }));
const steady: PlannedLot[] = Array.from({ length: 4 }, (_, lot) => ({ id: `B${lot}`, day: 20 * lot, lab: [30, 0.4, -1] }));
const files = { 'lots.cabin.json': JSON.stringify(lotCabin(drifting, steady)), 'few.cabin.json': JSON.stringify(lotCabin(drifting.slice(0, 1), steady.slice(0, 1))) };
const run = (...words: readonly string[]) => runCommand(['series', ...words], memoryIo(files));

describe('series', () => {
  test('prints the trend, the first joint to clash and the lots to build together, and exits 1', async () => {
    const result = await run('lots.cabin.json');
    expect([result.exit, result.stderr]).toEqual([1, '']);
    for (const words of ['First to clash: Panel A and Panel B', 'yellower by 0.15', 'slope in 30 days', 'Lots to build together', 'A7']) expect(result.stdout.replaceAll(/\s+/g, ' ')).toContain(words);
  });

  test('the same as JSON, in full', async () => {
    const result = await run('lots.cabin.json', '--json');
    const found = parsed<CabinSeries>(result);
    expect(found.first).toBe('a-b');
    expect(found.parts.map(({ part, lots, trend }) => [part, lots.length, trend.state])).toEqual([['a', 8, 'trend'], ['b', 4, 'too few lots']]);
    expect(found.parts[0].trend.slope![2]).toBeCloseTo(0.005, 9);
    expect(found.joints[0].when!.day! > dayOf(70)).toBe(true);
    expect(found.pairs[0].sets).toHaveLength(4);
  });

  test('looks no farther than it is told, and then exits 0', async () => {
    const result = await run('lots.cabin.json', '--ahead', '5', '--json');
    expect(result.exit).toBe(0);
    expect(parsed<CabinSeries>(result).joints[0].state).toBe('stays within');
  });

  test('lots that can be built are those named', async () => {
    const found = parsed<CabinSeries>(await run('lots.cabin.json', '--lots', 'a=A0,A7', '--joint', 'a-b', '--json'));
    expect(found.pairs[0].sets.map(({ lots }) => lots[0]).sort()).toEqual(['A0', 'A7']);
  });

  test('one lot a part is no series, and no fault', async () => {
    const result = await run('few.cabin.json');
    expect(result.exit).toBe(0);
    expect(result.stdout).toContain('No part has two lots');
  });

  test('faults of the command line are listed together, unknown names refused', async () => {
    const bad = await run('lots.cabin.json', '--confidence', '1', '--first-lots', '2.5', '--lots', 'a', '--json');
    expect(bad.exit).toBe(2);
    expect(parsed<{ readonly issues: readonly Issue[] }>(bad).issues.map(({ path }) => path)).toEqual(['--confidence', '--first-lots', '--lots']);
    const unknown = await run('lots.cabin.json', '--part', 'z', '--json');
    expect([unknown.exit, parsed<{ readonly issues: readonly Issue[] }>(unknown).issues[0].code]).toEqual([2, 'unknown-part']);
  });

  test('has help with its options and exit codes', async () => {
    const { stdout, exit } = await run('--help');
    expect(exit).toBe(0);
    for (const word of ['--part', '--joint', '--confidence', 'Exit: 0 done']) expect(stdout).toContain(word);
  });
});
