import { ciede2000HueWeight } from '../../colour/differences/ciede2000.ts';
import type { Interval } from './interval.ts';

const halfTurn = Math.PI;
const radians = (degrees: number): number => (degrees * Math.PI) / 180;
/** Places of an interval of hues at which a weight is asked; between them it is bounded by its steepest slope. */
const places = 16;

/**
 * What hue angles lie between in a box of a* and b*, radians about that of its middle, so that they may pass 0 or a full turn; undefined where the neutral axis
 * goes through the box.
 */
export function hueIn(a: Interval, b: Interval): Interval | undefined {
  if (a[0] <= 0 && a[1] >= 0 && b[0] <= 0 && b[1] >= 0) return undefined;
  const middle = Math.atan2(b[0] + b[1], a[0] + a[1]);
  // Seen from outside a box its corners are the farthest round.
  const turns = a.flatMap((x) => b.map((y) => wrapped(Math.atan2(y, x) - middle)));
  return [middle + Math.min(...turns), middle + Math.max(...turns)];
}

/** What the mean of two hues, taken over the shorter way, lies between; undefined where the shorter way is not one and the same for all of them. */
export function meanHueIn(first: Interval | undefined, second: Interval | undefined): Interval | undefined {
  if (first === undefined || second === undefined) return undefined;
  const by = wrapped((second[0] + second[1] - first[0] - first[1]) / 2) - (second[0] + second[1] - first[0] - first[1]) / 2;
  const all: Interval = [Math.min(first[0], second[0] + by), Math.max(first[1], second[1] + by)];
  return all[1] - all[0] < halfTurn - 1e-6 ? all : undefined;
}

/** The least T of CIEDE2000 over an interval of mean hues, or over all: no lower than 1 less all its amplitudes. */
export function leastCiede2000HueShape(hues: Interval | undefined): number {
  const everywhere = 1 - 0.17 - 0.24 - 0.32 - 0.2;
  if (hues === undefined) return everywhere;
  const steepest = 0.17 + 2 * 0.24 + 3 * 0.32 + 4 * 0.2;
  const shape = (hue: number): number => (ciede2000HueWeight(1, hue) - 1) / 0.015;
  return Math.max(everywhere, leastBetween(hues, shape, steepest));
}

/** The largest size of the sine in the rotation term of CIEDE2000 over an interval of mean hues, or over all: that at the hue nearest to 275 degrees. */
export function largestRotationSine(hues: Interval | undefined): number {
  const nearest = hues === undefined ? 0 : distanceTo(hues, radians(275)) / radians(25);
  return Math.sin(radians(60) * Math.exp(-nearest * nearest));
}

/** The least T of CMC over an interval of hues of the standard, or over all. It jumps at 164 and 345 degrees: whatever either of its laws comes to where both may hold. */
export function leastCmcHueShape(hues: Interval | undefined): number {
  if (hues === undefined) return 0.36;
  const [from, to] = [radians(164), radians(345)];
  const middle = (from + to) / 2;
  const reaches = distanceTo(hues, middle) <= (to - from) / 2 + 1e-9;
  const leaves = distanceTo(hues, middle + halfTurn) <= halfTurn - (to - from) / 2 + 1e-9;
  const cool = reaches ? leastBetween(hues, (hue) => 0.56 + Math.abs(0.2 * Math.cos(hue + radians(168))), 0.2) : Infinity;
  const warm = leaves ? leastBetween(hues, (hue) => 0.36 + Math.abs(0.4 * Math.cos(hue + radians(35))), 0.4) : Infinity;
  return Math.max(0.36, Math.min(Math.max(0.56, cool), Math.max(0.36, warm)));
}

/** Nothing between two ends is below this, for what changes no faster than by a slope. */
function leastBetween([low, high]: Interval, value: (hue: number) => number, slope: number): number {
  const stretch = (high - low) / places;
  let least = Infinity;
  for (let place = 0; place < places; place++) least = Math.min(least, value(low + (place + 0.5) * stretch));
  return least - (slope * stretch) / 2;
}

/** How far an angle is round from the nearest of an interval. */
function distanceTo([low, high]: Interval, angle: number): number {
  return Math.max(0, Math.abs(wrapped(angle - (low + high) / 2)) - (high - low) / 2);
}

/** An angle between minus and plus half a turn. */
const wrapped = (angle: number): number => angle - 2 * halfTurn * Math.round(angle / (2 * halfTurn));
