import type { Issue, Outcome } from '../issue.ts';
import type { Io } from './verb.ts';

export interface InputText {
  /** Name for messages and the record of inputs: the path's last part, or `standard input`. */
  readonly name: string;
  readonly text: string;
  readonly sha256: string;
}

/** Largest input taken, bytes. */
export const largestInput = 256 * 1024 * 1024;

/** Reads a text file or the standard input (`-`) with the hash of its bytes. */
export function readInput(path: string, io: Io): Outcome<InputText> {
  const bytes = io.read(path);
  if (bytes.value === undefined) return { value: undefined, issues: bytes.issues };
  const name = inputName(path);
  const decoded = decodeText(bytes.value, name);
  return { value: { name, text: decoded.text, sha256: io.sha256(bytes.value) }, issues: [...bytes.issues, ...decoded.issues] };
}

/** The last part of a path; never a folder, so that no path of a machine gets into a report. */
export const inputName = (path: string): string => (path === '-' ? 'standard input' : path.split(/[\\/]/).at(-1) ?? path);

/**
 * UTF-8 with or without a byte order mark, UTF-16 with one; bytes that are none of these are read
 * as Windows-1252 with a warning, since older spreadsheets still write it.
 */
export function decodeText(bytes: Uint8Array, name: string): { readonly text: string; readonly issues: readonly Issue[] } {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), issues: [] };
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), issues: [] };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), issues: [] };
  } catch {
    return {
      text: new TextDecoder('windows-1252').decode(bytes),
      issues: [{
        code: 'text-encoding', severity: 'warning', file: name, found: 'bytes that are not UTF-8', expected: 'UTF-8',
        hint: 'Read as Windows-1252; save the file as UTF-8 if a name looks wrong',
      }],
    };
  }
}
