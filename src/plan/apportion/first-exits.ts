import { localMetric } from '../../colour/local-metric.ts';
import type { Lab } from '../../quantities.ts';
import { allFinite, criterionRange, criterionValue } from '../../readings/criterion-test.ts';
import { multiplyMatrix3 } from '../../readings/matrix3.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import type { DifferenceComponent } from '../../readings/stacked-event.ts';
import { scatterDimension } from './scatter-directions.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

/** Distance beyond which nothing is looked for: less than 1e-12 of a six-dimensional normal cloud lies there. */
export const farthest = 9;

type MutableLab = [number, number, number];

/** One limit of one criterion, ready for many directions. */
interface Wall {
  /** How far outside its limit the pair is with both parts moved; negative inside. */
  readonly excess: (distance: number) => number;
  /** Makes ready for a direction; the first distance at which the local form of the criterion would be outside, infinite for never. */
  readonly guess: () => number;
  /** The criterion has no local form, and its guess is a distance before which it is not left. */
  readonly scan: boolean;
}

/**
 * For every direction in which two parts can be off their targets together, the distance, in standard deviations, at which their joint first
 * leaves a limit; infinite where it does not. `sds` are the parts' deviations in units of their radius. A limit that is left and kept again farther
 * out counts as left. Direction by direction and limit by limit: what `ExitCloud` does by columns is defined here.
 */
export function firstExits(terms: readonly ToleranceTerm[], shapes: readonly [Ellipsoid, Ellipsoid], sds: readonly [number, number], directions: Float64Array): Float64Array {
  const exits = new Float64Array(directions.length / scatterDimension).fill(Infinity);
  lowerExits(terms, shapes, sds, directions, exits);
  return exits;
}

/** Brings exits that are known of other terms down to those of these, where they are nearer. */
export function lowerExits(terms: readonly ToleranceTerm[], shapes: readonly [Ellipsoid, Ellipsoid], sds: readonly [number, number], directions: Float64Array, exits: Float64Array): void {
  const direction = new Float64Array(scatterDimension);
  const walls = terms.flatMap((term) => wallsOf(term, shapes, sds, direction));
  const guesses = new Float64Array(walls.length);
  for (let row = 0; row < exits.length; row++) {
    for (let axis = 0; axis < scatterDimension; axis++) direction[axis] = directions[row * scatterDimension + axis];
    let exit = exits[row];
    let nearest = Math.min(farthest, exit);
    walls.forEach(({ guess, scan }, index) => {
      guesses[index] = guess();
      if (!scan) nearest = Math.min(nearest, guesses[index]);
    });
    walls.forEach((wall, index) => { if (!wall.scan && guesses[index] <= nearest * trust) exit = Math.min(exit, refinedExit(wall.excess, guesses[index])); });
    walls.forEach((wall, index) => { if (wall.scan && guesses[index] < exit) exit = Math.min(exit, scanned(wall, guesses[index], Math.min(exit, farthest))); });
    exits[row] = exit;
  }
}

/** A limit whose local form is left at so many times the nearest such distance is not looked at again: the form and the formula do not part that far so near the limit. */
export const trust = 1.4;
/** Closeness of an exit as a share of its distance. */
export const close = 3e-4;

/** The exit near a guess by the criterion itself. */
export function refinedExit(excess: Wall['excess'], guess: number): number {
  if (guess > farthest) return Infinity;
  let [low, high] = [0, Math.max(1e-6, guess)];
  let atLow = excess(0);
  let atHigh = excess(high);
  for (let tries = 0; atHigh < 0; tries++) {
    [low, atLow, high] = [high, atHigh, high * (1 + 0.02 * 4 ** tries)];
    if (high > farthest) return Infinity;
    atHigh = excess(high);
  }
  return crossing(excess, low, high, atLow, atHigh);
}

/** Steps from the middle to the farthest distance in which a criterion of no local form is looked for. */
const scanSteps = 24;

/** The first exit of such a criterion between two distances, by steps outwards. */
function scanned({ excess }: Wall, from: number, to: number): number {
  let [low, atLow] = [from, excess(from)];
  if (atLow >= 0) return from;
  while (low < to) {
    const high = Math.min(to, low + farthest / scanSteps);
    const atHigh = excess(high);
    if (atHigh >= 0) return crossing(excess, low, high, atLow, atHigh);
    [low, atLow] = [high, atHigh];
  }
  return Infinity;
}

/** Where an excess changes its sign: by secants that keep both ends, the end that stays halved (the Illinois rule). */
function crossing(excess: (distance: number) => number, from: number, to: number, atFrom: number, atTo: number): number {
  let [low, high, below, above] = [from, to, Math.min(0, atFrom), atTo];
  const slope = (above - below) / (high - low);
  for (let tries = 0; tries < 12 && high - low > close * high; tries++) {
    const share = above - below > 0 ? Math.min(0.999, Math.max(0.001, -below / (above - below))) : 0.5;
    const middle = low + (high - low) * share;
    const here = excess(middle);
    if (Math.abs(here) <= close * middle * slope) return middle;
    if (here < 0) {
      if (low > from) above /= 2;
      [low, below] = [middle, here];
    } else {
      if (high < to) below /= 2;
      [high, above] = [middle, here];
    }
  }
  return low;
}

function wallsOf({ criterion, standard, trial, responses }: ToleranceTerm, shapes: readonly [Ellipsoid, Ellipsoid], sds: readonly [number, number], direction: Float64Array): Wall[] {
  const moves = [0, 1].map((side) => multiplyMatrix3(responses[side], shapes[side].fromBall).map((value) => value * sds[side])) as unknown as readonly [readonly number[], readonly number[]];
  const first = new Float64Array(3);
  const second = new Float64Array(3);
  const turn = (): void => {
    for (let row = 0; row < 3; row++) {
      first[row] = moves[0][3 * row] * direction[0] + moves[0][3 * row + 1] * direction[1] + moves[0][3 * row + 2] * direction[2];
      second[row] = moves[1][3 * row] * direction[3] + moves[1][3 * row + 1] * direction[4] + moves[1][3 * row + 2] * direction[5];
    }
  };
  // Written over at every question, so that a hundred thousand of them leave nothing to clear away.
  const [left, right]: [MutableLab, MutableLab] = [[0, 0, 0], [0, 0, 0]];
  const valueAt = (distance: number): number => {
    for (let row = 0; row < 3; row++) {
      left[row] = standard[row] + distance * first[row];
      right[row] = trial[row] + distance * second[row];
    }
    return criterionValue(criterion, left, right);
  };
  const apart: Lab = [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]];
  const by: MutableLab = [0, 0, 0];
  const form = formOf(criterion, standard, trial, Math.max(...moves.flat().map(Math.abs)));
  const guessTo = (limit: number, outwards: boolean) => (): number => {
    turn();
    for (let row = 0; row < 3; row++) by[row] = second[row] - first[row];
    if (form !== undefined) return firstRoot(form, apart, by, limit, outwards);
    return outwards && apart[1] * apart[1] + apart[2] * apart[2] < limit * Math.abs(limit) && criterion.kind === 'component' ? firstRoot(chromaPlane, apart, by, limit, true) : 0;
  };
  const [low, high] = criterionRange(criterion);
  const scan = form === undefined;
  return [
    ...(Number.isFinite(high) ? [{ scan, excess: (distance: number): number => valueAt(distance) - high, guess: guessTo(high, true) }] : []),
    ...(Number.isFinite(low) ? [{ scan, excess: (distance: number): number => low - valueAt(distance), guess: guessTo(low, false) }] : []),
  ];
}

/** Neither a difference of chroma nor one of hue is larger than the distance in the plane of both. */
const chromaPlane: Form = { square: [0, 0, 0, 0, 1, 0, 0, 0, 1] };

/** What a criterion is about its mean, as a form of the difference: a size by a quadratic one, or a signed component by a straight one. */
type Form = { readonly square: ArrayLike<number> } | { readonly row: Lab };

/** Chroma in largest moves of one deviation, below which hue turns too fast for a form. */
const leastChroma = 8;

function formOf(criterion: ToleranceTerm['criterion'], standard: Lab, trial: Lab, largestMove: number): Form | undefined {
  if (criterion.kind === 'difference') {
    const square = localMetric(criterion.formula, standard, trial);
    return allFinite(square) ? { square } : undefined;
  }
  const row = rowOf(criterion.component, standard, trial, largestMove);
  if (row === undefined || criterion.absolute !== true) return row === undefined ? undefined : { row };
  return { square: row.flatMap((x) => row.map((y) => x * y)) };
}

/** The direction in CIELAB that a component is measured along at the pair's midpoint; undefined for chroma and hue near grey. */
function rowOf(component: DifferenceComponent, standard: Lab, trial: Lab, largestMove: number): Lab | undefined {
  if (component === 'dL') return [1, 0, 0];
  if (component === 'da') return [0, 1, 0];
  if (component === 'db') return [0, 0, 1];
  const [a, b] = [(standard[1] + trial[1]) / 2, (standard[2] + trial[2]) / 2];
  const chroma = Math.hypot(a, b);
  if (Math.min(chroma, Math.hypot(standard[1], standard[2]), Math.hypot(trial[1], trial[2])) < leastChroma * largestMove) return undefined;
  return component === 'dC' ? [0, a / chroma, b / chroma] : [0, -b / chroma, a / chroma];
}

/** The first distance at which a form rises above a limit, or falls below it; infinite where it does not. */
function firstRoot(form: Form, apart: Lab, by: Lab, limit: number, outwards: boolean): number {
  if ('row' in form) {
    const slope = dot(form.row, by);
    const distance = (limit - dot(form.row, apart)) / slope;
    if (outwards ? slope <= 0 : slope >= 0) return Infinity;
    return Math.max(0, distance);
  }
  if (limit < 0) return outwards ? 0 : Infinity;
  const a = bilinear(form.square, by, by);
  const b = bilinear(form.square, apart, by);
  const c = bilinear(form.square, apart, apart) - limit * limit;
  const root = b * b - a * c;
  if (a <= 0 || root < 0) return Infinity;
  // Inside, c is at most 0 for what must stay small and at least 0 for what must stay large.
  const distance = outwards ? (Math.sqrt(root) - b) / a : (-b - Math.sqrt(root)) / a;
  return distance >= 0 ? distance : outwards ? 0 : Infinity;
}

const dot = (x: Lab, y: Lab): number => x[0] * y[0] + x[1] * y[1] + x[2] * y[2];

function bilinear(m: ArrayLike<number>, x: Lab, y: Lab): number {
  return x[0] * (m[0] * y[0] + m[1] * y[1] + m[2] * y[2]) + x[1] * (m[3] * y[0] + m[4] * y[1] + m[5] * y[2]) + x[2] * (m[6] * y[0] + m[7] * y[1] + m[8] * y[2]);
}
