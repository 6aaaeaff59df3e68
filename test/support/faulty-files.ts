import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ExpectedIssue } from '../cabin/faulty/cases.ts';

/** A file that must be refused: the arguments of the command line, with the file's path from `test/`, and the issues it must give. */
export interface FaultyFile {
  readonly file: string;
  readonly verb: 'check' | 'colour' | 'difference' | 'metamerism' | 'gloss';
  readonly args: readonly string[];
  readonly issues: readonly ExpectedIssue[];
}

export const testFolder = join(import.meta.dirname, '..');

export const faultyFiles = JSON.parse(readFileSync(join(testFolder, 'cabin', 'faulty', 'manifest.json'), 'utf8')) as readonly FaultyFile[];

export const faultyText = ({ file }: FaultyFile): string => readFileSync(join(testFolder, file), 'utf8');
