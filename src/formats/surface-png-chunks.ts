import { unzlibSync } from 'fflate';
import { crc32 } from './surface-checksums.ts';
import type { SurfaceFaults } from './surface-faults.ts';
import type { TransferCurve } from './surface-file.ts';
import { gridFits } from './surface-limits.ts';
import { asciiText } from './surface-numbers.ts';
import type { PngLayout } from './surface-png-pixels.ts';
import { greyPixels, packedBytes } from './surface-png-pixels.ts';

/** A grey picture as written. */
export interface GreyPicture {
  readonly width: number;
  readonly height: number;
  /** 255 or 65535. */
  readonly largest: number;
  readonly values: Uint16Array;
  /** 0 where a point is fully transparent; absent without transparency. */
  readonly opaque: Uint8Array | undefined;
  readonly perMetre: readonly [number, number] | undefined;
  readonly transfer: TransferCurve | undefined;
  readonly gamma: number | undefined;
}

const signature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Begins with the signature of PNG. */
export const isPng = (bytes: Uint8Array): boolean => signature.every((byte, index) => bytes[index] === byte);

interface Chunk {
  readonly type: string;
  readonly data: Uint8Array;
}

/** Reads a grey PNG picture of 8 or 16 bit, interlaced or not; faults with the name of the chunk. */
export function readGreyPng(bytes: Uint8Array, faults: SurfaceFaults): GreyPicture | undefined {
  if (!isPng(bytes)) {
    faults.add('unknown-format', { path: 'signature', found: 'another start', expected: 'a PNG picture' });
    return undefined;
  }
  const chunks = readChunks(bytes, faults);
  const layout = chunks && readLayout(chunks[0], faults);
  if (chunks === undefined || layout === undefined) return undefined;
  const packed = joined(chunks.filter(({ type }) => type === 'IDAT').map(({ data }) => data));
  if (packed.length === 0) {
    faults.add('missing-part', { path: 'IDAT', found: 'no picture data', expected: 'at least one IDAT chunk' });
    return undefined;
  }
  const wanted = packedBytes(layout);
  let raw: Uint8Array;
  try {
    // One byte of room too many, which stays empty in a sound picture.
    raw = unzlibSync(packed, { out: new Uint8Array(wanted + 1) });
  } catch (error) {
    faults.add('zip-damaged', { path: 'IDAT', found: error instanceof Error ? error.message : 'data that cannot be unpacked', expected: 'deflated data' });
    return undefined;
  }
  if (raw.length !== wanted) {
    faults.add(raw.length < wanted ? 'missing-data' : 'extra-data', { path: 'IDAT', found: `${raw.length < wanted ? raw.length : 'more'} bytes`, expected: `${wanted} for ${layout.width} x ${layout.height}` });
    return undefined;
  }
  const pixels = greyPixels(raw, layout, faults);
  return pixels && { width: layout.width, height: layout.height, largest: layout.depth === 8 ? 255 : 65_535, ...pixels, ...declarations(chunks) };
}

function readChunks(bytes: Uint8Array, faults: SurfaceFaults): Chunk[] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const chunks: Chunk[] = [];
  for (let at = 8; at + 12 <= bytes.length;) {
    const length = view.getUint32(at);
    const type = asciiText(bytes, at + 4, at + 8);
    if (at + 12 + length > bytes.length) break;
    if (crc32(bytes.subarray(at + 4, at + 8 + length)) !== view.getUint32(at + 8 + length)) {
      faults.add('bad-checksum', { path: JSON.stringify(type), found: 'another checksum', expected: 'the checksum of the chunk' });
      return undefined;
    }
    chunks.push({ type, data: bytes.subarray(at + 8, at + 8 + length) });
    if (type === 'IEND') return chunks;
    at += 12 + length;
  }
  faults.add('missing-data', { path: 'IEND', found: 'the end of the file', expected: 'the chunk IEND', hint: 'The file may have been cut short.' });
  return undefined;
}

function readLayout(first: Chunk | undefined, faults: SurfaceFaults): PngLayout | undefined {
  if (first?.type !== 'IHDR' || first.data.length !== 13) {
    faults.add('missing-part', { path: 'IHDR', found: first?.type ?? 'nothing', expected: 'the chunk IHDR first' });
    return undefined;
  }
  const view = new DataView(first.data.buffer, first.data.byteOffset, 13);
  const [width, height, depth, colour, interlace] = [view.getUint32(0), view.getUint32(4), first.data[8], first.data[9], first.data[12]];
  if ((colour !== 0 && colour !== 4) || (depth !== 8 && depth !== 16)) {
    const kinds: Readonly<Record<number, string>> = { 0: 'grey', 2: 'colour', 3: 'a palette', 4: 'grey with transparency', 6: 'colour with transparency' };
    faults.add('not-grey', { path: 'IHDR', found: `${kinds[colour] ?? `colour type ${colour}`} of ${depth} bit`, expected: 'grey of 8 or 16 bit', hint: 'Turn the picture to grey from its linear data.' });
  }
  if (first.data[10] !== 0 || first.data[11] !== 0 || interlace > 1) {
    faults.add('unknown-type', { path: 'IHDR', found: `methods ${first.data[10]}, ${first.data[11]}, ${interlace}`, expected: 'compression 0, filter 0, interlace 0 or 1' });
  }
  const fits = gridFits(width, height, faults, 'IHDR');
  return fits && faults.errors() === 0 ? { width, height, depth: depth === 8 ? 8 : 16, alpha: colour === 4, interlaced: interlace === 1 } : undefined;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

function declarations(chunks: readonly Chunk[]): Pick<GreyPicture, 'perMetre' | 'transfer' | 'gamma'> {
  const number = (type: string, at: number): number | undefined => {
    const data = chunks.find((chunk) => chunk.type === type)?.data;
    return data === undefined || data.length < at + 4 ? undefined : new DataView(data.buffer, data.byteOffset, data.length).getUint32(at);
  };
  const [x, y, gamma] = [number('pHYs', 0), number('pHYs', 4), number('gAMA', 0)];
  const inMetres = chunks.find(({ type }) => type === 'pHYs')?.data[8] === 1;
  const srgb = chunks.some(({ type }) => type === 'sRGB') || gamma === 45_455;
  return {
    perMetre: inMetres && x !== undefined && y !== undefined && x > 0 && y > 0 ? [x, y] : undefined,
    transfer: srgb ? 'srgb' : gamma === 100_000 ? 'linear' : undefined,
    gamma: gamma === undefined ? undefined : gamma / 100_000,
  };
}
