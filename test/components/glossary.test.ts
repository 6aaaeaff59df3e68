import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { views } from '../../components/controllers/route.ts';
import { fieldWords } from '../../components/model/field-words.ts';
import { glossary } from '../../components/model/glossary.ts';
import { viewHelp } from '../../components/model/view-help.ts';
import { actions } from '../../src/actions/registry.ts';

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

test('every word that is met in a place is explained where it stands, not in the help alone', () => {
  // The report explains its words itself, as it is read without the workbench; nothing is judged yet at the start.
  const folders: Readonly<Record<string, string>> = { surfaces: 'surface' };
  const labels = readFileSync(join(folder, 'model', 'field-words.ts'), 'utf8');
  const lacking = views.filter((view) => view !== 'start' && view !== 'report').flatMap((view) => {
    const place = join(folder, 'views', folders[view] ?? view);
    const text = readdirSync(place).filter((file) => file.endsWith('.ts')).map((file) => readFileSync(join(place, file), 'utf8')).join('\n');
    const told = (word: string): boolean => text.includes(`word="${word}"`) || text.includes(`, '${word}'`) || (text.includes('fieldLabel(') && labels.includes(`, '${word}'`));
    return viewHelp[view].words.filter((word) => !told(word)).map((word) => `${view}: ${word}`);
  });
  expect(lacking).toEqual([]);
});

test('labels of fields that explain themselves are those of actions, and lead to the glossary', () => {
  const labels = new Set(actions.flatMap((action) => Object.values(action.arguments).map(({ label }) => label)));
  for (const [label, word] of fieldWords) {
    expect(labels.has(label), label).toBe(true);
    expect(glossary.has(word), word).toBe(true);
  }
});
