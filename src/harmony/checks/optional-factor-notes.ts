import { criterionValue } from '../../readings/criterion-test.ts';
import type { ColourPair } from '../colour-pair.ts';
import type { ColourQuestion } from '../colour-evaluation.ts';
import { limitUse } from '../colour-evaluation.ts';
import type { OptionalFactor } from '../../rules/rule-book.ts';
import { figure, listed, percentOfLimit } from '../wording.ts';

/** The worst required light by value against limit alone. */
function plainUse(pair: ColourPair, question: ColourQuestion): { readonly use: number; readonly light: string } | undefined {
  let worst: { use: number; light: string } | undefined;
  for (const { light, standing, criteria } of question.demands) {
    const at = standing === 'required' ? pair.lights.find((known) => known.light === light) : undefined;
    if (at === undefined) continue;
    for (const criterion of criteria) {
      const [min, max] = criterion.kind === 'difference' ? [criterion.atLeast, criterion.atMost] : [criterion.min, criterion.max];
      const use = limitUse(criterionValue(criterion, at.standard, at.trial), min, max);
      if (worst === undefined || use > worst.use) worst = { use, light };
    }
  }
  return worst;
}

/**
 * What the relaxing factors that a book may switch on do to a joint, with and without each, in sentences: the largest limit use by value
 * under the required lights. One that changes nothing here is left out; one that lacks a figure says which.
 */
export function optionalFactorNotes(
  pair: ColourPair, factors: readonly OptionalFactor[], asked: ColourQuestion, askedWith: (colour: NonNullable<OptionalFactor['otherwise']>) => ColourQuestion,
): readonly string[] {
  const now = plainUse(pair, asked);
  return factors.flatMap(({ name, enabled, value, unknown, basis, otherwise }) => {
    const called = name === 'kL from texture' ? 'kL from texture' : 'The factor of the visible gap';
    if (value === undefined) return [`${called} is switched on and does not act: ${listed(unknown)} ${unknown.length === 1 ? 'is' : 'are'} not known (${basis}).`];
    const other = otherwise === undefined ? undefined : plainUse(pair, askedWith(otherwise));
    if (now === undefined || other === undefined) return [];
    const [on, off] = enabled ? [now, other] : [other, now];
    const is = name === 'kL from texture' ? `kL ${figure(value)}` : `the limit times ${figure(value)}`;
    return [`${called} is switched ${enabled ? 'on' : 'off'}: with it (${is}) ${percentOfLimit(on.use)} of the limit under ${on.light}, without it ${percentOfLimit(off.use)} under ${off.light} (${basis}).`];
  });
}
