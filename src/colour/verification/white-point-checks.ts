import type { Xyz } from '../../quantities.ts';
import { lightByName } from '../lights.ts';
import type { Observer } from '../observers.ts';
import { productsOf } from '../products.ts';
import type { PublishedCheck } from '../published-check.ts';
import { printedChromaticities, printedWhitePoints } from '../published/white-points.ts';
import { derived, publishedTable } from '../value-origin.ts';
import { whitePoint } from '../weights.ts';
import { tristimulusCheck, worstCheck } from './worst-check.ts';

/** White point by the sum at 5 nm from 380 nm to 780 nm, the simplified practice that CIE 15 prints its figures from. */
function fiveNanometreWhite(name: string, observer: Observer): Xyz {
  const products = productsOf(lightByName(name)!, observer);
  const sum = (column: Float64Array): number => column.reduce((total, value, i) => (i >= 20 && i % 5 === 0 ? total + value : total), 0);
  const scale = 100 / sum(products.y);
  return [scale * sum(products.x), 100, scale * sum(products.z)];
}

/** The white points that a standard was read for; those written from memory serve in tests only. */
function whites(): PublishedCheck[] {
  return printedWhitePoints.filter(({ source }) => source === 'CIE 015:2018').map(({ light, observer, source, xyz }) =>
    tristimulusCheck('white point', publishedTable(source), `${light}, ${observer} deg, summed at 5 nm`, xyz, fiveNanometreWhite(light, observer), 0.005));
}

/** 10 deg figures of the FL lamps are printed for linear interpolation; five printed decimals mix sums at 1 nm and at 5 nm. */
function chromaticityTolerance(light: string, observer: Observer, decimals: number): number {
  if (light.startsWith('FL') && observer === 10) return 1.4e-4;
  return decimals === 4 ? 5e-5 : 3e-5;
}

function chromaticities(): PublishedCheck[] {
  return printedChromaticities.map(({ light, observer, xy, decimals }) => {
    const [x, y, z] = whitePoint(lightByName(light)!, observer);
    const sum = x + y + z;
    return worstCheck('chromaticity',
      observer === 2 ? publishedTable('CIE 15:2004; CIE 015:2018') : derived('colour-science 0.4.6 (BSD-3-Clause), from the lights of CIE 015:2018'),
      `${light}, ${observer} deg`, ['x', 'y'], xy, [x / sum, y / sum], chromaticityTolerance(light, observer, decimals));
  });
}

/** Lights against the printed white points and chromaticities. */
export const whitePointChecks = (): PublishedCheck[] => [...whites(), ...chromaticities()];
