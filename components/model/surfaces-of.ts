import type { Cabin, Part } from '../../src/cabin/cabin.ts';
import type { Judgement, PartResult } from '../../src/harmony/judgement.ts';
import { surfaceSide } from '../figures/surface/surface-side.ts';
import type { SurfaceSide } from '../figures/surface/surface-side.ts';
import { partsById, standingSource } from './joint-filter.ts';
import type { PartColour } from './part-colours.ts';

/** A side of which nothing is known. */
export const unknownSide: SurfaceSide = { rgb: undefined, n: 1.5, metal: false, seed: 0 };

const made = new WeakMap<PartResult, { readonly part: Part | undefined; readonly colour: PartColour | undefined; readonly side: SurfaceSide }>();

/** How every part is drawn as a side of a joint, made when it is asked for; the same object while the part, its result and its colour are the same. */
export function surfacesOf(cabin: Cabin, judgement: Judgement, colours: ReadonlyMap<string, PartColour>): (part: string) => SurfaceSide {
  const parts = partsById(cabin);
  let results: ReadonlyMap<string, PartResult> | undefined;
  return (id) => {
    const result = (results ??= new Map(judgement.parts.map((each) => [each.id, each]))).get(id);
    if (result === undefined) return unknownSide;
    const [part, colour] = [parts.get(id), colours.get(id)];
    const before = made.get(result);
    if (before !== undefined && before.part === part && before.colour === colour) return before.side;
    const side = surfaceSide(id, standingSource(part)?.material, result.appearance, colour);
    made.set(result, { part, colour, side });
    return side;
  };
}
