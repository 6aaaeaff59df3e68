import { e2022Weights } from '../e2022.ts';
import type { Light } from '../lights.ts';
import { lightByName, userLight } from '../lights.ts';
import type { Observer } from '../observers.ts';
import { illuminantA } from '../planck.ts';
import { productsOf } from '../products.ts';
import type { PublishedCheck } from '../published-check.ts';
import { printedWeights } from '../published/e308-weights.ts';
import { workedSpectrum, workedSums, workedWeights, workedWideWeights } from '../published/summation.ts';
import { spectrumToXyz } from '../tristimulus.ts';
import { publishedTable } from '../value-origin.ts';
import type { WeightingTable } from '../weighting-table.ts';
import { weightsFor } from '../weights.ts';
import { tristimulusCheck, worstCheck } from './worst-check.ts';

/** Illuminant A to 830 nm, as far as the printed tables go. */
const wideA: Light = { name: 'A', spd: Float64Array.from({ length: 471 }, (_, i) => illuminantA(360 + i)) };

const equalPower = userLight('E', 360, 5, Array.from({ length: 85 }, () => 1));
const knownLight = (name: string): Light => (name === 'E' ? equalPower : lightByName(name)!);

const tableTo830 = (name: string, observer: Observer, stepNm: number): WeightingTable =>
  e2022Weights(productsOf(name === 'A' ? wideA : knownLight(name), observer), stepNm);

/** One row for each column of each printed table of weights. */
function printedTables(): PublishedCheck[] {
  return printedWeights.flatMap((printed) => {
    const table = tableTo830(printed.light, printed.observer, printed.x.stepNm);
    return (['x', 'y', 'z'] as const).map((axis) => worstCheck(
      `E308 weights W${axis}`,
      publishedTable(printed.light === 'A' ? 'ASTM E308-15, printed table' : 'ASTM E308-15, printed table to 830 nm, here to 780 nm'),
      `${printed.light}, ${printed.observer} deg, ${printed.x.stepNm} nm, worst of ${table.y.length} rows`,
      Array.from(table.y, (_, i) => `${printed.x.startNm + i * printed.x.stepNm} nm`), printed[axis].values, table[axis],
      printed.light === 'A' ? 5e-4 : 5.2e-4,
    ));
  });
}

function singleWeights(): PublishedCheck[] {
  const cut = weightsFor(knownLight('A'), 10, 400, 20, 16, 'e308');
  const wide = tableTo830('A', 10, 20);
  const firstThree = (axis: 'x' | 'y' | 'z') => wide[axis][0] + wide[axis][1] + wide[axis][2];
  const row = (table: WeightingTable, i: number) => [table.x[i], table.y[i], table.z[i]];
  const widely = (wavelength: number) =>
    (wavelength === 400 ? [firstThree('x'), firstThree('y'), firstThree('z')] : row(wide, (wavelength - 360) / 20));
  return [
    ...workedWeights.map(({ wavelength, xyz, tolerance, origin }) => tristimulusCheck('E2022 weight', origin,
      `A, 10 deg, 20 nm, 400 nm to 700 nm, at ${wavelength} nm`, xyz, row(cut, (wavelength - 400) / 20), tolerance)),
    ...workedWideWeights.map(({ wavelength, xyz, tolerance, origin }) => tristimulusCheck('E2022 weight', origin,
      `A, 10 deg, 20 nm, range to 830 nm, at ${wavelength} nm`, xyz, widely(wavelength), tolerance)),
  ];
}

function sums(): PublishedCheck[] {
  return workedSums.map(({ light, method, xyz, tolerance, origin }) => tristimulusCheck(
    method === 'e308' ? 'E308 summation' : '1 nm summation (CIE 167 Sprague)', origin,
    `worked spectrum 400 nm to 700 nm at 20 nm, ${light}, 2 deg`, xyz,
    spectrumToXyz(workedSpectrum.values, weightsFor(knownLight(light), 2, workedSpectrum.startNm, workedSpectrum.stepNm, 16, method)),
    tolerance,
  ));
}

/** Weights and sums against the printed tables and worked examples of ASTM E308 and E2022. */
export const weightChecks = (): PublishedCheck[] => [...printedTables(), ...singleWeights(), ...sums()];
