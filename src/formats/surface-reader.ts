import type { Outcome } from '../issue.ts';
import { readHeightGrid } from './surface-csv.ts';
import { collectSurfaceFaults } from './surface-faults.ts';
import type { SurfaceFile, SurfaceOptions } from './surface-file.ts';
import { surfaceLimits } from './surface-limits.ts';
import { isPng, readPng } from './surface-png.ts';
import { isSdf, readSdf } from './surface-sdf.ts';
import { isZip, readX3p } from './surface-x3p.ts';

/**
 * Reads a file of a surface by its content, whatever its name: SDF (ISO 25178-71), X3P (ISO 25178-72), grey PNG, or a grid of numbers.
 *
 * The whole file or nothing: with an error among the issues there is no value.
 */
export function readSurface(bytes: Uint8Array, options: SurfaceOptions = {}): Outcome<SurfaceFile> {
  const faults = collectSurfaceFaults(options.file);
  if (bytes.length > surfaceLimits.bytes) {
    faults.add('file-too-large', { found: `${bytes.length} bytes`, expected: `at most ${surfaceLimits.bytes}` });
    return { value: undefined, issues: faults.list() };
  }
  if (bytes.length === 0) {
    faults.add('empty-file', { found: 'an empty file', expected: 'a surface' });
    return { value: undefined, issues: faults.list() };
  }
  if (isPng(bytes)) return readPng(bytes, options);
  if (isZip(bytes)) return readX3p(bytes, options);
  if (isSdf(bytes)) return readSdf(bytes, options);
  return readHeightGrid(bytes, options);
}
