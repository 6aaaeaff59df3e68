import { describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { glosses, partOf, spectra, spectrumOf, twoPartCabin } from '../support/two-part-cabin.ts';

/** A grey of so much L* above the dark one of the other tests (ISO/CIE 11664-4). */
const grey = (above = 0): number[] => spectrumOf(() => ((116 * Math.cbrt(0.06) + above) / 116) ** 3);

/** Four parts in a row; invented. */
const row = (above: readonly number[], spots = 5): Cabin => {
  const parts = above.map((each, i) => partOf(`p${i}`, `Panel ${i}`, { curve: grey(each), spots }));
  return {
    ...twoPartCabin({}, {}), parts,
    joints: parts.slice(1).map((part, i) => ({ id: `j${i}`, parts: [parts[i].id, part.id] as const, kind: 'gap', gapMm: 1, viewMm: 700, lengthMm: 300 })),
  };
};

describe('what a cabin comes to', () => {
  test('the expected number of wrong holds is the sum of what is left to certainty over the joints that hold, and over no others', () => {
    const { joints, summary } = judge(row([0, 0.25, 0.5, 2.8], 2), defaultBook);
    expect(joints.map(({ verdict }) => verdict)).toEqual(['holds', 'holds', 'clashes']);
    expect(summary.expectedWrongHolds).toBeCloseTo(2 - joints[0].totalProbability - joints[1].totalProbability, 12);
    expect(summary.expectedWrongHolds).toBeGreaterThan(0);
    // Each holds with 0.95 at least.
    expect(summary.expectedWrongHolds).toBeLessThanOrEqual(2 * 0.05);
  });

  test('it is kept: of pairs drawn from what the readings allow, that many do not hold', () => {
    // One light, one dimension: dL* of -0.25 with sd 0.15 * sqrt(2 / 2) = 0.15 against the cap of 0.7. The chance of being beyond it is
    // Phi((-0.7 - 0.25) / 0.15) + Phi((0.25 - 0.7) / 0.15) = 0.00135 (Phi(-3), any table); the other components add little.
    const book = { ...defaultBook, lights: defaultBook.lights.filter(({ light }) => light === 'D65') };
    const { summary } = judge(row([0, 0.25], 2), book);
    expect(summary.expectedWrongHolds).toBeGreaterThan(0.0008);
    expect(summary.expectedWrongHolds).toBeLessThan(0.004);
  });

  test('coverage counts checks with data of checks wanted', () => {
    const cabin = twoPartCabin({ curve: grey() }, { curve: grey(), gloss60: null });
    const { joints, summary } = judge(cabin, defaultBook);
    expect(joints[0].coverage).toEqual({ withData: 1, wanted: 2 });
    expect(summary.coverage).toBe(0.5);
    expect(joints[0].verdict).toBe('open');
  });

  test('a joint of which nothing is wanted holds, counts apart and leaves the coverage at 1', () => {
    const { summary } = judge(twoPartCabin({ curve: grey() }, { curve: grey(5) }, { intent: { colour: 'free', gloss: 'free', texture: 'free' } }), defaultBook);
    expect(summary).toMatchObject({ holds: 1, nothingJudged: 1, coverage: 1, expectedWrongHolds: 0 });
  });
});

describe('readings of the other hand', () => {
  const cabin: Cabin = (() => {
    const made = twoPartCabin({ curve: grey() }, { curve: grey() });
    const [first, second] = made.parts;
    const left = { ...partOf('left', 'Left handle', { curve: grey(0.1) }), hand: 'left' as const };
    const right = { ...partOf('right', 'Right handle', { specimens: [] }), hand: 'right' as const, mirrorOf: 'left' };
    return {
      ...made, parts: [first, second, left, right],
      joints: [{ id: 'a-right', parts: ['a', 'right'], kind: 'gap', gapMm: 1, viewMm: 700, lengthMm: 300 }],
    };
  })();

  test('stand in for a part that has none, and the joint says so', () => {
    const [joint] = judge(cabin, defaultBook).joints;
    expect(joint.verdict).toBe('holds');
    expect(joint.judgedOn.find(({ part }) => part === 'right')).toMatchObject({ borrowedFrom: 'left', specimen: 'left-specimen', spots: 5 });
    expect(joint.judgedOn.find(({ part }) => part === 'a')).not.toHaveProperty('borrowedFrom');
    expect(joint.sentence).toContain('borrowed from its other hand');
  });

  test('are left alone where the part has its own', () => {
    const own = { ...cabin.parts[3], sources: cabin.parts[3].sources.map((source) => ({
      ...source, specimens: [{ id: 'own', kind: 'tool part' as const, readings: [...spectra(grey(3)), ...glosses(2)] }],
    })) };
    const [joint] = judge({ ...cabin, parts: [...cabin.parts.slice(0, 3), own] }, defaultBook).joints;
    expect(joint.verdict).toBe('clashes');
    expect(JSON.stringify(joint)).not.toContain('borrowed');
  });
});

describe('UV states', () => {
  const judged = (level: number, uv: 'included' | 'unknown') => {
    const cabin = twoPartCabin({ curve: grey(level) }, { curve: grey(level), conditions: 'annular-uv' });
    const conditions = [...cabin.conditions, { ...cabin.conditions[0], id: 'annular-uv', uv }];
    return judge({ ...cabin, conditions }, defaultBook).joints[0];
  };

  test('unlike ones raise a caution on light parts, and not on dark ones', () => {
    // L* 28 and L* 75: fluorescent whitening shows on light surfaces. Common practice, no source.
    const cautions = (joint: ReturnType<typeof judged>) => joint.checks.flatMap((check) => check.cautions.map((caution) => JSON.stringify(caution)));
    expect(cautions(judged(46, 'included')).some((text) => text.includes('ultraviolet'))).toBe(true);
    expect(cautions(judged(0, 'included')).some((text) => text.includes('ultraviolet'))).toBe(false);
  });
});
