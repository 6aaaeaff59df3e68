import type { StripLayout } from './strip-layout.ts';

/** Light of every pixel of a strip, rows from the top: that of the body and the shine, against a flat white surface. */
export interface StripFields {
  readonly width: number;
  readonly height: number;
  readonly body: Float32Array;
  readonly shine: Float32Array;
}

/** Steepest slope that is drawn on the rounding of an edge: it ends before the wall. */
export const steepest = 0.95;

/** Slope of the rounding of an edge in a row, downwards on the picture; 0 on the open face. */
export function lipSlope({ top, bottom, lips }: StripLayout, side: 0 | 1, row: number): number {
  const into = side === 0 ? row - (top - lips[0]) : bottom + lips[1] - row;
  if (lips[side] <= 0 || into <= 0) return 0;
  const share = Math.min(steepest, into / lips[side]);
  const slope = share / Math.sqrt(1 - share * share);
  return side === 0 ? -slope : slope;
}

/** Samples along each axis of a pixel that a grain of so many points a pixel needs. */
export function samplesOf(pointsPerPixel: number, draft: boolean): number {
  return Math.max(1, Math.min(draft ? 2 : 4, Math.ceil(pointsPerPixel / 1.5)));
}
