import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative, sep } from 'node:path';
import { expect, test } from 'vitest';

/** Layers, lowest first; folders on one line may import each other. */
const layers = [
  ['src/quantities.ts', 'src/issue.ts', 'src/wasm'],
  ['src/colour', 'src/gloss', 'src/texture'],
  ['src/readings'],
  ['src/cabin'],
  ['src/rules'],
  ['src/harmony'],
  ['src/plan', 'src/series'],
  ['src/formats', 'src/actions', 'src/report'],
  ['src/index.ts'],
  ['src/workers', 'src/cli'],
  ['components'],
];

const root = join(import.meta.dirname, '..', '..');

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return sources(path);
    return entry.name.endsWith('.ts') ? [path] : [];
  });
}

const layerOf = (path: string): number =>
  layers.findIndex((layer) => layer.some((name) => path === name || path.startsWith(`${name}/`)));

function importsOf(path: string): string[] {
  const text = readFileSync(join(root, path), 'utf8');
  const found = [...text.matchAll(/(?:from|import)\s*\(?\s*'(\.[^']+)'/g), ...text.matchAll(/new URL\('(\.[^']+)'/g)];
  return found
    .map((match) => relative(root, normalize(join(root, dirname(path), (match[1] ?? '').replace(/\?.*$/, '')))).split(sep).join('/'))
    .filter((target) => target.endsWith('.ts'));
}

const files = [...sources('src'), ...sources('components')];

test('the search sees the sources', () => {
  expect(files.length).toBeGreaterThan(40);
  expect(files.flatMap(importsOf).length).toBeGreaterThan(files.length);
});

test('every source file belongs to a layer', () => {
  expect(files.filter((path) => layerOf(path) < 0)).toEqual([]);
});

test('a file imports only from its own or a lower layer', () => {
  const upward = files.flatMap((path) =>
    importsOf(path).filter((target) => layerOf(target) > layerOf(path) || layerOf(target) < 0).map((target) => `${path} imports ${target}`));
  expect(upward).toEqual([]);
});

test('no file imports itself in a circle of types aside', () => {
  const graph = new Map(files.map((path) => [path, valueImports(path)]));
  const state = new Map<string, 'open' | 'done'>();
  const circles: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === 'done') return;
    if (state.get(path) === 'open') {
      circles.push([...trail.slice(trail.indexOf(path)), path].join(' > '));
      return;
    }
    state.set(path, 'open');
    for (const next of graph.get(path) ?? []) visit(next, [...trail, path]);
    state.set(path, 'done');
  };
  for (const path of files) visit(path, []);
  expect(circles).toEqual([]);
});

function valueImports(path: string): string[] {
  const text = readFileSync(join(root, path), 'utf8').replaceAll(/import type [^;]+;/g, '').replaceAll(/export type \{[^;]+;/g, '');
  return [...text.matchAll(/from\s*'(\.[^']+)'/g)]
    .map((match) => relative(root, normalize(join(root, dirname(path), match[1] ?? ''))).split(sep).join('/'))
    .filter((target) => target.endsWith('.ts'));
}

test('only the entry of the command line and its server touch the process', () => {
  const touching = sources('src')
    .filter((path) => /\bprocess\.(exit|argv|env|stdout|stderr|stdin)\b/.test(readFileSync(join(root, path), 'utf8')));
  expect(touching.filter((path) => !['src/cli/main.ts', 'src/cli/serve.ts', 'src/cli/demo.ts'].includes(path))).toEqual([]);
});

test('nothing in the core reads a clock or draws unseeded random numbers', () => {
  const offending = sources('src')
    .filter((path) => !path.startsWith('src/cli/') && !path.startsWith('src/workers/'))
    .filter((path) => /Date\.now|new Date\(\)|Math\.random|performance\.now/.test(readFileSync(join(root, path), 'utf8')));
  expect(offending).toEqual([]);
});
