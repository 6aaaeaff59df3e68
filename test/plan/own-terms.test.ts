import { describe, expect, test } from 'vitest';
import { actionById } from '../../src/actions/registry.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { runCommand } from '../../src/cli/router.ts';
import type { MendPlan } from '../../src/plan/index.ts';
import { usualReach } from '../../src/plan/mend/material-reach.ts';
import { ownTerms } from '../../src/plan/mend/own-terms.ts';
import { memoryIo, parsed } from '../cli/memory-io.ts';
import { plannedCabin } from './support/planned-cabin.ts';

/** What a planner settles of a cabin stays with its file: every term of a mend is set by an action, read from the document, and gone with what is asked for beside it. */
const bare = plannedCabin(2, { parts: 3, sources: 2, joints: [[0, 1], [1, 2], [2, 0]], scatter: 0.1 });
const edited = (cabin: Cabin, id: string, values: Readonly<Record<string, unknown>>): Cabin => {
  const { value, issues } = actionById(id)!.run(cabin, values);
  expect(issues.filter(({ severity }) => severity === 'error'), id).toEqual([]);
  return value!;
};
/** Shifts to a millionth: one answer of a program may differ from the next in the last places. */
const rounded = ({ changes }: MendPlan): readonly unknown[] => changes.map(({ part, ...shift }) => [part, ...Object.values(shift).map((value) => Math.round(value * 1e6) / 1e6 + 0)]);
const mend = async (cabin: Cabin, ...words: readonly string[]): Promise<MendPlan> =>
  parsed<MendPlan>(await runCommand(['mend', 'a.json', ...words, '--json'], memoryIo({ 'a.json': JSON.stringify(cabin) })));

describe('the document', () => {
  test('keeps reach, cost, lock and time through a file, and is as before once they are taken out', () => {
    const steps = [
      ['planning.set-reach', { material: 'moulded', L: 0.4 }], ['part.set-mend', { part: 'p0', cost: 900, L: 1 }], ['part.set-mend', { part: 'p1', locked: true }], ['planning.set-time', { timeLimitS: 7 }],
    ] as const;
    const full = steps.reduce<Cabin>((cabin, [id, values]) => edited(cabin, id, values), bare);
    expect(full.planning).toEqual({ reach: { moulded: { ...usualReach.moulded, L: 0.4 } }, timeLimitS: 7 });
    expect(full.parts.map(({ mend: own }) => own)).toEqual([{ cost: 900, reach: { ...usualReach.moulded, L: 1 } }, { locked: true }, undefined]);
    expect(restoreCabin(JSON.parse(JSON.stringify(full)))).toMatchObject({ value: full, issues: [] });
    const emptied = [
      ['planning.set-reach', { material: 'moulded', L: null, a: null, b: null, gloss: null }], ['part.set-mend', { part: 'p0', cost: null, L: null, a: null, b: null, gloss: null }], ['part.set-mend', { part: 'p1', locked: null }], ['planning.set-time', { timeLimitS: null }],
    ] as const;
    const back = emptied.reduce<Cabin>((cabin, [id, values]) => edited(cabin, id, values), full);
    expect(JSON.parse(JSON.stringify(back))).toEqual(JSON.parse(JSON.stringify(bare)));
  });

  test('what is asked goes before it, entry by entry; a lock is let go by name', () => {
    const cabin: Cabin = {
      ...bare, planning: { reach: { moulded: { L: 1, a: 1, b: 1, gloss: 1 }, leather: { L: 2, a: 2, b: 2, gloss: 2 } }, timeLimitS: 5 },
      parts: bare.parts.map((part, index) => ({ ...part, mend: { locked: index < 2, cost: 100 * index } })),
    };
    expect(ownTerms(cabin, {})).toEqual({ locked: ['p0', 'p1'], costs: { p0: 0, p1: 100, p2: 200 }, reach: { moulded: { L: 1, a: 1, b: 1, gloss: 1 } }, timeLimitS: 5 });
    const asked = { locked: ['p2'], released: ['p0'], costs: { p1: 7 }, reach: { moulded: { L: 9, a: 9, b: 9, gloss: 9 } }, timeLimitS: 1 };
    expect(ownTerms(cabin, asked)).toEqual({ ...asked, locked: ['p2', 'p1'], costs: { p0: 0, p1: 7, p2: 200 } });
  });
});

describe('the verb', () => {
  test('plans as the document says: within its reach, never a locked part; an option goes before both', async () => {
    const free = await mend(bare);
    const most = Math.max(...free.changes.map(({ dL }) => Math.abs(dL)));
    const short = edited(bare, 'planning.set-reach', { material: 'moulded', L: 0.9 * most });
    const within = await mend(short);
    expect(within.changes.length).toBeGreaterThan(0);
    for (const { dL } of within.changes) expect(Math.abs(dL)).toBeLessThanOrEqual(0.9 * most + 1e-6);
    expect(rounded(await mend(short, '--reach', `moulded=${Object.values(usualReach.moulded).join()}`))).toEqual(rounded(free));
    const { part } = free.changes[0];
    const locked = edited(bare, 'part.set-mend', { part, locked: true });
    expect((await mend(locked)).changes.map((change) => change.part)).not.toContain(part);
    expect(rounded(await mend(locked, '--release', part))).toEqual(rounded(free));
    // The part by itself goes before its material.
    const own = edited(short, 'part.set-mend', { part, L: usualReach.moulded.L });
    expect(rounded(await mend(own))).toEqual(rounded(free));
  });

  test('the cheapest set goes by the costs of the document', async () => {
    const { changes: [{ part }] } = await mend(bare, '--cheapest');
    const dear = await mend(edited(bare, 'part.set-mend', { part, cost: 1_000_000 }), '--cheapest');
    expect(dear.changes.map((change) => change.part)).not.toContain(part);
    expect(dear.cost).toBeLessThan(1_000_000);
  });
});
