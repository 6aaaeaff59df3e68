import { describe, expect, it } from 'vitest';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { cabinIssueCodes } from '../../src/cabin/issue-codes.ts';
import { tableIssueCodes } from '../../src/formats/table-issue-codes.ts';
import { readDifferenceTable } from '../../src/formats/difference-table.ts';
import { readGlossTable } from '../../src/formats/gloss-table.ts';
import { readSpectraTable } from '../../src/formats/spectra-table.ts';
import type { Issue, Outcome } from '../../src/issue.ts';
import { faultyFiles, faultyText } from '../support/faulty-files.ts';
import type { FaultyFile } from '../support/faulty-files.ts';
import { faultyBase } from './faulty/base.ts';

const readers: Readonly<Record<FaultyFile['verb'], (text: string, file: string) => Outcome<unknown>>> = {
  check: parseCabin,
  colour: (text, file) => readSpectraTable(text, { file }),
  metamerism: (text, file) => readSpectraTable(text, { file, key: ['pair', 'role'] }),
  difference: readDifferenceTable,
  gloss: readGlossTable,
};

const errorsOf = (issues: readonly Issue[]): Issue[] => issues.filter((issue) => issue.severity === 'error');

describe('faulty files', () => {
  it('are made from a base that has no fault', () => {
    expect(restoreCabin(JSON.parse(JSON.stringify(faultyBase()))).issues).toEqual([]);
  });

  it('are sixty distinct ones at least', () => {
    expect(new Set(faultyFiles.map(faultyText)).size).toBe(faultyFiles.length);
    expect(faultyFiles.length).toBeGreaterThanOrEqual(60);
  });

  it.each(faultyFiles.map((entry) => [entry.file, entry] as const))('%s gives its issues and no value', (file, entry) => {
    const outcome = readers[entry.verb](faultyText(entry), file);
    expect(outcome.value).toBeUndefined();
    for (const issue of outcome.issues) {
      expect(issue.file).toBe(file);
      expect(issue.line).toBeGreaterThanOrEqual(1);
      expect(issue.column).toBeGreaterThanOrEqual(1);
      expect({ ...cabinIssueCodes, ...tableIssueCodes }).toHaveProperty([issue.code]);
      expect(issue.found).toBeTruthy();
    }
    const places = (issues: readonly { readonly code: string; readonly path?: string }[]): string[] => issues.map(({ code, path }) => `${code} at ${path ?? ''}`).sort();
    if (entry.verb === 'check') expect(places(errorsOf(outcome.issues))).toEqual(places(entry.issues));
    for (const expected of entry.issues) expect(outcome.issues).toContainEqual(expect.objectContaining(expected));
    expect(new Set(errorsOf(outcome.issues).map(({ code }) => code))).toEqual(new Set(entry.issues.map(({ code }) => code)));
  });
});
