import type { Degrees, Lux, Millimetres } from '../quantities.ts';
import { contrastSensitivity, cyclesPerDegree, fieldAngle, luminanceOf } from './contrast-sensitivity.ts';
import type { ContrastSpectrum } from './contrast-spectrum.ts';

/** How a part is looked at. */
export interface Viewing {
  readonly viewMm: Millimetres;
  readonly illuminanceLx: Lux;
  /** Luminance factor of the part, 0..1. */
  readonly reflectance: number;
  /** Side of the square that the eye takes in of the part; 100 mm where absent (assumption, no source). */
  readonly fieldMm?: Millimetres;
}

export const usualFieldMm = 100;

/** Contrast of a texture as the eye weighs it. One is the threshold: below it nothing is seen of the texture. */
export interface VisibleTexture {
  /** In threshold units. */
  readonly visibleContrast: number;
  /** Standard deviation that it has for want of a larger field. */
  readonly uncertainty: number;
  readonly luminance: number;
  /** Length of the waves that the eye sees most of; absent without contrast. */
  readonly pitchMm?: Millimetres;
  readonly pitchPerDegree?: number;
  /** Direction of the lay, degrees 0..180 from +x towards +y; absent without contrast. */
  readonly directionDeg?: Degrees;
  /** 0 where all directions are alike, 1 where all waves run one way. */
  readonly directionality: number;
}

/** Independent tiles that nine half-overlapping Hann windows are worth (correlation of neighbours in power 1/36, in both directions). */
const independentTiles = 8;

/** Visible energy of one channel: mean over the tiles, and the variance of that mean. */
interface Channel {
  readonly energy: number;
  readonly variance: number;
}

/** Weight of each bin: twice the square of the sensitivity, as a sine of amplitude c has the mean square c^2 / 2. */
function weightsOf(spectrum: ContrastSpectrum, viewing: Viewing): Float64Array {
  const luminance = luminanceOf(viewing.illuminanceLx, viewing.reflectance) * (spectrum.source === 'rendered' ? spectrum.meanLuminance : 1);
  const field = fieldAngle(viewing.fieldMm ?? usualFieldMm, viewing.viewMm);
  return spectrum.perMm.map((perMm) => 2 * contrastSensitivity(cyclesPerDegree(perMm, viewing.viewMm), luminance, field) ** 2);
}

const octaves = 24;
const lowestOctave = -12;
const directions = 4;

/** Share that a place between two channels has in the upper one; the rest goes to the lower, and both shares sum to one. */
const upperShare = (between: number): number => Math.sin((Math.PI / 2) * between) ** 2;

/**
 * Visible energy by channels one octave and 45 degrees wide, which overlap so that all together hold the whole.
 *
 * Channels are centred on whole powers of two of a cycle a millimetre. Width: near that of the channels of sight
 * (H. R. Wilson, D. K. McFarlane, G. C. Phillips, Vision Research 23 (1983) 873, from memory).
 */
function channelsOf(spectrum: ContrastSpectrum, viewing: Viewing): Channel[] {
  const weights = weightsOf(spectrum, viewing);
  const perTile = spectrum.tiles.map(() => new Float64Array(octaves * directions));
  for (let bin = 0; bin < weights.length; bin += 1) {
    const octave = Math.min(octaves - 1.001, Math.max(0, Math.log2(spectrum.perMm[bin]) - lowestOctave));
    const turn = (spectrum.waveDeg[bin] * directions) / 180;
    const [ring, sector] = [Math.floor(octave), Math.floor(turn)];
    const shares = [upperShare(octave - ring), upperShare(turn - sector)] as const;
    for (const [step, ringShare] of [1 - shares[0], shares[0]].entries()) {
      for (const [next, sectorShare] of [1 - shares[1], shares[1]].entries()) {
        const channel = (ring + step) * directions + ((sector + next) % directions);
        const share = weights[bin] * ringShare * sectorShare;
        spectrum.tiles.forEach((tile, index) => { perTile[index][channel] += share * tile[bin]; });
      }
    }
  }
  return Array.from({ length: octaves * directions }, (_, channel) => meanOf(perTile.map((tile) => tile[channel])));
}

function meanOf(values: readonly number[]): Channel {
  const energy = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - energy) ** 2, 0);
  return { energy, variance: values.length < 2 ? 0 : squares / (values.length - 1) / independentTiles };
}

/** Variance of the root of an energy, by its slope. */
const rootVariance = ({ energy, variance }: Channel): number => (energy > 0 ? variance / (4 * energy) : 0);

/**
 * How strongly a texture shows, in units of its threshold, with its dominant pitch and direction.
 *
 * Root of the sum over all frequencies of (amplitude of contrast times sensitivity) squared: a sine grating at its threshold has 1. All channels are
 * summed with exponent 2 and without masking. Luminance by L = E rho / pi. Sensitivity: Barten 2004, see `contrastSensitivity`.
 */
export function visibleTexture(spectrum: ContrastSpectrum, viewing: Viewing): VisibleTexture {
  const weights = weightsOf(spectrum, viewing);
  const total = meanOf(spectrum.tiles.map((tile) => tile.reduce((sum, energy, bin) => sum + energy * weights[bin], 0)));
  const visible = weights.map((weight, bin) => (weight * spectrum.tiles.reduce((sum, tile) => sum + tile[bin], 0)) / spectrum.tiles.length);
  const luminance = luminanceOf(viewing.illuminanceLx, viewing.reflectance) * (spectrum.source === 'rendered' ? spectrum.meanLuminance : 1);
  const base = { visibleContrast: Math.sqrt(total.energy), uncertainty: Math.sqrt(rootVariance(total)), luminance };
  if (!(total.energy > 0)) return { ...base, directionality: 0 };
  const perMm = dominantFrequency(spectrum, visible);
  // A wave and its opposite are one, so directions are averaged on the doubled angle.
  let [cosine, sine] = [0, 0];
  visible.forEach((energy, bin) => {
    const doubled = (spectrum.waveDeg[bin] * Math.PI) / 90;
    cosine += energy * Math.cos(doubled);
    sine += energy * Math.sin(doubled);
  });
  const wave = (Math.atan2(sine, cosine) * 90) / Math.PI;
  return {
    ...base, pitchMm: 1 / perMm, pitchPerDegree: cyclesPerDegree(perMm, viewing.viewMm),
    directionDeg: (wave + 90 + 180) % 180, directionality: Math.hypot(cosine, sine) / total.energy,
  };
}

/**
 * Frequency about which there is most visible energy, an eighth of an octave to either side or two waves a tile, whichever is wider; placed by the
 * mean of the contrast there, in which the skirts that a short field gives to a line are even.
 */
function dominantFrequency({ perMm, tileMm, tiles }: ContrastSpectrum, visible: Float64Array): number {
  const reach = (centre: number): number => Math.max(0.19 * centre, 2 / tileMm);
  let [best, most] = [0, -1];
  for (let bin = 0; bin < perMm.length; bin += 1) {
    if (!(visible[bin] > 0)) continue;
    const wide = reach(perMm[bin]);
    let sum = 0;
    // The nearer the heavier, so that a line is told from the foot of another.
    for (let other = 0; other < perMm.length; other += 1) sum += visible[other] * Math.max(0, 1 - Math.abs(perMm[other] - perMm[bin]) / wide);
    if (sum > most) [best, most] = [perMm[bin], sum];
  }
  let [energy, moment] = [0, 0];
  for (let bin = 0; bin < perMm.length; bin += 1) {
    if (Math.abs(perMm[bin] - best) > reach(best)) continue;
    const own = tiles.reduce((sum, tile) => sum + tile[bin], 0);
    energy += own;
    moment += own * perMm[bin];
  }
  return moment / energy;
}

/** Two textures as the eye tells them apart, in threshold units: below one the difference is not seen. */
export interface VisibleDifference {
  /** The difference less what the sizes of the two fields make by chance. */
  readonly difference: number;
  /** The part of it by which one texture is stronger than the other; the rest is of pitch and direction. */
  readonly strength: number;
  readonly pattern: number;
  /** Difference that two fields of one and the same texture would show on average. */
  readonly chance: number;
}

/**
 * Visible difference of two textures, each seen as it is viewed.
 *
 * Root of the sum of squares, over channels of an octave and 45 degrees, of the difference in visible contrast. `strength` is the
 * difference of the totals, `pattern` what remains: a pair that differs only in depth has no `pattern`, one that differs only in pitch
 * no `strength`. Without masking, so that on strong textures a difference near one is not surely seen; below one it is not.
 */
export function visibleDifference(
  first: ContrastSpectrum, second: ContrastSpectrum, viewing: readonly [Viewing, Viewing],
): VisibleDifference {
  const [a, b] = [channelsOf(first, viewing[0]), channelsOf(second, viewing[1])];
  let [squares, chance, totalA, totalB] = [0, 0, 0, 0];
  a.forEach((own, index) => {
    const other = b[index];
    squares += (Math.sqrt(own.energy) - Math.sqrt(other.energy)) ** 2;
    chance += rootVariance(own) + rootVariance(other);
    totalA += own.energy;
    totalB += other.energy;
  });
  const strength = Math.abs(Math.sqrt(totalA) - Math.sqrt(totalB));
  const difference = Math.sqrt(Math.max(0, squares - chance));
  return {
    difference, strength: Math.min(strength, difference), pattern: Math.sqrt(Math.max(0, difference * difference - strength * strength)), chance: Math.sqrt(chance),
  };
}

/** Where something falls below its threshold: at a distance, nowhere that was looked at, or it is not even seen from near. */
export type Vanishing = { readonly kind: 'at'; readonly viewMm: Millimetres } | { readonly kind: 'beyond'; readonly viewMm: Millimetres } | { readonly kind: 'never seen' };

const [nearest, farthest] = [200, 20_000];

/** The farthest distance at which `seen` is still one threshold, between 200 mm and 20 m, to 0.1 %. */
function vanishing(seen: (viewMm: Millimetres) => number): Vanishing {
  if (seen(farthest) >= 1) return { kind: 'beyond', viewMm: farthest };
  const step = 1.06;
  for (let near = farthest / step; near >= nearest; near /= step) {
    if (seen(near) < 1) continue;
    let [low, high] = [near, near * step];
    while (high / low > 1.001) {
      const middle = Math.sqrt(low * high);
      if (seen(middle) >= 1) low = middle;
      else high = middle;
    }
    return { kind: 'at', viewMm: Math.sqrt(low * high) };
  }
  return { kind: 'never seen' };
}

/** Distance at which a texture melts into an even surface. */
export const textureVanishes = (spectrum: ContrastSpectrum, viewing: Viewing): Vanishing =>
  vanishing((viewMm) => visibleTexture(spectrum, { ...viewing, viewMm }).visibleContrast);

/** Distance at which the difference of two textures is no longer seen. */
export const differenceVanishes = (first: ContrastSpectrum, second: ContrastSpectrum, viewing: readonly [Viewing, Viewing]): Vanishing =>
  vanishing((viewMm) => visibleDifference(first, second, [{ ...viewing[0], viewMm }, { ...viewing[1], viewMm }]).difference);
