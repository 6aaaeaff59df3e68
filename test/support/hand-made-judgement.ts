import type { Cabin } from '../../src/cabin/cabin.ts';
import type { CheckResult, JointResult, Judgement, LightResult, PartResult } from '../../src/harmony/judgement.ts';
import { smallCabin, smallCurves } from './small-cabin.ts';

/**
 * A judgement of the small test cabin with numbers made up by hand, one joint of every verdict:
 * for tests of what the screen does with a judgement, never of the judging.
 */
export const madeUpCabin: Cabin = smallCabin();

const lightResult = (light: string, value: number, limit: number, standing: LightResult['standing'] = 'required'): LightResult => ({
  light, observer: 10, standing, value, limit, limitUse: value / limit, uncertainty: 0.11, withinProbability: value > limit ? 0.02 : 0.97,
  difference: { dL: value * 0.8, da: -value * 0.3, db: value * 0.4, dC: -value * 0.2, dH: value * 0.1 },
  words: ['lighter', 'yellower'], standard: [27.4, -0.3, -1.6], trial: [27.4 + value * 0.8, -0.3 - value * 0.3, -1.6 + value * 0.4], criteria: [],
});

const colourCheck = (verdict: CheckResult['verdict'], lights: readonly LightResult[], sentence: string, more: Partial<CheckResult> = {}): CheckResult => {
  const worst = [...lights].sort((a, b) => b.limitUse - a.limitUse)[0];
  return {
    check: 'colour', standing: 'required', verdict, simple: verdict, light: worst?.light, formula: 'CIEDE2000', unit: 'ΔE00',
    value: worst?.value, limit: worst?.limit, limitUse: worst?.limitUse, uncertainty: worst?.uncertainty, withinProbability: worst?.withinProbability,
    sentence, basis: 'common practice, no source', lights, cautions: [], ...more,
  };
};

const gloss = (value: number): CheckResult => ({
  check: 'gloss', standing: 'required', verdict: 'holds', simple: 'holds', unit: 'GU', value, limit: 0.5, limitUse: value / 0.5, uncertainty: 0.06,
  withinProbability: 0.99, sentence: `Gloss differs by ${value} GU at 60°, inside the limit of 0.5 GU.`, basis: 'common practice, no source', lights: [], cautions: [],
});

const joint = (id: string, verdict: JointResult['verdict'], limitUse: number | undefined, checks: readonly CheckResult[], more: Partial<JointResult> = {}): JointResult => {
  const { parts, kind } = madeUpCabin.joints.find((one) => one.id === id) ?? { parts: ['', ''] as const, kind: 'edge' as const };
  return {
    id, parts, standard: parts[0], trial: parts[1], kind, intent: { colour: 'match', gloss: 'match', texture: 'free' },
    rule: 'moulded + soft-skin', ruleWhy: 'No rule names this pair; the classes of the two materials decide.', verdict, simple: verdict, accepted: false,
    limitUse, totalProbability: verdict === 'holds' ? 0.98 : verdict === 'open' ? 0.55 : 0.01, coverage: { withData: 2, wanted: 3 },
    sentence: checks[0]?.sentence ?? '', judgedOn: [], checks, visual: undefined, ...more,
  };
};

const joints: readonly JointResult[] = [
  joint('j1', 'holds', 0.42, [colourCheck('holds', [lightResult('D65', 0.38, 0.9), lightResult('A', 0.31, 1.08), lightResult('FL11', 0.4, 1.26), lightResult('FL2', 0.4, 1.26, 'shown')], 'Dash lower is 0.38 from Dash upper under D65, 42 % of the limit.'), gloss(0.3)], {
    judgedOn: [
      { part: 'dash-upper', source: 'skin', specimen: 'du-1', kind: 'plaque', lot: 'lot-11', spots: 5, instrument: 'spectro-a', geometry: '45:0' },
      { part: 'dash-lower', source: 'ppx', specimen: 'dl-2', kind: 'tool part', lot: 'lot-21', spots: 5, instrument: 'spectro-a', geometry: '45:0' },
    ],
  }),
  joint('j2', 'clashes', 1.7, [colourCheck('clashes', [lightResult('D65', 1.19, 0.7), lightResult('A', 1.02, 0.84)], 'Door left is too light beside Dash lower under D65: 1.19 of 0.70.', { accepted: true, acceptedUntil: '2031-06-30' })], {
    accepted: true, acceptedUntil: '2031-06-30', visual: { result: 'acceptable', date: '2031-02-27', agrees: false },
  }),
  joint('j3', 'open', 0.96, [colourCheck('open', [lightResult('D65', 0.67, 0.7)], 'Five spots cannot decide whether Door right holds beside Dash lower.', { cause: 'too few spots', spotsNeeded: 18 })]),
  joint('j4', 'clashes', 2.4, [colourCheck('clashes', [lightResult('D65', 1.68, 0.7), lightResult('FL11', 2.1, 0.98)], 'Console lid clashes with Dash lower under FL11.')]),
  joint('j5', 'holds', 0.2, [colourCheck('holds', [lightResult('D65', 0.2, 1)], 'Door right holds against Door left, seen together.')]),
  joint('j6', 'open', undefined, [colourCheck('no data', [], 'Console side has no spectrum, so nothing can be said.', { value: undefined, limitUse: undefined })], {
    sentence: 'Console side has CIELAB under D65 only, so other lights have no data.',
  }),
];

const appearance = (part: string, source: string, values: readonly number[] | undefined): PartResult => ({
  id: part,
  checks: [],
  appearance: {
    part, source, specimen: { 'dash-upper': 'du-1', 'dash-lower': 'dl-2', 'door-left': 'do-1', console: 'co-1' }[part], geometry: '45:0', colourSpots: 5,
    spectrum: values === undefined ? undefined : { startNm: 400, stepNm: 10, values },
    cielab: values === undefined ? { lab: [40, 3, 9], light: 'D65', observer: 10 } : undefined,
    gloss: [{ angle: 60, mean: 1.9, sd: 0.1, spots: 5 }],
  },
});

export const madeUpJudgement: Judgement = {
  cabin: 'small', stage: 'new', asOf: '2031-03-01', ruleBook: 'default', decisionRule: 'guarded, 95 %', observer: 10, lights: ['D65', 'A', 'FL11', 'FL2'],
  summary: { holds: 2, nothingJudged: 0, open: 2, clashes: 1, accepted: 1, expectedWrongHolds: 0.04, coverage: 0.67, visual: { joints: 1, agree: 0, differ: ['j2'] } },
  joints,
  parts: [
    appearance('dash-upper', 'skin', smallCurves.skin),
    appearance('dash-lower', 'ppx', smallCurves.slate),
    appearance('door-left', 'ppx', smallCurves.slateWarmer),
    { ...appearance('door-right', 'ppx', smallCurves.slateWarmer), appearance: { ...appearance('door-right', 'ppx', smallCurves.slateWarmer).appearance, specimen: 'do-1', borrowedFrom: 'door-left' } },
    appearance('console', 'black', smallCurves.black),
    appearance('console-side', 'cloth', undefined),
  ],
  runs: [], requests: [], issues: [],
};
