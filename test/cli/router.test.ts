import type { Issue } from '../../src/issue.ts';
import { expect, test } from 'vitest';
import { entries } from '../../src/cli/router.ts';
import { optionsOf } from '../../src/cli/read-arguments.ts';
import packageFile from '../../package.json' with { type: 'json' };
import { parsed, run } from './memory-io.ts';

const codes = (result: Awaited<ReturnType<typeof run>>): string[] => parsed<{ issues: Issue[] }>(result).issues.map((issue) => issue.code);

test('no verb prints the help on stderr and exits 2', async () => {
  const result = await run([]);
  expect(result.exit).toBe(2);
  expect(result.stdout).toBe('');
  expect(result.stderr).toContain('adjoin VERB');
});

test('--help, -h and help list every verb on stdout', async () => {
  for (const words of [['--help'], ['-h'], ['help']]) {
    const result = await run(words);
    expect(result.exit).toBe(0);
    for (const entry of entries) expect(result.stdout).toMatch(new RegExp(`^  ${entry.name} `, 'm'));
  }
});

test('--version names the version of the package', async () => {
  expect((await run(['--version'])).stdout).toBe(`Adjoin ${packageFile.version}\n`);
});

test.each(entries.map((entry) => entry.name))('%s --help explains every option and its exit codes, within 100 columns', async (name) => {
  const result = await run([name, '--help']);
  expect(result.exit).toBe(0);
  expect(result.stderr).toBe('');
  const verb = await entries.find((entry) => entry.name === name)?.load();
  if (!verb) throw new Error(name);
  for (const option of Object.keys(optionsOf(verb))) expect(result.stdout).toContain(`--${option}`);
  for (const operand of verb.operands) expect(result.stdout).toContain(operand.name);
  expect(result.stdout).toMatch(/Exit: 0/);
  expect(result.stdout).toContain('Examples');
  expect(Math.max(...result.stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
  expect((await run(['help', name])).stdout).toBe(result.stdout);
});

test('an unknown verb exits 2 with the nearest name', async () => {
  const result = await run(['chekc']);
  expect(result).toMatchObject({ exit: 2, stdout: '', files: [] });
  expect(result.stderr).toMatch(/unknown-verb.*chekc.*Did you mean check\?/);
});

test('an unknown option exits 2 with the nearest name; with --json the issues are on stdout and nothing else', async () => {
  const plain = await run(['colour', 'x.csv', '--ligt', 'A']);
  expect(plain).toMatchObject({ exit: 2, stdout: '' });
  expect(plain.stderr).toMatch(/--ligt.*unknown-option.*Did you mean --light\?/);
  const json = await run(['colour', 'x.csv', '--ligt', 'A', '--json']);
  expect(json).toMatchObject({ exit: 2, stderr: '' });
  expect(parsed<{ issues: Issue[] }>(json).issues[0]).toMatchObject({ code: 'unknown-option', severity: 'error', path: '--ligt', hint: 'Did you mean --light?' });
});

test.each([
  [['colour'], 'missing-argument'],
  [['colour', 'a.csv', 'b.csv'], 'too-many-arguments'],
  [['colour', 'a.csv', '--observer', '3'], 'unknown-value'],
  [['colour', 'a.csv', '--observer'], 'missing-value'],
  [['colour', '--light', '--observer', '2', 'a.csv'], 'missing-value'],
  [['colour', 'a.csv', '--observer', '2', '--observer', '10'], 'given-twice'],
  [['check', 'a.json', '--strict=yes'], 'value-not-wanted'],
  [['nonsense'], 'unknown-verb'],
  [['report', 'a.json'], 'missing-option'],
  [['report', 'a.json', '--out', 'x.docx'], 'unknown-format'],
  [['check', 'a.json'], 'cannot-read'],
])('%j is refused with %s', async (words, code) => {
  const result = await run([...words, '--json']);
  expect(result.exit).toBe(2);
  expect(codes(result)).toContain(code);
  expect(result.files).toEqual([]);
});

test('all faults of a command line are listed, not the first only', async () => {
  expect(codes(await run(['colour', '--observer', '3', '--metod=e308', '--json']))).toEqual(['unknown-value', 'unknown-option', 'missing-argument']);
});

test('a name of Object.prototype is no option and no verb', async () => {
  expect(codes(await run(['colour', 'x.csv', '--constructor', '--json']))).toContain('unknown-option');
  expect(codes(await run(['toString', '--json']))).toEqual(['unknown-verb']);
});
