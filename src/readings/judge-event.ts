import { decide } from './decide.ts';
import type { DecisionRuleName } from './decide.ts';
import { stackedExcess } from './stacked-excess.ts';
import type { StackedExcess } from './stacked-excess.ts';
import type { StackedEvent } from './stacked-event.ts';
import { stackedProbability } from './stacked-probability.ts';
import type { StackedProbability } from './stacked-probability.ts';

export interface EventVerdict {
  readonly verdict: 'holds' | 'clashes' | 'open';
  /** Values against limits alone. */
  readonly simple: 'holds' | 'clashes';
  readonly probability: StackedProbability;
  readonly excess: StackedExcess;
  /** Index of the light with the lowest probability; ties go to the larger excess, then to the first. */
  readonly worstLight: number;
}

/** Verdict on an event by the decision rule, with the numbers behind it. Two verdicts are always given, whatever the rule. */
export function judgeEvent(event: StackedEvent, rule: DecisionRuleName, confidence: number): EventVerdict {
  const probability = stackedProbability(event);
  const excess = stackedExcess(event);
  const input = { confidence, within: probability.all, excess: excess.excess, inside: excess.inside };
  const perLight = excess.criteria.map((states) => states.reduce((largest, state) => Math.max(largest, state.excess), -Infinity));
  let worstLight = 0;
  probability.each.forEach((p, light) => {
    const best = probability.each[worstLight];
    if (p < best || (p === best && perLight[light] > perLight[worstLight])) worstLight = light;
  });
  return {
    verdict: decide({ ...input, rule }),
    simple: excess.inside ? 'holds' : 'clashes',
    probability,
    excess,
    worstLight,
  };
}
