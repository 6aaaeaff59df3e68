import type { Degrees, Lux, Millimetres } from '../quantities.ts';
import { byDirection, channelDirections, channelRings, ringOf, sectorDegrees, sectors } from './contrast-channels.ts';
import { contrastSensitivity, cyclesPerDegree, fieldAngle, luminanceOf } from './contrast-sensitivity.ts';
import type { ContrastBand, ContrastSpectrum } from './contrast-spectrum.ts';

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
  /** cd/m2. */
  readonly luminance: number;
  /** Length of the waves that the eye sees most of; absent without contrast. */
  readonly pitchMm?: Millimetres;
  readonly pitchPerDegree?: number;
  /** Direction of the lay, degrees 0..180 from +x towards +y; absent without contrast. */
  readonly directionDeg?: Degrees;
  /** 0 where all directions are alike, 1 where all waves run one way. */
  readonly directionality: number;
}

/** Visible energy of one channel, and the variance that it has for want of a larger field. */
export interface Channel {
  readonly energy: number;
  readonly variance: number;
}

const luminanceSeen = (spectrum: ContrastSpectrum, viewing: Viewing): number =>
  luminanceOf(viewing.illuminanceLx, viewing.reflectance) * (spectrum.source === 'rendered' ? spectrum.meanLuminance : 1);

/** Weight of each band: twice the square of the sensitivity, as a sine of amplitude c has the mean square c^2 / 2. */
function weightsOf(spectrum: ContrastSpectrum, viewing: Viewing): number[] {
  const luminance = luminanceSeen(spectrum, viewing);
  const field = fieldAngle(viewing.fieldMm ?? usualFieldMm, viewing.viewMm);
  return spectrum.bands.map(({ perMm }) => 2 * contrastSensitivity(cyclesPerDegree(perMm, viewing.viewMm), luminance, field) ** 2);
}

/** What of a band does not depend on how it is looked at: the channels' shares of it. */
interface Placed {
  readonly ring: number;
  readonly upper: number;
  readonly directions: Float64Array;
}

const placed = new WeakMap<ContrastBand, Placed>();
function placeOf(band: ContrastBand): Placed {
  const known = placed.get(band) ?? { ...ringOf(band.perMm), directions: byDirection(band.energy) };
  placed.set(band, known);
  return known;
}

/**
 * Visible energy by channels one octave and 45 degrees wide, which overlap so that all together hold the whole: a row of directions for each ring.
 *
 * Channels are centred on whole powers of two of a cycle a millimetre. Width: near that of the channels of sight
 * (H. R. Wilson, D. K. McFarlane, G. C. Phillips, Vision Research 23 (1983) 873, from memory).
 */
export function channelsOf(spectrum: ContrastSpectrum, viewing: Viewing): Channel[] {
  const weights = weightsOf(spectrum, viewing);
  const energies = new Float64Array(channelRings * channelDirections);
  spectrum.bands.forEach((band, index) => {
    const { ring, upper, directions } = placeOf(band);
    for (let direction = 0; direction < channelDirections; direction += 1) {
      const energy = weights[index] * directions[direction];
      energies[ring * channelDirections + direction] += (1 - upper) * energy;
      energies[(ring + 1) * channelDirections + direction] += upper * energy;
    }
  });
  return Array.from(energies, (energy, channel) => ({ energy, variance: spectrum.scatter[channel] * energy * energy }));
}

/** Variance of the root of an energy, by its slope. */
export const rootVariance = ({ energy, variance }: Channel): number => (energy > 0 ? variance / (4 * energy) : 0);

/**
 * Variance of the sum of all channels over the sum of their variances. Neighbours share a sixth of their variance with each other where all
 * frequencies vary on their own, so that the sum over both axes has (4/3)^2 of it.
 */
const overlap = 16 / 9;

/**
 * How strongly a texture shows, in units of its threshold, with its dominant pitch and direction.
 *
 * Root of the sum over all frequencies of (amplitude of contrast times sensitivity) squared: a sine grating at its threshold has 1. All channels are
 * summed with exponent 2 and without masking. Luminance by L = E rho / pi. Sensitivity: Barten 2004, see `contrastSensitivity`.
 */
export function visibleTexture(spectrum: ContrastSpectrum, viewing: Viewing): VisibleTexture {
  const channels = channelsOf(spectrum, viewing);
  const total = {
    energy: channels.reduce((sum, { energy }) => sum + energy, 0), variance: overlap * channels.reduce((sum, { variance }) => sum + variance, 0),
  };
  const base = { visibleContrast: Math.sqrt(total.energy), uncertainty: Math.sqrt(rootVariance(total)), luminance: luminanceSeen(spectrum, viewing) };
  if (!(total.energy > 0)) return { ...base, directionality: 0 };
  const weights = weightsOf(spectrum, viewing);
  const perMm = dominantFrequency(spectrum, weights);
  // A wave and its opposite are one, so directions are averaged on the doubled angle.
  let [cosine, sine] = [0, 0];
  spectrum.bands.forEach(({ energy }, index) => {
    for (let sector = 0; sector < sectors; sector += 1) {
      const doubled = (sectorDegrees(sector) * Math.PI) / 90;
      cosine += weights[index] * energy[sector] * Math.cos(doubled);
      sine += weights[index] * energy[sector] * Math.sin(doubled);
    }
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
function dominantFrequency({ bands, tileMm }: ContrastSpectrum, weights: readonly number[]): number {
  const reach = (centre: number): number => Math.max(0.19 * centre, 2 / tileMm);
  const own = bands.map(({ energy }) => energy.reduce((sum, value) => sum + value, 0));
  let [best, most] = [0, -1];
  for (const { perMm } of bands) {
    const wide = reach(perMm);
    // The nearer the heavier, so that a line is told from the foot of another.
    const sum = bands.reduce((total, other, index) => total + weights[index] * own[index] * Math.max(0, 1 - Math.abs(other.perMm - perMm) / wide), 0);
    if (sum > most) [best, most] = [perMm, sum];
  }
  let [energy, moment] = [0, 0];
  bands.forEach(({ perMm }, index) => {
    if (Math.abs(perMm - best) > reach(best)) return;
    energy += own[index];
    moment += own[index] * perMm;
  });
  return moment / energy;
}
