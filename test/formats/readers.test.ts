import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { answerQuestions, readBytes, sniffFormats } from '../../src/formats/index.ts';
import type { ReadingRecord, ReadingSet } from '../../src/formats/index.ts';

// Expected values are copied by hand from the fixtures, which were written by hand (fixtures/README.md); per cent divided by 100.

const bytesOf = (name: string): Uint8Array => readFileSync(join(import.meta.dirname, 'fixtures', name));
const read = (name: string): { set: ReadingSet; codes: string[] } => {
  const { value, issues } = readBytes(bytesOf(name), { file: name, sha256: 'ab'.repeat(32) });
  if (value === undefined) throw new Error(JSON.stringify(issues));
  return { set: value, codes: issues.map(({ severity, code }) => `${severity} ${code}`) };
};
const dataOf = (record: ReadingRecord | undefined): object => record?.data ?? {};
const topics = (set: ReadingSet): string[] => set.questions.map(({ id, required }) => `${id}${required ? '!' : ''}`);

describe('tables', () => {
  test('wide spectra in per cent, conditions declared above, a label column', () => {
    const { set, codes } = read('spectra-wide.csv');
    expect(codes).toEqual([]);
    expect(set).toMatchObject({ reader: 'csv', file: 'spectra-wide.csv', sha256: 'ab'.repeat(32), lights: [] });
    expect(set.conditions).toEqual([{ instrument: 'lab-1', geometry: '45a:0', apertureMm: 8, uv: 'excluded' }]);
    expect(set.records.map(({ part, specimen, lot, spot, row, line, labels }) => [part, specimen, lot, spot?.name, row, line, labels?.['surface note']])).toEqual([
      ['door-left', 'PL-1', 'K7', '1', 1, 6, 'grained, matt'], ['door-left', 'PL-1', 'K7', '2', 2, 7, 'grained, matt'], ['dash', 'PL-2', 'K9', '1', 3, 8, undefined],
    ]);
    expect(dataOf(set.records[2])).toEqual({
      quantity: 'spectrum', startNm: 400, stepNm: 20,
      values: [3.1, 3.2, 3.3, 3.4, 3.5, 3.6, 3.7, 3.8, 3.9, 4, 4.1, 4.2, 4.3, 4.4, 4.5, 4.6].map((value) => value / 100),
    });
    expect(topics(set)).toEqual(['averaged']);
  });

  test('long spectra are gathered by specimen and spot, the scale from the header', () => {
    const { set } = read('spectra-long.tsv');
    expect(set.records.map(({ specimen, spot, line }) => [specimen, spot?.name, line])).toEqual([['S1', 'a', 2], ['S1', 'b', 18], ['S2', 'a', 34]]);
    expect(dataOf(set.records[1])).toEqual({ quantity: 'spectrum', startNm: 400, stepNm: 20, values: Array.from({ length: 16 }, (_, index) => 0.625 + index / 128) });
    expect(topics(set)).toEqual(['averaged', 'geometry:0!', 'uv:0', 'aperture:0', 'instrument:0!']);
  });

  test('Latin-1, semicolons, decimal commas, German headers, units; gloss and texture in one row', () => {
    const { set, codes } = read('door-gloss-texture.csv');
    expect(codes).toEqual(['note text-encoding', 'note decimal-comma']);
    expect(set.records.map(({ part, specimen, spot, rotationDeg, labels }) => [part, specimen, spot?.name, rotationDeg, labels?.['Bemerkung']])).toEqual([
      ['Türverkleidung', 'A-17', '1', 0, 'weiß'], ['Türverkleidung', 'A-17', '1', 0, 'weiß'], ['Türverkleidung', 'A-17', '2', 90, undefined], ['Türverkleidung', 'A-17', '2', 90, undefined],
    ]);
    expect(set.records.map(dataOf)).toEqual([
      { quantity: 'gloss', angle: 60, gloss: 2.4 }, { quantity: 'texture', parameters: { raUm: 3.25, saUm: 3.81 } },
      { quantity: 'gloss', angle: 60, gloss: 2.6 }, { quantity: 'texture', parameters: { raUm: 3.5 } },
    ]);
    expect(set.conditions).toEqual([{ instrument: 'Glanzmesser' }]);
  });

  test('CIELAB under two lights in one sheet; a sphere completed by its specular column', () => {
    const { set } = read('colours.csv');
    expect(set.conditions).toEqual([{ geometry: 'de:8' }, { geometry: 'di:8' }]);
    expect(set.records.map(({ part, conditions, data }) => [part, conditions, data])).toEqual([
      ['console', 0, { quantity: 'cielab', lab: [31.25, 0.5, -1.75], light: 'D65', observer: 10 }],
      ['console', 0, { quantity: 'cielab', lab: [31.5, 0.125, -1.5], light: 'A', observer: 10 }],
      ['seat', 1, { quantity: 'cielab', lab: [28.5, 0.25, -0.5], light: 'D65', observer: 10 }],
      ['seat', 1, { quantity: 'cielab', lab: [28.625, 0.375, -0.25], light: 'A', observer: 10 }],
    ]);
  });

  test('differences with their light, observer and master', () => {
    const { set } = read('differences.tsv');
    expect(set.records.map(dataOf)).toEqual([
      { quantity: 'difference', difference: [-0.5, 0.25, 0.125], light: 'D65', observer: 10, master: 'M-12' },
      { quantity: 'difference', difference: [0.75, -0.5, 0], light: 'D65', observer: 10, master: 'M-12' },
    ]);
    expect(set.records[0]?.labels).toEqual({ 'dE*ab': '0.573' });
  });
});

test('ISO 28178: three tables of a file, strings, comments, per cent and decimal by the field', () => {
  const { set, codes } = read('two-tables.txt');
  expect(codes).toEqual([]);
  expect(set).toMatchObject({ reader: 'iso28178', created: '2031-04-02' });
  expect(set.conditions).toEqual([{ instrument: 'bench spectrophotometer', geometry: '0:45a', backing: 'black' }]);
  expect(set.records.map(({ id, specimen, lot, row, line, labels }) => [id, specimen, lot, row, line, labels])).toEqual([
    ['1', 'Plaque "north"', 'K1', 1, 20, { STRING: 'first # of two' }], ['2', 'Plaque_2', 'K1', 2, 21, undefined], ['3', 'Plaque 3', undefined, 3, 33, undefined], ['4', '4', undefined, 4, 44, undefined],
  ]);
  expect(dataOf(set.records[0])).toEqual({ quantity: 'cielab', lab: [40.5, -1.25, 2], light: 'D50', observer: 2 });
  expect(dataOf(set.records[2])).toEqual({ quantity: 'spectrum', startNm: 400, stepNm: 20, values: [...Array<number>(8).fill(0.125), ...Array<number>(8).fill(0.25)] });
  expect(dataOf(set.records[3])).toEqual({ quantity: 'spectrum', startNm: 400, stepNm: 20, values: [...Array<number>(15).fill(0.5), 0.75] });
});

test('ISO 17972-1: prefixes, entities, specifications, differences, gloss at two angles, tags', () => {
  const { set, codes } = read('plaques.cxf');
  expect(codes).toEqual([]);
  expect(set).toMatchObject({ reader: 'iso17972', created: '2031-04-02T09:00:00Z' });
  const bench = { instrument: 'Bench 1', serial: '0042', geometry: '45a:0', apertureMm: 16, backing: 'black' };
  const plaque = { id: 'p5', specimen: 'Plaque 5', part: 'door-left', lot: 'K7', labels: { Cavity: '2' }, row: 2, line: 17 };
  expect(set.records.map(({ conditions, ...record }) => ({ ...record, conditions: set.conditions[conditions] }))).toEqual([
    { id: 'm1', specimen: 'Master slate', kind: 'master', row: 1, line: 11, conditions: { geometry: 'de:8' }, data: { quantity: 'cielab', lab: [27.5, -0.5, -2.25], light: 'D65', observer: 10 } },
    {
      ...plaque, measuredAt: '2031-04-01T08:04:00Z', conditions: bench,
      data: { quantity: 'spectrum', startNm: 400, stepNm: 20, values: [...Array<number>(8).fill(0.05), ...Array<number>(7).fill(0.06), 0.0625], bandpassCorrected: true },
    },
    { ...plaque, conditions: { geometry: 'de:8' }, data: { quantity: 'difference', difference: [0.5, 0.25, -0.125], light: 'D65', observer: 10, master: 'Master slate' } },
    { ...plaque, conditions: {}, data: { quantity: 'gloss', angle: 20, gloss: 0.5 } },
    { ...plaque, conditions: {}, data: { quantity: 'gloss', angle: 60, gloss: 2.25 } },
    { ...plaque, conditions: {}, data: { quantity: 'texture', parameters: { raUm: 3.5 } } },
  ]);
});

test('TM-27: a light at uneven wavelengths is brought to 1 nm along straight lines, and a note says so', () => {
  const { set, codes } = read('booth-lamp.spdx');
  expect(codes).toEqual(['note light-interpolated']);
  const [light] = set.lights;
  expect(light).toMatchObject({ name: 'Booth lamp, invented', startNm: 400, stepNm: 1 });
  expect(light?.values).toHaveLength(301);
  expect([400, 450, 500, 501, 502, 550, 600, 650, 700].map((nm) => light?.values[nm - 400])).toEqual([1, 1.5, 2, 3, 4, 4, 4, 2, 0]);
  expect(set.records).toEqual([]);
});

test('every fixture is known by its content alone', () => {
  const expected: Readonly<Record<string, string>> = {
    'spectra-wide.csv': 'csv', 'spectra-long.tsv': 'csv', 'door-gloss-texture.csv': 'csv', 'colours.csv': 'csv', 'differences.tsv': 'csv', 'two-tables.txt': 'iso28178', 'plaques.cxf': 'iso17972', 'booth-lamp.spdx': 'tm27',
  };
  const text = (name: string): string => new TextDecoder('windows-1252').decode(bytesOf(name));
  expect(Object.keys(expected).map((name) => sniffFormats(text(name))[0]?.reader.id)).toEqual(Object.values(expected));
  const cabin = readFileSync(join(import.meta.dirname, '../../demo-data/first-steps.cabin.json'), 'utf8');
  expect(sniffFormats(cabin)[0]?.reader.id).toBe('json');
});

describe('what a file leaves open is asked', () => {
  const wavelengths = Array.from({ length: 16 }, (_, index) => 400 + 20 * index);
  const table = (value: string, rows = 1): Uint8Array => new TextEncoder().encode(`specimen,${wavelengths.join(',')}\n${Array.from({ length: rows }, () => `a,${wavelengths.map(() => value).join(',')}`).join('\n')}\n`);

  test('the scale, even where all values could be fractions; the answer divides or does not', () => {
    const { value: set } = readBytes(table('1.2'));
    if (set === undefined) throw new Error('refused');
    expect(topics(set)).toContain('scale!');
    expect(dataOf(set.records[0])).toMatchObject({ scaleUndeclared: true, values: Array<number>(16).fill(1.2) });
    const percent = answerQuestions(set, { scale: 'percent' });
    expect(dataOf(percent.value?.records[0])).toEqual({ quantity: 'spectrum', startNm: 400, stepNm: 20, values: Array<number>(16).fill(1.2 / 100) });
    expect(percent.value?.questions.map(({ topic }) => topic)).not.toContain('scale');
    expect(dataOf(answerQuestions(set, { scale: 'fraction' }).value?.records[0])).toMatchObject({ values: Array<number>(16).fill(1.2) });
  });

  test('fractions are refused as the answer where values are above 1.5', () => {
    const { value: set } = readBytes(table('41.5'));
    if (set === undefined) throw new Error('refused');
    const wrong = answerQuestions(set, { scale: 'fraction' });
    expect(wrong.value).toBeUndefined();
    expect(wrong.issues[0]).toMatchObject({ code: 'out-of-range', line: 2 });
    expect(answerQuestions(set, { scale: 'permille' }).issues[0]).toMatchObject({ code: 'bad-answer', path: 'scale' });
  });

  test('by the convention of spectra tables undeclared values are fractions, and above 1.5 a fault', () => {
    expect(readBytes(table('41.5'), {}, { undeclaredScale: 'fraction' }).issues).toMatchObject([{ code: 'scale-undeclared', line: 2, column: 3 }]);
    expect(readBytes(table('0.4'), {}, { undeclaredScale: 'fraction' }).value?.questions.map(({ topic }) => topic)).not.toContain('scale');
  });

  test('whether repeated rows are spots; answers name them', () => {
    const { value: set } = readBytes(table('0.4', 3));
    if (set === undefined) throw new Error('refused');
    expect(set.questions.find(({ topic }) => topic === 'spots')).toMatchObject({ required: true, records: 3, line: 2 });
    const names = (answer: string): (string | undefined)[] | undefined => answerQuestions(set, { spots: answer }).value?.records.map(({ spot }) => spot?.name);
    expect(names('different spots')).toEqual(['1', '2', '3']);
    expect(names('one spot')).toEqual(['1', '1', '1']);
  });

  test('the arrangement of 45:0 and the specular part of d:8, by conditions; other answers by topic', () => {
    const { value: set } = readBytes(new TextEncoder().encode('specimen,geometry,L,a,b\nx,45/0,50,0,0\ny,d/8,50,0,0\n'));
    if (set === undefined) throw new Error('refused');
    const choices = set.questions.filter(({ topic }) => topic === 'geometry').map(({ id, choices: words }) => [id, words]);
    expect(choices).toEqual([['geometry:0', ['45a:0', '45c:0', '45x:0', 'unknown']], ['geometry:1', ['di:8', 'de:8', 'unknown']]]);
    const { value } = answerQuestions(set, { 'geometry:0': '45c:0', 'geometry:1': 'de:8', uv: 'excluded', aperture: '8,5', instrument: 'bench', light: 'F11', observer: '10', averaged: '3' });
    expect(value?.conditions).toEqual([
      { geometry: '45c:0', uv: 'excluded', apertureMm: 8.5, instrument: 'bench' }, { geometry: 'de:8', uv: 'excluded', apertureMm: 8.5, instrument: 'bench' },
    ]);
    expect(value?.records.map((record) => [record.averagedFrom, record.data])).toEqual(['x', 'y'].map(() => [3, { quantity: 'cielab', lab: [50, 0, 0], light: 'FL11', observer: 10 }]));
    expect(value?.questions).toEqual([]);
  });
});

test('readings of a cabin come out with their parts, sources and conditions', () => {
  const path = join(import.meta.dirname, '../../demo-data/first-steps.cabin.json');
  // The test reads the same file by JSON.parse, independent of the product's parser.
  const cabin = JSON.parse(readFileSync(path, 'utf8')) as { parts: { id: string; sources: { id: string; specimens: { id: string; readings: unknown[] }[] }[] }[]; masters?: { readings: unknown[] }[] };
  const { value: set } = readBytes(readFileSync(path));
  const own = cabin.parts.flatMap((part) => part.sources.flatMap((source) => source.specimens.flatMap((specimen) => specimen.readings.map(() => [part.id, source.id, specimen.id]))));
  expect(set?.records.filter(({ part }) => part !== undefined).map(({ part, source, specimen }) => [part, source, specimen])).toEqual(own);
  expect(set?.records).toHaveLength(own.length + (cabin.masters ?? []).reduce((sum, master) => sum + master.readings.length, 0));
  expect(set?.questions.filter(({ required }) => required)).toEqual([]);
});
