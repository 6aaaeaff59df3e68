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

/** The same of a part by itself, against its master or a cap. */
const causeWordsOfPart: Partial<Record<OpenCause, string>> = {
  'instruments disagree': 'the instrument may be off by more than is left',
  'spread of the part': 'the readings of the part scatter too much for any sensible number of spots',
};

export const causeSentence = (cause: OpenCause, of: 'joint' | 'part' = 'joint'): string => (of === 'part' ? causeWordsOfPart[cause] : undefined) ?? causeWords[cause];

/** Why a verdict is open, as far as the end of a sentence needs it. */
export interface OpenWords {
  readonly cause: OpenCause;
  readonly spotsNeeded?: number;
  readonly spotsOn?: 'part' | 'part and master';
}

const spotsWords = { each: 'a side', part: 'of the part', 'part and master': 'of the part and of its master' } as const;

/** How sure a verdict is, as the end of a sentence. */
export function certainty(verdict: CheckVerdict, withinProbability: number | undefined, open: OpenWords | undefined, of: 'joint' | 'part' = 'joint'): string {
  if (withinProbability === undefined) return verdict === 'open' && open !== undefined ? `open: ${causeSentence(open.cause, of)}` : verdict;
  if (verdict === 'holds') return `it holds, with a probability of ${chance(withinProbability)}`;
  if (verdict === 'clashes') return `it clashes; the probability of being within is ${chance(withinProbability)}`;
  const why = open === undefined ? 'the data cannot decide' : causeSentence(open.cause, of);
  const spots = open?.spotsNeeded === undefined ? '' : `; ${open.spotsNeeded} spots ${spotsWords[open.spotsOn ?? (of === 'part' ? 'part' : 'each')]} would decide`;
  return `open (${chance(withinProbability)} within): ${why}${spots}`;
}
