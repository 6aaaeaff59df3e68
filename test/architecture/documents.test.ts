import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const read = (name: string): string => readFileSync(join(root, name), 'utf8');
const scripts = (JSON.parse(read('package.json')) as { scripts: Record<string, string> }).scripts;
const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' }).split('\n').filter((name) => name !== '');

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (name) => {
  const text = read(name);

  test('names only scripts that exist', () => {
    const named = [...text.matchAll(/npm (?:run )?(?:--silent )?([a-z-]+)/g)].map((match) => match[1] ?? '').filter((word) => !['ci', 'start', 'test', 'instead'].includes(word));
    expect(named.filter((script) => scripts[script] === undefined && !['and', 'is'].includes(script))).toEqual([]);
    expect(scripts['start']).toBeDefined();
    expect(scripts['test']).toBeDefined();
  });

  test('links only to what is there', () => {
    const links = [...text.matchAll(/\]\(([^)#]+)[^)]*\)/g)].map((match) => match[1] ?? '').filter((link) => !/^[a-z]+:/.test(link));
    expect(links.filter((link) => !existsSync(join(root, link)))).toEqual([]);
  });

  test('names only files and folders that exist', () => {
    const named = [...text.matchAll(/`((?:src|test|components|demo-data|\.ci)\/[\w./-]+)`/g)].map((match) => match[1] ?? '');
    expect(named.length).toBeGreaterThan(2);
    expect(named.filter((path) => !existsSync(join(root, path.replace(/\/$/, ''))))).toEqual([]);
  });
});

test('the readme names only verbs that exist', () => {
  const verbs = [...read('README.md').matchAll(/npm run adjoin -- ([a-z]+)/g)].map((match) => match[1] ?? '');
  expect(verbs.length).toBeGreaterThan(2);
  expect(verbs.filter((verb) => !existsSync(join(root, 'src/cli/verbs', `${verb}.ts`)))).toEqual([]);
});

test('the top level holds what it should and nothing else', () => {
  const top = [...new Set(tracked.map((name) => name.split('/')[0] ?? ''))].filter((name) => !name.startsWith('.')).sort();
  expect(top).toEqual(['DEVELOPERS.md', 'README.md', 'components', 'demo-data', 'index.html', 'package-lock.json', 'package.json', 'src', 'test', 'vite.config.ts']);
});

test('the lock file records no download addresses', () => {
  expect(read('package-lock.json')).not.toMatch(/"resolved": *"https?:/);
});

test('nothing left behind is marked as unfinished, and no type is switched off', () => {
  const source = tracked.filter((name) => /\.(ts|css|html|md)$/.test(name) && name !== 'test/architecture/documents.test.ts');
  const marks = /\b(TODO|FIXME|XXX)\b|@ts-ignore|@ts-nocheck|\bas any\b|eslint-disable/;
  expect(source.filter((name) => existsSync(join(root, name)) && marks.test(read(name)))).toEqual([]);
});

test('no test is skipped or run alone', () => {
  const tests = tracked.filter((name) => name.endsWith('.test.ts') && existsSync(join(root, name)));
  expect(tests.length).toBeGreaterThan(40);
  expect(tests.filter((name) => /\b(?:it|test|describe)\.(?:skip|only|todo|skipIf|runIf)\b/.test(read(name)))).toEqual([]);
});
