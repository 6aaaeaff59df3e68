import { channelDirections, channelRings } from './contrast-channels.ts';
import type { ContrastSpectrum } from './contrast-spectrum.ts';
import type { Channel, Viewing } from './visible-texture.ts';
import { channelsOf, rootVariance } from './visible-texture.ts';

/** Two textures as the eye tells them apart, in threshold units: below one the difference is not seen. */
export interface VisibleDifference {
  /** The difference less what the sizes of the two fields make by chance. */
  readonly difference: number;
  /** Standard deviation that it has for want of larger fields. */
  readonly uncertainty: number;
  /** The part of it by which one texture is stronger than the other; the rest is of pitch and direction. */
  readonly strength: number;
  readonly pattern: number;
  /** What of the pattern shows with all directions taken together, and with all pitches taken together. */
  readonly pitch: number;
  readonly direction: number;
  /** Difference that two fields of one and the same texture would show on average. */
  readonly chance: number;
}

/** Several fields of one texture as one: the mean of each channel. */
function meanChannels(fields: readonly ContrastSpectrum[], viewing: Viewing): readonly Channel[] {
  const all = fields.map((field) => channelsOf(field, viewing));
  return all[0].map((_, channel) => ({
    energy: all.reduce((sum, own) => sum + own[channel].energy, 0) / all.length,
    variance: all.reduce((sum, own) => sum + own[channel].variance, 0) / all.length ** 2,
  }));
}

const sumOf = (channels: readonly Channel[]): Channel => ({
  energy: channels.reduce((sum, { energy }) => sum + energy, 0), variance: channels.reduce((sum, { variance }) => sum + variance, 0),
});

interface Apart {
  /** Sum of the squares of the differences of the roots, their variances not yet taken off. */
  readonly squares: number;
  readonly chance: number;
  /** Sum of the squares, each times its variance. */
  readonly weighted: number;
}

function apart(first: readonly Channel[], second: readonly Channel[]): Apart {
  let [squares, chance, weighted] = [0, 0, 0];
  first.forEach((own, index) => {
    const other = second[index];
    const square = (Math.sqrt(own.energy) - Math.sqrt(other.energy)) ** 2;
    const variance = rootVariance(own) + rootVariance(other);
    squares += square;
    chance += variance;
    weighted += square * variance;
  });
  return { squares, chance, weighted };
}

const rings = (channels: readonly Channel[]): Channel[] => Array.from({ length: channelRings }, (_, ring) => sumOf(channels.slice(ring * channelDirections, (ring + 1) * channelDirections)));
const turns = (channels: readonly Channel[]): Channel[] => Array.from({ length: channelDirections }, (_, direction) => sumOf(channels.filter((_channel, index) => index % channelDirections === direction)));

/**
 * Visible difference of two textures, each seen as it is viewed and each known from one field or more.
 *
 * Root of the sum of squares, over channels of an octave and 45 degrees, of the difference in visible contrast. `strength` is the
 * difference of the totals, `pattern` what remains: a pair that differs only in depth has no `pattern`, one that differs only in pitch
 * no `strength`. Without masking, so that on strong textures a difference near one is not surely seen; below one it is not.
 */
export function visibleDifference(
  first: ContrastSpectrum | readonly ContrastSpectrum[], second: ContrastSpectrum | readonly ContrastSpectrum[], viewing: readonly [Viewing, Viewing],
): VisibleDifference {
  const [a, b] = [meanChannels([first].flat(), viewing[0]), meanChannels([second].flat(), viewing[1])];
  const { squares, chance, weighted } = apart(a, b);
  const difference = Math.sqrt(Math.max(0, squares - chance));
  const strength = Math.min(difference, Math.abs(Math.sqrt(sumOf(a).energy) - Math.sqrt(sumOf(b).energy)));
  const beside = (total: number): number => Math.sqrt(Math.max(0, total - strength * strength));
  const of = (fold: (channels: readonly Channel[]) => Channel[]): number => {
    const folded = apart(fold(a), fold(b));
    return Math.min(beside(difference * difference), beside(folded.squares - folded.chance));
  };
  return {
    difference, uncertainty: squares > 0 ? Math.sqrt(weighted / squares) : Math.sqrt(chance), strength,
    pattern: beside(difference * difference), pitch: of(rings), direction: of(turns), chance: Math.sqrt(chance),
  };
}

/** What sets two textures apart for the eye: the larger of depth (one is stronger), pitch and direction; nothing below the threshold. */
export type TextureFeature = 'depth' | 'pitch' | 'direction';

/** A second feature is named where it is seen and at least this share of the first. Assumption, no source. */
const worthNaming = 0.5;

/**
 * What sets two textures apart, the most telling feature first; none where nothing is seen.
 *
 * A pattern that shows neither as pitch nor as direction alone is of both.
 */
export function featuresApart({ difference, strength, pattern, pitch, direction }: VisibleDifference): readonly TextureFeature[] {
  if (difference < 1) return [];
  const mixed = Math.max(pitch, direction) < worthNaming * pattern ? pattern : 0;
  const sizes: readonly (readonly [TextureFeature, number])[] = [
    ['depth', strength], ['pitch', Math.max(pitch, mixed)], ['direction', Math.max(direction, mixed)],
  ];
  const most = Math.max(...sizes.map(([, size]) => size));
  return sizes.filter(([, size]) => size === most || (size >= 1 && size >= worthNaming * most)).sort((a, b) => b[1] - a[1]).map(([name]) => name);
}
