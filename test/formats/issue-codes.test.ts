import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { cabinIssueCodes } from '../../src/cabin/issue-codes.ts';
import { readingIssueCodes } from '../../src/formats/reading-issue-codes.ts';
import { tableIssueCodes } from '../../src/formats/table-issue-codes.ts';

const root = join(import.meta.dirname, '../../src');
const own = [
  // Surfaces have readers and codes of their own.
  ...readdirSync(join(root, 'formats')).filter((name) => name.endsWith('.ts') && !name.startsWith('surface')).map((name) => join(root, 'formats', name)),
  ...['import-mapping.ts', 'import-readings.ts', 'import-registers.ts'].map((name) => join(root, 'actions', name)),
];

test('every code that is raised is listed with its meaning, and every code that is listed is raised', () => {
  const text = own.filter((path) => !path.endsWith('issue-codes.ts')).map((path) => readFileSync(path, 'utf8')).join('\n');
  const raised = new Set([
    ...[...text.matchAll(/(?:faults\.add\(|refuse\(|code: |tell\(record, )'([a-z][a-z-]+)'/gu)].map((match) => match[1] ?? ''),
    ...[...text.matchAll(/\? '([a-z]+(?:-[a-z]+)+)' : '([a-z]+(?:-[a-z]+)+)', (?:name|start|token|place|`|\{|offset|extra)/gu)].flatMap((match) => [match[1] ?? '', match[2] ?? '']),
  ]);
  const listed = new Set([...Object.keys(cabinIssueCodes), ...Object.keys(tableIssueCodes), ...Object.keys(readingIssueCodes)]);
  expect([...raised].filter((code) => !listed.has(code))).toEqual([]);
  expect(Object.keys(readingIssueCodes).filter((code) => !text.includes(`'${code}'`))).toEqual([]);
});
