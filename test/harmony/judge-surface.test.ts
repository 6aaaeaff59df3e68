import { describe, expect, test } from 'vitest';
import type { Cabin, Decision } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import type { CheckResult, JointResult } from '../../src/harmony/judgement.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { spectra, spectrumOf, twoPartCabin } from '../support/two-part-cabin.ts';

const only = (cabin: Cabin): JointResult => judge(cabin, defaultBook).joints[0];
const check = (joint: JointResult, name: CheckResult['check']): CheckResult | undefined => joint.checks.find((candidate) => candidate.check === name);

describe('gloss', () => {
  test('is compared at 60 degrees against 0.5 GU for two mouldings', () => {
    // Limits of the default book: common practice, no source.
    expect(check(only(twoPartCabin({ gloss60: 2 }, { gloss60: 2.1 })), 'gloss')?.verdict).toBe('holds');
    const apart = only(twoPartCabin({ gloss60: 2 }, { gloss60: 3 }));
    expect(apart.verdict).toBe('clashes');
    expect(check(apart, 'gloss')).toMatchObject({ value: 1, limit: 0.5, limitUse: 2, unit: 'GU', verdict: 'clashes' });
    expect(apart.sentence).toMatch(/^Panel B is 1\.00 GU glossier than Panel A at 60°/);
  });

  test('has the probability of a normal difference', () => {
    // d = 0.4, limit 0.5; variance of the assumed spread only, pooled (8 s0^2 + 4 x 0)/12, over 5 spots, twice; one session cancels.
    const result = check(only(twoPartCabin({ gloss60: 2 }, { gloss60: 2.4 })), 'gloss');
    const sd0 = defaultBook.materials.find(({ material }) => material === 'moulded')?.glossSd ?? 0;
    const u = Math.sqrt((2 * (8 * sd0 * sd0)) / 12 / 5);
    expect(result?.uncertainty).toBeCloseTo(u, 10);
    const steps = 200_000;
    let within = 0;
    for (let step = 0; step < steps; step++) {
      const d = -0.5 + (step + 0.5) / steps;
      within += Math.exp(-0.5 * ((d - 0.4) / u) ** 2) / (u * Math.sqrt(2 * Math.PI)) / steps;
    }
    expect(result?.withinProbability).toBeCloseTo(within, 6);
  });

  test('missing on one side leaves the joint open and asks for it', () => {
    const { joints, requests } = judge(twoPartCabin({}, { gloss60: null }), defaultBook);
    expect(joints[0].verdict).toBe('open');
    expect(requests.map(({ part, geometry, check: name }) => [part, geometry, name])).toEqual([['b', '60°', 'gloss']]);
  });

  test('does not apply to pile', () => {
    expect(check(only(twoPartCabin({ material: 'carpet' }, { material: 'carpet', gloss60: 9 })), 'gloss')?.verdict).toBe('not applicable');
  });
});

describe('texture', () => {
  test('of one grain is compared by Sa and Sal', () => {
    const alike = only(twoPartCabin({ grain: 'pebble', sa: 10 }, { grain: 'pebble', sa: 10.5 }));
    expect(check(alike, 'texture')?.verdict).toBe('holds');
    const deeper = only(twoPartCabin({ grain: 'pebble', sa: 10 }, { grain: 'pebble', sa: 16 }));
    expect(deeper.verdict).toBe('clashes');
    expect(check(deeper, 'texture')).toMatchObject({ criterion: 'Sa ratio', limit: 1.25 });
    expect(check(deeper, 'texture')?.value).toBeCloseTo(1.6, 10);
    expect(check(deeper, 'texture')?.limitUse).toBeCloseTo(Math.log(1.6) / Math.log(1.25), 10);
  });

  test('without areal data has no data and does not open the joint', () => {
    const joint = only(twoPartCabin({ grain: 'pebble' }, { grain: 'pebble' }));
    expect(check(joint, 'texture')?.verdict).toBe('no data');
    expect(joint.verdict).toBe('holds');
    expect(joint.coverage).toEqual({ withData: 2, wanted: 3 });
  });

  test('of unlike grains is free', () => {
    expect(check(only(twoPartCabin({ grain: 'pebble', sa: 10 }, { grain: 'linen', sa: 30 })), 'texture')?.verdict).toBe('not applicable');
  });
});

const grey = spectrumOf(() => 0.06);
const level = (dL: number): number[] => spectrumOf(() => ((116 * Math.cbrt(0.06) + dL) / 116) ** 3);

describe('masters', () => {
  const masters = [{ id: 'm', kind: 'master' as const, readings: spectra(grey), expires: '2026-02-01' }];
  const target = { master: 'm' };

  test('two neighbours within their master limits that clash with each other are said to be so', () => {
    const cabin = twoPartCabin({ curve: level(0.45), target, spots: 20 }, { curve: level(-0.45), target, spots: 20 }, {}, { masters });
    const { joints, parts } = judge(cabin, defaultBook);
    expect(joints[0].verdict).toBe('clashes');
    expect(parts.map((part) => part.checks.find((candidate) => candidate.subject === 'colour')?.verdict)).toEqual(['holds', 'holds']);
    expect(joints[0].sentence).toContain('Each is within its own master limit');
  });

  test('an expired master is a caution', () => {
    const { parts } = judge(twoPartCabin({ curve: grey, target }, {}, {}, { masters }), defaultBook);
    expect(parts[0].checks[0].cautions.join()).toContain('expired on 2026-02-01');
  });
});

describe('caps', () => {
  test('the upper dash may not exceed 2.0 GU at 60 degrees, with the caution', () => {
    const { parts } = judge(twoPartCabin({ zone: 'upper-dash', gloss60: 3 }, {}), defaultBook);
    const cap = parts[0].checks.find((candidate) => candidate.subject === 'upper-dash-gloss');
    expect(cap).toMatchObject({ verdict: 'clashes', value: 3, limit: 2, limitUse: 1.5 });
    expect(cap?.cautions.join()).toContain('responsible engineer');
    expect(parts[1].checks).toEqual([]);
  });

  test('lightness is capped too', () => {
    const { parts } = judge(twoPartCabin({ zone: 'upper-dash', curve: spectrumOf(() => 0.1), gloss60: 1 }, {}), defaultBook);
    const cap = parts[0].checks.find((candidate) => candidate.subject === 'upper-dash-lightness');
    expect(cap?.verdict).toBe('clashes');
    expect(cap?.value).toBeCloseTo(116 * Math.cbrt(0.1) - 16, 1);
  });
});

describe('decisions', () => {
  const apart = { curve: level(2) };
  const decision = (more: Partial<Decision>): Decision => ({
    id: 'd1', check: 'colour', reason: 'agreed until the next tool', role: 'design quality', date: '2026-02-10', expires: '2026-06-30', value: 2.1, ...more,
  });
  const joint = (more: Partial<Decision>): JointResult => only(twoPartCabin({ curve: grey }, apart, { decisions: [decision(more)] }));

  test('in force leave the clash and accept it', () => {
    const result = joint({});
    expect([result.verdict, result.accepted, result.acceptedUntil]).toEqual(['clashes', true, '2026-06-30']);
    expect(judge(twoPartCabin({ curve: grey }, apart, { decisions: [decision({})] }), defaultBook).summary).toMatchObject({ clashes: 0, accepted: 1 });
  });

  test.each([
    ['the date', { expires: '2026-02-28' }, 'expired'],
    ['a worse value', { value: 1 }, 'agreed at 1.00'],
    ['another light', { light: 'FL11' }, 'agreed under FL11'],
    ['a later day of agreement', { date: '2026-04-01' }, 'after 2026-03-01'],
  ] as const)('are void by %s', (_, more, words) => {
    const result = joint(more);
    expect(result.accepted).toBe(false);
    expect(check(result, 'colour')?.decisionVoid).toContain(words);
  });

  test('cover their own light and criterion, up to and on the day of their expiry', () => {
    const criterion = check(joint({}), 'colour')?.criterion;
    // A dark pair 2 units of L* apart is led by the cap on dL*.
    expect(criterion).toBe('dL*');
    expect(joint({ light: check(joint({}), 'colour')?.light, criterion, expires: '2026-03-01' }).accepted).toBe(true);
    expect(joint({ criterion: 'ΔE' }).accepted).toBe(false);
    expect(check(joint({ criterion: 'ΔE' }), 'colour')?.decisionVoid).toContain('agreed on ΔE, the worst criterion now is dL*');
  });

  test('on a gloss are worse by a larger value, on a near miss by a smaller one', () => {
    const glossy = (value: number) => only(twoPartCabin({ curve: grey, gloss60: 2 }, { curve: grey, gloss60: 3.2 }, { decisions: [decision({ check: 'gloss', value })] }));
    expect([glossy(1.2).accepted, glossy(1.5).accepted, glossy(1.1).accepted]).toEqual([true, true, false]);
    const near = (value: number) => only(twoPartCabin({ curve: grey }, { curve: level(3) }, {
      intent: { colour: 'tone-step', gloss: 'free' }, decisions: [decision({ check: 'near-miss', value })],
    }));
    const apart3 = Math.abs(check(near(3), 'near-miss')?.value ?? 0);
    expect(apart3).toBeCloseTo(3, 2);
    expect([near(apart3).accepted, near(2).accepted, near(4).accepted]).toEqual([true, true, false]);
  });

  test('one of several that is in force is enough; the verdict stays and the count of clashes does not hide it', () => {
    const both = twoPartCabin({ curve: grey }, apart, { decisions: [decision({ id: 'old', expires: '2026-02-20' }), decision({ id: 'new', expires: '2026-04-01' })] });
    const judged = judge(both, defaultBook);
    expect(judged.joints[0]).toMatchObject({ verdict: 'clashes', accepted: true, acceptedUntil: '2026-04-01' });
    expect(judged.summary).toMatchObject({ clashes: 0, accepted: 1, holds: 0, open: 0 });
  });

  test('on one of two clashing checks leave the joint unaccepted', () => {
    const cabin = twoPartCabin({ curve: grey, gloss60: 2 }, { ...apart, gloss60: 4 }, { decisions: [decision({})] });
    expect(judge(cabin, defaultBook).summary).toMatchObject({ clashes: 1, accepted: 0 });
  });

  test('on another check do not cover this one', () => {
    expect(joint({ check: 'gloss' }).accepted).toBe(false);
  });

  test('are judged on the day that is asked for', () => {
    const cabin = twoPartCabin({ curve: grey }, apart, { decisions: [decision({})] });
    expect(judge(cabin, defaultBook, { asOf: '2026-07-01' }).joints[0].accepted).toBe(false);
  });
});

describe('the booth beside the numbers', () => {
  const record = (result: 'match' | 'acceptable' | 'clash', date = '2026-02-02') => ({ date, light: 'D65', observers: { count: 3, roles: ['quality'] }, result });

  test('agrees with holds by match, with clashes by clash, and the latest record counts', () => {
    const seen = (curve: number[], records: ReturnType<typeof record>[]) => judge(twoPartCabin({ curve: grey }, { curve }, { visualRecords: records }), defaultBook);
    expect(seen(grey, [record('acceptable')]).summary.visual).toEqual({ joints: 1, agree: 1, differ: [] });
    expect(seen(level(3), [record('clash')]).summary.visual.agree).toBe(1);
    expect(seen(grey, [record('clash', '2026-02-01'), record('match')]).joints[0].visual?.agrees).toBe(true);
    expect(seen(grey, [record('clash')]).summary.visual.differ).toEqual(['a-b']);
  });
});

describe('stages', () => {
  test('a part with no specimen at the stage has no data there', () => {
    expect(judge(twoPartCabin({ curve: grey }, { curve: grey }), defaultBook, { stage: 'light-exposed' }).joints[0].verdict).toBe('open');
  });
});

describe('determinism', () => {
  test('the same cabin gives the same judgement, to the last digit', () => {
    const cabin = twoPartCabin({ curve: grey }, { curve: level(0.6) });
    expect(JSON.stringify(judge(structuredClone(cabin), defaultBook))).toBe(JSON.stringify(judge(cabin, defaultBook)));
  });
});
