import type { Specimen } from '../cabin/cabin.ts';
import { stageOf } from '../cabin/standing-specimen.ts';
import type { JudgedLight } from '../readings/colour-sample.ts';
import { nestedCovariance } from '../readings/nested-covariance.ts';
import type { NestedCovariance, SpecimenSpread } from '../readings/nested-covariance.ts';
import { groupColourReadings } from '../readings/reading-groups.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import { stackedProbability } from '../readings/stacked-probability.ts';
import { colourQuestion } from './checks/colour.ts';
import type { JointInput } from './checks/joint-input.ts';
import { colourEvent } from './colour-evaluation.ts';
import type { Pairing } from './colour-pairing.ts';
import type { JudgeContext } from './judge-context.ts';
import type { PartBasis } from './part-basis.ts';

/** Lots from which a spread between lots is taken. */
const leastLots = 3;

/**
 * Probability that a random pair of parts holds in colour, whatever lots they come from. A side with three or more lots is drawn about the
 * mean of its lots with what the lots, and the specimens in a lot, scatter by themselves; what the mean is uncertain by is added, and the
 * instruments' term. A side with fewer lots stands as it is judged. Undefined where neither side has three lots, where colour is not
 * judged as a match, and where a required light has no data.
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
  const { spread } = event;
  const spots = [spread.first, spread.second];
  const sides = input.sides.map((side, index): NestedCovariance | undefined => {
    const lots = counted[index] < leastLots ? [] : lotSpreads(context, side, pairing.groups?.[index], judged);
    return lots.length < leastLots ? undefined : nestedCovariance(lots, spots[index]);
  });
  if (sides.every((side) => side === undefined)) return undefined;
  const ofSide = (index: number, at: number): number => {
    const side = sides[index];
    return side === undefined ? spots[index][at] / [spread.firstSpots, spread.secondSpots][index] : side.ofParts[at] + side.covarianceOfMean[at];
  };
  const covariance = Float64Array.from(spread.instrument, (entry, at) => entry + ofSide(0, at) + ofSide(1, at));
  const centre = (index: number, light: number, present: readonly [number, number, number]): readonly [number, number, number] => {
    const mean = sides[index]?.mean;
    return mean === undefined ? present : [mean[3 * light], mean[3 * light + 1], mean[3 * light + 2]];
  };
  const lights = event.lights.map((light, k) => ({ ...light, standard: centre(0, k, light.standard), trial: centre(1, k, light.trial) }));
  return stackedProbability({ lights, covariance }).all;
}

/** Specimens of the kind that stands for the source, at the stage, whose lot is known. */
const ofALot = (context: JudgeContext, side: PartBasis, specimen: Specimen): boolean =>
  specimen.lot !== undefined && stageOf(specimen) === context.stage && specimen.kind === side.colour?.specimen.kind;

const lotCount = (context: JudgeContext, side: PartBasis): number =>
  new Set(side.colour?.source.specimens.filter((specimen) => ofALot(context, side, specimen)).map(({ lot }) => lot?.id)).size;

/** The specimens of each lot of a part's source under the lights, as read on the instrument and under the conditions of the group that is judged. */
function lotSpreads(context: JudgeContext, side: PartBasis, group: ReadingGroup | undefined, lights: readonly JudgedLight[]): readonly (readonly SpecimenSpread[])[] {
  if (group === undefined || side.colour === undefined) return [];
  const perLot = new Map<string, SpecimenSpread[]>();
  for (const specimen of side.colour.source.specimens) {
    if (specimen.lot === undefined || !ofALot(context, side, specimen)) continue;
    const alike = groupColourReadings(specimen.readings, context.index.conditions).groups.find((other) => sameConditions(other, group));
    const sample = alike === undefined ? undefined : context.sample(alike, lights);
    if (sample === undefined || sample.means.some((mean) => mean === undefined)) continue;
    const spread = { mean: sample.means.flatMap((mean) => [...(mean ?? [])]), spots: sample.spots, covariance: sample.covariance };
    perLot.set(specimen.lot.id, [...perLot.get(specimen.lot.id) ?? [], spread]);
  }
  return [...perLot.values()];
}

const sameConditions = (first: ReadingGroup, second: ReadingGroup): boolean =>
  first.instrument === second.instrument && first.geometryClass === second.geometryClass && first.apertureClass === second.apertureClass
  && first.uv === second.uv && first.aspecularDeg === second.aspecularDeg;
