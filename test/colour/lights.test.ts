import { expect, test } from 'vitest';
import { lightByName, lightNames, planckian, planckianLight, userLight, whitePoint } from '../../src/colour/index.ts';
import { printedChromaticities } from '../../src/colour/published/white-points.ts';
import { lightAt1nm, sumAt1nm, tabulatedLights } from '../support/independent-colorimetry.ts';
import { numbersOf, recordsOf, referenceTable } from '../support/reference-table.ts';

const light = (name: string) => lightByName(name)!;

test('the list of lights', () => {
  expect(lightNames).toEqual([
    'D65', 'D50', 'A', 'C', 'FL2', 'FL7', 'FL11', 'FL3.15', 'LED-B1', 'LED-B2', 'LED-B3', 'LED-B4', 'LED-B5',
    'LED-BH1', 'LED-RGB1', 'LED-V1', 'LED-V2', 'ID50', 'ID65', 'P2300',
  ]);
  for (const name of lightNames) {
    expect(light(name).spd).toHaveLength(421);
    expect(light(name).spd.every(Number.isFinite)).toBe(true);
    expect(light(name)).toBe(light(name));
  }
  for (const other of ['d65', 'E', '', 'toString', '__proto__']) expect(lightByName(other)).toBeUndefined();
});

test.each(tabulatedLights)('%s at 1 nm agrees with the derived table (CIE 15, CIE 167:2005), 6 decimals', (name) => {
  const expected = lightAt1nm(name);
  const worst = Math.max(...expected.map((value, i) => Math.abs(value - light(name).spd[i]!)));
  expect(worst).toBeLessThan(1e-6);
});

test.each(['ID50', 'ID65'])('%s lies on straight lines between its 5 nm values (CIE 184:2009)', (name) => {
  const table = referenceTable('cie-184/cie-indoor-daylight-5nm.csv');
  const printed = numbersOf(table, name).slice(12);
  printed.forEach((value, i) => expect(light(name).spd[5 * i]).toBe(value));
  expect(light(name).spd[203]).toBeCloseTo(0.4 * printed[40]! + 0.6 * printed[41]!, 12);
});

test.each(['FL2', 'FL7', 'FL11', 'FL3.15', 'LED-B3', 'LED-V2'])('%s has no power below 380 nm, where nothing is published', (name) => {
  expect(light(name).spd.slice(0, 20).every((value) => value === 0)).toBe(true);
});

test('illuminant A and its printed table (CIE 15:2004), 6 significant digits', () => {
  const table = referenceTable('cie-015/cie-illuminants-5nm.csv');
  const printed = numbersOf(table, 'A').slice(12);
  const worst = Math.max(...printed.map((value, i) => Math.abs(light('A').spd[5 * i]! / value - 1)));
  expect(worst).toBeLessThan(5e-6);
});

test('P2300 is Planck\'s law with c2 = 1.4388e7 nm K (CIE 015:2018)', () => {
  const radiance = (nm: number) => nm ** -5 / (Math.exp(1.4388e7 / (nm * 2300)) - 1);
  for (const nm of [360, 480, 560, 700, 780]) expect(light('P2300').spd[nm - 360]).toBeCloseTo((100 * radiance(nm)) / radiance(560), 9);
  expect(planckianLight(2300)).toBe(light('P2300'));
  expect(planckianLight(4000)).toMatchObject({ name: 'P4000' });
  // Wien's displacement: the peak of 4000 K lies at 2.8978e6 nm K / 4000 K = 724 nm (CODATA).
  const { spd } = planckianLight(4000);
  expect(360 + spd.indexOf(Math.max(...spd))).toBe(724);
});

test('a Planckian light of 2856 K on the present scale is illuminant A', () => {
  // ISO/CIE 11664-2:2022: A is 2848 K for c2 = 1.435e7 nm K, about 2856 K for 1.4388e7 nm K.
  for (const nm of [380, 450, 650, 780]) {
    expect(planckian(nm, (2848 * 1.4388) / 1.435)).toBeCloseTo(light('A').spd[nm - 360]!, 9);
  }
});

test('a light of the user comes to 1 nm as the lamps do, with nothing beyond its data', () => {
  const printed = numbersOf(referenceTable('cie-015/cie-illuminants-lamps-5nm.csv'), 'FL11');
  expect(Array.from(userLight('shop', 380, 5, printed).spd)).toEqual(Array.from(light('FL11').spd));
  const short = userLight('short', 400, 50, [1, 2, 3]);
  expect([399, 400, 425, 450, 500, 501].map((nm) => short.spd[nm - 360])).toEqual([0, 1, 1.5, 2, 3, 0]);
});

const whites = recordsOf(referenceTable('cie-015/white-points.csv'));
const xyzOf = (row: Record<string, string>) => [Number(row['X']), Number(row['Y']), Number(row['Z'])];
const farthest = (got: readonly number[], expected: readonly number[]) => Math.max(...got.map((value, i) => Math.abs(value - expected[i]!)));

test.each(whites.filter((row) => row['source'] === 'computed-1nm'))('white point of $illuminant, $observer_deg deg (independent 1 nm sum, 4 decimals)', (row) => {
  expect(farthest(whitePoint(light(row['illuminant']!), Number(row['observer_deg']) as 2 | 10), xyzOf(row))).toBeLessThan(6e-5);
});

test.each(whites.filter((row) => row['source'] === 'CIE015-2018'))('printed white point of $illuminant, $observer_deg deg (CIE 015:2018)', (row) => {
  // CIE 15 prints 5 nm sums to two decimals; the 1 nm sum differs by up to 0.0103 more (independent sums of both kinds in the same file).
  const of = (source: string) => xyzOf(whites.find((other) =>
    other['source'] === source && other['illuminant'] === row['illuminant'] && other['observer_deg'] === row['observer_deg'])!);
  const allowed = 0.0051 + farthest(of('computed-5nm'), of('computed-1nm'));
  expect(farthest(whitePoint(light(row['illuminant']!), Number(row['observer_deg']) as 2 | 10), xyzOf(row))).toBeLessThan(allowed);
});

test.each(printedChromaticities.filter(({ observer }) => observer === 2))('chromaticity of $light, 2 deg (CIE 15:2004; CIE 015:2018)', ({ light: name, xy }) => {
  const [x, y, z] = whitePoint(light(name), 2);
  expect(farthest([x / (x + y + z), y / (x + y + z)], xy)).toBeLessThan(5e-5);
});

test('white points of indoor daylight agree with an independent sum of the straight lines', () => {
  const table = referenceTable('cie-184/cie-indoor-daylight-5nm.csv');
  const printed = numbersOf(table, 'ID65').slice(12);
  const spd = Array.from({ length: 421 }, (_, i) => printed[Math.floor(i / 5)]! * (1 - (i % 5) / 5) + (printed[Math.floor(i / 5) + 1] ?? 0) * ((i % 5) / 5));
  for (const observer of [2, 10] as const) {
    expect(farthest(whitePoint(light('ID65'), observer), sumAt1nm(spd.map(() => 1), spd, observer))).toBeLessThan(1e-9);
  }
});
