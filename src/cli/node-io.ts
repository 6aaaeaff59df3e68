import type { Issue, Outcome } from '../issue.ts';
import type { Io, Terminal } from './verb.ts';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { inputName, largestInput } from './read-input.ts';

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'no such file', EACCES: 'no permission to read', EISDIR: 'a folder', ENOTDIR: 'a path through something that is not a folder',
};

/** Seconds since the process began. */
export const secondsNow = (): number => performance.now() / 1000;

/** The world outside, by way of Node. */
export function nodeIo(terminal: Terminal, chromium?: string, progress?: Io['progress']): Io {
  return {
    read: readBytes,
    exists: existsSync,
    sha256: (bytes) => createHash('sha256').update(bytes).digest('hex'),
    // Loaded when it is asked for: few commands print.
    printPdf: async (page) => (await import('./pdf/print-pdf.ts')).printPdf(page, chromium),
    terminal,
    clock: secondsNow,
    ...(progress === undefined ? {} : { progress }),
  };
}

function readBytes(path: string): Outcome<Uint8Array> {
  try {
    if (path !== '-' && statSync(path).size > largestInput) {
      return { value: undefined, issues: [unreadable(path, 'file-too-large', `more than ${largestInput / 2 ** 20} MiB`, 'a smaller file')] };
    }
    return { value: readFileSync(path === '-' ? 0 : path), issues: [] };
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    return { value: undefined, issues: [unreadable(path, 'cannot-read', reasons[code] ?? (error instanceof Error ? error.message : String(error)), 'a file that can be read, or `-` for the standard input')] };
  }
}

const unreadable = (path: string, code: string, found: string, expected: string): Issue =>
  ({ code, severity: 'error', file: path === '-' ? inputName(path) : path, found, expected });
