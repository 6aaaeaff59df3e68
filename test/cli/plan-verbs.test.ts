import { describe, expect, test } from 'vitest';
import { runCommand } from '../../src/cli/router.ts';
import type { Issue } from '../../src/issue.ts';
import type { ApportionPlan, ChosenSet, FreeMix, MendPlan, Swap } from '../../src/plan/index.ts';
import { plannedCabin } from '../plan/support/planned-cabin.ts';
import { memoryIo, parsed } from './memory-io.ts';

interface ChoiceJson {
  readonly proved: boolean;
  readonly sets: readonly ChosenSet[];
  readonly front: readonly { readonly proved: boolean }[];
  readonly swaps: readonly Swap[];
  readonly freeMix: FreeMix;
}
interface Refused {
  readonly issues: readonly Issue[];
}

const ring = [[0, 1], [1, 2], [2, 0]] as const;
const cabin = JSON.stringify(plannedCabin(2, { parts: 3, sources: 2, joints: ring, scatter: 0.1 }));
const run = (words: readonly string[]) => runCommand(words, memoryIo({ 'a.cabin.json': cabin }));

describe('choose', () => {
  test('prints sets, front and reasons as JSON; the first set is the best', async () => {
    const result = await run(['choose', 'a.cabin.json', '--best', '4', '--front', '--free-mix', '--json']);
    expect([result.exit, result.stderr]).toEqual([0, '']);
    const plan = parsed<ChoiceJson>(result);
    expect(plan.proved).toBe(true);
    expect(plan.sets).toHaveLength(4);
    expect(Object.keys(plan.sets[0].picks)).toEqual(['p0', 'p1', 'p2']);
    for (const set of plan.sets) expect(set.clashes).toBeGreaterThanOrEqual(plan.sets[0].clashes - 1e-4);
    expect(plan.front.every((point) => point.proved)).toBe(true);
    expect(plan.swaps).toHaveLength(3);
    expect(plan.freeMix.cabins[0].share).toBeGreaterThanOrEqual(0);
  });

  test('a lock is kept; a budget of nothing exits 1 and says what would do', async () => {
    const locked = await run(['choose', 'a.cabin.json', '--lock', 'p1=p1-s1', '--json']);
    expect(parsed<ChoiceJson>(locked).sets[0].picks.p1).toBe('p1-s1');
    const poor = await run(['choose', 'a.cabin.json', '--budget', '1']);
    expect(poor.exit).toBe(1);
    expect(poor.stdout).toContain('The cheapest set that is otherwise allowed costs');
  });

  test('faults of the command line are listed together', async () => {
    const result = await run(['choose', 'a.cabin.json', '--budget', 'much', '--lock', 'p1', '--share', 'p1', '--json']);
    expect(result.exit).toBe(2);
    expect(parsed<Refused>(result).issues.map(({ code }) => code)).toEqual(['bad-number', 'bad-pair', 'bad-list']);
    const unknown = await run(['choose', 'a.cabin.json', '--lock', 'px=s', '--json']);
    expect([unknown.exit, parsed<Refused>(unknown).issues[0].code]).toEqual([2, 'unknown-part']);
  });
});

describe('mend', () => {
  test('gives changes with the check after them, or exits 1 with the joints that stand in the way', async () => {
    const result = await run(['mend', 'a.cabin.json', '--json']);
    const plan = parsed<MendPlan>(result);
    expect(result.exit).toBe(plan.feasible ? 0 : 1);
    expect(plan.after).toMatchObject({ clashes: 0, open: 0, holds: 3 });
    for (const change of plan.changes) expect(Object.keys(change)).toEqual(['part', 'dL', 'da', 'db', 'dGloss']);
    const locked = await run(['mend', 'a.cabin.json', '--lock', 'p0', '--lock', 'p1', '--lock', 'p2']);
    expect(locked.exit).toBe(1);
    expect(locked.stdout).toContain('There is no plan within reach');
  });

  test('one aim at a time', async () => {
    expect((await run(['mend', 'a.cabin.json', '--fewest', '--cheapest'])).exit).toBe(2);
  });
});

describe('apportion', () => {
  test('gives a tolerance for every part and counts drawn cabins', async () => {
    const calm = JSON.stringify(plannedCabin(2, { parts: 3, sources: 1, joints: ring, scatter: 0.02 }));
    const result = await runCommand(['apportion', 'a.cabin.json', '--draws', '200', '--json'], memoryIo({ 'a.cabin.json': calm }));
    expect(result.exit).toBe(0);
    const plan = parsed<ApportionPlan>(result);
    expect(plan.parts.map(({ id }) => id)).toEqual(['p0', 'p1', 'p2']);
    expect(plan.simulated).toMatchObject({ draws: 200, clashes: 0 });
    const text = await runCommand(['apportion', 'a.cabin.json', '--statistical', '--draws', '50'], memoryIo({ 'a.cabin.json': calm }));
    expect(text.stdout).toContain('By squares this is an approximation');
  });
});
