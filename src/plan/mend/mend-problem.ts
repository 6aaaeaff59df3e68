/** Change of a part: dL*, da*, db* under the reference light, and gloss units. */
export type Shift = readonly [dL: number, da: number, db: number, dGloss: number];

export const noShift: Shift = [0, 0, 0, 0];

/** What may change together, as numbers: one part, or parts that stand by the same specimen. */
export interface MendItem {
  /** Largest change down and up on each axis, all of them 0 or more. */
  readonly down: Shift;
  readonly up: Shift;
  /** What any change of it costs; at least 0. */
  readonly cost: number;
  /** Gloss goes in whole steps of this size; a free choice where absent. */
  readonly glossStep?: number;
  /** What a change of gloss costs on top. */
  readonly glossCost: number;
}

/** Something that must not exceed zero, a function of the shifts of two items. */
export interface MendLimit {
  /** Which joint it is of, for the set of joints that make a plan impossible. */
  readonly joint: number;
  readonly items: readonly [number, number];
  readonly excess: (first: Shift, second: Shift) => number;
  /** Its slopes at any point are valid bounds everywhere; if not, only the latest slope is used. */
  readonly convex: boolean;
  /** A distance from nought that can be made to either side: what is kept apart is straight in the shifts. It is met as it is, by a choice of the side. */
  readonly apart?: StraightDistance;
  /** What the excess is nowhere below in two boxes of shifts; for limits that are not convex. */
  readonly leastExcess?: (first: ShiftBox, second: ShiftBox) => number;
}

/** A quantity that is straight in the shifts of two items and whose size is to be at least so much. */
export interface StraightDistance {
  readonly signed: (first: Shift, second: Shift) => number;
  readonly least: number;
  /** What it lies between within the reach of both. */
  readonly range: readonly [lowest: number, highest: number];
}

/** All shifts between two on every axis. */
export interface ShiftBox {
  readonly low: Shift;
  readonly high: Shift;
}

export interface MendProblem {
  readonly items: readonly MendItem[];
  readonly limits: readonly MendLimit[];
}

/** Size of a shift as it is kept small: the sum of its absolute parts, gloss weighed by what reads as much as one unit of lightness. */
export const glossWeight = 1;

export const shiftSize = (shift: Shift): number => Math.abs(shift[0]) + Math.abs(shift[1]) + Math.abs(shift[2]) + glossWeight * Math.abs(shift[3]);
