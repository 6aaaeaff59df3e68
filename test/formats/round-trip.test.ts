import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { collectReadings, defined } from '../../src/formats/reading-collector.ts';
import type { FoundConditions, FoundData, ReadingRecord, ReadingSet } from '../../src/formats/index.ts';
import { readText, writerById } from '../../src/formats/index.ts';

// What is written and read again is what was there: the oracle is the identity.

const name = fc.stringMatching(/^[A-Za-zäé=+@'"#,;&<>-][A-Za-z0-9äé "'#,;&<>=@()-]{0,12}$/u).map((text) => text.replaceAll(/\s+/gu, ' ').trim()).filter((text) => text !== '');
const optionally = <T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(arbitrary, { nil: undefined });
const double = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const lights = ['D65', 'A', 'FL11', 'LED-B3', 'D50'] as const;

const spectrum = fc.record({
  quantity: fc.constant('spectrum' as const), startNm: fc.constantFrom(360, 400, 410), stepNm: fc.constantFrom(5, 10, 20), bandpassCorrected: optionally(fc.boolean()),
}).chain((head) => {
  const count = Math.floor((740 - head.startNm) / head.stepNm) + 1;
  return fc.array(double(0, 1.5), { minLength: count, maxLength: count }).map((values): FoundData => defined({ ...head, values }));
});
const view = { light: optionally(fc.constantFrom(...lights)), observer: optionally(fc.constantFrom(2 as const, 10 as const)) };
const span = double(-200, 200);
const data: fc.Arbitrary<FoundData> = fc.oneof(
  spectrum,
  fc.record({ quantity: fc.constant('cielab' as const), lab: fc.tuple(double(0, 120), span, span), ...view }).map((value): FoundData => defined(value)),
  fc.record({ quantity: fc.constant('difference' as const), difference: fc.tuple(span, span, span), ...view, master: optionally(name) }).map((value): FoundData => defined(value)),
  fc.record({
    quantity: fc.constant('gloss' as const), angle: fc.constantFrom(20 as const, 60 as const, 85 as const), gloss: double(0, 2000), haze: optionally(double(0, 2000)), direction: optionally(fc.constantFrom('along' as const, 'across' as const)),
  }).map((value): FoundData => defined(value)),
  fc.record({ saUm: optionally(double(0, 100)), raUm: optionally(double(0, 100)), sdr: optionally(double(0, 10)), salMm: optionally(double(0.001, 10)), vdiClass: fc.nat(45), ssk: optionally(double(-5, 5)) })
    .map((parameters): FoundData => ({ quantity: 'texture', parameters: defined(parameters) })),
);

const conditions: fc.Arbitrary<FoundConditions> = fc.record({
  instrument: optionally(name), serial: optionally(name), calibratedOn: optionally(fc.constant('2031-02-03')),
  geometry: optionally(fc.constantFrom('45a:0', '45c:0', '45x:0', '0:45a', '0:45c', 'di:8', 'de:8', '8:di', '8:de', 'multi-angle', 'unknown', '45:0', '0:45', 'd:8', '8:d')),
  apertureMm: optionally(double(0.1, 100)), uv: optionally(fc.constantFrom('included', 'excluded', 'adjusted', 'unknown')), aspecularDeg: optionally(double(-90, 180)), backing: optionally(name), temperatureC: optionally(double(-20, 60)),
}).map((value) => defined(value) as FoundConditions);

const record = fc.record({
  id: optionally(name), part: optionally(name), source: optionally(name), supplier: optionally(name), specimen: name, kind: optionally(fc.constantFrom('plaque', 'tool part', 'series part', 'master', 'boundary sample')),
  lot: optionally(name), stage: optionally(name), spotName: optionally(name), spotX: optionally(span), rotationDeg: optionally(double(-360, 360)), averagedFrom: optionally(fc.integer({ min: 1, max: 50 })),
  measuredAt: optionally(fc.constantFrom('2031-03-01', '2031-03-01T08:30', '2031-03-01T08:30:15Z')), labels: fc.dictionary(name, name, { maxKeys: 2 }), conditions, data,
});

const sets: fc.Arbitrary<ReadingSet> = fc.array(record, { minLength: 1, maxLength: 5 }).map((records) => {
  const collector = collectReadings();
  records.forEach(({ conditions: found, spotName, spotX, labels, ...rest }, index) => {
    const spot = spotName === undefined ? undefined : defined({ name: spotName, xMm: spotX });
    // Ids are made different, as in a file that is to be told apart row by row.
    const id = `${rest.id ?? 'r'}-${index}`;
    collector.add(defined({ ...rest, id, spot, labels: Object.keys(labels).length === 0 ? undefined : labels, conditions: collector.conditions(found), row: index + 1 }) as ReadingRecord);
  });
  return collector.finish({ reader: 'csv' });
});

/** Records with their conditions in place of the index, in an order of their own, without rows and lines, which are the file's. */
const comparable = (set: ReadingSet | undefined): object[] => (set?.records ?? [])
  .map(({ conditions: index, row: _row, line: _line, ...rest }) => ({ ...rest, conditions: set?.conditions[index] }))
  .toSorted((a, b) => (JSON.stringify(a.id) < JSON.stringify(b.id) ? -1 : 1));

const visible = {
  source: 'photograph', capture: 'booth', rmsContrast: 0.04, tileMm: 9,
  bands: [{ perMm: 0.8, energy: Array<number>(12).fill(1.5e-5) }, { perMm: 1.1, energy: Array<number>(12).fill(2.25e-6) }], scatter: [{ octave: 0, directions: [0.01, 0, 0.02, 1e-3] }],
} as const;

test('how a texture looks goes through JSON whole; the other formats write the parameters and say what they leave out', () => {
  const collector = collectReadings();
  collector.add({ id: 'r-1', specimen: 's', conditions: collector.conditions({ instrument: 'i' }), row: 1, data: { quantity: 'texture', parameters: { saUm: 8 }, visible } });
  collector.add({ id: 'r-2', specimen: 's', conditions: collector.conditions({ instrument: 'i' }), row: 2, data: { quantity: 'texture', parameters: {}, visible } });
  const set = collector.finish({ reader: 'surface' });
  const json = readText({ text: writerById('json')?.write(set).value ?? '' });
  expect(comparable(json.value)).toEqual(comparable(set));
  for (const format of ['csv', 'iso28178', 'iso17972']) {
    const written = writerById(format)?.write(set, { created: '2031-05-06' });
    expect(written?.issues).toMatchObject([{ code: 'visible-texture-not-held', severity: 'warning', found: '2 visible textures' }]);
    expect(readText({ text: written?.value ?? '' }).value?.records.map(({ data: kept }) => kept)).toEqual([{ quantity: 'texture', parameters: { saUm: 8 } }]);
  }
});

describe.each(['csv', 'iso28178', 'iso17972', 'json'])('%s', (format) => {
  test('readings written and read again are the same, every double to the last digit', () => {
    fc.assert(fc.property(sets, (set) => {
      const written = writerById(format)?.write(set, { created: '2031-05-06' });
      const text = written?.value ?? '';
      const read = readText({ text });
      if (read.value === undefined) throw new Error(`${JSON.stringify(read.issues[0])}\n${text.slice(0, 2000)}`);
      expect(comparable(read.value)).toEqual(comparable(set));
    }), { numRuns: 150, seed: 20310506 });
  });

  test('the same readings give the same bytes, also after a second round', () => {
    fc.assert(fc.property(sets, (set) => {
      const writer = writerById(format);
      const options = { created: '2031-05-06' };
      const text = writer?.write(set, options).value ?? '';
      expect(writer?.write(set, options).value).toBe(text);
      const again = readText({ text }).value;
      if (again === undefined) throw new Error('refused');
      const second = writer?.write(again, options).value ?? '';
      const third = writer?.write(readText({ text: second }).value ?? again, options).value;
      if (format !== 'json') expect(third).toBe(second);
    }), { numRuns: 40, seed: 7 });
  });
});
