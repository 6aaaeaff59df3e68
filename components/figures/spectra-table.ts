import type { PlottedSpectrum } from '../../src/report/figures/spectra-plot.ts';
import { fixed, signed } from '../../src/report/number-text.ts';
import type { FigureTable } from './adjoin-figure-table.ts';

/** The reflectances of one or two spectra at every wavelength that either has, per cent; where both have it, their difference. */
export function spectraTable(...spectra: readonly (PlottedSpectrum | undefined)[]): FigureTable {
  const known = spectra.filter((one) => one !== undefined);
  const at = ({ startNm, stepNm, values }: PlottedSpectrum, wavelength: number): number | undefined => values[(wavelength - startNm) / stepNm];
  const wavelengths = [...new Set(known.flatMap(({ startNm, stepNm, values }) => values.map((_, place) => startNm + place * stepNm)))].sort((first, second) => first - second);
  const [first, second] = known;
  return {
    head: ['nm', ...known.map(({ name }) => `${name}, %`), ...(second === undefined ? [] : ['difference'])],
    rows: wavelengths.map((wavelength) => {
      const values = known.map((one) => at(one, wavelength));
      const difference = first === undefined || second === undefined || values[0] === undefined || values[1] === undefined ? undefined : 100 * (values[1] - values[0]);
      return [String(wavelength), ...values.map((value) => fixed(value === undefined ? undefined : 100 * value, 2)), ...(second === undefined ? [] : [signed(difference, 2)])];
    }),
  };
}
