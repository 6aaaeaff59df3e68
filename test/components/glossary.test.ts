import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { views } from '../../components/controllers/route.ts';
import { glossary } from '../../components/model/glossary.ts';
import { viewHelp } from '../../components/model/view-help.ts';

const folder = join(import.meta.dirname, '..', '..', 'components');

test('every place says what it is for, what to do there, and only words that are explained', () => {
  for (const view of views) {
    const { title, purpose, steps, words } = viewHelp[view];
    expect(title, view).not.toBe('');
    expect(purpose, view).toMatch(/\.$/);
    expect(steps.length, view).toBeGreaterThan(1);
    expect(words.filter((word) => !glossary.has(word)), view).toEqual([]);
  }
});

test('every word that can be asked for in place is explained', () => {
  const asked = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'))
    .flatMap((file) => [...readFileSync(join(folder, file), 'utf8').matchAll(/<adjoin-term word="([^"]+)"/g)].map(([, word]) => word ?? ''));
  expect(asked.length).toBeGreaterThan(10);
  expect(asked.filter((word) => !glossary.has(word))).toEqual([]);
});
