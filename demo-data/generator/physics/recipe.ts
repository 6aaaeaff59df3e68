import type { Lab } from '../../../src/quantities.ts';
import type { Geometry } from '../../../src/readings/reading.ts';
import type { Grid } from './grid.ts';
import { labOf, wavelengths } from './grid.ts';
import type { Surface } from './layer.ts';
import { reflectance } from './layer.ts';
import type { Recipe } from './pigments.ts';
import type { Vector3 } from './solve.ts';
import { parametersFor } from './solve.ts';

/**
 * Ways to colour a material. `mineral`: black, titania and a little iron oxide or blue, near enough the same
 * spectrum for every material. `three-colour`: grey made from blue, red and yellow in place of black, which
 * matches in daylight and parts under lamps with narrow lines; `strength` says how much of it.
 */
export type Colouring = { readonly kind: 'mineral' } | { readonly kind: 'three-colour'; readonly strength: number };

const tinted = (strength: number): Recipe => ({
  organicBlue: strength / 16,
  organicRed: strength / 16,
  organicYellow: (0.7 * strength) / 16,
});

function recipeFrom([logBlack, yellowBlue, redGreen]: Vector3, colouring: Colouring): Recipe {
  const fixed = colouring.kind === 'three-colour' ? tinted(colouring.strength) : {};
  return {
    titania: 1,
    carbonBlack: Math.exp(logBlack),
    ironOxideYellow: Math.max(0, yellowBlue),
    ironOxideRed: Math.max(0, redGreen),
    phthaloGreen: Math.max(0, -redGreen),
    ultramarineBlue: Math.max(0, -yellowBlue),
    ...fixed,
  };
}

export const spectrumOf = (recipe: Recipe, surface: Surface, geometry: Geometry, grid: Grid): number[] =>
  wavelengths(grid).map((nm) => reflectance(recipe, surface, geometry, nm));

/** The recipe whose layer, measured in a geometry on a grid, has the wanted CIELAB (D65, 10 degree observer). */
export function recipeFor(wanted: Lab, surface: Surface, geometry: Geometry, grid: Grid, colouring: Colouring): Recipe {
  const labAt = (parameters: Vector3): Lab => labOf(spectrumOf(recipeFrom(parameters, colouring), surface, geometry, grid), grid);
  const starts: Vector3[] = [
    [-2, 0.01, 0.01],
    [-4, 0.05, 0.05],
    [-5, 0.1, -0.02],
    [-1, -0.02, 0.01],
    [-3, -0.1, 0.05],
    [-6, 0.3, 0.1],
  ];
  let last: unknown;
  for (const start of starts) {
    try {
      return recipeFrom(parametersFor(labAt, wanted, start), colouring);
    } catch (error) {
      last = error;
    }
  }
  throw last;
}
