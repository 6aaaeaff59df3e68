import type { OptionalFactor, ResolvedRule } from './rule-book.ts';
import { hasLightnessFactor, resolveColour } from './resolve-colour.ts';
import type { ColourInput } from './resolve-colour.ts';

type Switch = 'gapFactor' | 'textureLightness';

const names: Readonly<Record<Switch, OptionalFactor['name']>> = { gapFactor: 'visible gap', textureLightness: 'kL from texture' };

/** Whether a factor has a say on a joint at all, whatever its value. */
function mayAct({ book, winner, kind }: ColourInput, which: Switch): boolean {
  if (which === 'gapFactor') return kind !== 'sightline';
  return winner?.kL === undefined && hasLightnessFactor(winner?.rule.colour?.formula ?? book.formula);
}

function optionalFactor(input: ColourInput, which: Switch, colour: ResolvedRule['colour']): OptionalFactor | undefined {
  if (!mayAct(input, which)) return undefined;
  const { book, formulas, variables } = input;
  const { enabled, basis } = book[which];
  const formula = formulas[which];
  const unknown = formula.variables.filter((name) => Number.isNaN(variables[name]));
  if (unknown.length > 0) return enabled ? { name: names[which], enabled, value: undefined, unknown, basis } : undefined;
  const value = formula.at(variables);
  // Times 1 is as good as switched off, and most joints have no visible gap.
  if (which === 'gapFactor' && value === 1) return undefined;
  const turned = resolveColour({ ...input, book: { ...book, [which]: { ...book[which], enabled: !enabled } } }).colour;
  const acts = turned.limit !== colour.limit || turned.kL !== colour.kL;
  return acts ? { name: names[which], enabled, value, unknown, basis, otherwise: turned } : undefined;
}

/**
 * The colour limits of a joint, with the factors that a book may switch on beside them: those that act, those that would act if they
 * were switched on, and those switched on for which something is not known.
 */
export function resolveWithFactors(input: ColourInput): ReturnType<typeof resolveColour> & { readonly optionalFactors: readonly OptionalFactor[] } {
  const resolved = resolveColour(input);
  const optionalFactors = (['textureLightness', 'gapFactor'] as const).map((which) => optionalFactor(input, which, resolved.colour)).filter((factor) => factor !== undefined);
  return { ...resolved, optionalFactors };
}
