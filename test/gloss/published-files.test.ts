/** The values that `verify` recomputes of gloss are those of the files, and the program meets the files. */
import { expect, test } from 'vitest';
import { fresnelGloss, fresnelReflectance, glossAngles } from '../../src/gloss/index.ts';
import { fresnelTable } from '../../src/gloss/published/fresnel-table.ts';
import { simulatedGloss, simulatedGlossAgreement } from '../../src/gloss/published/simulated-gloss.ts';
import { simulateGloss } from '../../src/gloss/simulate-gloss.ts';
import { recordsOf, referenceTable } from '../support/reference-table.ts';

const fresnel = recordsOf(referenceTable('iso-2813/fresnel.csv'));
const rough = recordsOf(referenceTable('iso-2813/simulated-gloss.csv'));

test('the tables held are those of the files', () => {
  expect(fresnelTable.map(({ n, reflectance, gloss }) => [n, ...reflectance.map(([, value]) => value), gloss[20], gloss[60], gloss[85]]))
    .toEqual(fresnel.map((row) => Object.values(row).map(Number)));
  expect(simulatedGloss.map(({ alpha, gloss }) => [alpha, gloss[20], gloss[60], gloss[85]])).toEqual(rough.map((row) => Object.values(row).map(Number)));
});

test.each(fresnel)('polished surface of index $n: reflectance 6 decimals, gloss 2', (row) => {
  for (const angle of [0, 8, 20, 45, 60, 85]) expect(Math.abs(fresnelReflectance(Number(row['n']), angle) - Number(row[`r${angle}`]))).toBeLessThanOrEqual(5.1e-7);
  for (const angle of glossAngles) expect(Math.abs(fresnelGloss(Number(row['n']), angle) - Number(row[`gloss${angle}`]))).toBeLessThanOrEqual(5.1e-3);
});

test.each(rough)('rough surface, alpha $alpha', (row) => {
  for (const angle of glossAngles) {
    const expected = Number(row[`gloss${angle}`]);
    const rounding = expected < 1 ? 5.1e-4 : 5.1e-3;
    expect(Math.abs(simulateGloss(1.5, Number(row['alpha']), angle) - expected)).toBeLessThanOrEqual(rounding + simulatedGlossAgreement * expected);
  }
});
