import type { Outcome } from '../issue.ts';
import { heightMap } from '../texture/index.ts';
import { collectSurfaceFaults } from './surface-faults.ts';
import type { SurfaceFaults } from './surface-faults.ts';
import type { SurfaceFile, SurfaceOptions } from './surface-file.ts';
import { gridFits } from './surface-limits.ts';
import { asciiText } from './surface-numbers.ts';
import { readSdfHeights } from './surface-sdf-ascii.ts';
import { readSdfBinary, sdfBinaryHeader } from './surface-sdf-binary.ts';
import { readSdfHeader } from './surface-sdf-header.ts';

/** Header of a surface data file, lengths in metres. */
export interface SdfHeader {
  readonly points: number;
  readonly profiles: number;
  readonly xScale: number;
  readonly yScale: number;
  readonly zScale: number;
  readonly compression: number;
  readonly dataType: number;
  readonly checkType: number;
}

/** Begins with a for ASCII or b for binary and the name and number of the version. */
export const isSdf = (bytes: Uint8Array): boolean => /^[ab][A-Z]{2,4}-V?\d\.\d/u.test(asciiText(bytes, 0, Math.min(bytes.length, 10)));

/**
 * Reads a surface data file, ASCII or binary.
 *
 * Heights are data times Zscale. Points marked BAD are missing; in binary data the lowest value of a signed type and what is not finite (from memory).
 * A single profile is a surface of one row. All faults of the header are listed together, then those of the data with line and column.
 * Source: ISO 25178-71; header and types as in Stout et al., EUR 15178 EN, 1993.
 */
export function readSdf(bytes: Uint8Array, options: SurfaceOptions = {}): Outcome<SurfaceFile> {
  const faults = collectSurfaceFaults(options.file);
  const version = /^[ab][A-Z]{2,4}-V?\d\.\d/u.exec(asciiText(bytes, 0, Math.min(bytes.length, 10)))?.[0] ?? '';
  if (!/^[ab](?:ISO|BCR)-1\.0$/u.test(version)) {
    faults.add('unknown-version', { severity: 'warning', path: 'header', line: 1, found: JSON.stringify(version), expected: `${version.startsWith('b') ? 'bISO-1.0' : 'aISO-1.0'}` });
  }
  const value = version.startsWith('b') ? binary(bytes, faults) : ascii(bytes, faults);
  return { value: faults.errors() === 0 && value !== undefined ? { kind: 'heights', format: 'sdf', map: value } : undefined, issues: faults.list() };
}

function ascii(bytes: Uint8Array, faults: SurfaceFaults) {
  const { header, dataAt, line } = readSdfHeader(bytes, faults);
  if (header === undefined || !usable(header, faults)) return undefined;
  const heights = readSdfHeights(bytes, dataAt, line, header, faults);
  return heights && mapOf(header, heights, faults);
}

function binary(bytes: Uint8Array, faults: SurfaceFaults) {
  const header = sdfBinaryHeader(bytes, faults);
  if (header === undefined || !usable(header, faults)) return undefined;
  const heights = readSdfBinary(bytes, header, faults);
  return heights && mapOf(header, heights, faults);
}

function usable(header: SdfHeader, faults: SurfaceFaults): boolean {
  const positive = (name: string, value: number): void => {
    if (!(value > 0 && value < Infinity)) faults.add('out-of-range', { path: `header.${name}`, found: String(value), expected: 'a length in metres above 0' });
  };
  positive('Xscale', header.xScale);
  // A profile has no second axis; its Yscale is written as 0.
  if (header.profiles !== 1) positive('Yscale', header.yScale);
  if (!(Number.isFinite(header.zScale) && header.zScale !== 0)) {
    faults.add('out-of-range', { path: 'header.Zscale', found: String(header.zScale), expected: 'a number of metres other than 0' });
  }
  if (header.compression !== 0) {
    faults.add('compressed', { path: 'header.Compression', found: String(header.compression), expected: '0, no compression', hint: 'Save the surface without compression.' });
  }
  if (!Number.isInteger(header.dataType) || header.dataType < 0 || header.dataType > 7) {
    faults.add('unknown-type', { path: 'header.DataType', found: String(header.dataType), expected: '0 to 7' });
  }
  if (header.checkType !== 0) {
    faults.add('bad-checksum', { severity: 'warning', path: 'header.CheckType', found: String(header.checkType), expected: '0, no checksum', hint: 'The checksum is not checked.' });
  }
  return gridFits(header.points, header.profiles, faults, 'header.NumPoints') && faults.errors() === 0;
}

function mapOf(header: SdfHeader, heights: Float64Array, faults: SurfaceFaults) {
  if (faults.errors() > 0) return undefined;
  const scale = header.zScale * 1e6;
  for (let index = 0; index < heights.length; index += 1) heights[index] *= scale;
  const yScale = header.profiles === 1 && !(header.yScale > 0) ? header.xScale : header.yScale;
  const map = heightMap(header.points, header.profiles, [header.xScale * 1000, yScale * 1000], heights);
  if (map.missing === heights.length) faults.add('no-heights', { path: 'data', found: 'no measured point', expected: 'at least one' });
  return map;
}
