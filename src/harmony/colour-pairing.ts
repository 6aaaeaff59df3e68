import { difference } from '../colour/difference.ts';
import type { Surface } from '../cabin/cabin.ts';
import type { Lab } from '../quantities.ts';
import type { ColourSample, JudgedLight } from '../readings/colour-sample.ts';
import { aperturesMayBeAlike } from '../readings/aperture-class.ts';
import { conditionCautions } from '../readings/condition-cautions.ts';
import type { AboutPair } from '../readings/condition-cautions.ts';
import { instrumentCorrelation } from '../readings/instrument-correlation.ts';
import { instrumentTerm } from '../readings/instrument-term.ts';
import { carriedCovariance } from '../readings/lab-carrier.ts';
import { covarianceOfSd, scaleMatrix3 } from '../readings/matrix3.ts';
import { measuredSide } from '../readings/measured-side.ts';
import type { ObserverDegrees } from '../readings/reading.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import { pooledCovariance } from '../readings/sample-covariance.ts';
import { specularCue } from '../readings/specular-cue.ts';
import { rotationsPerSpot } from '../readings/spots.ts';
import { pickSharedGroup, unlikeText } from '../readings/shared-group.ts';
import type { GroupChoice } from '../readings/shared-group.ts';
import type { ResolvedLight } from '../rules/rule-book.ts';
import type { ColourPair, PairLight } from './colour-pair.ts';
import { spreadUnder } from './colour-pair.ts';
import type { JudgeContext } from './judge-context.ts';

/** One side of a comparison in colour: a part, or a master. */
export interface ColourSide {
  readonly name: string;
  readonly groups: readonly ReadingGroup[];
  /** Assumed spread of one reading in L*, a*, b*. */
  readonly readingSd: readonly [number, number, number];
  readonly family: string | undefined;
  readonly surface: Surface;
  readonly gloss60?: number;
}

export interface PairingOptions {
  readonly lights: readonly Pick<ResolvedLight, 'light' | 'standing'>[];
  /** Readings are compared only where their geometries are the same by name. */
  readonly sameGeometryOnly?: boolean;
}

/** A further comparison of the same two sides: at another angle, or of another of their colours. */
export interface FurtherPair {
  readonly colour: ColourPair;
  /** What the sides are called in it, where that is not as in the first. */
  readonly names?: { readonly standard: string; readonly trial: string };
}

/** The groups that a pair is compared on, and the groups behind each side, for the line "judged on". */
export interface Pairing {
  readonly colour: ColourPair | string;
  readonly groups?: readonly [ReadingGroup, ReadingGroup];
  /** Effect finishes: the pairs at the other aspecular angles that both sides have. Patterns: the other colours that both sides name. */
  readonly further: readonly FurtherPair[];
}

/** Makes two sides ready to be compared in colour; a sentence instead where a side has no data at all. */
export function pairColours(context: JudgeContext, standard: ColourSide, trial: ColourSide, options: PairingOptions): Pairing {
  const effect = standard.surface === 'effect' || trial.surface === 'effect';
  // Only effect finishes are compared angle by angle; the order of the book is that of the geometries for the others.
  const order = effect ? [...new Set([...context.book.geometryOrder, 'multi-angle' as const])] : context.book.geometryOrder;
  const choice = pickSharedGroup(standard.groups, trial.groups, order);
  if (choice.kind === 'missing') {
    const without = choice.side === 'both' ? [standard.name, trial.name] : [choice.side === 'first' ? standard.name : trial.name];
    return { colour: `no colour reading of ${without.join(' and ')} at stage ${context.stage}`, further: [] };
  }
  const reason = unlikeReason(choice, options) ?? (effect ? effectReason(standard.groups, trial.groups) : undefined);
  const colour = comparePair(context, standard, trial, [choice.first, choice.second], options, reason);
  const others = effect && reason === undefined ? otherAngles(standard.groups, trial.groups, choice.first) : [];
  return {
    colour,
    groups: [choice.first, choice.second],
    further: others.map((groups) => comparePair(context, standard, trial, groups, options, undefined))
      .filter((pair) => typeof pair !== 'string').map((pair) => ({ colour: pair })),
  };
}

function unlikeReason(choice: Exclude<GroupChoice, { kind: 'missing' }>, options: PairingOptions): string | undefined {
  const { first, second } = choice;
  if (choice.kind === 'unlike') return unlikeText(choice);
  const names = (group: ReadingGroup): string => [...group.geometries].sort().join(', ');
  if (options.sameGeometryOnly === true && names(first) !== names(second)) {
    return `this material is compared at one geometry only, and the sides have ${names(first)} and ${names(second)}`;
  }
  return undefined;
}

const angles = (groups: readonly ReadingGroup[]): Set<number> =>
  new Set(groups.flatMap((group) => (group.aspecularDeg === undefined ? [] : [group.aspecularDeg])));

function effectReason(standard: readonly ReadingGroup[], trial: readonly ReadingGroup[]): string | undefined {
  const second = angles(trial);
  const shared = [...angles(standard)].filter((angle) => second.has(angle));
  return shared.length >= 2 ? undefined : 'an effect finish changes with the angle, and the two sides do not share two angles of measurement';
}

function otherAngles(standard: readonly ReadingGroup[], trial: readonly ReadingGroup[], used: ReadingGroup): readonly (readonly [ReadingGroup, ReadingGroup])[] {
  return standard.flatMap((first) => {
    if (first.aspecularDeg === undefined || first.aspecularDeg === used.aspecularDeg) return [];
    const second = trial.find((group) => group.aspecularDeg === first.aspecularDeg && aperturesMayBeAlike(group.apertureClass, first.apertureClass));
    return second === undefined ? [] : [[first, second] as const];
  });
}

function comparePair(
  context: JudgeContext, standard: ColourSide, trial: ColourSide, groups: readonly [ReadingGroup, ReadingGroup],
  options: PairingOptions, conditionsReason: string | undefined,
): ColourPair | string {
  const judged = options.lights.flatMap(({ light: name }): JudgedLight[] => {
    const light = context.light(name);
    return light === undefined ? [] : [{ name, light, observer: observerFor(name, groups, context.book.observer) }];
  });
  const samples = groups.map((group) => context.sample(group, judged));
  const [first, second] = samples;
  if (first === undefined || second === undefined) {
    const without = [standard, trial].filter((_, index) => samples[index] === undefined).map(({ name }) => name);
    return `the readings of ${without.join(' and ')} say nothing under the lights of the rule`;
  }
  const shared = judged.map((_, index) => index).filter((index) => first.means[index] !== undefined && second.means[index] !== undefined);
  const lights = shared.map((index): PairLight => ({
    light: judged[index].name, observer: judged[index].observer, standard: first.means[index] as Lab, trial: second.means[index] as Lab,
  }));
  const required = options.lights.filter(({ standing }) => standing === 'required').map(({ light }) => light);
  const cautions = [
    ...conditionCautions(groups[0], groups[1], aboutPair(context, lights[0], standard, trial)).map(({ text }) => text),
    ...lights.filter(({ observer }) => observer !== context.book.observer)
      .map(({ light, observer }) => `under ${light} the data is for the ${observer}° observer, the rule asks for ${context.book.observer}°`),
  ];
  return {
    lights,
    missing: required.filter((light) => !lights.some((known) => known.light === light)),
    spread: spreadUnder(spreadOf(context, [standard, trial], groups, [first, second], lights[0]), judged.length, shared),
    indicative: conditionsReason !== undefined,
    ...(conditionsReason === undefined ? {} : { conditionsReason }),
    cautions: [...new Set(cautions)],
  };
}

/** The book's observer, unless a side has CIELAB data under this light for another observer only. */
function observerFor(light: string, groups: readonly ReadingGroup[], asked: ObserverDegrees): ObserverDegrees {
  for (const group of groups) {
    if (group.readings.some((reading) => reading.quantity === 'spectrum')) continue;
    const own = group.readings.flatMap((reading) =>
      (reading.quantity !== 'spectrum' && reading.light === light ? [reading.observer] : []));
    if (own.length > 0 && !own.includes(asked)) return own[0];
  }
  return asked;
}

function aboutPair(context: JudgeContext, light: PairLight | undefined, standard: ColourSide, trial: ColourSide): AboutPair {
  const gloss = standard.gloss60 === undefined || trial.gloss60 === undefined ? undefined : Math.abs(standard.gloss60 - trial.gloss60);
  return {
    ...(light === undefined ? {} : { meanL: (light.standard[0] + light.trial[0]) / 2 }),
    ...(gloss === undefined ? cueOf(context, standard, trial) : { glossDifference: gloss }),
  };
}

/** Where a side has no gloss reading, a sphere that read both sides with and without the mirror reflection tells of it. */
function cueOf(context: JudgeContext, standard: ColourSide, trial: ColourSide): AboutPair {
  const [first, second] = [standard, trial].map(({ groups }) => specularCue(groups, context.sample));
  return first === undefined || second === undefined || first.instrument !== second.instrument ? {} : { cueDifference: Math.abs(first.difference - second.difference) };
}

function spreadOf(
  context: JudgeContext, sides: readonly [ColourSide, ColourSide], groups: readonly [ReadingGroup, ReadingGroup],
  samples: readonly [ColourSample, ColourSample], at: PairLight | undefined,
) {
  const { assumed } = context.book;
  const carriers = samples.map((sample) => context.carrier(sample));
  const pooled = samples.map((sample, index) => spreadOfSpot(context, sides[index].readingSd, groups[index], sample));
  const measured = groups.map((group) => measuredSide(group, context.index.instruments));
  const likeSurfaces = sides[0].surface === sides[1].surface && sides[0].family === sides[1].family;
  const correlation = instrumentCorrelation(
    measured[0], measured[1],
    { likeSurfaces, ...(at === undefined ? {} : { difference: difference({ name: 'cie76' }, at.standard, at.trial) }) },
    assumed.correlation,
  );
  const term = instrumentTerm({
    first: measured[0], second: measured[1], correlation,
    firstCarrier: carriers[0], secondCarrier: carriers[1], assumedSd: assumed.agreementSd,
  });
  return { first: pooled[0], second: pooled[1], firstSpots: samples[0].spots, secondSpots: samples[1].spots, instrument: term.covariance };
}

/** Covariance of one spot of a side: what was seen, weighted with what is assumed for one reading. A part brings the same one to all its joints. */
function spreadOfSpot(context: JudgeContext, readingSd: ColourSide['readingSd'], group: ReadingGroup, sample: ColourSample): Float64Array {
  const { priorReadings } = context.book.assumed;
  const key = `${readingSd.join(' ')} ${priorReadings}`;
  const known = context.memory.spreads.get(sample) ?? new Map<string, Float64Array>();
  context.memory.spreads.set(sample, known);
  const before = known.get(key);
  if (before !== undefined) return before;
  const assumed = scaleMatrix3(covarianceOfSd(readingSd), 1 / rotationsPerSpot(group.readings));
  const made = pooledCovariance(carriedCovariance(assumed, context.carrier(sample)), sample.covariance, sample.spots, priorReadings);
  known.set(key, made);
  return made;
}
