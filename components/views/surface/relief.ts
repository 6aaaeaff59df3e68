import type { HeightMap } from '../../../src/texture/height-map.ts';

/** Share of the light that comes from everywhere, so that no slope is black. */
const evenLight = 0.18;
/** Mean slope that the relief is lit as having, whatever it has: a fine grain is not flat to the eye that looks for it. */
const shownSlope = 0.35;

/** A picture of heights under a lamp from the upper left, and by how much their slopes were stretched to show. */
export interface Relief {
  readonly pixels: ImageData;
  readonly stretch: number;
}

/** Shaded relief of heights in micrometres, a pixel a point; missing points are black. */
export function reliefOf({ width, height, spacingMm, values }: HeightMap): Relief {
  const slopeX = (x: number, y: number): number => (values[y * width + Math.min(width - 1, x + 1)]! - values[y * width + Math.max(0, x - 1)]!) / (2000 * spacingMm[0]);
  const slopeY = (x: number, y: number): number => (values[Math.min(height - 1, y + 1) * width + x]! - values[Math.max(0, y - 1) * width + x]!) / (2000 * spacingMm[1]);
  let [sum, count] = [0, 0];
  const step = Math.max(1, Math.floor(Math.min(width, height) / 100));
  for (let y = 0; y < height; y += step) {
    for (let x = 0; x < width; x += step) {
      const square = slopeX(x, y) ** 2 + slopeY(x, y) ** 2;
      if (Number.isFinite(square)) {
        sum += square;
        count += 1;
      }
    }
  }
  const usual = Math.sqrt(sum / Math.max(1, count));
  const stretch = usual > 0 ? shownSlope / usual : 1;
  const lamp = [-0.5, -0.5, Math.SQRT1_2];
  const pixels = new ImageData(width, height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const [a, b] = [stretch * slopeX(x, y), stretch * slopeY(x, y)];
      const facing = Math.max(0, (-a * lamp[0]! - b * lamp[1]! + lamp[2]!) / Math.sqrt(1 + a * a + b * b));
      const grey = Number.isFinite(facing) ? 255 * Math.min(1, evenLight + (1 - evenLight) * 0.85 * facing) : 0;
      const at = 4 * (y * width + x);
      pixels.data[at] = grey;
      pixels.data[at + 1] = grey;
      pixels.data[at + 2] = grey;
      pixels.data[at + 3] = 255;
    }
  }
  return { pixels, stretch };
}
