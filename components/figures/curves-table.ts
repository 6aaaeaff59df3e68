import { fixed } from '../../src/report/number-text.ts';
import type { FigureTable } from './adjoin-figure-table.ts';

/** A curve over wavelength on an even grid. */
export interface Curve {
  readonly name: string;
  readonly startNm: number;
  readonly stepNm: number;
  readonly values: readonly number[];
}

/** Curves at every wavelength that one of them has, a column a curve. */
export function curvesTable(curves: readonly Curve[], decimals: number): FigureTable {
  const wavelengths = [...new Set(curves.flatMap(({ startNm, stepNm, values }) => values.map((_, place) => startNm + place * stepNm)))].sort((first, second) => first - second);
  return {
    head: ['nm', ...curves.map(({ name }) => name)],
    rows: wavelengths.map((wavelength) => [String(wavelength), ...curves.map(({ startNm, stepNm, values }) => fixed(values[(wavelength - startNm) / stepNm], decimals))]),
  };
}
