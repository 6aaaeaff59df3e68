import type { Micrometres, Millimetres } from '../quantities.ts';
import { heightMap } from './height-map.ts';
import type { HeightMap } from './height-map.ts';
import type { Steps } from './steps.ts';
import { synthesiseGrainSteps } from './synthesise-grain.ts';
import type { GrainInput, UnitGrain } from './synthesise-grain.ts';

/** What a surface is made from. */
export interface SynthesisParameters {
  readonly saUm: Micrometres;
  readonly salMm: Millimetres;
  readonly str: number;
}

/** Distance of neighbouring points at which a unit grain has this Sal. */
export const grainSpacing = (grain: UnitGrain, salMm: Millimetres): Millimetres => salMm / grain.salPoints;

/**
 * A height map that has the asked Sa, Sal and Str and repeats at its edges; its lay runs along x. The same seed gives the same map.
 *
 * Sa of 0 and above, Sal above 0, Str 0..1 (0.05 at least is made). Sa and Sal are met to rounding, as `measureSurfaceSteps` finds them
 * without a filter; Str as `synthesiseGrainSteps` says. It is one of endlessly many surfaces with these parameters: nothing else of it is known
 * of the surface that was measured.
 */
export function* synthesiseSurfaceSteps(
  { saUm, salMm, str }: SynthesisParameters, { pattern, seed, width, height }: Omit<GrainInput, 'str'>,
): Steps<HeightMap> {
  const grain = yield* synthesiseGrainSteps({ pattern, str, seed, width, height });
  const spacing = grainSpacing(grain, salMm);
  return heightMap(width, height, [spacing, spacing], grain.values.map((value) => value * saUm));
}
