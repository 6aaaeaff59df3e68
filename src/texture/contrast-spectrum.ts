import type { Millimetres } from '../quantities.ts';
import { byDirection, channelDirections, channelRings, ringOf, sectors } from './contrast-channels.ts';
import { quickLength } from './fourier.ts';
import type { LuminanceMap } from './luminance-map.ts';
import { powerSpectrumSteps } from './power-spectrum.ts';
import type { Steps } from './steps.ts';
import { partOfSteps } from './steps.ts';

/** A narrow band of frequencies. */
export interface ContrastBand {
  /** The mean of its energy on a logarithmic scale, cycles a millimetre. */
  readonly perMm: number;
  /** Mean square contrast by direction of the waves, a value a sector. */
  readonly energy: Float64Array;
}

/** Contrast energy of a texture by frequency and direction. */
export interface ContrastSpectrum {
  /** Bands with energy, the lowest frequency first. */
  readonly bands: readonly ContrastBand[];
  /** Variance of each channel's energy over its square, for want of a larger field: a row of directions for each ring. */
  readonly scatter: Float64Array;
  /** Root of the mean square contrast, luminance over its mean less one. */
  readonly rmsContrast: number;
  /** Mean luminance against that of a flat surface (rendered), or in the photograph's own unit. */
  readonly meanLuminance: number;
  /** Length of a tile, the longer side: a pitch is known to about its square over this. */
  readonly tileMm: Millimetres;
  readonly source: LuminanceMap['source'];
}

const binsPerOctave = 8;
const tilesPerAxis = 3;
const largestTile = 1024;
/** Points of a height map finer than this are averaged: 60 cycles a degree at 250 mm are 0.07 mm long. */
const finestMm = 0.02;

/**
 * Spectrum of contrast of a texture.
 *
 * Points finer than 0.02 mm are averaged in blocks (what that takes from short waves is given back); the field is covered by nine half-overlapping
 * tiles of half its size, at most 1024 points, each under a Hann window, so that the spread from tile to tile tells how well the field represents
 * the texture. Bands of an eighth of an octave, sectors of 15 degrees. Missing points count as mean luminance, the energy is scaled to the measured share.
 * Undefined for a field without light or of fewer than 16 points on an axis.
 */
export function* contrastSpectrumSteps(map: LuminanceMap): Steps<ContrastSpectrum | undefined> {
  const blockOf = (spacing: Millimetres): number => Math.max(1, Math.floor(finestMm / spacing + 1e-9));
  const blocks = [blockOf(map.spacingMm[0]), blockOf(map.spacingMm[1])] as const;
  const field = blockMeans(map, blocks);
  yield 0.1;
  const { mean } = field;
  if (!(mean > 0) || Math.min(field.width, field.height) < 16) return undefined;
  const size = [quickLength(field.width / 2, largestTile), quickLength(field.height / 2, largestTile)] as const;
  const longest = Math.max(size[0] * field.spacingMm[0], size[1] * field.spacingMm[1]);
  const rows = Math.ceil(Math.log2(longest * 0.71 / Math.min(...field.spacingMm)) * binsPerOctave) + 2;
  const bins = rows * sectors;
  const [energy, moment] = [new Float64Array(bins), new Float64Array(rows)];
  const tiles: Float64Array[] = [];
  for (let tile = 0; tile < tilesPerAxis ** 2; tile += 1) {
    const own = new Float64Array(bins);
    const [left, top] = [tile % tilesPerAxis, Math.floor(tile / tilesPerAxis)];
    const { values, share } = cutTile(field, size, [
      Math.round(((field.width - size[0]) * left) / (tilesPerAxis - 1)), Math.round(((field.height - size[1]) * top) / (tilesPerAxis - 1)),
    ]);
    const spectrum = powerSpectrumSteps(values, size[0], size[1], field.spacingMm, (perMmX, perMmY, power) => {
      const frequency = Math.hypot(perMmX, perMmY);
      const degrees = (Math.atan2(perMmY, perMmX) * 180) / Math.PI;
      const sector = ((Math.round((degrees * sectors) / 180) % sectors) + sectors) % sectors;
      const row = Math.min(rows - 1, Math.max(0, Math.floor(Math.log2(frequency * longest) * binsPerOctave)));
      const bin = row * sectors + sector;
      const lost = blockLoss(perMmX * map.spacingMm[0], blocks[0]) * blockLoss(perMmY * map.spacingMm[1], blocks[1]);
      const seen = power / (lost * lost * Math.max(share, 1e-6));
      own[bin] += seen;
      energy[bin] += seen / tilesPerAxis ** 2;
      moment[row] += (seen / tilesPerAxis ** 2) * Math.log(frequency);
    });
    yield* partOfSteps(spectrum, 0.1 + (0.9 * tile) / 9, 0.1 + (0.9 * (tile + 1)) / 9);
    tiles.push(own);
  }
  const places = Array.from({ length: rows }, (_, row) => {
    const sum = energy.subarray(row * sectors, (row + 1) * sectors).reduce((total, value) => total + value, 0);
    return { row, sum, perMm: Math.exp(moment[row] / sum) };
  }).filter(({ sum }) => sum > 0);
  return {
    bands: places.map(({ row, perMm }) => ({ perMm, energy: energy.slice(row * sectors, (row + 1) * sectors) })),
    scatter: scatterOf(places, tiles), rmsContrast: Math.sqrt(field.variance) / mean, meanLuminance: mean, tileMm: longest, source: map.source,
  };
}

/** Independent tiles that nine half-overlapping Hann windows are worth (correlation of neighbours in power 1/36, in both directions). */
const independentTiles = 8;

/** How the energy of each channel scatters from tile to tile: variance of the mean over its square. */
function scatterOf(places: readonly { readonly row: number; readonly perMm: number }[], tiles: readonly Float64Array[]): Float64Array {
  const size = channelRings * channelDirections;
  const channels = tiles.map((tile) => {
    const own = new Float64Array(size);
    for (const { row, perMm } of places) {
      const { ring, upper } = ringOf(perMm);
      byDirection(tile.subarray(row * sectors, (row + 1) * sectors)).forEach((energy, direction) => {
        own[ring * channelDirections + direction] += (1 - upper) * energy;
        own[(ring + 1) * channelDirections + direction] += upper * energy;
      });
    }
    return own;
  });
  return Float64Array.from({ length: size }, (_, channel) => {
    const mean = channels.reduce((sum, own) => sum + own[channel], 0) / channels.length;
    const squares = channels.reduce((sum, own) => sum + (own[channel] - mean) ** 2, 0);
    return mean > 0 ? squares / (channels.length - 1) / independentTiles / (mean * mean) : 0;
  });
}

/** What the mean over a block leaves of a wave's amplitude; cycles a point of the fine grid. */
function blockLoss(perPoint: number, block: number): number {
  if (block === 1 || Math.abs(perPoint) < 1e-12) return 1;
  return Math.abs(Math.sin(Math.PI * perPoint * block) / (block * Math.sin(Math.PI * perPoint)));
}

interface BlockField {
  readonly width: number;
  readonly height: number;
  readonly spacingMm: readonly [number, number];
  readonly values: Float64Array;
  readonly mean: number;
  /** Mean square about the mean, of the field before it was averaged in blocks. */
  readonly variance: number;
}

function blockMeans(map: LuminanceMap, [across, down]: readonly [number, number]): BlockField {
  const [width, height] = [Math.floor(map.width / across), Math.floor(map.height / down)];
  const values = new Float64Array(width * height);
  let [total, squares, measured] = [0, 0, 0];
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let [sum, count] = [0, 0];
      for (let v = 0; v < down; v += 1) {
        for (let u = 0, at = (y * down + v) * map.width + x * across; u < across; u += 1, at += 1) {
          const value = map.values[at];
          if (Number.isNaN(value)) continue;
          sum += value;
          squares += value * value;
          count += 1;
        }
      }
      values[y * width + x] = sum / count;
      total += sum;
      measured += count;
    }
  }
  const mean = total / measured;
  return {
    width, height, spacingMm: [map.spacingMm[0] * across, map.spacingMm[1] * down], values, mean, variance: Math.max(0, squares / measured - mean * mean),
  };
}

/** A tile as contrast, 0 where missing, and the share of it that is measured. */
function cutTile({ width, values, mean }: BlockField, [wide, high]: readonly [number, number], [left, top]: readonly [number, number]) {
  const tile = new Float64Array(wide * high);
  let count = 0;
  for (let y = 0; y < high; y += 1) {
    for (let x = 0; x < wide; x += 1) {
      const value = values[(top + y) * width + left + x];
      if (Number.isNaN(value)) continue;
      tile[y * wide + x] = value / mean - 1;
      count += 1;
    }
  }
  return { values: tile, share: count / tile.length };
}
