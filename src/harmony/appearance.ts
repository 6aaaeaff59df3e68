import type { ReadingGroup } from '../readings/reading-groups.ts';
import type { JudgeContext } from './judge-context.ts';
import type { PartAppearance } from './judgement.ts';
import type { PartBasis } from './part-basis.ts';

/** What a part looks like by its readings, for pictures: the group that joints would be judged on first. */
export function partAppearance(context: JudgeContext, basis: PartBasis): PartAppearance {
  const { colour, gloss, texture } = basis;
  const { geometryOrder } = context.book;
  const rank = (group: ReadingGroup): number => {
    const position = geometryOrder.indexOf(group.geometryClass);
    return position < 0 ? geometryOrder.length : position;
  };
  const group = [...(colour?.groups ?? [])].sort((first, second) => rank(first) - rank(second))[0];
  const borrowedFrom = colour?.borrowedFrom;
  return {
    part: basis.part.id,
    source: basis.source.id,
    specimen: (colour ?? gloss ?? texture)?.specimen.id,
    ...(borrowedFrom === undefined ? {} : { borrowedFrom }),
    ...(group === undefined ? {} : { geometry: group.geometryClass, ...colourOf(context, group) }),
    colourSpots: group?.spots ?? 0,
    gloss: (gloss?.samples ?? []).map(({ angle, mean, sd, spots, haze }) => ({ angle, mean, sd, spots, ...(haze === undefined ? {} : { haze }) })),
    ...(texture === undefined ? {} : { texture: texture.sample.parameters }),
  };
}

function colourOf(context: JudgeContext, group: ReadingGroup): Pick<PartAppearance, 'spectrum' | 'cielab'> {
  const spectral = context.sample(group, [])?.spectrum;
  if (spectral !== undefined) {
    return { spectrum: { startNm: spectral.startNm, stepNm: spectral.stepNm, values: Array.from(spectral.values) } };
  }
  const known = group.readings.find((reading) => reading.quantity !== 'spectrum');
  const light = known === undefined ? undefined : context.light(known.light);
  if (known === undefined || light === undefined) return {};
  const lab = context.sample(group, [{ name: known.light, light, observer: known.observer }])?.means[0];
  return lab === undefined ? {} : { cielab: { lab, light: known.light, observer: known.observer } };
}
