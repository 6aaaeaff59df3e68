import type { SurfaceFaults } from './surface-faults.ts';
import type { SdfHeader } from './surface-sdf.ts';

/** Bytes of the header: version 8, maker 10, two dates 12 each, two counts 2 each, four scales 8 each, three codes. */
const headerBytes = 8 + 10 + 12 + 12 + 2 + 2 + 4 * 8 + 3;

/** The header of a binary surface data file, little-endian. */
export function sdfBinaryHeader(bytes: Uint8Array, faults: SurfaceFaults): SdfHeader | undefined {
  if (bytes.length < headerBytes) {
    faults.add('missing-data', { path: 'header', found: `${bytes.length} bytes`, expected: `a header of ${headerBytes} bytes`, hint: 'The file may have been cut short.' });
    return undefined;
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  return {
    points: view.getUint16(42, true), profiles: view.getUint16(44, true),
    xScale: view.getFloat64(46, true), yScale: view.getFloat64(54, true), zScale: view.getFloat64(62, true),
    compression: bytes[78], dataType: bytes[79], checkType: bytes[80],
  };
}

interface SdfType {
  readonly size: number;
  readonly read: (view: DataView, at: number) => number;
  /** Stands for a point that was not measured. */
  readonly missing?: number;
}

const types: readonly SdfType[] = [
  { size: 1, read: (view, at) => view.getUint8(at) },
  { size: 2, read: (view, at) => view.getUint16(at, true) },
  { size: 4, read: (view, at) => view.getUint32(at, true) },
  { size: 4, read: (view, at) => view.getFloat32(at, true), missing: Math.fround(-3.4028234663852886e38) },
  { size: 1, read: (view, at) => view.getInt8(at), missing: -128 },
  { size: 2, read: (view, at) => view.getInt16(at, true), missing: -32768 },
  { size: 4, read: (view, at) => view.getInt32(at, true), missing: -2147483648 },
  { size: 8, read: (view, at) => view.getFloat64(at, true), missing: -Number.MAX_VALUE },
];

/** The data of a binary surface data file, profile after profile; what follows them is the trailer and not read. */
export function readSdfBinary(bytes: Uint8Array, { points, profiles, dataType }: SdfHeader, faults: SurfaceFaults): Float64Array | undefined {
  const { size, read, missing } = types[dataType];
  const wanted = points * profiles;
  if (bytes.length - headerBytes < wanted * size) {
    faults.add('missing-data', {
      path: 'data', found: `${bytes.length - headerBytes} bytes`, expected: `${wanted * size} bytes for ${profiles} profiles of ${points} points`, hint: 'The file may have been cut short.',
    });
    return undefined;
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const heights = new Float64Array(wanted);
  for (let index = 0, at = headerBytes; index < wanted; index += 1, at += size) {
    const value = read(view, at);
    heights[index] = value === missing ? NaN : value;
  }
  return heights;
}
