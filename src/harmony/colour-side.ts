import type { Specimen } from '../cabin/cabin.ts';
import type { ColourSide } from './colour-pairing.ts';
import type { JudgeContext } from './judge-context.ts';
import type { PartBasis } from './part-basis.ts';

/** Spread of one reading where the book does not know the material, L*, a*, b*. Assumption, no source. */
const unknownMaterialSd = [0.2, 0.1, 0.1] as const;

/** A part as a side of a comparison in colour. */
export function colourSideOf(context: JudgeContext, basis: PartBasis): ColourSide {
  const gloss60 = basis.gloss?.samples.find((sample) => sample.angle === 60)?.mean;
  return {
    name: context.names.get(basis.part.id) ?? basis.part.name,
    groups: basis.colour?.groups ?? [],
    readingSd: basis.materialClass?.readingSd ?? unknownMaterialSd,
    family: basis.materialClass?.family,
    surface: basis.source.surface,
    ...(gloss60 === undefined ? {} : { gloss60 }),
  };
}

/** A recorded master as the standard of a part: it is taken to be of the part's material and to scatter like it. */
export function colourSideOfMaster(context: JudgeContext, basis: PartBasis, master: Specimen): ColourSide {
  return {
    name: `master ${master.id}`,
    groups: context.groupsOfMaster(master.id),
    readingSd: basis.materialClass?.readingSd ?? unknownMaterialSd,
    family: basis.materialClass?.family,
    surface: basis.source.surface,
  };
}
