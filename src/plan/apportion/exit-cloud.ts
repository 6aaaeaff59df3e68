import { differenceBatch, labColumns } from '../../colour/batch/index.ts';
import type { LabColumns } from '../../colour/batch/index.ts';
import type { Lab } from '../../quantities.ts';
import { criterionValue } from '../../readings/criterion-test.ts';
import { close, farthest, lowerExits, refinedExit, trust } from './first-exits.ts';
import { wallsOf } from './limit-walls.ts';
import type { CurvedWall, JointWalls, LightOfJoint, ScatteredJoint, StraightWall } from './limit-walls.ts';
import { scatterDimension, scatterDirections } from './scatter-directions.ts';
import type { Fineness } from './scatter-directions.ts';

/** Numbers of a curved limit along a pair of opposite directions, which do not hang on the deviations: the form of both parts' moves, and with what the targets are apart. */
const formSize = 5;
/** Moves of both parts under one light. */
const moveSize = 6;
/** Times that all directions are asked again together. */
const mostRounds = 4;
/** A correction of an exit by less than this share of it is as good as the exit itself: the next one would be smaller by the square. */
const lastCorrection = 4e-3;

/**
 * The exits of {@link firstExits} for one joint at a time along one set of directions, by columns: what does not hang on the deviations is
 * reckoned once for each joint, straight limits are met exactly, and differences are asked for all directions together.
 */
export class ExitCloud {
  private readonly directions: Float64Array;
  private readonly pairs: number;
  private joint: ScatteredJoint | undefined;
  private walls: JointWalls = { lights: [], curved: [], straight: [], others: [] };
  private readonly moves: Float64Array[] = [];
  private readonly forms: Float64Array[] = [];
  private readonly slopes: Float64Array[] = [];
  private readonly guesses: Float64Array[] = [];
  private readonly nearest: Float64Array;
  private readonly straight: Float64Array;
  private readonly exits: Float64Array;
  private readonly rows: Int32Array;
  private readonly distances: Float64Array;
  private readonly values: Float64Array;
  private readonly turned: Float64Array;
  private readonly first: LabColumns;
  private readonly second: LabColumns;

  constructor(fineness: Fineness) {
    this.directions = scatterDirections(fineness);
    const count = this.directions.length / scatterDimension;
    this.pairs = count / 2;
    this.nearest = new Float64Array(count);
    this.straight = new Float64Array(count);
    this.exits = new Float64Array(count);
    this.distances = new Float64Array(count);
    this.values = new Float64Array(count);
    this.turned = new Float64Array(count);
    this.rows = new Int32Array(count);
    this.first = labColumns(count);
    this.second = labColumns(count);
  }

  /** All limits of the joint have a form or are straight, so that {@link exitsByForm} tells how exits move with the deviations. */
  get hasForms(): boolean {
    return this.walls.others.length === 0;
  }

  /** Makes ready for a joint. */
  take(joint: ScatteredJoint): this {
    if (this.joint === joint) return this;
    this.joint = joint;
    this.walls = wallsOf(joint);
    this.walls.lights.forEach((light, index) => { this.layMoves(light, columnAt(this.moves, index, moveSize * this.pairs)); });
    this.walls.curved.forEach((wall, index) => { this.layForm(wall, this.movesUnder(wall.light), columnAt(this.forms, index, formSize * this.pairs)); });
    this.walls.straight.forEach((wall, index) => { this.laySlopes(wall, this.movesUnder(wall.light), columnAt(this.slopes, index, 2 * this.pairs)); });
    return this;
  }

  private movesUnder(light: LightOfJoint): Float64Array {
    return this.moves[this.walls.lights.indexOf(light)];
  }

  private layMoves({ moves: [one, two] }: LightOfJoint, into: Float64Array): void {
    const { directions } = this;
    for (let pair = 0; pair < this.pairs; pair++) {
      const [from, to] = [2 * pair * scatterDimension, pair * moveSize];
      for (let row = 0; row < 3; row++) {
        into[to + row] = one[3 * row] * directions[from] + one[3 * row + 1] * directions[from + 1] + one[3 * row + 2] * directions[from + 2];
        into[to + 3 + row] = two[3 * row] * directions[from + 3] + two[3 * row + 1] * directions[from + 4] + two[3 * row + 2] * directions[from + 5];
      }
    }
  }

  private layForm({ square: q, light: { standard, trial } }: CurvedWall, moves: Float64Array, into: Float64Array): void {
    const [L, a, b] = [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]];
    for (let pair = 0; pair < this.pairs; pair++) {
      const [m, to] = [pair * moveSize, pair * formSize];
      const [L1, a1, b1, L2, a2, b2] = [moves[m], moves[m + 1], moves[m + 2], moves[m + 3], moves[m + 4], moves[m + 5]];
      const x = q[0] * L1 + q[1] * a1 + q[2] * b1;
      const y = q[3] * L1 + q[4] * a1 + q[5] * b1;
      const z = q[6] * L1 + q[7] * a1 + q[8] * b1;
      const u = q[0] * L2 + q[1] * a2 + q[2] * b2;
      const v = q[3] * L2 + q[4] * a2 + q[5] * b2;
      const w = q[6] * L2 + q[7] * a2 + q[8] * b2;
      into[to] = L1 * x + a1 * y + b1 * z;
      into[to + 1] = L2 * x + a2 * y + b2 * z;
      into[to + 2] = L2 * u + a2 * v + b2 * w;
      into[to + 3] = L * x + a * y + b * z;
      into[to + 4] = L * u + a * v + b * w;
    }
  }

  private laySlopes({ axis }: StraightWall, moves: Float64Array, into: Float64Array): void {
    for (let pair = 0; pair < this.pairs; pair++) {
      into[2 * pair] = moves[moveSize * pair + axis];
      into[2 * pair + 1] = moves[moveSize * pair + 3 + axis];
    }
  }

  /** Exits by the forms of the limits alone; no farther than {@link farthest}. Valid until the next question. */
  exitsByForm(sds: readonly [number, number]): Float64Array {
    this.nearest.fill(farthest);
    this.walls.straight.forEach((wall, index) => { meetStraight(wall, this.slopes[index], sds, this.nearest); });
    this.straight.set(this.nearest);
    this.walls.curved.forEach((wall, index) => {
      const guesses = columnAt(this.guesses, index, this.nearest.length);
      meetForm(wall, this.forms[index], sds, guesses);
      for (let row = 0; row < guesses.length; row++) if (guesses[row] < this.nearest[row]) this.nearest[row] = guesses[row];
    });
    return this.nearest;
  }

  /** Exits at given deviations, in units of the parts' radii; {@link farthest} or infinite where there is none before. Valid until the next question. */
  exitsAt(sds: readonly [number, number]): Float64Array {
    const { exits, nearest, directions } = this;
    this.exitsByForm(sds);
    // Straight limits are met as they are, whatever the curved ones come to.
    exits.set(this.straight);
    this.walls.curved.forEach((_, index) => { this.meetCurved(index, sds, nearest, exits); });
    if (!this.hasForms) lowerExits(this.walls.others, this.joint!.shapes, sds, directions, exits);
    return exits;
  }

  /** Brings exits down to those through a curved limit, where that is near enough to the nearest to be looked at. */
  private meetCurved(index: number, sds: readonly [number, number], nearest: Float64Array, exits: Float64Array): void {
    const { rows, distances } = this;
    const guesses = this.guesses[index];
    let count = 0;
    for (let row = 0; row < exits.length; row++) {
      if (guesses[row] > nearest[row] * trust || guesses[row] > farthest) continue;
      rows[count] = row;
      // Beyond an exit that is known it is enough to see that the limit is not left before.
      distances[count++] = Math.min(guesses[row], exits[row]);
    }
    for (let round = 0; count > 0; round++) {
      if (round === mostRounds) {
        for (let at = 0; at < count; at++) this.meetAlone(index, rows[at], sds, exits);
        return;
      }
      this.askAt(index, sds, count);
      count = this.approach(index, sds, count, exits);
    }
  }

  /** Values of a curved limit's difference at the distances of the rows that are asked. */
  private askAt(index: number, [s1, s2]: readonly [number, number], count: number): void {
    const { rows, distances, first, second } = this;
    const { light, criterion: { formula, stricterDirection } } = this.walls.curved[index];
    const moves = this.movesUnder(light);
    const [L1, a1, b1] = light.standard;
    const [L2, a2, b2] = light.trial;
    for (let at = 0; at < count; at++) {
      const m = moveSize * (rows[at] >> 1);
      const distance = (rows[at] & 1) === 0 ? distances[at] : -distances[at];
      const [f, g] = [distance * s1, distance * s2];
      first.L[at] = L1 + f * moves[m];
      first.a[at] = a1 + f * moves[m + 1];
      first.b[at] = b1 + f * moves[m + 2];
      second.L[at] = L2 + g * moves[m + 3];
      second.a[at] = a2 + g * moves[m + 4];
      second.b[at] = b2 + g * moves[m + 5];
    }
    const values = differenceBatch(formula, first, second, this.values.subarray(0, count));
    if (stricterDirection !== true) return;
    const turned = differenceBatch(formula, second, first, this.turned.subarray(0, count));
    for (let at = 0; at < count; at++) if (turned[at] > values[at]) values[at] = turned[at];
  }

  /**
   * Takes the form times what the difference is of it at the last distance for the difference about there, which gives the next one. Keeps the rows that
   * are not settled by that and gives their number.
   */
  private approach(index: number, sds: readonly [number, number], count: number, exits: Float64Array): number {
    const { rows, distances, values } = this;
    const { limit, outwards, square, light: { standard, trial } } = this.walls.curved[index];
    const forms = this.forms[index];
    const apart = bilinear(square, standard, trial);
    const [s11, s12, s22] = [sds[0] * sds[0], -2 * sds[0] * sds[1], sds[1] * sds[1]];
    let left = 0;
    for (let at = 0; at < count; at++) {
      const [row, distance, value] = [rows[at], distances[at], values[at]];
      const inside = outwards ? value <= limit : value >= limit;
      if (inside && distance >= exits[row]) continue;
      const f = formSize * (row >> 1);
      const a = s11 * forms[f] + s12 * forms[f + 1] + s22 * forms[f + 2];
      const half = sds[1] * forms[f + 4] - sds[0] * forms[f + 3];
      const b = (row & 1) === 0 ? half : -half;
      const reached = limit / value;
      const root = b * b - a * (apart - reached * reached * (apart + distance * (2 * b + distance * a)));
      const next = (outwards ? Math.sqrt(root) - b : -Math.sqrt(root) - b) / a;
      if (!(next >= 0 && next < Infinity)) {
        this.meetAlone(index, row, sds, exits);
        continue;
      }
      if (Math.abs(next - distance) <= Math.max(lastCorrection, close) * distance) {
        if (next < exits[row]) exits[row] = next;
        continue;
      }
      rows[left] = row;
      distances[left++] = next;
    }
    return left;
  }

  private meetAlone(index: number, row: number, sds: readonly [number, number], exits: Float64Array): void {
    const { light, criterion, limit, outwards } = this.walls.curved[index];
    const moves = this.movesUnder(light);
    const m = moveSize * (row >> 1);
    const sign = (row & 1) === 0 ? 1 : -1;
    const excess = (distance: number): number => {
      const moved = (lab: Lab, at: number, by: number): Lab => [lab[0] + by * moves[at], lab[1] + by * moves[at + 1], lab[2] + by * moves[at + 2]];
      const value = criterionValue(criterion, moved(light.standard, m, sign * distance * sds[0]), moved(light.trial, m + 3, sign * distance * sds[1]));
      return outwards ? value - limit : limit - value;
    };
    exits[row] = Math.min(exits[row], refinedExit(excess, this.guesses[index][row]));
  }
}

const clouds = new Map<Fineness, ExitCloud>();

/** One cloud for each set of directions, written over at every question, so that thousands of joints leave nothing to clear away. */
export function exitCloud(fineness: Fineness): ExitCloud {
  const made = clouds.get(fineness) ?? new ExitCloud(fineness);
  clouds.set(fineness, made);
  return made;
}

function columnAt(columns: Float64Array[], index: number, size: number): Float64Array {
  columns[index] ??= new Float64Array(size);
  return columns[index];
}

/** The form of what two colours are apart. */
function bilinear(q: ArrayLike<number>, standard: Lab, trial: Lab): number {
  const [x, y, z] = [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]];
  return x * (q[0] * x + q[1] * y + q[2] * z) + y * (q[3] * x + q[4] * y + q[5] * z) + z * (q[6] * x + q[7] * y + q[8] * z);
}

/** Brings distances down to those at which a straight component leaves its range. */
function meetStraight({ here, low, high }: StraightWall, slopes: Float64Array, [s1, s2]: readonly [number, number], into: Float64Array): void {
  const [up, down] = [Math.max(0, high - here), Math.max(0, here - low)];
  for (let pair = 0; pair < slopes.length / 2; pair++) {
    const slope = s2 * slopes[2 * pair + 1] - s1 * slopes[2 * pair];
    if (slope === 0) continue;
    const distance = 1 / Math.abs(slope);
    const along = distance * (slope > 0 ? up : down);
    const against = distance * (slope > 0 ? down : up);
    if (along < into[2 * pair]) into[2 * pair] = along;
    if (against < into[2 * pair + 1]) into[2 * pair + 1] = against;
  }
}

/** Distances at which the form of a curved limit leaves it, infinite where it does not. */
function meetForm({ limit, outwards, square, light: { standard, trial } }: CurvedWall, forms: Float64Array, [s1, s2]: readonly [number, number], into: Float64Array): void {
  if (limit < 0) {
    into.fill(outwards ? 0 : Infinity);
    return;
  }
  const c = bilinear(square, standard, trial) - limit * limit;
  const [s11, s12, s22] = [s1 * s1, -2 * s1 * s2, s2 * s2];
  for (let pair = 0; pair < into.length / 2; pair++) {
    const f = formSize * pair;
    const a = s11 * forms[f] + s12 * forms[f + 1] + s22 * forms[f + 2];
    const b = s2 * forms[f + 4] - s1 * forms[f + 3];
    const square = b * b - a * c;
    if (a <= 0 || square < 0) {
      into[2 * pair] = Infinity;
      into[2 * pair + 1] = Infinity;
      continue;
    }
    const root = Math.sqrt(square);
    // Inside, c is at most 0 for what must stay small and at least 0 for what must stay large.
    const along = outwards ? (root - b) / a : (-b - root) / a;
    const against = outwards ? (root + b) / a : (b - root) / a;
    into[2 * pair] = along >= 0 ? along : outwards ? 0 : Infinity;
    into[2 * pair + 1] = against >= 0 ? against : outwards ? 0 : Infinity;
  }
}
