import type { Cabin } from '../../src/cabin/cabin.ts';
import type { CheckResult, JointResult, Judgement, LightResult, PartResult } from '../../src/harmony/judgement.ts';
import type { SpectrumReading } from '../../src/readings/reading.ts';
import { smallCabin, smallCurves } from '../support/small-cabin.ts';

/** Invented: a judgement of the small cabin written by hand, with every kind of result, so that the report is tested apart from the judging. */

const light = (name: string, value: number, limit: number, more: Partial<LightResult> = {}): LightResult => ({
  light: name, observer: 10, standing: 'required', value, limit, limitUse: value / limit, uncertainty: 0.083333333333333329, withinProbability: 0.123456789012345,
  difference: { dL: -0.51234567890123, da: 0.1, db: -0.0312345678, dC: 0.0412345, dH: -0.2512345 }, words: ['darker', 'redder'], standard: [27.1, -0.3, -1.2], trial: [26.6, -0.2, -1.23],
  criteria: [{ name: 'dL*', value: -0.51234567890123, min: -0.7, max: 0.7, limitUse: 0.7319, uncertainty: 0.08, withinProbability: 0.99 }], ...more,
});

const colourCheck = (lights: readonly LightResult[], more: Partial<CheckResult>): CheckResult => ({
  check: 'colour', standing: 'required', verdict: 'holds', simple: 'holds', light: lights[0].light, formula: 'CIEDE2000', unit: 'CIEDE2000',
  value: lights[0].value, limit: lights[0].limit, limitUse: lights[0].limitUse, uncertainty: lights[0].uncertainty, withinProbability: lights[0].withinProbability,
  sentence: 'An invented sentence.', basis: 'common practice, no source', lights, cautions: [], ...more,
});

const glossCheck = (more: Partial<CheckResult>): CheckResult => ({
  check: 'gloss', standing: 'required', verdict: 'holds', simple: 'holds', unit: 'GU', value: 0.3123456789, limit: 0.5, limitUse: 0.6246913578, uncertainty: 0.07,
  withinProbability: 0.98765432109, sentence: 'Dash lower is 0.31 GU glossier than Dash upper.', basis: 'common practice, no source', lights: [], cautions: [], ...more,
});

const joint = (id: string, parts: readonly [string, string], checks: readonly CheckResult[], more: Partial<JointResult>): JointResult => ({
  id, parts, standard: parts[0], trial: parts[1], kind: 'gap', intent: { colour: 'match', gloss: 'match', texture: 'free' }, rule: 'moulded + moulded',
  ruleWhy: 'The classes of moulded decide; no rule for the pair is more specific.', verdict: 'holds', simple: 'holds', accepted: false, limitUse: checks[0]?.limitUse,
  totalProbability: 0.9612345678901234, coverage: { withData: checks.length, wanted: 2 }, sentence: checks[0]?.sentence ?? '',
  judgedOn: parts.map((part) => ({ part, source: 's', specimen: 'du-1', kind: 'plaque', lot: 'lot-11', spots: 5, instrument: 'spectro-a', geometry: '45:0' as const })),
  checks, visual: undefined, ...more,
});

export function inventedJoints(): JointResult[] {
  return [
    joint('j1', ['dash-upper', 'dash-lower'], [colourCheck([light('D65', 0.41234567890123, 0.8)], {}), glossCheck({})], {}),
    joint('j2', ['dash-lower', 'door-left'], [
      colourCheck([light('FL11', 1.5123456789, 0.98), light('D65', 0.6123456789, 0.7), light('FL2', 0.9, 0.9, { standing: 'shown' })], {
        verdict: 'clashes', simple: 'clashes', accepted: true, acceptedUntil: '2031-06-30', sentence: 'Door left is darker than Dash lower: 1.51 of 0.98 under FL11.', cautions: ['One side was measured with UV included.'],
      }),
    ], { verdict: 'clashes', simple: 'clashes', accepted: true, acceptedUntil: '2031-06-30', totalProbability: 0.0012345, visual: { result: 'acceptable', date: '2031-02-27', agrees: false } }),
    joint('j3', ['dash-lower', 'door-right'], [
      colourCheck([light('D65', 1.2912345678901, 0.7), light('A', 1.1, 0.84)], { verdict: 'clashes', simple: 'clashes', sentence: 'Door right is darker and redder than Dash lower: 1.29 of 0.70 under D65, it clashes.' }),
      glossCheck({ verdict: 'clashes', simple: 'clashes', value: 1.25, limitUse: 2.5, sentence: 'Door right is 1.25 GU glossier than Dash lower at 60 degrees, limit 0.50.' }),
    ], { verdict: 'clashes', simple: 'clashes', totalProbability: 0.0001, limitUse: 2.5 }),
    joint('j4', ['dash-lower', 'console'], [
      { ...glossCheck({}), check: 'near-miss', unit: 'CIEDE2000', value: 13.2, limit: 12, limitUse: 0.909, sentence: 'Clearly apart.' },
    ], { intent: { colour: 'contrast', gloss: 'free', texture: 'free' } }),
    joint('j5', ['door-left', 'door-right'], [
      colourCheck([light('D65', 0.88, 0.91)], { verdict: 'open', cause: 'too few spots', spotsNeeded: 12, sentence: 'Open: too few spots were measured; 12 spots a side would decide.' }),
    ], { kind: 'sightline', verdict: 'open', totalProbability: 0.61 }),
    joint('j6', ['console', 'console-side'], [
      { check: 'conditions', standing: 'required', verdict: 'open', simple: 'open', unit: '', cause: 'conditions', sentence: 'Open: the two sides were measured under conditions that may not be compared.', basis: 'CIE 15', lights: [], cautions: [] },
    ], { kind: 'seam', verdict: 'open', totalProbability: 0.5, limitUse: undefined }),
  ];
}

const parts = (cabin: Cabin): PartResult[] => cabin.parts.map((part) => {
  const specimen = part.sources[0].specimens[0];
  const spectrum = specimen?.readings.find((reading): reading is SpectrumReading => reading.quantity === 'spectrum');
  const values = spectrum?.values ?? smallCurves.slate;
  return {
    id: part.id,
    appearance: {
      part: part.id, source: part.sources[0].id, specimen: specimen?.id, ...(specimen === undefined ? { borrowedFrom: part.mirrorOf } : {}),
      spectrum: { startNm: 400, stepNm: 10, values: [...values] }, geometry: '45:0', colourSpots: 5,
      gloss: [{ angle: 60, mean: 1.8765432, sd: 0.05, spots: 5 }],
    },
    checks: part.target ? [colourCheck([light('D65', 0.48, 0.8)], { check: 'master', subject: part.target.master })]
      : part.zone === 'dash' ? [glossCheck({ check: 'cap', subject: 'dash-gloss', verdict: 'clashes', value: 2.6, limit: 2, limitUse: 1.3, cautions: ['The cap is a design aid against veiling glare; legal requirements on visibility and the responsible engineer decide.'] })] : [],
  };
});

export function inventedJudgement(cabin: Cabin = smallCabin(), joints: readonly JointResult[] = inventedJoints()): Judgement {
  return {
    cabin: cabin.name, stage: 'new', asOf: cabin.asOf, ruleBook: 'default', decisionRule: 'guarded at 95 %', observer: 10, lights: ['D65', 'A', 'FL11', 'LED-B3', 'FL2'],
    summary: { holds: 2, nothingJudged: 0, open: 2, clashes: 1, accepted: 1, expectedWrongHolds: 0.0775308642, coverage: 0.8333333333333334, visual: { joints: 1, agree: 0, differ: ['j2'] } },
    joints, parts: parts(cabin),
    runs: [{ id: 'r1', parts: ['door-left', 'dash-lower', 'door-right'], value: 1.0512345678, limit: 0.91, limitUse: 1.15520283, light: 'D65', formula: 'CIEDE2000', verdict: 'clashes', simple: 'clashes', cautions: [], sentence: 'From Door left to Door right 1.05 of 0.91.', steps: [0, 0.6, 1.0512345678] }],
    requests: [{
      joint: 'j5', check: 'colour', quantity: 'colour', supplier: 'quill', part: 'door-left', source: 'ppx', specimen: 'do-1', spots: 12, have: 5, instrument: 'spectro-a', geometry: '45:0', chance: 0.9123456789, reason: 'Too few spots to decide.',
    }],
    issues: [{ code: 'uv-unknown', severity: 'warning', path: 'conditions[1]', found: 'UV state unknown', expected: 'a stated UV state' }],
  };
}
