import { describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import { mendCabin } from '../../src/plan/mend/mend-cabin.ts';
import { proposedCabin } from '../../src/plan/proposal/proposed-cabin.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { glossReadings, smoothSpectrum, spectrumReadings } from '../support/small-cabin.ts';
import { plannedCabin } from './support/planned-cabin.ts';

/**
 * Parts that must stand apart by a tone step: at least 5 in L* by the default book. What is asked is not convex, since the step may go up or down; where
 * only one of the two is within reach it is, and that no cheaper set will do can be proved.
 */
const book = builtInRuleBooks[0];
const levels = [0.0713, 0.052, 0.052] as const;
const base = plannedCabin(1, { parts: 3, sources: 1, joints: [[0, 1], [1, 2]], joint: (index) => (index === 0 ? { intent: { colour: 'tone-step', gloss: 'free', texture: 'free' } } : {}) });
const cabin: Cabin = {
  ...base,
  parts: base.parts.map((part, index) => ({
    ...part, mend: { cost: [10, 100, 100][index], ...(index === 0 ? { reach: { L: 0.2, a: 0.2, b: 0.2, gloss: 0 } } : {}) },
    sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, readings: [...spectrumReadings(smoothSpectrum(levels[index]!), 5), ...glossReadings(2, 5)] })) })),
  })),
};
const withReach = (L: number): Cabin => ({ ...cabin, parts: cabin.parts.map((part, index) => (index === 0 ? { ...part, mend: { cost: 10, reach: { L, a: 0.2, b: 0.2, gloss: 0 } } } : part)) });

describe('a step of tone that is too small', () => {
  test('is so by the ordinary check, and no shift of the cheap part within its reach mends it', () => {
    expect(judge(cabin, book).joints.map(({ verdict }) => verdict === 'holds')).toEqual([false, true]);
    const values = [-0.2, -0.1, 0, 0.1, 0.2];
    for (const dL of values) for (const da of [-0.2, 0, 0.2]) for (const db of [-0.2, 0, 0.2]) {
      const tried = proposedCabin(cabin, 'j0', { shifts: [{ part: 'p0', dL, da, db }] }, { stage: 'new', observer: 10 });
      expect(judge(tried.cabin, book).joints[0]!.verdict).not.toBe('holds');
    }
  });

  test('takes a dear part then, and that nothing cheaper will do is proved', async () => {
    const plan = await mendCabin(cabin, book, { aim: 'cheapest' });
    expect(plan.changes.map(({ part }) => part)).toEqual(['p1']);
    expect([plan.cost, plan.bound, plan.gap, plan.proved, plan.kept]).toEqual([100, 100, 0, true, true]);
  });

  test('takes the cheap part where its reach allows it, up and not down', async () => {
    const plan = await mendCabin(withReach(2), book, { aim: 'cheapest' });
    expect(plan.changes.map(({ part, dL }) => [part, dL > 0])).toEqual([['p0', true]]);
    expect([plan.cost, plan.proved, plan.kept]).toEqual([10, true, true]);
  });

  test('with a reach to both sides of nought the side is chosen, and the plan proved all the same', async () => {
    const plan = await mendCabin(withReach(20), book, { aim: 'cheapest' });
    expect([plan.cost, plan.bound, plan.gap, plan.proved, plan.kept]).toEqual([10, 10, 0, true, true]);
  });
});

/** Parts that must contrast: at least 12 in CIEDE2000 by the default book. What is asked is convex on no side, and nothing cheaper is proved by looking through the reach. */
describe('a contrast that is too small', () => {
  const contrasting = (L: number): Cabin => ({
    ...withReach(L),
    joints: cabin.joints.map((joint, index) => ({ ...joint, intent: { colour: index === 0 ? 'contrast' : 'free', gloss: 'free', texture: 'free' } })),
    parts: withReach(L).parts.map((part, index) => (index !== 0 ? { ...part, mend: { ...part.mend, reach: { L: 2, a: 0.5, b: 0.5, gloss: 0 } } } : {
      ...part, sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, readings: [...spectrumReadings(smoothSpectrum(0.122), 5), ...glossReadings(2, 5)] })) })),
    })),
  });

  test('is so by the ordinary check, and no shift of the cheap part within its reach mends it', () => {
    expect(judge(contrasting(0.2), book).joints[0]!.verdict).not.toBe('holds');
    for (const dL of [-0.2, 0, 0.2]) for (const da of [-0.2, 0, 0.2]) for (const db of [-0.2, 0, 0.2]) {
      const tried = proposedCabin(contrasting(0.2), 'j0', { shifts: [{ part: 'p0', dL, da, db }] }, { stage: 'new', observer: 10 });
      expect(judge(tried.cabin, book).joints[0]!.verdict).not.toBe('holds');
    }
  });

  test('takes a dear part then, and that nothing cheaper will do is proved', async () => {
    const plan = await mendCabin(contrasting(0.2), book, { aim: 'cheapest' });
    expect([plan.kept, plan.changes.map(({ part }) => part).includes('p1')]).toEqual([true, true]);
    expect([plan.bound, plan.proved]).toEqual([plan.cost, true]);
  });
});
