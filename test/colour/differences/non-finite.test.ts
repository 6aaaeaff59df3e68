import { expect, test } from 'vitest';
import { difference } from '../../../src/colour/difference.ts';
import { formulaLabel } from '../../../src/colour/formula-label.ts';
import type { Lab } from '../../../src/quantities.ts';
import { allFormulas } from './all-formulas.ts';

const values = [-1, 0, 1, Infinity, -Infinity, NaN];
const labelled = allFormulas.map((formula) => [formulaLabel(formula), formula] as const);
const triples: readonly Lab[] = values.flatMap((L) => values.flatMap((a) => values.map((b): Lab => [L, a, b])));

test.each(labelled)('%s: finite in, finite out; anything else gives NaN', (_, formula) => {
  const wrong: string[] = [];
  for (const standard of triples) {
    for (const trial of triples) {
      const value = difference(formula, standard, trial);
      const finite = [...standard, ...trial].every(Number.isFinite);
      if (finite ? !(value >= 0 && value < Infinity) : !Number.isNaN(value)) wrong.push(`${standard} to ${trial}: ${value}`);
    }
  }
  expect(wrong).toEqual([]);
});

test.each(labelled)('%s: extreme colours stay finite', (_, formula) => {
  const extremes: readonly Lab[] = [
    [0, 0, 0], [100, 0, 0], [0, 1e-200, 0], [0, 0, 1.6e-162], [50, -1e-12, 1e-12], [50, 127, -128], [100, -128, 127], [0, 60, -90], [50, 0, -0],
  ];
  for (const standard of extremes) {
    for (const trial of extremes) expect(difference(formula, standard, trial), `${standard} to ${trial}`).toSatisfy(Number.isFinite);
  }
});
