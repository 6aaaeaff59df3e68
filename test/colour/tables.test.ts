import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { colourTables } from '../reference/make-colour-tables.ts';

const made = colourTables();

test.each(Object.keys(made))('src/colour/%s is what the generator makes of the reference files', (path) => {
  expect(readFileSync(join(import.meta.dirname, '..', '..', 'src', 'colour', path), 'utf8')).toBe(made[path]);
});
