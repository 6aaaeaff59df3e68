import type { Joint, MapPoint, Part } from '../cabin/cabin.ts';
import type { Lab } from '../quantities.ts';
import type { JudgedLight } from '../readings/colour-sample.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import type { ResolvingVariables } from '../rules/rule-book.ts';
import type { JudgeContext } from './judge-context.ts';
import type { PartBasis } from './part-basis.ts';

/** Viewing distance where a joint gives none, mm: an arm's length in a seat. Assumption, no source. */
export const usualViewMm = 700;

/** Visual angle of a width at a distance, degrees. */
const angleDeg = (widthMm: number, distanceMm: number): number => (2 * Math.atan(widthMm / (2 * distanceMm)) * 180) / Math.PI;

/** The smaller side of the box around an outline, mm; NaN without one. */
function narrowness(outline: readonly MapPoint[] | undefined): number {
  if (outline === undefined || outline.length === 0) return Number.NaN;
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

/** CIELAB of a part under D65 by its first group in the book's order of geometries; undefined without such data. */
export function referenceLab(context: JudgeContext, { colour }: PartBasis): Lab | undefined {
  if (colour === undefined) return undefined;
  const { references } = context.memory;
  if (!references.has(colour)) references.set(colour, labUnderD65(context, colour.groups));
  return references.get(colour);
}

function labUnderD65(context: JudgeContext, read: readonly ReadingGroup[]): Lab | undefined {
  const light = context.light('D65');
  if (light === undefined) return undefined;
  const { geometryOrder, observer } = context.book;
  const rank = (geometry: (typeof geometryOrder)[number]): number => (geometryOrder.includes(geometry) ? geometryOrder.indexOf(geometry) : geometryOrder.length);
  const groups = [...read].sort((first, second) => rank(first.geometryClass) - rank(second.geometryClass));
  const observers = observer === 10 ? [10, 2] as const : [2, 10] as const;
  for (const group of groups) {
    for (const asked of observers) {
      const judged: JudgedLight = { name: 'D65', light, observer: asked };
      const mean = context.sample(group, [judged])?.means[0];
      if (mean !== undefined) return mean;
    }
  }
  return undefined;
}

const mean = (values: readonly (number | undefined)[]): number => {
  const known = values.filter((value) => value !== undefined);
  return known.length === values.length ? known.reduce((sum, value) => sum + value, 0) / known.length : Number.NaN;
};

/** The variables that a rule's expressions may use, for one joint; NaN where the data does not say. */
export function jointVariables(context: JudgeContext, joint: Joint, sides: readonly [PartBasis, PartBasis]): ResolvingVariables {
  const viewMm = joint.viewMm ?? usualViewMm;
  const gapMm = joint.gapMm ?? 0;
  const labs = sides.map((side) => referenceLab(context, side));
  const parameter = (name: 'saUm' | 'salMm'): readonly (number | undefined)[] => sides.map((side) => side.texture?.sample.parameters[name]);
  const extreme = (pick: (...values: number[]) => number, values: readonly (number | undefined)[]): number =>
    pick(...values.map((value) => value ?? Number.NaN));
  const part = (side: PartBasis): Part => side.part;
  return {
    gapMm,
    viewMm,
    gapArcmin: 60 * angleDeg(gapMm, viewMm),
    fieldDeg: angleDeg(Math.min(...sides.map((side) => narrowness(part(side).outline))), viewMm),
    lengthMm: joint.lengthMm ?? Number.NaN,
    tiltDeg: joint.tiltDeg ?? 0,
    meanL: mean(labs.map((lab) => lab?.[0])),
    meanC: mean(labs.map((lab) => (lab === undefined ? undefined : Math.sqrt(lab[1] * lab[1] + lab[2] * lab[2])))),
    meanGloss: mean(sides.map((side) => side.gloss?.samples.find((sample) => sample.angle === 60)?.mean)),
    minGloss: extreme(Math.min, sides.map((side) => side.gloss?.samples.find((sample) => sample.angle === 60)?.mean)),
    minSa: extreme(Math.min, parameter('saUm')),
    maxSa: extreme(Math.max, parameter('saUm')),
    minSal: extreme(Math.min, parameter('salMm')),
    maxSal: extreme(Math.max, parameter('salMm')),
    minVisibleContrast: Number.NaN,
    maxVisibleContrast: Number.NaN,
    visibility: Math.max(...sides.map((side) => part(side).visibility ?? 1)),
  };
}
