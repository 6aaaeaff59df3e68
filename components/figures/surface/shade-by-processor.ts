import type { FacetLight } from './facet-light.ts';
import { facetLight } from './facet-light.ts';
import type { GrainSlopes } from './grain-slopes.ts';
import type { LitScene } from './lamp.ts';
import type { LitSide } from './lit-side.ts';
import type { StripFields } from './strip-fields.ts';
import { lipSlope, samplesOf } from './strip-fields.ts';
import type { StepShadow, StripLayout } from './strip-layout.ts';

export interface ShadingInput {
  readonly layout: StripLayout;
  readonly scene: LitScene;
  readonly sides: readonly [LitSide | undefined, LitSide | undefined];
  readonly shadow: StepShadow;
  readonly draft: boolean;
}

/** The light of every pixel, worked out on the processor: the same as the graphics card does it, for where there is none. */
export function shadeByProcessor({ layout, scene, sides, shadow, draft }: ShadingInput): StripFields {
  const { width, height, top, bottom, perMm } = layout;
  const body = new Float32Array(width * height);
  const shine = new Float32Array(width * height);
  const found: FacetLight = { body: 0, shine: 0 };
  const slope = new Float64Array(2);
  for (let row = 0; row < height; row += 1) {
    const index = row < top ? 0 : row >= bottom ? 1 : undefined;
    const side = index === undefined ? undefined : sides[index];
    if (index === undefined || side === undefined) continue;
    const { grain, alpha, n, metal } = side;
    const samples = grain === undefined ? 1 : samplesOf(Math.max(...grain.perMm) / perMm, draft);
    const edge = index === 0 ? 0 : bottom;
    for (let x = 0; x < width; x += 1) {
      let [sumBody, sumShine] = [0, 0];
      for (let sample = 0; sample < samples * samples; sample += 1) {
        const px = x + ((sample % samples) + 0.5) / samples;
        const py = row + (Math.floor(sample / samples) + 0.5) / samples;
        if (grain !== undefined) grainSlope(grain, px / perMm, (py - edge) / perMm, slope);
        else slope.fill(0);
        facetLight(
          scene, (px - width / 2) / perMm, (py - height / 2) / perMm, slope[0], slope[1] + lipSlope(layout, index, py),
          index === 1 ? litShare(py - bottom, shadow) : 1, alpha, metal ? 0 : n, found,
        );
        sumBody += found.body;
        sumShine += found.shine;
      }
      body[row * width + x] = sumBody / samples ** 2;
      shine[row * width + x] = sumShine / samples ** 2;
    }
  }
  return { width, height, body, shine };
}

/** Share of the lamp that a row below a step sees. */
function litShare(row: number, { core, end }: StepShadow): number {
  if (end <= 0 || row >= end) return 1;
  const t = Math.max(0, (row - core) / (end - core));
  return t * t * (3 - 2 * t);
}

function grainSlope({ slopes, perMm, scale, turn, offset }: NonNullable<LitSide['grain']>, x: number, y: number, into: Float64Array): void {
  const [cosine, sine] = [Math.cos(turn), Math.sin(turn)];
  lookUp(slopes, (x * cosine + y * sine) * perMm[0] + offset[0], (y * cosine - x * sine) * perMm[1] + offset[1], into);
  const [along, across] = [into[0] * scale, into[1] * scale];
  into[0] = along * cosine - across * sine;
  into[1] = along * sine + across * cosine;
}

/** Slopes between four points; beyond the edges the grain repeats, or goes on as its mirror image. */
function lookUp({ width, height, slopes, mirrored }: GrainSlopes, u: number, v: number, into: Float64Array): void {
  const [column, signX] = wrapped(u, width, mirrored);
  const [row, signY] = wrapped(v, height, mirrored);
  const [left, top] = [Math.floor(column), Math.floor(row)];
  const [right, below] = mirrored ? [Math.min(width - 1, left + 1), Math.min(height - 1, top + 1)] : [(left + 1) % width, (top + 1) % height];
  const [a, b] = [column - left, row - top];
  for (let axis = 0; axis < 2; axis += 1) {
    const upper = slopes[2 * (top * width + left) + axis] * (1 - a) + slopes[2 * (top * width + right) + axis] * a;
    const lower = slopes[2 * (below * width + left) + axis] * (1 - a) + slopes[2 * (below * width + right) + axis] * a;
    into[axis] = (upper * (1 - b) + lower * b) * (axis === 0 ? signX : signY);
  }
}

/** Place on the field, and -1 where it is seen from behind. */
function wrapped(place: number, size: number, mirrored: boolean): readonly [place: number, sign: number] {
  const turns = Math.floor(place / size);
  const rest = Math.min(place - turns * size, size - 1e-6);
  return mirrored && turns % 2 !== 0 ? [Math.max(0, size - 1e-6 - rest), -1] : [rest, 1];
}
