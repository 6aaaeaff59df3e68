import type { ColourIntent, Intent, SurfaceIntent } from '../cabin/cabin.ts';
import type { MaterialClass, ResolvedRule, RuleSide } from './rule-book.ts';

export interface SideWithClass {
  readonly side: RuleSide;
  /** Undefined where the book does not know the material. */
  readonly row: MaterialClass | undefined;
}

/** The family whose gloss is not compared with that of others unless the designer asks for it. */
export const shinyFamily = 'shiny';

function defaultColour([a, b]: readonly [SideWithClass, SideWithClass]): ColourIntent {
  const alike = a.side.material === b.side.material;
  const setApart = [a, b].some(({ row }) => row?.advisory === true) && !alike;
  const patterned = (a.side.surface === 'patterned') !== (b.side.surface === 'patterned');
  return setApart || patterned ? 'free' : 'match';
}

function defaultGloss([a, b]: readonly [SideWithClass, SideWithClass]): SurfaceIntent {
  const shiny = [a, b].filter(({ row }) => row?.family === shinyFamily).length;
  return shiny === 1 ? 'free' : 'match';
}

const defaultTexture = ([a, b]: readonly [SideWithClass, SideWithClass]): SurfaceIntent =>
  (a.side.grain !== undefined && a.side.grain === b.side.grain ? 'match' : 'free');

/**
 * What is wanted of a joint. The joint's own intent decides; then the rule's default; then: colours match, but are free where
 * an advisory (metallised) or a patterned surface meets another; gloss matches, but is free where a shiny material meets another family;
 * texture matches only where both sides have the same grain.
 */
export const jointIntent = (
  sides: readonly [SideWithClass, SideWithClass], joint: Intent | undefined, rule: Intent | undefined,
): ResolvedRule['intent'] => ({
  colour: joint?.colour ?? rule?.colour ?? defaultColour(sides),
  gloss: joint?.gloss ?? rule?.gloss ?? defaultGloss(sides),
  texture: joint?.texture ?? rule?.texture ?? defaultTexture(sides),
});
