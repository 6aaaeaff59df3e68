import type { Issue } from '../../src/issue.ts';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import manifest from '../cabin/faulty/manifest.json' with { type: 'json' };
import { parsed, run } from './memory-io.ts';

interface Faulty {
  readonly file: string;
  readonly verb: string;
  readonly args: readonly string[];
  readonly issues: readonly { readonly code: string; readonly path?: string; readonly line?: number; readonly column?: number }[];
}

const root = join(import.meta.dirname, '..');
const cases: readonly Faulty[] = manifest;
const filesOf = ({ file }: Faulty): Record<string, Uint8Array> => ({ [file]: readFileSync(join(root, file)) });

test('the list of faulty files is long and names each file once', () => {
  expect(cases.length).toBeGreaterThanOrEqual(60);
  expect(new Set(cases.map(({ file }) => file)).size).toBe(cases.length);
});

test.each(cases)('$file is refused by $verb with its issues in their places', async (faulty) => {
  const result = await run(faulty.args, filesOf(faulty));
  expect(result).toMatchObject({ exit: 2, stderr: '', files: [] });
  const { issues } = parsed<{ issues: Issue[] }>(result);
  for (const expected of faulty.issues) expect(issues).toContainEqual(expect.objectContaining(expected));
  for (const issue of issues) {
    expect(issue.code).toMatch(/^[a-z0-9-]+$/);
    expect(['error', 'warning', 'note']).toContain(issue.severity);
  }
});

test.each(cases)('$file gives lines for a person without --json, and nothing on stdout', async (faulty) => {
  const result = await run(faulty.args.filter((word) => word !== '--json'), filesOf(faulty));
  expect(result).toMatchObject({ exit: 2, stdout: '', files: [] });
  for (const { code } of faulty.issues) expect(result.stderr).toContain(`${code}:`);
  for (const line of result.stderr.trimEnd().split('\n')) expect(line).toMatch(/^(error|warning|note): /);
});

test.each(cases.filter(({ verb }) => verb === 'check'))('no report is written of $file', async (faulty) => {
  const result = await run(['report', faulty.file, '--out', 'x.html', ...faulty.args.slice(2)], filesOf(faulty));
  expect(result).toMatchObject({ exit: 2, files: [] });
});
