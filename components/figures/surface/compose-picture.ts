import type { LitSide } from './lit-side.ts';
import { lightOfStep } from './light-of-step.ts';
import type { StripFields } from './strip-fields.ts';
import type { StripLayout } from './strip-layout.ts';
import { openRows } from './strip-layout.ts';

/** Largest share of the light of a side's darkest channel that its shine may have on the mean. */
const mostShine = 0.7;
/** Share of a metal's light that is the image of the lamp; the rest is that of the room around. */
const metalShine = 0.5;
/** Light at the bottom of a gap: dark, but not the black of a hole in the screen. */
const gapLight = 0.0028;

/** Light of a channel: so much of the body, so much of the shine, and the mean that contrast is lowered about. */
interface Mix {
  readonly body: number;
  readonly shine: number;
  readonly mean: number;
}

/**
 * Colours the light of a strip and sets it in 8 bits. The mean over the open face of a side is its own colour in linear light, channel by channel:
 * the shine brings its share of it and the body the rest, so that moving the lamp changes the pattern and never the mean.
 *
 * Where the brightest point would be beyond the screen's white the contrast of that side is lowered about its mean; `contrast` says by how
 * much. Between two steps of 8 bits a pixel takes the upper one as often as its light is nearer to it.
 */
export function composePicture(
  fields: StripFields, layout: StripLayout, sides: readonly [LitSide | undefined, LitSide | undefined], shadowRows: number,
): { readonly pixels: Uint8ClampedArray<ArrayBuffer>; readonly contrast: readonly [number, number] } {
  const { width, height, top, bottom } = layout;
  const pixels = new Uint8ClampedArray(4 * width * height);
  const contrast: [number, number] = [1, 1];
  for (const index of [0, 1] as const) {
    const side = sides[index];
    if (side === undefined) continue;
    const open = openRows(layout, index, shadowRows);
    const mixes = mixesOf(fields, side, open);
    contrast[index] = contrastOf(fields, mixes, open);
    const [first, end] = index === 0 ? [0, top] : [bottom, height];
    for (let channel = 0; channel < 3; channel += 1) setChannel(fields, pixels, mixes[channel], contrast[index], channel, first, end);
  }
  if (sides.some((side) => side !== undefined)) setGap(pixels, width, top, bottom);
  return { pixels, contrast };
}

function mixesOf({ width, body, shine }: StripFields, { light, metal }: LitSide, [first, end]: readonly [number, number]): readonly Mix[] {
  let [bodies, shines] = [0, 0];
  for (let at = first * width; at < end * width; at += 1) {
    bodies += body[at];
    shines += shine[at];
  }
  const count = (end - first) * width;
  const [meanBody, meanShine] = [bodies / count, shines / count];
  const white = Math.min(meanShine, mostShine * Math.max(0, Math.min(...light)));
  return light.map((channel): Mix => {
    const share = meanShine <= 0 ? 0 : metal ? metalShine * channel : white;
    return { mean: channel, shine: meanShine > 0 ? share / meanShine : 0, body: meanBody > 0 ? (channel - share) / meanBody : 0 };
  });
}

/** Share of the contrast at which the brightest point of the face is white. */
function contrastOf({ width, body, shine }: StripFields, mixes: readonly Mix[], [first, end]: readonly [number, number]): number {
  const brightest = mixes.map(() => 0);
  for (let at = first * width; at < end * width; at += 1) {
    for (let channel = 0; channel < 3; channel += 1) {
      const light = mixes[channel].body * body[at] + mixes[channel].shine * shine[at];
      if (light > brightest[channel]) brightest[channel] = light;
    }
  }
  return Math.min(1, ...mixes.map(({ mean }, channel) => (brightest[channel] > 1 ? Math.max(0, 1 - mean) / (brightest[channel] - mean) : 1)));
}

const fine = 4095;
/** The step below each square root of light, to start the search from. */
const nearStep = Uint8Array.from({ length: fine + 1 }, (_, index) => {
  const light = (index / fine) ** 2;
  let step = 0;
  while (step < 254 && lightOfStep[step + 1] <= light) step += 1;
  return step;
});

function setChannel(
  { width, body, shine }: StripFields, pixels: Uint8ClampedArray, { body: ofBody, shine: ofShine, mean }: Mix, contrast: number,
  channel: number, first: number, end: number,
): void {
  for (let row = first; row < end; row += 1) {
    for (let x = 0, at = row * width; x < width; x += 1, at += 1) {
      const light = Math.min(1, Math.max(0, mean + contrast * (ofBody * body[at] + ofShine * shine[at] - mean)));
      let step = nearStep[Math.floor(Math.sqrt(light) * fine)];
      while (step < 254 && lightOfStep[step + 1] <= light) step += 1;
      const share = (light - lightOfStep[step]) / (lightOfStep[step + 1] - lightOfStep[step]);
      pixels[4 * at + channel] = share > threshold(x, row) ? step + 1 : step;
      pixels[4 * at + 3] = 255;
    }
  }
}

/** Thresholds that are spread evenly over 0..1 and over the plane (M. Roberts' additive sequence, from memory: 1 / p and 1 / p^2, p^3 = p + 1). */
function threshold(x: number, y: number): number {
  const place = 0.7548776662466927 * (x + 1) + 0.5698402909980532 * (y + 1);
  return place - Math.floor(place);
}

function setGap(pixels: Uint8ClampedArray, width: number, top: number, bottom: number): void {
  const step = lightOfStep.findIndex((light) => light >= gapLight);
  for (let at = top * width; at < bottom * width; at += 1) {
    pixels[4 * at] = pixels[4 * at + 1] = pixels[4 * at + 2] = step;
    pixels[4 * at + 3] = 255;
  }
}
