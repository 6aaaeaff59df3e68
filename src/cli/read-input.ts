import type { Outcome } from '../issue.ts';
import type { Io } from './verb.ts';
import { decodeText } from '../formats/decode-text.ts';

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
  const { text, issues } = decodeText(bytes.value, name, largestInput);
  return { value: text === undefined ? undefined : { name, text, sha256: io.sha256(bytes.value) }, issues: [...bytes.issues, ...issues] };
}

/** The last part of a path; never a folder, so that no path of a machine gets into a report. */
export const inputName = (path: string): string => (path === '-' ? 'standard input' : path.split(/[\\/]/).at(-1) ?? path);
