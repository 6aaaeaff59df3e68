import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { decodeText, readerById, readText, writers } from '../../src/formats/index.ts';
import type { ReadingSet } from '../../src/formats/index.ts';
import { mutateFile } from './mutate-file.ts';
import { seededNumbers } from './seeded-numbers.ts';

const root = join(import.meta.dirname, '..', '..');
const fixtures = join(root, 'test/formats/fixtures');
const load = (name: string): Uint8Array => readFileSync(join(fixtures, name));

/** A set of readings of the product's own, written by its writer from a fixture: the seed for the reader of JSON. */
function ownJson(name: string): Uint8Array {
  const { text } = decodeText(load(name));
  const set = readText({ text: text ?? '' }).value;
  const json = set && writers.find(({ id }) => id === 'json')?.write(set).value;
  return new TextEncoder().encode(json ?? '');
}

/** The files that are mutated for each reader. */
export const fuzzSeeds: Readonly<Record<string, () => readonly Uint8Array[]>> = {
  csv: () => ['spectra-wide.csv', 'spectra-long.tsv', 'door-gloss-texture.csv', 'colours.csv', 'differences.tsv'].map(load),
  iso28178: () => [load('two-tables.txt')],
  iso17972: () => [load('plaques.cxf')],
  tm27: () => [load('booth-lamp.spdx')],
  json: () => [ownJson('colours.csv'), ownJson('plaques.cxf'), ownJson('booth-lamp.spdx')],
};

export interface FuzzFigures {
  readonly files: number;
  readonly accepted: number;
  readonly refused: number;
  /** Files that no text was made of: an encoding that is mixed, a NUL. */
  readonly undecoded: number;
  /** Exceptions, broken promises of the outcome, and sets that could not be written: each a bug. */
  readonly failures: readonly string[];
  readonly slowestMs: number;
}

/** Feeds mutated files to one reader and checks what every reader promises. The same seed gives the same files. */
export function fuzzReader(id: string, count: number, seed: number): FuzzFigures {
  const reader = readerById(id);
  const seeds = fuzzSeeds[id]?.() ?? [];
  if (reader === undefined || seeds.length === 0) throw new Error(`no reader ${id}`);
  const random = seededNumbers(seed);
  const failures: string[] = [];
  let accepted = 0;
  let undecoded = 0;
  let slowestMs = 0;
  for (let index = 0; index < count; index += 1) {
    const bytes = mutateFile(seeds[index % seeds.length] ?? new Uint8Array(), random);
    const start = performance.now();
    try {
      const { text, issues: early } = decodeText(bytes);
      if (text === undefined) {
        undecoded += 1;
        if (!early.some(({ severity }) => severity === 'error')) failures.push(`${index}: refused without an error`);
      } else {
        reader.sniff(text);
        const { value, issues } = reader.read({ text });
        const errors = issues.filter(({ severity }) => severity === 'error');
        if ((value === undefined) === (errors.length === 0)) failures.push(`${index}: value and errors do not agree`);
        if (value !== undefined) {
          accepted += 1;
          const broken = brokenPromise(value);
          if (broken !== undefined) failures.push(`${index}: ${broken}`);
        }
      }
    } catch (error) {
      failures.push(`${index}: ${error instanceof Error ? error.stack ?? error.message : String(error)}`);
    }
    slowestMs = Math.max(slowestMs, performance.now() - start);
  }
  return { files: count, accepted, refused: count - accepted - undecoded, undecoded, failures, slowestMs };
}

/** What is wrong with a set that a reader let through; it must be valid for the reader of JSON, whose schema is the document's. */
function brokenPromise(set: ReadingSet): string | undefined {
  const json = writers.find(({ id }) => id === 'json')?.write(set).value ?? '';
  const again = readerById('json')?.read({ text: json });
  if (again?.value === undefined) return `not valid as JSON: ${JSON.stringify(again?.issues[0])}`;
  if (again.value.records.length !== set.records.length) return 'readings lost in JSON';
  for (const writer of writers) {
    const written = writer.write(set, { created: '2031-01-01' });
    if (written.value === undefined) {
      if (!written.issues.some(({ severity }) => severity === 'error')) return `${writer.id} refused without an error`;
      continue;
    }
    const reread = readText({ text: written.value });
    if (reread.value === undefined) return `${writer.id} wrote what is refused: ${JSON.stringify(reread.issues.find(({ severity }) => severity === 'error'))}`;
    if (reread.value.records.length !== set.records.length) return `${writer.id} wrote ${set.records.length} readings, read ${reread.value.records.length}`;
  }
  return undefined;
}
