import type { Millimetres } from '../../../src/quantities.ts';
import type { JointStripInput, JointStripSize } from '../../../src/report/figures/joint-strip.ts';
import { jointOpening, pixelsAtAngle } from '../../../src/report/figures/joint-strip.ts';
import type { Vector } from './lamp.ts';

/** Rows of a strip from the top, in device pixels. */
export interface StripLayout {
  readonly width: number;
  readonly height: number;
  /** End of the upper side and beginning of the lower one; between them is the gap. */
  readonly top: number;
  readonly bottom: number;
  /** Device pixels to a millimetre of the parts. */
  readonly perMm: number;
  /** Rounding of the edge of either side at a gap or a step, device pixels; 0 where there is none. */
  readonly lips: readonly [upper: number, lower: number];
}

/** Radius of an edge. Assumption, no source. */
const lipMm: Millimetres = 0.5;

export function stripLayout(input: JointStripInput, size: JointStripSize, density: number): StripLayout {
  const kind = size.closed ? 'edge' : input.kind;
  const opening = jointOpening(input, size);
  const [width, height] = [Math.round(size.width * density), Math.round(size.height * density)];
  const perMm = pixelsAtAngle(1, input.viewMm) * (size.magnification ?? 1) * density;
  const lip = Math.min(lipMm * perMm, height / 10);
  return {
    width, height, perMm,
    top: Math.round(((size.height - opening) / 2) * density), bottom: Math.round(((size.height + opening) / 2) * density),
    lips: [kind === 'gap' || kind === 'step' ? lip : 0, kind === 'gap' ? lip : 0],
  };
}

/** Rows from `first` up to `end` of the open face of a side: without the rounding of its edge and without a step's shadow of `shadow` rows. */
export function openRows({ height, top, bottom, lips }: StripLayout, side: 0 | 1, shadow = 0): readonly [first: number, end: number] {
  if (side === 0) return [0, Math.max(1, top - Math.ceil(lips[0]))];
  return [Math.min(height - 1, bottom + Math.ceil(Math.max(lips[1], shadow))), height];
}

/** Rows of the lower side that lie in the shadow of a step: the dark core, and the end of its soft edge. */
export interface StepShadow {
  readonly core: number;
  readonly end: number;
}

/** Share of a shadow's length that the size of the lamp softens. Assumption, no source. */
const softness = 0.15;

/** Shadow of a step under a lamp in this direction; none where the lamp stands below the joint. */
export function stepShadow({ perMm, height }: StripLayout, stepMm: Millimetres, towards: Vector): StepShadow {
  if (!(stepMm > 0) || towards[1] >= 0) return { core: 0, end: 0 };
  const length = Math.min(height / 4, (perMm * stepMm * -towards[1]) / Math.max(0.1, towards[2]));
  return { core: length * (1 - softness), end: length * (1 + softness) + 1 };
}
