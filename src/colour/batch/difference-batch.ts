import type { DifferenceFormula } from '../difference-formula.ts';
import { difference } from '../difference.ts';
import { cie94GraphicArts, cie94Textiles } from '../differences/cie94.ts';
import { cie76Batch } from './cie76-batch.ts';
import { cie94Batch } from './cie94-batch.ts';
import { ciede2000Batch } from './ciede2000-batch.ts';
import { cmcBatch } from './cmc-batch.ts';
import type { LabColumns } from './lab-columns.ts';

/**
 * {@link difference} of the colours in the same places of two columns, as many as `into` has room for; gives `into`.
 *
 * Agrees with it to 1e-9 and, like it, gives NaN where a coordinate is not finite. CIE76, CIE94, CMC and CIEDE2000 have kernels of their
 * own; the other formulas are computed pair by pair. A RangeError where a column is shorter than `into`.
 */
export function differenceBatch(formula: DifferenceFormula, standard: LabColumns, trial: LabColumns, into: Float64Array): Float64Array {
  for (const column of [standard.L, standard.a, standard.b, trial.L, trial.a, trial.b]) {
    if (column.length < into.length) throw new RangeError(`a column of ${column.length} colours for ${into.length} differences`);
  }
  switch (formula.name) {
    case 'cie76':
      cie76Batch(standard, trial, into);
      break;
    case 'cie94':
    case 'cie94Textile': {
      const application = formula.name === 'cie94' ? cie94GraphicArts : cie94Textiles;
      cie94Batch(standard, trial, into, application, formula.kL ?? application.kL, formula.kC ?? 1, formula.kH ?? 1);
      break;
    }
    case 'cmc':
      cmcBatch(standard, trial, into, formula.l ?? 2, formula.c ?? 1);
      break;
    case 'ciede2000':
      ciede2000Batch(standard, trial, into, formula.kL ?? 1, formula.kC ?? 1, formula.kH ?? 1);
      break;
    default:
      for (let i = 0; i < into.length; i++) into[i] = difference(formula, [standard.L[i], standard.a[i], standard.b[i]], [trial.L[i], trial.a[i], trial.b[i]]);
      return into;
  }
  for (let i = 0; i < into.length; i++) if (!Number.isFinite(into[i])) into[i] = NaN;
  return into;
}
