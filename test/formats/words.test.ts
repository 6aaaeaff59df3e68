import { describe, expect, test } from 'vitest';
import { columnKey, readColumn } from '../../src/formats/column.ts';
import { columnNames } from '../../src/formats/column-names.ts';
import { readDateTime, readGeometry, readKind, readLight, readObserver, readUv, withSpecular } from '../../src/formats/condition-words.ts';

describe('headers', () => {
  test('no word stands for two fields, and every word is in the form it is compared in', () => {
    const words = Object.entries(columnNames).flatMap(([field, names]) => names.map((name) => [name, field] as const));
    expect(words.filter(([name]) => columnKey(name) !== name)).toEqual([]);
    const fields = new Map<string, string>();
    expect(words.filter(([name, field]) => (fields.get(name) ?? field) !== field || !fields.set(name, field))).toEqual([]);
    expect(new Set(words.map(([name]) => name)).size).toBe(words.length);
  });

  test.each([
    ['400', 400, undefined], ['400 nm', 400, undefined], ['R400', 400, undefined], ['R(400)', 400, undefined], ['nm400', 400, undefined], ['SPECTRAL_NM_400', 400, undefined], ['SPECTRAL_400', 400, undefined],
    ['SPECTRAL_PCT_400', 400, 'percent'], ['SPECTRAL_DEC_400', 400, 'fraction'], ['400 nm (%)', 400, 'percent'], ['400 nm [1]', 400, 'fraction'], ['R400 %', 400, 'percent'], ['reflectance 400 nm', 400, undefined],
  ])('%j is a wavelength of %s nm, scale %s', (header, nm, scale) => {
    expect(readColumn(header)).toEqual({ kind: 'reflectance', nm, ...(scale === undefined ? {} : { scale }) });
  });

  test.each([
    ['Gloss 60°', 'gloss60', 1], ['60° gloss', 'gloss60', 1], ['Gloss (20°)', 'gloss20', 1], ['Glanz 85° (GU)', 'gloss85', 1], ['Ra', 'raUm', 1], ['Ra (µm)', 'raUm', 1], ['Ra [nm]', 'raUm', 1e-3], ['SA_UM', 'saUm', 1], ['Sal (mm)', 'salMm', 1],
    ['Sdr (%)', 'sdr', 0.01], ['aperture (cm)', 'aperture', 10], ['APERTURE_MM', 'aperture', 1], ['ΔL*', 'dL', 1], ['∆a*', 'da', 1], ['delta b*', 'db', 1], ['L*', 'L', 1], ['h°', 'h', 1], ['LAB_L', 'L', 1], ['LCH_C', 'C', 1],
    ['Sample name', 'specimen', 1], ['SAMPLE_ID', 'id', 1], ['part number', 'part', 1], ['Messpunkt', 'spot', 1], ['spot x (mm)', 'spotX', 1],
  ])('%j is %s, times %d', (header, field, factor) => {
    expect(readColumn(header)).toMatchObject({ kind: 'field', field, factor });
  });

  test('units that are not known make a label, not a guess', () => {
    expect(readColumn('Ra (inch)')).toEqual({ kind: 'label', name: 'Ra (inch)', unit: 'inch' });
    expect(readColumn('X')).toEqual({ kind: 'label', name: 'X' });
    expect(readColumn('XYZ_X')).toEqual({ kind: 'label', name: 'XYZ_X' });
  });

  test('light and observer of a CIELAB column', () => {
    expect(readColumn('L* (D65/10°)')).toMatchObject({ field: 'L', view: { light: 'D65', observer: 10 } });
    expect(readColumn('b* (A)')).toMatchObject({ field: 'b', view: { light: 'A' } });
  });
});

describe('words of conditions', () => {
  test.each([
    ['45:0', '45:0'], ['45/0', '45:0'], ['45°/0°', '45:0'], ['45a:0', '45a:0'], ['45c/0', '45c:0'], ['45/0 annular', '45a:0'], ['0/45 circumferential', '0:45c'], ['45:0 directional', '45x:0'], ['d/8', 'd:8'], ['d/8°', 'd:8'], ['di:8', 'di:8'], ['de/8', 'de:8'],
    ['8:di', '8:di'], ['d/8 (specular excluded)', 'de:8'], ['multi-angle', 'multi-angle'], ['unknown', 'unknown'], ['oblique', undefined], ['', undefined], ['toString', undefined],
  ])('the geometry %j is %s', (text, geometry) => expect(readGeometry(text)).toBe(geometry));

  test('a specular mode completes a sphere, leaves 45:0 alone and cannot turn one sphere into the other', () => {
    expect([withSpecular('d:8', 'included'), withSpecular('8:d', 'excluded'), withSpecular('45a:0', 'excluded'), withSpecular('di:8', 'excluded'), withSpecular('d:8', undefined)]).toEqual(['di:8', '8:de', '45a:0', undefined, 'd:8']);
  });

  test.each([
    ['D65', { light: 'D65' }], ['d65', { light: 'D65' }], ['D65/10', { light: 'D65', observer: 10 }], ['D65/10°', { light: 'D65', observer: 10 }], ['A 2', { light: 'A', observer: 2 }], ['F11', { light: 'FL11' }], ['FL 11', {}], ['LED-B3', { light: 'LED-B3' }],
    ['CIE A', { light: 'A' }], ['illuminant C', { light: 'C' }], ['shop light', {}], ['D65/7', {}], ['', {}],
  ])('the light %j is %j', (text, light) => expect(readLight(text)).toEqual(light));

  test('observers, ultraviolet, kinds, dates', () => {
    expect(['2', '10°', '10_Degree', 'CIE 1964', '5'].map(readObserver)).toEqual([2, 10, 10, 10, undefined]);
    expect(['included', 'UV cut', 'excluded', 'adjusted', 'perhaps'].map(readUv)).toEqual(['included', 'excluded', 'excluded', 'adjusted', undefined]);
    expect(['Standard', 'tool part', 'limit sample', 'thing'].map(readKind)).toEqual(['master', 'tool part', 'boundary sample', undefined]);
    expect(['2031-02-28', '2031-02-29', '2031-02-28 08:30', '2031-02-28T08:30:00+01:00', '28.02.2031', '2031-02-28T25:00'].map(readDateTime)).toEqual(['2031-02-28', undefined, '2031-02-28T08:30', '2031-02-28T08:30:00+01:00', undefined, undefined]);
  });
});
