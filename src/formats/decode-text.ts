import type { Issue } from '../issue.ts';

/** Present in browsers, workers and Node alike; described here because the core is compiled without any of their types. */
declare const TextDecoder: new (label: string, options?: { fatal?: boolean }) => { decode(bytes: Uint8Array): string };

/** Largest file of readings that is opened, bytes. */
export const largestFile = 64 * 1024 * 1024;

export interface DecodedText {
  /** Undefined where the bytes are no text that can be read. */
  readonly text: string | undefined;
  readonly issues: readonly Issue[];
}

const signatures: readonly (readonly [bytes: readonly number[], what: string])[] = [
  [[0x50, 0x4b, 0x03, 0x04], 'a zip archive or a spreadsheet workbook'],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF document'],
  [[0x89, 0x50, 0x4e, 0x47], 'a PNG image'],
  [[0xff, 0xd8, 0xff], 'a JPEG image'],
  [[0x1f, 0x8b], 'a gzip archive'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'an old spreadsheet or word processor file'],
];

const beginsWith = (bytes: Uint8Array, start: readonly number[]): boolean => start.every((value, index) => bytes[index] === value);

/**
 * The text of a file: UTF-8 with or without a byte-order mark, UTF-16 with one. Bytes that are not UTF-8 are read as
 * Windows-1252 (a superset of Latin-1 in print) and a note says so; bytes that are UTF-8 in one place and not in another are
 * refused, as are NUL characters, files of known binary formats and files longer than `largest`.
 */
export function decodeText(bytes: Uint8Array, file?: string, largest = largestFile): DecodedText {
  const refuse = (code: string, found: string, expected: string, more: Partial<Issue> = {}): DecodedText =>
    ({ text: undefined, issues: [{ code, severity: 'error', ...(file === undefined ? {} : { file }), found, expected, ...more }] });
  if (bytes.length > largest) return refuse('file-too-large', `${bytes.length} bytes`, `at most ${largest}`, { hint: 'Split the file.' });
  const known = signatures.find(([start]) => beginsWith(bytes, start));
  if (known !== undefined) return refuse('not-text', known[1], 'a text file', { hint: 'Save or export it as text; readings as CSV, ISO 28178 or ISO 17972-1.' });
  const wide = beginsWith(bytes, [0xff, 0xfe]) ? 'utf-16le' : beginsWith(bytes, [0xfe, 0xff]) ? 'utf-16be' : undefined;
  const { text, issues } = wide === undefined ? decodeNarrow(bytes, file) : { text: new TextDecoder(wide).decode(bytes), issues: [] };
  const nul = text.indexOf('\0');
  if (nul >= 0) {
    return refuse('control-character', 'the character U+0000', 'text that can be seen', {
      ...placeOf(text, nul), hint: wide === undefined ? 'The file may be UTF-16 without a byte-order mark; save it as UTF-8.' : 'The file is no text file.',
    });
  }
  const broken = text.indexOf('\ufffd');
  if (broken >= 0 && issues.some(({ code }) => code === 'mixed-encoding')) return { text: undefined, issues: issues.map((issue) => ({ ...issue, ...placeOf(text, broken) })) };
  return { text, issues };
}

function decodeNarrow(bytes: Uint8Array, file: string | undefined): { text: string; issues: readonly Issue[] } {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), issues: [] };
  } catch {
    const named = file === undefined ? {} : { file };
    const loose = new TextDecoder('utf-8').decode(bytes);
    if (/[^\0-\x7f\ufffd]/u.test(loose)) {
      return {
        text: loose,
        issues: [{ ...named, code: 'mixed-encoding', severity: 'error', found: 'bytes that are not UTF-8 in a text that is UTF-8 elsewhere', expected: 'one encoding', hint: 'Save the file anew as UTF-8.' }],
      };
    }
    return {
      text: new TextDecoder('windows-1252').decode(bytes),
      issues: [{ ...named, code: 'text-encoding', severity: 'note', found: 'bytes that are not UTF-8', expected: 'UTF-8', hint: 'Read as Windows-1252 (Latin-1); save the file as UTF-8 if a name looks wrong.' }],
    };
  }
}

function placeOf(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset);
  const starts = before.split(/\r\n|\n|\r/u);
  return { line: starts.length, column: (starts.at(-1) ?? '').length + 1 };
}
