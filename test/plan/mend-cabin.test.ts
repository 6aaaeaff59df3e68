import { describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { spectrumToLab } from '../../src/colour/tristimulus.ts';
import { lightByName } from '../../src/colour/lights.ts';
import { judge } from '../../src/harmony/judge.ts';
import { mendCabin } from '../../src/plan/mend/mend-cabin.ts';
import { shiftedCabin } from '../../src/plan/mend/shifted-cabin.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { metByHand } from './support/met-by-hand.ts';
import { plannedCabin } from './support/planned-cabin.ts';

const book = builtInRuleBooks[0];
const d65 = lightByName('D65')!;

describe('plans for small cabins', () => {
  test.each([1, 2, 3, 4, 5, 6])('cabin %i: every joint holds by the ordinary check once the cards are met', async (seed) => {
    const cabin = plannedCabin(seed, { parts: 4, sources: 1, scatter: 0.09, glossScatter: 0.4 });
    const before = judge(cabin, book);
    const plan = await mendCabin(cabin, book);
    expect(plan.feasible).toBe(true);
    const after = judge(metByHand(cabin, plan.cards), book);
    expect(after.joints.map((joint) => joint.verdict)).toEqual(after.joints.map(() => 'holds'));
    expect(plan.kept).toBe(true);
    expect(plan.after?.holds).toBe(cabin.joints.length);
    if (before.joints.every((joint) => joint.verdict === 'holds')) expect(plan.changes).toEqual([]);
    else expect(plan.changes.length).toBeGreaterThan(0);
  });

  test('no part alone would do where two are changed', async () => {
    const cabin = plannedCabin(11, { parts: 5, sources: 1, scatter: 0.16 });
    const plan = await mendCabin(cabin, book);
    expect(plan.feasible && plan.changes.length >= 2).toBe(true);
    for (const part of cabin.parts) {
      const alone = await mendCabin(cabin, book, { locked: cabin.parts.filter(({ id }) => id !== part.id).map(({ id }) => id) });
      expect(alone.feasible, part.id).toBe(false);
    }
  });

  test('locked and carried-over parts stay; all of them locked with a clash is said to be impossible', async () => {
    const cabin = plannedCabin(11, { parts: 3, sources: 1, scatter: 0.16 });
    const failing = judge(cabin, book).joints.filter((joint) => joint.verdict !== 'holds').map(({ id }) => id);
    expect(failing.length).toBeGreaterThan(0);
    const all = await mendCabin(cabin, book, { locked: cabin.parts.map(({ id }) => id) });
    expect(all.feasible).toBe(false);
    expect(all.blockers).toHaveLength(1);
    expect(failing).toContain(all.blockers[0]);
    expect(all.words[0]).toContain('There is no plan within reach');
    const frozen: Cabin = { ...cabin, parts: cabin.parts.map((part) => (part.id === 'p1' ? { ...part, frozen: true } : part)) };
    expect((await mendCabin(frozen, book)).changes.map(({ part }) => part)).not.toContain('p1');
  });
});

describe('a shift of readings', () => {
  test('moves the colour of the mean spectrum by what was asked', () => {
    const cabin = plannedCabin(3, { parts: 1, sources: 1 });
    const specimen = cabin.parts[0].sources[0].specimens[0];
    const values = specimen.readings.flatMap((reading) => (reading.quantity === 'spectrum' ? [reading.values] : []));
    const mean = values[0].map((_, index) => values.reduce((sum, row) => sum + row[index], 0) / values.length);
    const spectrum = { startNm: 400, stepNm: 10, values: mean };
    const shifted = shiftedCabin(cabin, [{ colour: new Set([specimen.id]), gloss: new Set([specimen.id]), shift: [0.3, -0.1, 0.2, 0.5], spectrum }], d65, 10);
    const moved = shifted.parts[0].sources[0].specimens[0].readings;
    const after = moved.flatMap((reading) => (reading.quantity === 'spectrum' ? [reading.values] : []));
    const [from, to] = [spectrum, { ...spectrum, values: mean.map((_, index) => after.reduce((sum, row) => sum + row[index], 0) / after.length) }].map((each) => spectrumToLab(each, d65, 10));
    [0.3, -0.1, 0.2].forEach((asked, axis) => expect(to[axis] - from[axis]).toBeCloseTo(asked, 2));
    const gloss = (readings: typeof moved): number[] => readings.flatMap((reading) => (reading.quantity === 'gloss' ? [reading.gloss] : []));
    gloss(moved).forEach((value, index) => expect(value - gloss(specimen.readings)[index]).toBeCloseTo(0.5, 9));
  });
});

describe('answers in words', () => {
  test('an empty cabin, one part, parts without joints', async () => {
    expect((await mendCabin(plannedCabin(1, { parts: 0 }), book)).words).toEqual(['The cabin has no parts: there is nothing to mend.']);
    expect((await mendCabin(plannedCabin(1, { parts: 1 }), book)).words).toEqual(['No two parts are joined: there is nothing to mend.']);
    expect((await mendCabin(plannedCabin(1, { parts: 3, joints: [] }), book)).feasible).toBe(true);
  });

  test('names that the cabin does not have are issues', async () => {
    const plan = await mendCabin(plannedCabin(1, { parts: 2 }), book, { locked: ['px'], except: ['jx'] });
    expect(plan.issues.map(({ code }) => code)).toEqual(['unknown-part', 'unknown-joint']);
  });
});
