import type { Outcome } from '../issue.ts';
import { csvReader } from './csv-reader.ts';
import { decodeText } from './decode-text.ts';
import type { FormatInput, FormatReader, ReadOptions } from './format-reader.ts';
import { iso17972Reader } from './iso17972-reader.ts';
import { iso28178Reader } from './iso28178-reader.ts';
import { jsonReader } from './json-reader.ts';
import type { ReadingSet } from './reading-set.ts';
import { tm27Reader } from './tm27-reader.ts';

export const readers: readonly FormatReader[] = [csvReader, iso28178Reader, iso17972Reader, tm27Reader, jsonReader];

export const readerById = (id: string): FormatReader | undefined => readers.find((reader) => reader.id === id);

export interface Sniffed {
  readonly reader: FormatReader;
  /** Above 0, up to 1. */
  readonly confidence: number;
}

/** The formats that a text may be of by its content, likeliest first. */
export const sniffFormats = (text: string): readonly Sniffed[] =>
  readers.map((reader) => ({ reader, confidence: reader.sniff(text) })).filter(({ confidence }) => confidence > 0).toSorted((a, b) => b.confidence - a.confidence);

/** Reads a text by the format that its content shows; a text of none is refused. */
export function readText(input: FormatInput, options: ReadOptions = {}): Outcome<ReadingSet> {
  const [best] = sniffFormats(input.text);
  if (best !== undefined) return best.reader.read(input, options);
  const named = input.file === undefined ? {} : { file: input.file };
  const empty = input.text.trim() === '';
  return {
    value: undefined,
    issues: [{
      ...named, code: empty ? 'empty-file' : 'unknown-format', severity: 'error', line: 1, column: 1, found: empty ? 'an empty file' : JSON.stringify(input.text.trimStart().slice(0, 40)),
      expected: readers.map(({ label }) => label).join('; '),
    }],
  };
}

/** Reads the bytes of a file: decodes, sniffs, reads. */
export function readBytes(bytes: Uint8Array, about: Omit<FormatInput, 'text'> = {}, options: ReadOptions = {}): Outcome<ReadingSet> {
  const { text, issues } = decodeText(bytes, about.file);
  if (text === undefined) return { value: undefined, issues };
  const read = readText({ ...about, text }, options);
  return { value: read.value, issues: [...issues, ...read.issues] };
}
