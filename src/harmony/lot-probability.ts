import type { ReadingGroup } from '../readings/reading-groups.ts';
import { groupColourReadings } from '../readings/reading-groups.ts';
import type { JudgedLight } from '../readings/colour-sample.ts';
import { sampleCovariance } from '../readings/sample-covariance.ts';
import { stackedProbability } from '../readings/stacked-probability.ts';
import type { Specimen } from '../cabin/cabin.ts';
import { stageOf } from '../cabin/standing-specimen.ts';
import { colourQuestion } from './checks/colour.ts';
import type { JointInput } from './checks/joint-input.ts';
import { colourEvent } from './colour-evaluation.ts';
import type { Pairing } from './colour-pairing.ts';
import type { JudgeContext } from './judge-context.ts';
import type { PartBasis } from './part-basis.ts';

/** Lots from which a spread between lots is taken. */
const leastLots = 3;

/**
 * Probability that a random pair of parts holds in colour, the lots' own spread included: the means over the lots, and the sample
 * covariance between lots of each side that has three or more, added to that of the readings. Undefined where neither side has
 * three lots, or colour is not judged as a match on spectra.
 */
export function lotProbability(context: JudgeContext, input: JointInput, pairing: Pairing): number | undefined {
  if (typeof input.colour === 'string' || pairing.groups === undefined || input.colour.indicative || input.rule.intent.colour !== 'match') return undefined;
  const counted = input.sides.map((side) => lotCount(context, side));
  if (counted.every((lots) => lots < leastLots)) return undefined;
  const event = colourEvent(input.colour, colourQuestion(input));
  if (event.lights.length === 0) return undefined;
  const judged = input.rule.colour.lights.filter((light) => light.standing === 'required').flatMap(({ light: name }): JudgedLight[] => {
    const light = context.light(name);
    return light === undefined ? [] : [{ name, light, observer: context.book.observer }];
  });
  if (judged.length !== event.lights.length) return undefined;
  const lots = input.sides.map((side, index) => (counted[index] < leastLots ? [] : lotMeans(context, side, pairing.groups?.[index], judged)));
  if (lots.every((means) => means.length < leastLots)) return undefined;
  const spreads = lots.map((means) => (means.length < leastLots ? undefined : sampleCovariance(means)));
  const covariance = Float64Array.from(event.spread.first, (entry, i) =>
    entry / event.spread.firstSpots + event.spread.second[i] / event.spread.secondSpots + event.spread.instrument[i]
    + (spreads[0]?.[i] ?? 0) + (spreads[1]?.[i] ?? 0));
  const centre = (side: number, light: number, axis: number, present: number): number => {
    const means = lots[side];
    return means.length < leastLots ? present : means.reduce((sum, mean) => sum + mean[3 * light + axis], 0) / means.length;
  };
  const lights = event.lights.map((light, k) => ({
    ...light,
    standard: [0, 1, 2].map((axis) => centre(0, k, axis, light.standard[axis])) as unknown as typeof light.standard,
    trial: [0, 1, 2].map((axis) => centre(1, k, axis, light.trial[axis])) as unknown as typeof light.trial,
  }));
  return stackedProbability({ lights, covariance }).all;
}

const ofALot = (context: JudgeContext, specimen: Specimen): boolean =>
  specimen.lot !== undefined && stageOf(specimen) === context.stage && specimen.kind !== 'master' && specimen.kind !== 'boundary sample';

const lotCount = (context: JudgeContext, side: PartBasis): number =>
  new Set(side.colour?.source.specimens.filter((specimen) => ofALot(context, specimen)).map(({ lot }) => lot?.id)).size;

/** Mean colours of each lot of a part's source at the stage, stacked over the lights, by the conditions of the group that is judged. */
function lotMeans(context: JudgeContext, side: PartBasis, group: ReadingGroup | undefined, lights: readonly JudgedLight[]): readonly number[][] {
  if (group === undefined || side.colour === undefined) return [];
  const perLot = new Map<string, number[]>();
  for (const specimen of side.colour.source.specimens) {
    if (specimen.lot === undefined || !ofALot(context, specimen)) continue;
    const alike = groupColourReadings(specimen.readings, context.index.conditions).groups
      .find((other) => other.geometryClass === group.geometryClass && other.apertureClass === group.apertureClass && other.uv === group.uv);
    const sample = alike === undefined ? undefined : context.sample(alike, lights);
    if (sample === undefined || sample.means.some((mean) => mean === undefined)) continue;
    perLot.set(specimen.lot.id, sample.means.flatMap((mean) => [...(mean ?? [])]));
  }
  return [...perLot.values()];
}
