import type { ColourIntent, JointKind } from '../cabin/cabin.ts';
import type { PairRule, RuleSide } from './rule-book.ts';

export interface JointFacts {
  readonly intent: ColourIntent;
  readonly kind: JointKind;
}

/** How closely a rule names a joint: materials first, then the number of qualifiers. */
export interface Specificity {
  /** 2 both materials, 1 one of them, 0 neither. */
  readonly materials: number;
  readonly qualifiers: number;
}

export const specificity = (rule: PairRule): Specificity => ({
  materials: rule.pair.filter((material) => material !== '*').length,
  qualifiers: [rule.intent, rule.kind, rule.zone].filter((qualifier) => qualifier !== undefined).length,
});

export function matchesPair([first, second]: PairRule['pair'], [a, b]: readonly [Pick<RuleSide, 'material'>, Pick<RuleSide, 'material'>]): boolean {
  const is = (wanted: string, side: Pick<RuleSide, 'material'>): boolean => wanted === '*' || wanted === side.material;
  return (is(first, a) && is(second, b)) || (is(first, b) && is(second, a));
}

/** Whether a rule speaks of a joint. A zone is met where either side lies in it. */
export const ruleApplies = (rule: PairRule, sides: readonly [RuleSide, RuleSide], joint: JointFacts): boolean =>
  matchesPair(rule.pair, sides)
  && (rule.intent === undefined || rule.intent === joint.intent)
  && (rule.kind === undefined || rule.kind === joint.kind)
  && (rule.zone === undefined || sides.some((side) => side.zone === rule.zone));

/**
 * The rules that speak of a joint, the winner first: both materials named before one, one before none; then more of
 * intent, kind and zone named before fewer; then the later in the book. The order of the sides never matters.
 */
export function rankedRules(rules: readonly PairRule[], sides: readonly [RuleSide, RuleSide], joint: JointFacts): readonly PairRule[] {
  return rules
    .map((rule, index) => ({ rule, index, ...specificity(rule) }))
    .filter(({ rule }) => ruleApplies(rule, sides, joint))
    .sort((a, b) => b.materials - a.materials || b.qualifiers - a.qualifiers || b.index - a.index)
    .map(({ rule }) => rule);
}

/** What a rule names, in words: `it names both materials and the kind sightline`. */
export function ruleReach(rule: PairRule): string {
  const { materials } = specificity(rule);
  const parts = [
    materials === 2 ? 'both materials' : materials === 1 ? `the material ${rule.pair.find((material) => material !== '*')}` : 'any two materials',
    ...(rule.intent === undefined ? [] : [`the intent ${rule.intent}`]),
    ...(rule.kind === undefined ? [] : [`the kind ${rule.kind}`]),
    ...(rule.zone === undefined ? [] : [`the zone ${rule.zone}`]),
  ];
  const last = parts.pop()!;
  return parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
}
