import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Cabin, Joint } from '../../../src/cabin/cabin.ts';
import type { CabinComparison } from '../../../src/harmony/compare/index.ts';
import { compareCabins } from '../../../src/harmony/compare/index.ts';
import { judge } from '../../../src/harmony/judge.ts';
import type { Lab } from '../../../src/quantities.ts';
import { builtInRuleBooks } from '../../../src/rules/index.ts';
import { twoPartCabin } from '../../support/two-part-cabin.ts';
import { coloured } from './coloured.ts';

const [book] = builtInRuleBooks;
/** An independent reckoning of CIEDE2000. */
const ciede2000 = (first: Lab, second: Lab): number => {
  const point = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });
  return differenceCiede2000()(point(first), point(second));
};
const base: Lab = [30, 0, -1];
const darker = (by: number): Lab => [30 - by, 0, -1];

const cabinOf = (second: Lab, joint: Partial<Joint> = {}, more: Partial<Cabin> = {}): Cabin =>
  twoPartCabin({ readings: coloured(base) }, { readings: coloured(second) }, joint, more);
const compared = (before: Cabin, after: Cabin): CabinComparison => compareCabins({ cabin: before, judgement: judge(before, book) }, { cabin: after, judgement: judge(after, book) });

describe('two cabins', () => {
  it('that are the same cabin differ in nothing', () => {
    const { summary, joints, parts, notes } = compared(cabinOf(base), cabinOf(base));
    expect(summary).toEqual({ both: 1, worseVerdict: 0, betterVerdict: 0, worse: 0, better: 0, same: 1, new: 0, gone: 0, nowClashing: [], noLongerClashing: [] });
    expect(joints[0]).toMatchObject({ kind: 'same', worse: false, limitUseChange: 0 });
    expect([parts, notes]).toEqual([[], []]);
  });

  it('a joint that begins to clash is a worse verdict, and the way back a better one', () => {
    const [good, bad] = [cabinOf(base), cabinOf(darker(3))];
    const worse = compared(good, bad);
    expect(worse.joints[0]).toMatchObject({ kind: 'verdict', worse: true, before: { verdict: 'holds' }, after: { verdict: 'clashes' } });
    expect(worse.summary).toMatchObject({ worseVerdict: 1, nowClashing: ['a-b'], noLongerClashing: [] });
    expect(worse.joints[0].sentence).toMatch(/^Panel A and Panel B: "holds" before, "clashes" now; /u);
    const better = compared(bad, good);
    expect(better.joints[0]).toMatchObject({ kind: 'verdict', worse: false });
    expect(better.summary).toMatchObject({ betterVerdict: 1, nowClashing: [], noLongerClashing: ['a-b'] });
    expect(better.joints[0].limitUseChange).toBeCloseTo(-(worse.joints[0].limitUseChange ?? Number.NaN), 12);
  });

  it('a joint that stays clashing is worse by the change of its value, after minus before', () => {
    const [joint] = compared(cabinOf(darker(2)), cabinOf(darker(4))).joints;
    expect(joint).toMatchObject({ kind: 'worse', worse: true, before: { verdict: 'clashes' }, after: { verdict: 'clashes' } });
    const colour = joint.checks.find(({ check }) => check === 'colour');
    // Dark mouldings are capped on lightness as well, so the leading criterion may be dL*: both of one criterion are subtracted.
    const expected = colour?.after?.criterion === 'dL*' ? 2 : ciede2000(base, darker(4)) - ciede2000(base, darker(2));
    expect(Math.abs(colour?.change ?? Number.NaN)).toBeCloseTo(expected, 5);
    expect(colour?.beyondUncertainty).toBe(true);
  });

  it('a change smaller than the uncertainty of the two values is not beyond it', () => {
    const [joint] = compared(cabinOf(darker(0.3)), cabinOf(darker(0.36))).joints;
    expect(joint.checks.find(({ check }) => check === 'colour')?.beyondUncertainty).toBe(false);
  });

  it('a decision that begins makes a clash a better one, not a hold', () => {
    const decision = { id: 'd', check: 'colour' as const, reason: 'Agreed.', role: 'design quality', date: '2026-02-01', expires: '2026-12-31', value: 9 };
    const clash = cabinOf(darker(2));
    const { light } = judge(clash, book).joints[0].checks.find(({ check }) => check === 'colour') ?? {};
    const [joint] = compared(clash, cabinOf(darker(2), { decisions: [{ ...decision, ...(light === undefined ? {} : { light }) }] })).joints;
    expect(joint).toMatchObject({ kind: 'verdict', worse: false, before: { verdict: 'clashes', accepted: false }, after: { verdict: 'clashes', accepted: true } });
    expect(joint.sentence).toContain('"clashes" before, "clashes, accepted" now');
  });

  it('joints are new, gone, or the same pair under another id', () => {
    const renamed = compared(cabinOf(base), cabinOf(base, { id: 'b-a', parts: ['b', 'a'] }));
    expect(renamed.joints.map(({ id, idBefore, kind }) => [id, idBefore, kind])).toEqual([['b-a', 'a-b', 'same']]);
    const none = cabinOf(base, {}, { joints: [] });
    expect(compared(none, cabinOf(darker(3))).summary).toMatchObject({ both: 0, new: 1, gone: 0, nowClashing: ['a-b'] });
    expect(compared(cabinOf(base), none).summary).toMatchObject({ both: 0, new: 0, gone: 1 });
    const seam = compared(cabinOf(base), cabinOf(base, { id: 'other', kind: 'seam' }));
    expect(seam.summary).toMatchObject({ both: 0, new: 1, gone: 1 });
  });

  it('what became worse stands first, what stayed last', () => {
    const first = cabinOf(base);
    const three = (second: Lab, ...kinds: Joint['kind'][]): Cabin => ({ ...cabinOf(second), joints: kinds.map((kind) => ({ ...first.joints[0], id: kind, kind })) });
    const { joints } = compared(three(base, 'gap', 'seam'), three(darker(3), 'gap', 'edge'));
    expect(joints.map(({ id, kind }) => [id, kind])).toEqual([['gap', 'verdict'], ['edge', 'new'], ['seam', 'gone']]);
  });
});

describe('parts of two cabins', () => {
  it('name what they stood by and how their colour under D65 changed', () => {
    const after = cabinOf(darker(2));
    const { parts } = compared(cabinOf(base), { ...after, parts: after.parts.map((part) => (part.id === 'b' ? { ...part, sources: [{ ...part.sources[0], supplier: 'other' }] } : part)), suppliers: [...after.suppliers, { id: 'other', name: 'Another maker' }] });
    expect(parts).toHaveLength(1);
    expect(parts[0]).toMatchObject({ part: 'b', before: { supplier: 'An invented maker' }, after: { supplier: 'Another maker' }, colour: { dL: -2, words: ['darker'] } });
    expect(parts[0].colour?.ciede2000).toBeCloseTo(ciede2000(base, darker(2)), 6);
  });

  it('are not compared in colour across unlike geometries', () => {
    const sphere = twoPartCabin({ readings: coloured(base) }, { readings: coloured(darker(2), 'sphere') });
    const [part] = compared(cabinOf(base), sphere).parts;
    expect(part.colour).toBeUndefined();
    expect(part.notCompared).toBe('measured at 45:0 before, at di:8 now');
  });
});

describe('states judged unlike', () => {
  it('are said to be of unlike measure', () => {
    const cabin = cabinOf(base);
    const before = { cabin, judgement: judge(cabin, book) };
    const after = { cabin, judgement: judge(cabin, builtInRuleBooks[1] ?? book, { asOf: '2026-04-01' }) };
    const { notes } = compareCabins(before, after);
    expect(notes).toHaveLength(2);
    expect(notes.join(' ')).toMatch(/different rule books.*different days/u);
  });
});
