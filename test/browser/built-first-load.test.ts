import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { serveBuiltApp } from '../support/built-app.ts';

test('what the first picture waits for is below 250 kB of script gzipped; formulas, plans and formats come when they are asked for', async () => {
  const app = await serveBuiltApp(5990);
  try {
    // Vite names the entry and all that it imports statically in the page itself.
    const page = readFileSync(join(app.folder, 'index.html'), 'utf8');
    const first = [...page.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, file]) => file!);
    expect(first.length).toBeGreaterThan(1);
    const weight = first.reduce((sum, file) => sum + gzipSync(readFileSync(join(app.folder, file))).length, 0);
    expect(weight).toBeLessThan(250_000);
    // Words that each of the three carries with it; found elsewhere in the build, and not here.
    const later = ['Parenthesis ) expected', 'highs-', 'SpectralData'];
    const scripts = readdirSync(join(app.folder, 'assets')).filter((file) => file.endsWith('.js'));
    const holding = (word: string, files: readonly string[]): readonly string[] => files.filter((file) => readFileSync(join(app.folder, file), 'utf8').includes(word));
    for (const word of later) {
      expect(holding(word, scripts.map((file) => `assets/${file}`)), word).not.toEqual([]);
      expect(holding(word, first), word).toEqual([]);
    }
  } finally {
    app.close();
  }
}, 120_000);
