import type { Outcome } from '../issue.ts';
import { heightMap } from '../texture/index.ts';
import type { Archive } from './surface-archive.ts';
import { openArchive } from './surface-archive.ts';
import { md5 } from './surface-checksums.ts';
import type { SurfaceFaults } from './surface-faults.ts';
import { collectSurfaceFaults } from './surface-faults.ts';
import type { SurfaceFile, SurfaceOptions } from './surface-file.ts';
import { surfaceLimits } from './surface-limits.ts';
import { asciiText } from './surface-numbers.ts';
import type { X3pHeader, X3pNumber } from './surface-x3p-header.ts';
import { readX3pHeader } from './surface-x3p-header.ts';

/** Begins as a zip archive does. */
export const isZip = (bytes: Uint8Array): boolean => bytes.length > 4 && asciiText(bytes, 0, 4) === 'PK\u0003\u0004';

/**
 * Reads an X3P archive: header in main.xml, heights in a binary part or in the header itself, lengths in metres.
 *
 * Grids with even spacing on both axes (profiles are grids of one row); of several layers the first. A point is missing where its bit in the part
 * of valid points is 0 (bit k of byte k / 8, from the lowest) or its height is not a number. Checksums are checked where given.
 * Integer heights are scaled by the increment of the z axis. Source: ISO 25178-72; ISO 5436-2.
 */
export function readX3p(bytes: Uint8Array, options: SurfaceOptions = {}): Outcome<SurfaceFile> {
  const faults = collectSurfaceFaults(options.file);
  const map = readArchive(bytes, options, faults);
  return { value: faults.errors() === 0 && map !== undefined ? { kind: 'heights', format: 'x3p', map } : undefined, issues: faults.list() };
}

function readArchive(bytes: Uint8Array, options: SurfaceOptions, faults: SurfaceFaults) {
  const archive = openArchive(bytes, faults);
  const main = archive?.read('main.xml', surfaceLimits.header);
  if (archive === undefined || main === undefined) return undefined;
  checkMain(archive, main, faults);
  const header = readX3pHeader(main, options.file, faults);
  if (header === undefined) return undefined;
  const count = header.width * header.height;
  const heights = header.list ?? binaryHeights(archive, header, count * header.layers, faults)?.subarray(0, count);
  if (heights === undefined) return undefined;
  if (header.validPart !== undefined) {
    const valid = archive.read(header.validPart.name, Math.ceil((count * header.layers) / 8) + 8);
    if (valid === undefined) return undefined;
    checkDigest(valid, header.validPart.md5, header.validPart.name, faults);
    if (valid.length * 8 < count) faults.add('missing-data', { path: header.validPart.name, found: `${valid.length * 8} bits`, expected: `${count}` });
    for (let index = 0; index < count; index += 1) if (((valid[index >> 3] >> (index & 7)) & 1) === 0) heights[index] = NaN;
  }
  const scale = header.zType === 'I' || header.zType === 'L' ? header.zIncrement : 1;
  for (let index = 0; index < count; index += 1) heights[index] = (heights[index] * scale + header.zOffset) * 1e6;
  const map = heightMap(header.width, header.height, [header.spacing[0] * 1000, header.spacing[1] * 1000], heights);
  if (map.missing === count) faults.add('no-heights', { path: 'main.xml', found: 'no measured point', expected: 'at least one' });
  return map;
}

function checkMain(archive: Archive, main: Uint8Array, faults: SurfaceFaults): void {
  if (!archive.names.includes('md5checksum.hex')) return;
  const digest = archive.read('md5checksum.hex', 4096);
  if (digest !== undefined) checkDigest(main, /[\da-f]{32}/iu.exec(asciiText(digest, 0, digest.length))?.[0], 'main.xml', faults);
}

function checkDigest(bytes: Uint8Array, expected: string | undefined, path: string, faults: SurfaceFaults): void {
  if (expected === undefined) return;
  const found = md5(bytes);
  if (found !== expected.toLowerCase()) {
    faults.add('bad-checksum', { severity: 'warning', path, found: `MD5 ${found}`, expected: `MD5 ${expected.toLowerCase().slice(0, 60)}`, hint: 'The file was changed after it was written.' });
  }
}

const numbers: Readonly<Record<X3pNumber, { readonly size: number; readonly read: (view: DataView, at: number) => number }>> = {
  I: { size: 2, read: (view, at) => view.getInt16(at, true) },
  L: { size: 4, read: (view, at) => view.getInt32(at, true) },
  F: { size: 4, read: (view, at) => view.getFloat32(at, true) },
  D: { size: 8, read: (view, at) => view.getFloat64(at, true) },
};

function binaryHeights(archive: Archive, { dataPart, zType }: X3pHeader, count: number, faults: SurfaceFaults): Float64Array | undefined {
  if (dataPart === undefined) return undefined;
  const { size, read } = numbers[zType];
  const data = archive.read(dataPart.name, count * size + 64);
  if (data === undefined) return undefined;
  checkDigest(data, dataPart.md5, dataPart.name, faults);
  if (data.length !== count * size) {
    faults.add(data.length < count * size ? 'missing-data' : 'extra-data', { path: dataPart.name, found: `${data.length} bytes`, expected: `${count * size} bytes for ${count} heights of type ${zType}` });
    return undefined;
  }
  const view = new DataView(data.buffer, data.byteOffset, data.length);
  const heights = new Float64Array(count);
  for (let index = 0; index < count; index += 1) heights[index] = read(view, index * size);
  return heights;
}
