import type { CheckResult } from '../judgement.ts';
import type { JointInput } from './joint-input.ts';

/** Whether the two sides were measured under conditions that may be compared; not asked where colour is not judged. */
export function conditionsCheck(input: JointInput): CheckResult {
  const { rule, colour } = input;
  const base = {
    check: 'conditions' as const, standing: rule.conditions.standing, unit: '', lights: [],
    basis: 'CIE 015:2018 (geometries); grouping by aperture and ultraviolet: common practice, no source',
  };
  const asked = rule.intent.colour !== 'free' && rule.colour.notJudged === undefined;
  if (!asked || typeof colour === 'string') {
    return { ...base, verdict: 'not applicable', simple: 'not applicable', cautions: [], sentence: 'Conditions: colour is not compared.' };
  }
  const { cautions } = colour;
  if (colour.indicative) {
    return {
      ...base, verdict: 'open', simple: 'open', cause: 'conditions', cautions,
      sentence: `Conditions may not be compared: ${colour.conditionsReason ?? 'they are unlike'}.`,
    };
  }
  const minded = cautions.length === 0 ? '' : `, with ${cautions.length === 1 ? 'a caution' : `${cautions.length} cautions`}: ${cautions.join('; ')}`;
  return { ...base, verdict: 'holds', simple: 'holds', cautions, sentence: `Conditions are alike${minded}.` };
}
