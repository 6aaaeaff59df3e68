import type { Millimetres } from '../quantities.ts';
import { channelDirections, channelRings, octaveOfRing, ringOfOctave } from './contrast-channels.ts';
import type { ContrastBand, ContrastSpectrum } from './contrast-spectrum.ts';
import type { Lamp } from './luminance-map.ts';

/** The light that a texture was seen in: a lamp that heights were rendered under, or the set-up that photographs were taken in, by its name. */
export type TextureLight = { readonly lamp: Lamp } | { readonly capture?: string };

/** Contrast of a texture as a document keeps it: enough to tell how it looks at any distance and level of light. */
export interface ContrastRecord {
  readonly source: 'rendered' | 'photograph';
  /** Rendered heights: the lamp. */
  readonly lamp?: Lamp;
  /** Photographs: name of the set-up of lamp and camera; pictures of one set-up may be compared. */
  readonly capture?: string;
  /** Root of the mean square contrast. */
  readonly rmsContrast: number;
  /** Rendered heights: mean luminance against that of a flat surface. */
  readonly meanLuminance?: number;
  /** Side of the part of the field that a spectrum was taken of, the longer one. */
  readonly tileMm: Millimetres;
  /** Bands of a quarter of an octave, the lowest frequency first: cycles a millimetre, and mean square contrast by direction of the waves in steps of 15 degrees. */
  readonly bands: readonly { readonly perMm: number; readonly energy: readonly number[] }[];
  /** By octave above one cycle a millimetre: relative variance of the energy in four directions 45 degrees apart. */
  readonly scatter: readonly { readonly octave: number; readonly directions: readonly number[] }[];
}

const bandsPerOctave = 4;
/** Digits that are kept: a ten-thousandth of the energy is far below what two fields of one texture differ by. */
const digits = 4;
const rounded = (value: number): number => Number(value.toPrecision(digits));

/** A spectrum as a document keeps it, in the light it was seen in. */
export function contrastRecord(spectrum: ContrastSpectrum, light: TextureLight): ContrastRecord {
  const gathered = new Map<number, { moment: number; energy: number[] }>();
  for (const { perMm, energy } of spectrum.bands) {
    const place = Math.floor(Math.log2(perMm) * bandsPerOctave);
    const known = gathered.get(place) ?? { moment: 0, energy: energy.length === 0 ? [] : Array<number>(energy.length).fill(0) };
    gathered.set(place, known);
    energy.forEach((value, sector) => {
      known.energy[sector] += value;
      known.moment += value * Math.log(perMm);
    });
  }
  const bands = [...gathered.values()].map(({ moment, energy }) => {
    const total = energy.reduce((sum, value) => sum + value, 0);
    return { perMm: rounded(Math.exp(moment / total)), energy: energy.map(rounded) };
  });
  const scatter = Array.from({ length: channelRings }, (_, ring) => ({
    octave: octaveOfRing(ring),
    directions: Array.from(spectrum.scatter.subarray(ring * channelDirections, (ring + 1) * channelDirections), rounded),
  })).filter(({ directions }) => directions.some((value) => value > 0));
  return {
    source: spectrum.source, ...light, rmsContrast: rounded(spectrum.rmsContrast),
    ...(spectrum.source === 'rendered' ? { meanLuminance: rounded(spectrum.meanLuminance) } : {}), tileMm: rounded(spectrum.tileMm), bands, scatter,
  };
}

const spectra = new WeakMap<ContrastRecord, ContrastSpectrum>();

/** The spectrum of a record; the same object each time it is asked for. */
export function spectrumOfRecord(record: ContrastRecord): ContrastSpectrum {
  const known = spectra.get(record);
  if (known !== undefined) return known;
  const scatter = new Float64Array(channelRings * channelDirections);
  for (const { octave, directions } of record.scatter) directions.forEach((value, direction) => { scatter[ringOfOctave(octave) * channelDirections + direction] = value; });
  const bands = record.bands.map(({ perMm, energy }): ContrastBand => ({ perMm, energy: Float64Array.from(energy) }));
  const { source, rmsContrast, tileMm } = record;
  const made: ContrastSpectrum = { bands, scatter, rmsContrast, meanLuminance: record.meanLuminance ?? 1, tileMm, source };
  spectra.set(record, made);
  return made;
}

/** Textures may be compared where this is the same: both rendered under one lamp, or both photographed in one set-up. Undefined where the set-up is not known. */
export function lightKey({ source, lamp, capture }: ContrastRecord): string | undefined {
  if (source === 'photograph') return capture === undefined ? undefined : `photograph ${capture}`;
  return lamp === undefined ? undefined : `rendered ${lamp.elevationDeg} ${lamp.azimuthDeg} ${lamp.ambientShare ?? 0}`;
}
