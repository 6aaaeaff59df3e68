import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readBytes, readText, writerById, writers } from '../../src/formats/index.ts';
import type { ReadingSet } from '../../src/formats/index.ts';

const fixture = (name: string): ReadingSet => {
  const { value } = readBytes(readFileSync(join(import.meta.dirname, 'fixtures', name)));
  if (value === undefined) throw new Error(name);
  return value;
};
const write = (format: string, set: ReadingSet): string => writerById(format)?.write(set, { created: '2031-06-01' }).value ?? '';
const wavelengths = Array.from({ length: 16 }, (_, index) => 400 + 20 * index);

// What spreadsheets run as a formula: cells that begin with = + - @, a tab or a line break (OWASP, CSV injection).
const formulas = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '=cmd|\' /C calc\'!A0', '\uff1d1', ' =1'];

describe('CSV', () => {
  test('text that a spreadsheet would run is made inert, numbers are not', () => {
    const set: ReadingSet = {
      format: 'adjoin-readings', version: 1, reader: 'csv', conditions: [{}], lights: [], questions: [],
      records: formulas.map((text, index) => ({ id: `r${index}`, specimen: text.trim(), labels: { note: text, '=head': 'x' }, conditions: 0, row: index + 1, data: { quantity: 'difference', difference: [-0.5, 0, 1], light: 'D65', observer: 10, master: '=M' } })),
    };
    const lines = write('csv', set).trimEnd().split('\r\n');
    expect(lines).toHaveLength(formulas.length + 1);
    const cells = lines.flatMap((line) => line.match(/"(?:[^"]|"")*"|[^,]+/gu) ?? []).map((cell) => cell.replace(/^"/u, ''));
    expect(cells.filter((cell) => /^[\s]*[=+\-@\uff1d]/u.test(cell) && !/^-?\d/u.test(cell))).toEqual([]);
    expect(lines[1]).toContain('-0.5');
    expect(readText({ text: lines.join('\n') }).value?.records.map(({ specimen, labels }) => [specimen, labels?.['note']?.trim(), labels?.['=head']])).toEqual(formulas.map((text) => [text.trim(), text.trim(), 'x']));
  });

  test('spectra on unlike wavelengths are written a row a wavelength', () => {
    const set = fixture('spectra-wide.csv');
    const [first] = set.records;
    if (first?.data.quantity !== 'spectrum') throw new Error('no spectrum');
    const finer = { ...first, id: 'fine', data: { ...first.data, stepNm: 10, values: Array.from({ length: 31 }, (_, index) => index / 64) } };
    const text = write('csv', { ...set, records: [first, finer] });
    expect(text.split('\r\n')[1]).toMatch(/wavelength \(nm\),reflectance$/u);
    expect(text.trimEnd().split('\r\n')).toHaveLength(2 + 16 + 31);
    expect(readText({ text }).value?.records.map(({ data }) => data)).toEqual([first.data, finer.data]);
  });
});

test('ISO 17972-1 is well-formed XML of core elements in the order of the standard, read by a general library', () => {
  const text = write('iso17972', fixture('plaques.cxf'));
  expect(XMLValidator.validate(text)).toBe(true);
  const parsed = new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '', parseTagValue: false }).parse(text) as {
    CxF: { xmlns: string; FileInformation: object; Resources: { ObjectCollection: { Object: { Name: string; CreationDate: string; ColorValues?: { ReflectanceSpectrum?: { '#text': string; StartWL: string; ColorSpecification: string } }; PhysicalAttributes?: { Gloss?: { '#text': string; Method: string } } }[] }; ColorSpecificationCollection: { ColorSpecification: { Id: string; MeasurementSpec: { WavelengthRange?: { StartWL: string; Increment: string } } }[] } } };
  };
  expect(parsed.CxF.xmlns).toBe('http://colorexchangeformat.com/CxF3-core');
  expect(Object.keys(parsed.CxF).filter((key) => key !== 'xmlns')).toEqual(['FileInformation', 'Resources']);
  const objects = parsed.CxF.Resources.ObjectCollection.Object;
  expect(objects.every(({ CreationDate }) => /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/u.test(CreationDate))).toBe(true);
  const spectrum = objects.map((object) => object.ColorValues?.ReflectanceSpectrum).find((value) => value !== undefined);
  expect(spectrum?.['#text'].split(' ').map(Number)).toEqual([...Array<number>(8).fill(0.05), ...Array<number>(7).fill(0.06), 0.0625]);
  const specification = parsed.CxF.Resources.ColorSpecificationCollection.ColorSpecification.find(({ Id }) => Id === spectrum?.ColorSpecification);
  expect(specification?.MeasurementSpec.WavelengthRange).toEqual({ StartWL: '400', Increment: '20' });
  expect(objects.flatMap((object) => (object.PhysicalAttributes?.Gloss === undefined ? [] : [object.PhysicalAttributes.Gloss])).map((gloss) => [gloss['#text'], gloss.Method])).toEqual([['0.5', 'ISO 2813, 20 degrees'], ['2.25', 'ISO 2813, 60 degrees']]);
});

test('ISO 28178: counts agree with what is written, the wavelength and decimal value in pairs', () => {
  const text = write('iso28178', fixture('spectra-wide.csv'));
  const lines = text.split('\n');
  const between = (from: string, to: string): string[] => lines.slice(lines.indexOf(from) + 1, lines.indexOf(to));
  expect(lines[0]).toBe('ISO28178');
  const [fields] = between('BEGIN_DATA_FORMAT', 'END_DATA_FORMAT').map((line) => line.match(/"[^"]*"|\S+/gu) ?? []);
  expect(lines).toContain(`NUMBER_OF_FIELDS ${fields?.length}`);
  expect(fields?.slice(-32)).toEqual(wavelengths.flatMap(() => ['SPECTRAL_NM', 'SPECTRAL_DEC']));
  const sets = between('BEGIN_DATA', 'END_DATA').map((line) => line.match(/"(?:[^"]|"")*"|\S+/gu) ?? []);
  expect(lines).toContain(`NUMBER_OF_SETS ${sets.length}`);
  expect(sets.map((set) => set.length)).toEqual(Array(3).fill(fields?.length));
  expect(sets[2]?.slice(-32).filter((_, index) => index % 2 === 0).map(Number)).toEqual(wavelengths);
});

test('what cannot be written is refused or told', () => {
  const undeclared = readText({ text: `specimen,${wavelengths.join(',')}\na,${wavelengths.map(() => '12').join(',')}\n` }).value;
  const lights = fixture('booth-lamp.spdx');
  if (undeclared === undefined) throw new Error('refused');
  for (const writer of writers) {
    if (writer.id === 'json') {
      const text = writer.write(undeclared).value ?? '';
      expect(readText({ text }).value?.questions.map(({ topic }) => topic)).toContain('scale');
      expect(readText({ text: writer.write(lights).value ?? '' }).value?.lights).toEqual(lights.lights);
      continue;
    }
    expect(writer.write(undeclared)).toMatchObject({ value: undefined, issues: [{ code: 'scale-undeclared', severity: 'error' }] });
    expect(writer.write(lights)).toMatchObject({ value: undefined, issues: [{ code: 'nothing-to-write' }] });
    expect(writer.write({ ...fixture('colours.csv'), lights: lights.lights }, { created: '2031-06-01' }).issues).toMatchObject([{ code: 'lights-not-held', severity: 'warning' }]);
  }
});

test('a day that nobody knows is told, not invented from a clock', () => {
  const { issues } = writerById('iso17972')?.write(fixture('spectra-wide.csv')) ?? { issues: [] };
  expect(issues).toMatchObject([{ code: 'date-unknown', severity: 'warning' }]);
});
