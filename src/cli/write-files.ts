import type { Issue } from '../issue.ts';
import type { OutputFile } from './verb.ts';
import { mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';

/** Options that name a file to be written. */
const writes: ReadonlySet<string> = new Set(['--out', '--as-met', '--csv']);

/** A fault where a file to be written is one that the command was given to read; `words` are those of the command line. */
export function overwritten(words: readonly string[], files: readonly OutputFile[]): readonly Issue[] | undefined {
  const read = words.filter((word, index) => !word.startsWith('-') && !writes.has(words[index - 1] ?? '')).map((word) => resolve(word));
  const own = files.find((file) => read.includes(resolve(file.path)));
  return own === undefined ? undefined : [{
    code: 'output-is-input', severity: 'error', file: own.path, found: 'the file that was read', expected: 'another name for what is written',
    hint: 'Nothing was written; the file is as it was.',
  }];
}

/**
 * Writes files so that each is there whole or not at all: to a temporary folder beside its place first,
 * renamed only when every one of them has been written. Missing folders are made.
 */
export function writeFiles(files: readonly OutputFile[]): readonly Issue[] {
  const folders: string[] = [];
  try {
    const moves = files.map((file) => {
      const folder = dirname(file.path);
      mkdirSync(folder, { recursive: true });
      const temporary = mkdtempSync(join(folder, '.adjoin-'));
      folders.push(temporary);
      const from = join(temporary, basename(file.path));
      writeFileSync(from, file.content);
      return { from, to: file.path };
    });
    for (const move of moves) renameSync(move.from, move.to);
    return [];
  } catch (error) {
    return [{
      code: 'cannot-write', severity: 'error', file: files.map((file) => file.path).join(', '),
      found: error instanceof Error ? error.message : String(error), expected: 'a place that can be written',
    }];
  } finally {
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  }
}
