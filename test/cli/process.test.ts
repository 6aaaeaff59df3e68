import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { smallCabin } from '../support/small-cabin.ts';

const root = join(import.meta.dirname, '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'adjoin-cli-'));
const cabin = join(folder, 'small.cabin.json');
writeFileSync(cabin, serialiseCabin(smallCabin({ ruleBook: 'ciede2000' })));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the program as a process; `input` goes to its standard input, `listen` false closes its output at once. */
const program = (words: readonly string[], { input = '', listen = true, environment = {} }: { input?: string; listen?: boolean; environment?: Record<string, string> } = {}): Promise<Ended> =>
  new Promise((settle) => {
    const child = spawn(process.execPath, ['--import', 'tsx', join(root, 'src', 'cli', 'main.ts'), ...words], { cwd: root, env: { ...process.env, ...environment } });
    let stdout = '';
    let stderr = '';
    if (listen) child.stdout.setEncoding('utf8').on('data', (text: string) => { stdout += text; });
    else child.stdout.destroy();
    child.stderr.setEncoding('utf8').on('data', (text: string) => { stderr += text; });
    child.stdin.on('error', () => undefined).end(input);
    child.on('close', (code) => settle({ code, stdout, stderr }));
  });

test('reads the standard input and prints JSON alone on stdout', async () => {
  const { code, stdout, stderr } = await program(['gloss', '-', '--json'], { input: 'specimen,angle,gloss\np,60,1.5\n' });
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(JSON.parse(stdout)).toEqual({ results: [{ specimen: 'p', angle: 60, mean: 1.5, sd: 0, spots: 1 }] });
});

test('a bad word ends with 2 and nothing on stdout', async () => {
  expect(await program(['colr'])).toMatchObject({ code: 2, stdout: '' });
});

test('a reader that closes early is no fault', async () => {
  const { code, stderr } = await program(['verify'], { listen: false });
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
});

test('NO_COLOR wins over FORCE_COLOR', async () => {
  const words = ['gloss', '-'];
  const input = 'specimen,angle,gloss\np,60,1.5\n';
  expect((await program(words, { input, environment: { FORCE_COLOR: '1', NO_COLOR: '' } })).stdout).toContain('\u001b[1m');
  expect((await program(words, { input, environment: { FORCE_COLOR: '1', NO_COLOR: '1' } })).stdout).not.toContain('\u001b');
});

test('a report is written whole; a refused one leaves the file that was there, and no trace', async () => {
  const out = join(folder, 'reports', 'r.html');
  expect((await program(['report', cabin, '--out', out])).code).toBe(0);
  expect(readFileSync(out, 'utf8')).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/);
  writeFileSync(out, 'as it was');
  const faulty = join(root, 'test', 'cabin', 'faulty', 'cut-short.cabin.json');
  expect((await program(['report', faulty, '--out', out])).code).toBe(2);
  expect(readFileSync(out, 'utf8')).toBe('as it was');
  expect(readdirSync(join(folder, 'reports'))).toEqual(['r.html']);
});

test('a place that cannot be written is refused', async () => {
  const { code, stdout } = await program(['report', cabin, '--out', join(cabin, 'r.html'), '--json']);
  expect(code).toBe(2);
  expect(JSON.parse(stdout)).toMatchObject({ issues: [{ code: 'cannot-write' }] });
  expect(existsSync(join(cabin, 'r.html'))).toBe(false);
});

test('a missing file and a folder are refused by name', async () => {
  for (const path of [join(folder, 'none.json'), folder]) {
    const { code, stdout } = await program(['check', path, '--json']);
    expect(code).toBe(2);
    expect(JSON.parse(stdout)).toMatchObject({ issues: [{ code: 'cannot-read', file: path }] });
  }
});
