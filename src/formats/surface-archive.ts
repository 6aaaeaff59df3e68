import { inflateSync } from 'fflate';
import { crc32 } from './surface-checksums.ts';
import type { SurfaceFaults } from './surface-faults.ts';
import { surfaceLimits } from './surface-limits.ts';

/** A zip archive of which parts are unpacked one by one, none larger than it is allowed to be. */
export interface Archive {
  readonly names: readonly string[];
  /** The bytes of a part; undefined, with a fault, where it is damaged or larger than `most`. */
  read(name: string, most: number): Uint8Array | undefined;
}

interface Entry {
  readonly method: number;
  readonly flags: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly offset: number;
}

const endSignature = 0x06054b50;
const entrySignature = 0x02014b50;
const localSignature = 0x04034b50;

/**
 * The list of parts of a zip archive. Nothing is unpacked until it is asked for, and then never beyond the size that the archive
 * declares and the caller allows, so that no small file can fill the memory.
 *
 * Stored and deflated parts; no encryption, no archives beyond 4 GiB. Source: ISO/IEC 21320-1.
 */
export function openArchive(bytes: Uint8Array, faults: SurfaceFaults): Archive | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const end = endOfArchive(view);
  const damaged = (found: string, expected: string): undefined => {
    faults.add('zip-damaged', { path: 'archive', found, expected, hint: 'The file may have been cut short.' });
    return undefined;
  };
  if (end === undefined) return damaged('no directory at the end', 'a zip archive');
  const count = view.getUint16(end + 10, true);
  if (count > surfaceLimits.parts) return damaged(`${count} parts`, `at most ${surfaceLimits.parts}`);
  const entries = new Map<string, Entry>();
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > bytes.length || view.getUint32(at, true) !== entrySignature) return damaged(`no entry ${index + 1} of the directory`, `${count} entries`);
    const nameLength = view.getUint16(at + 28, true);
    const name = partName(bytes.subarray(at + 46, at + 46 + nameLength));
    if (entries.has(name)) return damaged(`the part ${JSON.stringify(name.slice(0, 60))} twice`, 'each part once');
    entries.set(name, {
      flags: view.getUint16(at + 8, true), method: view.getUint16(at + 10, true), crc: view.getUint32(at + 16, true),
      packed: view.getUint32(at + 20, true), size: view.getUint32(at + 24, true), offset: view.getUint32(at + 42, true),
    });
    at += 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return {
    names: [...entries.keys()],
    read(name, most) {
      const entry = entries.get(name);
      if (entry === undefined) {
        faults.add('missing-part', { path: name, found: 'no such part', expected: `one of ${[...entries.keys()].slice(0, 10).join(', ')}` });
        return undefined;
      }
      return unpack(bytes, view, name, entry, most, faults);
    },
  };
}

/** The record at the end, behind which a comment of up to 65,535 bytes may stand. */
function endOfArchive(view: DataView): number | undefined {
  for (let at = view.byteLength - 22; at >= Math.max(0, view.byteLength - 22 - 65_535); at -= 1) {
    if (view.getUint32(at, true) === endSignature && at + 22 + view.getUint16(at + 20, true) === view.byteLength) return at;
  }
  return undefined;
}

const partName = (bytes: Uint8Array): string => String.fromCharCode(...bytes).replaceAll('\\', '/').replace(/^\.?\//u, '');

function unpack(bytes: Uint8Array, view: DataView, name: string, entry: Entry, most: number, faults: SurfaceFaults): Uint8Array | undefined {
  const refuse = (code: 'zip-damaged' | 'file-too-large' | 'compressed', found: string, expected: string): undefined => {
    faults.add(code, { path: name, found, expected });
    return undefined;
  };
  if (entry.size > most) return refuse('file-too-large', `${entry.size} bytes unpacked`, `at most ${most}`);
  if ((entry.flags & 1) !== 0) return refuse('compressed', 'an encrypted part', 'a part that is not encrypted');
  if (entry.offset + 30 > bytes.length || view.getUint32(entry.offset, true) !== localSignature) return refuse('zip-damaged', 'no part where the directory points', 'a part');
  const start = entry.offset + 30 + view.getUint16(entry.offset + 26, true) + view.getUint16(entry.offset + 28, true);
  const packed = bytes.subarray(start, start + entry.packed);
  if (packed.length < entry.packed) return refuse('zip-damaged', `${packed.length} bytes`, `${entry.packed}`);
  let content: Uint8Array;
  if (entry.method === 0) content = packed;
  else if (entry.method === 8) {
    try {
      // One byte of room too many, which stays empty in a sound part.
      content = entry.packed === 0 ? packed : inflateSync(packed, { out: new Uint8Array(entry.size + 1) });
    } catch (error) {
      return refuse('zip-damaged', error instanceof Error ? error.message : 'data that cannot be unpacked', 'deflated data');
    }
  } else return refuse('compressed', `method ${entry.method}`, 'stored or deflated data');
  if (content.length !== entry.size) return refuse('zip-damaged', `${content.length > entry.size ? 'more' : 'fewer'} bytes than declared`, `${entry.size} bytes unpacked`);
  return crc32(content) === entry.crc ? content : refuse('zip-damaged', 'another checksum', 'the checksum of the directory');
}
