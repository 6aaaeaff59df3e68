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

describe('choose with other colourways', () => {
  const colourway = (id: string, frozen: boolean): string => JSON.stringify({ ...plannedCabin(2, { parts: 3, sources: 2, joints: ring, scatter: 0.1, part: (index) => (frozen && index < 2 ? { frozen } : {}) }), id, colourway: id });
  const files = { 'slate.json': colourway('slate', false), 'chalk.json': colourway('chalk', true) };

  test('what both carry over is mixed once, and every answer says in which cabins', async () => {
    const result = await runCommand(['choose', 'slate.json', '--mix-with', 'chalk.json', '--json'], memoryIo(files));
    expect(result.exit).toBe(0);
    const { freeMix } = parsed<ChoiceJson>(result);
    expect(freeMix.cabins.map(({ cabin: id }) => id)).toEqual(['slate', 'chalk']);
    expect(freeMix.carried).toEqual(['p0', 'p1']);
    expect(freeMix.largest.kept.map(({ part, cabins }) => [part, cabins.join()])).toEqual([['p0', 'slate,chalk'], ['p1', 'slate,chalk'], ['p2', 'slate'], ['p2', 'chalk']]);
    const text = await runCommand(['choose', 'slate.json', '--mix-with', 'chalk.json'], memoryIo(files));
    expect(text.stdout.replaceAll(/\s+/g, ' ')).toContain('2 parts are carried over between them: a source of such a part that may be mixed freely holds in every colourway.');
  });

  test('a file that is no cabin, or the same cabin twice, is refused', async () => {
    const broken = await runCommand(['choose', 'slate.json', '--mix-with', 'none.json', '--json'], memoryIo({ ...files, 'none.json': '{}' }));
    expect([broken.exit, parsed<Refused>(broken).issues.length > 0]).toEqual([2, true]);
    const twice = await runCommand(['choose', 'slate.json', '--mix-with', 'slate.json', '--json'], memoryIo(files));
    expect([twice.exit, parsed<Refused>(twice).issues.map(({ code }) => code)]).toEqual([2, ['duplicate-id']]);
  });
});

describe('mend', () => {
  test('a reach is kept to, a cost decides, and faults of both are listed', async () => {
    const result = await run(['mend', 'a.cabin.json', '--json']);
    const { changes } = parsed<MendPlan>(result);
    const most = Math.max(...changes.map(({ dL }) => Math.abs(dL)));
    const less = await run(['mend', 'a.cabin.json', '--reach', `moulded=${0.9 * most},3,3,3`, '--json']);
    for (const { dL } of parsed<MendPlan>(less).changes) expect(Math.abs(dL)).toBeLessThanOrEqual(0.9 * most + 1e-6);
    const { part } = changes[0];
    const dear = await run(['mend', 'a.cabin.json', '--cheapest', '--cost', `${part}=1000000`, '--json']);
    const cheap = await run(['mend', 'a.cabin.json', '--cheapest', '--cost', `${part}=0`, '--json']);
    const [dearPlan, cheapPlan] = [parsed<MendPlan>(dear), parsed<MendPlan>(cheap)];
    expect(cheapPlan.cost).toBeLessThanOrEqual(dearPlan.cost);
    expect(cheapPlan.proved && dearPlan.proved).toBe(true);
    const faults = await run(['mend', 'a.cabin.json', '--reach', 'moulded=1,2', '--cost', 'p0', '--time-limit', 'long', '--json']);
    expect([faults.exit, parsed<Refused>(faults).issues.map(({ code }) => code)]).toEqual([2, ['bad-number', 'bad-pair', 'bad-list']]);
    const unknown = await run(['mend', 'a.cabin.json', '--reach', 'velvet=1,1,1,1', '--cost', 'px=3', '--json']);
    expect([unknown.exit, parsed<Refused>(unknown).issues.map(({ code }) => code)]).toEqual([2, ['unknown-part', 'unknown-material']]);
  });

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
    expect(text.stdout).toContain('Parts are taken to be normal about their targets');
    expect(text.stdout.replaceAll(/\s+/g, ' ')).toContain('2.795 standard deviations from the target in colour and 1.960 in gloss: chi-square with three degrees of freedom');
  });

  test('by squares, the more often joints are to hold the smaller the tolerances; both shares are checked', async () => {
    const calm = memoryIo({ 'a.cabin.json': JSON.stringify(plannedCabin(2, { parts: 3, sources: 1, joints: ring, scatter: 0.02 })) });
    const radii = async (...words: readonly string[]): Promise<readonly number[]> =>
      parsed<ApportionPlan>(await runCommand(['apportion', 'a.cabin.json', '--statistical', '--draws', '10', ...words, '--json'], calm)).parts.map(({ radius }) => radius!);
    const [usual, often, kept] = [await radii(), await radii('--confidence', '0.99'), await radii('--in-tolerance', '0.99')];
    usual.forEach((radius, index) => {
      expect(often[index]).toBeLessThan(radius);
      expect(kept[index]).toBeGreaterThan(radius);
    });
    const faults = await runCommand(['apportion', 'a.cabin.json', '--statistical', '--confidence', '1', '--in-tolerance', '0.2', '--json'], calm);
    expect([faults.exit, parsed<Refused>(faults).issues.map(({ path }) => path)]).toEqual([2, ['in-tolerance', 'confidence']]);
    expect((await runCommand(['apportion', 'a.cabin.json', '--confidence', '0.9'], calm)).exit).toBe(2);
  });
});
