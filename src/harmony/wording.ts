import type { CheckVerdict, OpenCause } from './judgement.ts';

/** A number as printed in a sentence: fixed decimals, no minus zero. */
export function figure(value: number, decimals = 2): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** Limit use as a whole per cent; large ones are said as such. */
export const percentOfLimit = (limitUse: number): string => (limitUse > 9.99 ? 'over 999 %' : `${Math.round(limitUse * 100)} %`);

/** A probability in words that never claims 0 or 100 %. */
export function chance(probability: number): string {
  if (probability > 0.995) return 'over 99 %';
  if (probability < 0.005) return 'under 1 %';
  return `${Math.round(probability * 100)} %`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
}

const causeWords: Record<OpenCause, string> = {
  'too few spots': 'too few spots were measured',
  'instruments disagree': 'the readings of the two sides may differ between instruments, sessions or surfaces by more than is left',
  'spread of the part': 'the readings of a side scatter too much for any sensible number of spots',
  conditions: 'the two sides were measured under conditions that may not be compared',
  'on the limit': 'the value lies on the limit',
  'missing data': 'data the rule asks for is missing',
  'judged by eye': 'it has to be judged by eye',
};

export const causeSentence = (cause: OpenCause): string => causeWords[cause];

/** How sure a verdict is, as the end of a sentence. */
export function certainty(verdict: CheckVerdict, withinProbability: number | undefined, cause: OpenCause | undefined, spotsNeeded: number | undefined): string {
  if (withinProbability === undefined) return verdict === 'open' && cause !== undefined ? `open: ${causeSentence(cause)}` : verdict;
  if (verdict === 'holds') return `it holds, with a probability of ${chance(withinProbability)}`;
  if (verdict === 'clashes') return `it clashes; the probability of being within is ${chance(withinProbability)}`;
  const why = cause === undefined ? 'the data cannot decide' : causeSentence(cause);
  const spots = spotsNeeded === undefined ? '' : `; ${spotsNeeded} spots a side would decide`;
  return `open (${chance(withinProbability)} within): ${why}${spots}`;
}
