import type { ColourSide, FurtherPair, Pairing, PairingOptions } from './colour-pairing.ts';
import { pairColours } from './colour-pairing.ts';
import type { JudgeContext } from './judge-context.ts';
import type { NamedColourBasis, PartBasis } from './part-basis.ts';

/** A pairing whose sides go by the names of their colours. */
export interface PatternPairing extends Pairing {
  readonly names?: { readonly standard: string; readonly trial: string };
}

/**
 * Pairs two parts in colour, patterned ones by their named colours: two patterns in every colour that both name, the largest share of the
 * standard's area first; a pattern with a plain part, or with one that names none of its colours, by its ground, which has the largest share.
 */
export function pairPatterns(
  context: JudgeContext, sides: readonly [PartBasis, PartBasis], [standard, trial]: readonly [ColourSide, ColourSide], options: PairingOptions,
): PatternPairing {
  const [named, others] = sides.map(({ colour }) => colour?.named ?? []);
  if (named.length === 0 && others.length === 0) return pairColours(context, standard, trial, options);
  const shared = named.flatMap((own) => others.filter(({ name }) => name === own.name).map((other) => [own, other] as const));
  const pairs: readonly (readonly [NamedColourBasis | undefined, NamedColourBasis | undefined])[] = shared.length > 0 ? shared : [[named[0], others[0]]];
  const [first, ...rest] = pairs.map(([own, other]) => {
    const [one, two] = [ofColour(standard, own), ofColour(trial, other)];
    return { ...pairColours(context, one, two, options), names: { standard: one.name, trial: two.name } };
  });
  const further = rest.flatMap((pairing): FurtherPair[] =>
    (typeof pairing.colour === 'string' ? pairing.further : [{ colour: pairing.colour }, ...pairing.further]).map((pair) => ({ names: pairing.names, ...pair })));
  return { ...first, further: [...first.further, ...further] };
}

const ofColour = (side: ColourSide, colour: NamedColourBasis | undefined): ColourSide =>
  (colour === undefined ? side : { ...side, name: `${side.name} (${colour.name})`, groups: colour.groups });
