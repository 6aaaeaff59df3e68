import type { CheckName } from '../../cabin/cabin.ts';
import type { JointResult } from '../judgement.ts';
import { figure, percentOfLimit } from '../wording.ts';
import type { CheckFigures, JointFigures } from './joint-figures.ts';
import { badness, checkFigures, jointFigures, standingWord } from './joint-figures.ts';

/** What became of a joint: another verdict (or a decision begun or ended), more or less of its limit used, new, gone, or as it was. */
export const jointChangeKinds = ['verdict', 'worse', 'better', 'new', 'gone', 'same'] as const;
export type JointChangeKind = (typeof jointChangeKinds)[number];

/** One check before and after; a side is undefined where there was no such check. */
export interface CheckChange {
  readonly check: CheckName;
  readonly before?: CheckFigures;
  readonly after?: CheckFigures;
  /** Change of the value, after minus before; only where both are of one formula, criterion and light. */
  readonly change?: number;
  /** The change is larger than 1.645 of its standard uncertainty, the two values taken as independent. */
  readonly beyondUncertainty?: boolean;
}

export interface JointChange {
  /** Id of the joint after; of the joint before where it is gone. */
  readonly id: string;
  /** Id before, where it is another one: the same two parts meet in the same kind of joint. */
  readonly idBefore?: string;
  /** Names of the standard and the trial side. */
  readonly names: readonly [string, string];
  readonly kind: JointChangeKind;
  /** Whether a changed verdict is a worse one. */
  readonly worse: boolean;
  readonly before?: JointFigures;
  readonly after?: JointFigures;
  /** Change of the share of the limit that is used, after minus before. */
  readonly limitUseChange?: number;
  readonly checks: readonly CheckChange[];
  readonly sentence: string;
}

/** A smaller change of limit use is none: 5 % of the limit. Assumption, no source. */
export const leastUseChange = 0.05;

/** One-sided 95 % point of the normal distribution, as in the decision rule. */
const clearExcess = 1.645;

/** A joint before and after; at least one of the two is there. */
export function jointChange(before: JointResult | undefined, after: JointResult | undefined, names: readonly [string, string]): JointChange {
  const [then, now] = [before && jointFigures(before), after && jointFigures(after)];
  const limitUseChange = then?.limitUse !== undefined && now?.limitUse !== undefined ? now.limitUse - then.limitUse : undefined;
  const kind = kindOf(then, now, limitUseChange);
  const id = after?.id ?? before?.id ?? '';
  return {
    id, names, kind,
    ...(before !== undefined && before.id !== id ? { idBefore: before.id } : {}),
    worse: kind === 'worse' || (kind === 'verdict' && then !== undefined && now !== undefined && badness(now) > badness(then)),
    ...(then === undefined ? {} : { before: then }),
    ...(now === undefined ? {} : { after: now }),
    ...(limitUseChange === undefined ? {} : { limitUseChange }),
    checks: checkChanges(before, after),
    sentence: sentenceOf(kind, names, then, now),
  };
}

function kindOf(then: JointFigures | undefined, now: JointFigures | undefined, useChange: number | undefined): JointChangeKind {
  if (then === undefined) return 'new';
  if (now === undefined) return 'gone';
  if (badness(then) !== badness(now)) return 'verdict';
  if (useChange === undefined || Math.abs(useChange) < leastUseChange) return 'same';
  return useChange > 0 ? 'worse' : 'better';
}

function checkChanges(before: JointResult | undefined, after: JointResult | undefined): readonly CheckChange[] {
  const [then, now] = [before, after].map((result) => new Map((result?.checks ?? []).filter((check) => check.verdict !== 'not applicable').map((check) => [check.check, checkFigures(check)])));
  return [...new Set([...(now?.keys() ?? []), ...(then?.keys() ?? [])])].map((check): CheckChange => {
    const [first, second] = [then?.get(check), now?.get(check)];
    return { check, ...(first === undefined ? {} : { before: first }), ...(second === undefined ? {} : { after: second }), ...valueChange(first, second) };
  });
}

function valueChange(first: CheckFigures | undefined, second: CheckFigures | undefined): Pick<CheckChange, 'change' | 'beyondUncertainty'> {
  if (first?.value === undefined || second?.value === undefined || (['formula', 'criterion', 'light'] as const).some((name) => first[name] !== second[name])) return {};
  const change = second.value - first.value;
  if (first.uncertainty === undefined || second.uncertainty === undefined) return { change };
  return { change, beyondUncertainty: Math.abs(change) > clearExcess * Math.hypot(first.uncertainty, second.uncertainty) };
}

/** "colour 1.17 of 0.80 CIEDE2000 under D65, 146 %". */
export function figuresText({ leading }: JointFigures): string {
  if (leading === undefined) return 'nothing judged';
  const { check, value, limit, unit, light, limitUse } = leading;
  if (value === undefined) return leading.cause === undefined ? check : `${check}, ${leading.cause}`;
  const decimals = /ratio/.test(unit) ? 3 : 2;
  return [
    `${check} ${figure(value, decimals)}`, limit === undefined ? '' : ` of ${figure(limit, decimals)}`, unit === '' ? '' : ` ${unit}`, light === undefined ? '' : ` under ${light}`,
    limitUse === undefined ? '' : `, ${percentOfLimit(limitUse)} of the limit`, leading.indicative === true ? ' (indicative)' : '',
  ].join('');
}

function sentenceOf(kind: JointChangeKind, names: readonly [string, string], then: JointFigures | undefined, now: JointFigures | undefined): string {
  const joint = `${names[0]} and ${names[1]}`;
  if (then === undefined || now === undefined) {
    const there = then ?? now;
    return there === undefined ? joint : `${joint}: ${kind === 'new' ? 'new' : 'no longer there'}, ${kind === 'new' ? 'is' : 'was'} "${standingWord(there)}" (${figuresText(there)}).`;
  }
  const verdicts = kind === 'verdict' ? `"${standingWord(then)}" before, "${standingWord(now)}" now` : `"${standingWord(now)}" as before`;
  if (kind === 'same') return `${joint}: ${verdicts} (${figuresText(now)}).`;
  return `${joint}: ${verdicts}; ${figuresText(then)} before, ${figuresText(now)} now.`;
}
