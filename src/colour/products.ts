import type { Light } from './lights.ts';
import type { Observer } from './observers.ts';
import { colourMatching } from './observers.ts';
import { visibleStartNm } from './spectrum.ts';
import type { Products } from './weighting-table.ts';
import { emptyTable, normalise } from './weighting-table.ts';

/**
 * Weights of the 1 nm summation over 360 nm to 780 nm: light times colour-matching functions, Y of the perfect diffuser 100.
 *
 * A light with more values than those is summed as far as it goes, to 830 nm at most, which the printed tables of weights need.
 * Source: ISO/CIE 11664-3:2019; ASTM E308-15, summation at 1 nm.
 */
export function productsOf(light: Light, observer: Observer): Products {
  const matching = colourMatching(observer);
  const count = light.spd.length;
  const table = emptyTable(count);
  for (let i = 0; i < count; i += 1) {
    table.x[i] = light.spd[i] * matching.x.values[i];
    table.y[i] = light.spd[i] * matching.y.values[i];
    table.z[i] = light.spd[i] * matching.z.values[i];
  }
  normalise(table);
  return { startNm: visibleStartNm, ...table };
}
