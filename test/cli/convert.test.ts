import type { Issue } from '../../src/issue.ts';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parsed, run } from './memory-io.ts';

const fixture = (name: string): Uint8Array => readFileSync(join(import.meta.dirname, '../formats/fixtures', name));
const nm = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
// Doubles that short decimals cannot hold.
const values = nm.map((_, index) => 1 / (3 + index));
const table = `id,${nm.join(',')}\nplaque 1,${values.join(',')}\n`;

describe('convert', () => {
  test('round trips of spectra through every format keep every digit', async () => {
    for (const to of ['csv', 'iso28178', 'iso17972', 'json']) {
      const there = await run(['convert', 'a.csv', '--to', to, '--out', 'b'], { 'a.csv': table });
      expect(there).toMatchObject({ exit: 0, files: [{ path: 'b' }] });
      const back = await run(['convert', 'b', '--to', 'csv', '--out', 'c.csv'], { b: there.files[0]?.content ?? '' });
      const row = back.files[0]?.content.split('\r\n').find((line) => line.startsWith('plaque 1'));
      expect(row?.split(',').slice(-31).map(Number)).toEqual(values);
    }
  });

  test('what it writes as CSV is a table for the verb colour', async () => {
    const csv = await run(['convert', 'a.csv', '--to', 'csv', '--out', 'b.csv'], { 'a.csv': table });
    const direct = await run(['colour', 'a.csv', '--json'], { 'a.csv': table });
    const converted = await run(['colour', 'b.csv', '--json'], { 'b.csv': csv.files[0]?.content ?? '' });
    expect(parsed<{ results: object[] }>(converted)).toEqual(parsed<{ results: object[] }>(direct));
  });

  test('the format is found by content, from the standard input as well', async () => {
    for (const [name, from] of [['two-tables.txt', 'iso28178'], ['plaques.cxf', 'iso17972'], ['door-gloss-texture.csv', 'csv']] as const) {
      const result = await run(['convert', '-', '--to', 'json', '--out', 'o.json', '--json'], { '-': fixture(name) });
      expect(parsed<{ from: string; written: string }>(result)).toMatchObject({ from, written: 'o.json', to: 'json' });
    }
    expect(parsed<{ lights: number }>(await run(['convert', 'l', '--to', 'json', '--out', 'o.json', '--json'], { l: fixture('booth-lamp.spdx') }))).toMatchObject({ from: 'tm27', readings: 0, lights: 1 });
  });

  test('per cent by --scale or the file only; else a fault and no file', async () => {
    const percent = `id,${nm.join(',')}\na,${nm.map(() => 50).join(',')}\n`;
    const refused = await run(['convert', 'a.csv', '--to', 'json', '--out', 'o.json', '--json'], { 'a.csv': percent });
    expect(refused).toMatchObject({ exit: 2, files: [] });
    expect(parsed<{ issues: Issue[] }>(refused).issues).toMatchObject([{ code: 'scale-undeclared', line: 2, column: 3 }]);
    const asked = await run(['convert', 'a.csv', '--to', 'json', '--out', 'o.json', '--scale', 'percent'], { 'a.csv': percent });
    expect(asked.files[0]?.content).toContain('"values":[0.5,0.5,');
    const conflict = await run(['convert', 'a.csv', '--to', 'json', '--scale', 'fraction', '--json', '--out', 'o'], { 'a.csv': `# scale: percent\n${percent}` });
    expect(parsed<{ issues: Issue[] }>(conflict).issues).toMatchObject([{ code: 'scale-conflict' }]);
  });

  test('ISO 28178 with field names that state no scale needs --scale, however small the values', async () => {
    const text = `ISO28178\nNUMBER_OF_FIELDS 32\nBEGIN_DATA_FORMAT\nSAMPLE_ID ${nm.map((value) => `nm${value}`).join(' ')}\nEND_DATA_FORMAT\nNUMBER_OF_SETS 1\nBEGIN_DATA\n1 ${nm.map(() => '1.25').join(' ')}\nEND_DATA\n`;
    const refused = await run(['convert', 'a.txt', '--to', 'csv', '--out', 'o', '--json'], { 'a.txt': text });
    expect(refused).toMatchObject({ exit: 2, files: [] });
    expect(parsed<{ issues: Issue[] }>(refused).issues).toMatchObject([{ code: 'scale-undeclared' }]);
    const percent = await run(['convert', 'a.txt', '--to', 'csv', '--out', 'o', '--scale', 'percent'], { 'a.txt': text });
    expect(percent.files[0]?.content).toContain(',0.0125,0.0125');
  });

  test('bad usage and bad input end in 2 with issues, nothing is written', async () => {
    const cases: readonly (readonly [string[], string])[] = [
      [['convert', 'a.csv', '--out', 'o', '--json'], 'missing-option'], [['convert', 'a.csv', '--to', 'xls', '--out', 'o', '--json'], 'unknown-value'], [['convert', 'a.csv', '--to', 'csv', '--json'], 'missing-option'],
      [['convert', 'none.csv', '--to', 'csv', '--out', 'o', '--json'], 'cannot-read'], [['convert', 'bad', '--to', 'csv', '--out', 'o', '--json'], 'unknown-format'], [['convert', 'a.csv', '--to', 'iso17972', '--out', 'o', '--created', 'today', '--json'], 'bad-date'],
      [['convert', 'doctype', '--to', 'csv', '--out', 'o', '--json'], 'xml-declarations'], [['convert', 'light', '--to', 'csv', '--out', 'o', '--json'], 'nothing-to-write'],
    ];
    for (const [words, code] of cases) {
      const result = await run(words, { 'a.csv': table, bad: 'hello', doctype: '<!DOCTYPE a><CxF/>', light: fixture('booth-lamp.spdx') });
      expect(result, words.join(' ')).toMatchObject({ exit: 2, files: [], stderr: '' });
      expect(parsed<{ issues: Issue[] }>(result).issues.map((issue) => issue.code)).toContain(code);
    }
  });

  test('without --out the text is printed; the same input gives the same bytes', async () => {
    const words = ['convert', 'a.csv', '--to', 'iso17972', '--created', '2031-06-01'];
    const once = await run(words, { 'a.csv': table });
    expect(once.stdout).toContain('<CreationDate>2031-06-01T00:00:00Z</CreationDate>');
    expect(await run(words, { 'a.csv': table })).toEqual(once);
  });

  test('readings of a cabin', async () => {
    const cabin = readFileSync(join(import.meta.dirname, '../../demo-data/first-steps.cabin.json'));
    const result = await run(['convert', 'c.json', '--to', 'iso17972', '--out', 'o.cxf', '--json'], { 'c.json': cabin });
    expect(result.exit).toBe(0);
    const back = await run(['convert', 'o.cxf', '--to', 'json', '--out', 'o.json', '--json'], { 'o.cxf': result.files[0]?.content ?? '' });
    expect(parsed<{ readings: number }>(back).readings).toBe(parsed<{ readings: number }>(result).readings);
  });
});
