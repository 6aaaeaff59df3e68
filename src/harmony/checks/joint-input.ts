import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import type { Joint } from '../../cabin/cabin.ts';
import type { ResolvedRule, RuleBook } from '../../rules/rule-book.ts';
import type { ColourPair } from '../colour-pair.ts';
import type { SideNames } from '../names.ts';
import type { PartBasis } from '../part-basis.ts';

/** Everything a check of a joint is judged from. Sides are in the order standard, trial. */
export interface JointInput {
  readonly joint: Joint;
  readonly rule: ResolvedRule;
  readonly book: RuleBook;
  readonly names: SideNames;
  readonly sides: readonly [PartBasis, PartBasis];
  /** The two sides in colour; a sentence that says why not where they cannot be compared at all. */
  readonly colour: ColourPair | string;
  /** The joint names its standard; where it does not, ordered formulas take the stricter direction. */
  readonly hasReference: boolean;
  /** Which rule, and what it was judged on: the end of every sentence on colour. */
  readonly grounds: string;
}

/** The formula of the rule with its factors. */
export function ruleFormula(rule: ResolvedRule): DifferenceFormula {
  const { formula: name, kL, kC, kH, l, c } = rule.colour;
  return name === 'cmc' ? { name, l, c } : { name, kL, kC, kH };
}

/** " Gloss of Door, right is borrowed from door-left." for every side whose readings of a quantity are those of its other hand. */
export function borrowings({ sides, names }: JointInput, quantity: 'colour' | 'gloss' | 'texture'): string {
  const called = [names.standard, names.trial];
  return sides.map((side, index) => {
    const from = side[quantity]?.borrowedFrom;
    return from === undefined ? '' : ` The ${quantity} of ${called[index]} is borrowed from its other hand, ${from}.`;
  }).join('');
}
