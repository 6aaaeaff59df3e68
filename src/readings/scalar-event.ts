import { decide } from './decide.ts';
import { defaultMaximumSpots } from './colour-spots-needed.ts';
import { normalDensity } from './normal-distribution.ts';
import type { OpenScalarCheck } from './open-scalar-check.ts';
import { growingSpots, varianceWithSpots } from './open-scalar-check.ts';
import { quasiNormal } from './quasi-normal.ts';
import { spotsThatDecide } from './spots-that-decide.ts';
import type { OpenReason } from './spots-that-decide.ts';

/** Several checks in one dimension, taken as independent of one another, of one confidence. */
export interface ScalarEvent {
  readonly checks: readonly OpenScalarCheck[];
  /** `all`: every one is asked for. `not all`: that at least one fails, as for a wanted contrast. */
  readonly wanted: 'all' | 'not all';
}

/** What `decide()` needs of an event. */
export interface ScalarEventState {
  readonly within: number;
  readonly excess: number;
  readonly inside: boolean;
}

const NEW_MEANS = 1024;
const SEED = 1;
/** Steps over +-6 standard deviations for one dimension, which needs no draws. */
const STEPS = 400;

/** The event for given differences and standard uncertainties of its checks, in their order. */
export function scalarEventState({ checks, wanted }: ScalarEvent, differences: readonly number[], uncertainties: readonly number[]): ScalarEventState {
  let within = 1;
  let excess = -Infinity;
  let inside = true;
  checks.forEach((check, index) => {
    const own = check.compare(differences[index], uncertainties[index]);
    within *= own.within;
    excess = Math.max(excess, own.excess);
    inside &&= own.inside;
  });
  return wanted === 'all' ? { within, excess, inside } : { within: 1 - within, excess: -excess, inside: !inside };
}

const uncertaintiesWith = ({ checks }: ScalarEvent, spots: number, withInstruments: boolean): number[] =>
  checks.map((check) => Math.sqrt(varianceWithSpots(check, spots, withInstruments ? check.instrumentVariance : 0)));

const confidenceOf = ({ checks }: ScalarEvent): number => checks[0]?.confidence ?? 1;

const isDecided = (event: ScalarEvent, differences: readonly number[], uncertainties: readonly number[]): boolean =>
  decide({ rule: 'guarded', confidence: confidenceOf(event), ...scalarEventState(event, differences, uncertainties) }) !== 'open';

/** How many spots on each growing side would decide the event if its values stayed as they are, or what stands in the way; as for colour. */
export function scalarEventSpotsNeeded(event: ScalarEvent, maximum = defaultMaximumSpots): OpenReason {
  const present = event.checks.map(({ difference }) => difference);
  const have = Math.min(...event.checks.map(growingSpots));
  return spotsThatDecide(have, maximum, (spots, withInstruments) => isDecided(event, present, uncertaintiesWith(event, spots, withInstruments)));
}

/** Whether the event would be decided by its values alone, with `spots` spots and instruments that agree. */
export const scalarEventDecidedWith = (event: ScalarEvent, spots: number): boolean =>
  isDecided(event, event.checks.map(({ difference }) => difference), uncertaintiesWith(event, spots, false));

/**
 * Chance that the event is decided with `spots` spots on each growing side and, where `then` is given, the instruments' terms of that event:
 * the new means by their predictive normal laws, independent of one another; summed over +-6 standard deviations for one check, 1024
 * seeded draws for several.
 */
export function scalarEventChance(event: ScalarEvent, spots: number, then: ScalarEvent = event): number {
  const { checks } = event;
  const [before, after] = [uncertaintiesWith(event, 0, true), uncertaintiesWith(then, spots, true)];
  const moved = before.map((sd, index) => Math.sqrt(Math.max(0, sd * sd - after[index] * after[index])));
  const decidedAt = (normals: readonly number[]): boolean => isDecided(event, checks.map(({ difference }, index) => difference + moved[index] * normals[index]), after);
  if (moved.every((sd) => sd === 0)) return Number(decidedAt(checks.map(() => 0)));
  return checks.length === 1 ? summed((z) => decidedAt([z])) : drawn(checks.length, decidedAt);
}

function summed(decidedAt: (normal: number) => boolean): number {
  let decided = 0;
  let total = 0;
  for (let step = 0; step <= STEPS; step++) {
    const z = -6 + (12 * step) / STEPS;
    const weight = normalDensity(z);
    total += weight;
    if (decidedAt(z)) decided += weight;
  }
  return decided / total;
}

function drawn(dimension: number, decidedAt: (normals: readonly number[]) => boolean): number {
  const normals = quasiNormal(dimension, NEW_MEANS, SEED);
  let decided = 0;
  for (let row = 0; row < NEW_MEANS; row++) {
    if (decidedAt(Array.from({ length: dimension }, (_, index) => normals[row * dimension + index]))) decided++;
  }
  return decided / NEW_MEANS;
}
