/** The values that `verify` recomputes of texture are those of the files, and the program meets the files. */
import { expect, test } from 'vitest';
import { contrastSensitivity } from '../../src/texture/contrast-sensitivity.ts';
import { raOfVdiClass } from '../../src/texture/index.ts';
import { analyticSurfaces } from '../../src/texture/published/analytic-surfaces.ts';
import { contrastSensitivities } from '../../src/texture/published/contrast-sensitivity.ts';
import { vdiClasses } from '../../src/texture/published/vdi-classes.ts';
import { recordsOf, referenceTable } from '../support/reference-table.ts';

const rows = (path: string): number[][] => recordsOf(referenceTable(path)).map((row) => Object.values(row).map(Number));

test('texture classes are those of the file, and Ra by the class is within the rounding of the table', () => {
  const classes = rows('vdi-3400/texture-classes.csv');
  expect(vdiClasses).toEqual(classes);
  for (const [vdiClass, ra] of classes) expect(Math.abs(raOfVdiClass(vdiClass!) / ra! - 1)).toBeLessThanOrEqual(0.013);
});

test('contrast sensitivities are those of the file, and are met to 2 decimals', () => {
  const sensitivities = rows('barten-2004/contrast-sensitivity.csv');
  expect(contrastSensitivities).toEqual(sensitivities);
  for (const [luminance, frequency, sensitivity] of sensitivities) {
    expect(Math.abs(contrastSensitivity(frequency!, luminance!, 10) - sensitivity!)).toBeLessThanOrEqual(5.1e-3);
  }
});

test('parameters of surfaces of sines, by hand in the program, are those integrated numerically in the file', () => {
  const table = recordsOf(referenceTable('iso-25178-2/sine-surfaces.csv'));
  const held = analyticSurfaces.flatMap(({ expected }, i) => Object.entries(expected).map(([parameter, value]) => [['ridges', 'pyramids'][i], parameter, value] as const));
  expect(held.map(([surface, parameter]) => [surface, parameter])).toEqual(table.map((row) => [row['surface'], row['parameter']]));
  held.forEach(([, parameter, value], i) => {
    // Sdr by hand is carried to the fourth order of the slope, Str to three decimals.
    const share = parameter === 'sdr' || parameter === 'str' ? 1e-3 : 1e-5;
    expect(Math.abs(value - Number(table[i]!['value'])), parameter).toBeLessThanOrEqual(share * Math.max(value, 1e-3));
  });
});
