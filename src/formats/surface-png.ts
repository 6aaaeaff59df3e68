import type { Outcome } from '../issue.ts';
import type { LuminanceMap } from '../texture/index.ts';
import type { SurfaceFaults } from './surface-faults.ts';
import { collectSurfaceFaults } from './surface-faults.ts';
import type { SurfaceFile, SurfaceOptions, TransferCurve } from './surface-file.ts';
import type { GreyPicture } from './surface-png-chunks.ts';
import { readGreyPng } from './surface-png-chunks.ts';

export { isPng } from './surface-png-chunks.ts';

/** Share of points at either end of the scale from which contrast is lost. Assumption, no source. */
const manyClipped = 0.01;

/** Light in proportion, 0..1, of a number of a picture, 0..1. Source: IEC 61966-2-1. */
export const linearLight = (value: number, transfer: TransferCurve): number => {
  if (transfer === 'linear') return value;
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
};

/**
 * Reads a grey PNG picture of 8 or 16 bit as luminance in linear light.
 *
 * Distance of pixels: as the user says, else as the file says; without either it is refused. Transfer curve: as the user says, else as the file
 * says (gAMA, sRGB), else sRGB with a warning. A flat field of the same size divides out light and lens. Transparent points are missing.
 * Source: PNG specification (ISO/IEC 15948).
 */
export function readPng(bytes: Uint8Array, options: SurfaceOptions = {}): Outcome<SurfaceFile> {
  const faults = collectSurfaceFaults(options.file);
  const picture = readGreyPng(bytes, faults);
  const flat = options.flatField === undefined ? undefined : readGreyPng(options.flatField, faults);
  const value = picture === undefined ? undefined : toLight(picture, flat, options, faults);
  return { value: faults.errors() === 0 && value !== undefined ? { kind: 'photograph', format: 'png', picture: value } : undefined, issues: faults.list() };
}

function toLight(picture: GreyPicture, flat: GreyPicture | undefined, options: SurfaceOptions, faults: SurfaceFaults): LuminanceMap | undefined {
  const spacingMm = spacingOf(picture, options, faults);
  if (flat !== undefined && (flat.width !== picture.width || flat.height !== picture.height)) {
    faults.add('flat-field-size', { path: 'flat field', found: `${flat.width} x ${flat.height}`, expected: `${picture.width} x ${picture.height}` });
  }
  if (spacingMm === undefined || faults.errors() > 0) return undefined;
  const transfer = transferOf(picture, options, faults);
  const values = linear(picture, transfer);
  const clipped = picture.values.reduce((count, value) => (value === 0 || value === picture.largest ? count + 1 : count), 0);
  if (clipped > manyClipped * values.length) {
    faults.add('clipped', {
      severity: 'warning', path: 'pixels', found: `${((100 * clipped) / values.length).toFixed(1)} % of the points at an end of the scale`, expected: `at most ${100 * manyClipped} %`,
      hint: 'Contrast is lost there; expose the picture anew.',
    });
  }
  if (flat !== undefined) {
    const even = linear(flat, transfer);
    const mean = even.reduce((sum, value) => sum + value, 0) / even.length;
    for (let index = 0; index < values.length; index += 1) values[index] = even[index] > 0 ? (values[index] * mean) / even[index] : NaN;
  }
  return { width: picture.width, height: picture.height, spacingMm, values, source: 'photograph' };
}

function linear({ values, largest, opaque }: GreyPicture, transfer: TransferCurve): Float64Array {
  const curve = Float64Array.from({ length: largest + 1 }, (_, value) => linearLight(value / largest, transfer));
  const light = Float64Array.from(values, (value) => curve[value]);
  if (opaque !== undefined) for (let index = 0; index < light.length; index += 1) if (opaque[index] === 0) light[index] = NaN;
  return light;
}

function spacingOf({ perMetre }: GreyPicture, { mmPerPixel }: SurfaceOptions, faults: SurfaceFaults): readonly [number, number] | undefined {
  if (mmPerPixel !== undefined) {
    if (mmPerPixel > 0 && mmPerPixel < Infinity) return [mmPerPixel, mmPerPixel];
    faults.add('out-of-range', { path: 'mm per pixel', found: String(mmPerPixel), expected: 'a length above 0' });
    return undefined;
  }
  if (perMetre !== undefined) {
    const spacing = [1000 / perMetre[0], 1000 / perMetre[1]] as const;
    faults.add('spacing-assumed', {
      severity: 'note', path: 'pHYs', found: `${spacing[0].toPrecision(6)} mm a pixel in the file`, expected: 'the scale on the part',
      hint: 'A camera often writes a scale that has nothing to do with the part; state it.',
    });
    return spacing;
  }
  faults.add('spacing-undeclared', { path: 'pixels', found: 'no scale', expected: 'millimetres a pixel', hint: 'Photograph a scale with the part and state --mm-per-pixel.' });
  return undefined;
}

function transferOf({ transfer, gamma }: GreyPicture, options: SurfaceOptions, faults: SurfaceFaults): TransferCurve {
  if (options.transfer !== undefined) {
    if (transfer !== undefined && transfer !== options.transfer) {
      faults.add('transfer-assumed', { severity: 'warning', path: 'transfer', found: `${options.transfer} as asked`, expected: `${transfer} as the file says`, hint: 'Contrast depends on it.' });
    }
    return options.transfer;
  }
  if (transfer !== undefined) return transfer;
  faults.add('transfer-assumed', {
    severity: 'warning', path: 'transfer', found: gamma === undefined ? 'no transfer curve in the file' : `a gamma of ${gamma}`, expected: 'linear or srgb',
    hint: 'Read as srgb; state --transfer, since contrast depends on it.',
  });
  return 'srgb';
}
