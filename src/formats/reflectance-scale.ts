import { highestReflectance } from '../cabin/shapes/reflectances.ts';
import type { ReadOptions } from './format-reader.ts';
import type { ReflectanceScale } from './spectra-table.ts';
import type { TableFaults } from './table-faults.ts';

/** How the reflectances of a table are to be read. */
export interface ScaleInUse {
  readonly divisor: 1 | 100;
  /** Highest value as it stands in the file. */
  readonly top: number;
  /** What a value above the top is called. */
  readonly overCode: 'out-of-range' | 'scale-undeclared';
  /** Nobody has stated the scale and it must be asked. */
  readonly undeclared: boolean;
}

export interface StatedScale {
  readonly scale: ReflectanceScale;
  readonly offset: number;
}

/**
 * The scale by what the file states and the user asked for; contradictions are faults. Nothing is concluded from the values.
 * Undeclared reflectances may be as high as per cent allow, since they may be per cent.
 */
export function scaleInUse(stated: readonly StatedScale[], options: ReadOptions, faults: TableFaults): ScaleInUse {
  const first = stated[0];
  const other = stated.find(({ scale }) => scale !== first?.scale);
  if (first !== undefined && other !== undefined) faults.add('scale-conflict', other.offset, { expected: `${first.scale}, as stated before`, found: other.scale });
  if (first !== undefined && options.scale !== undefined && options.scale !== first.scale) {
    faults.add('scale-conflict', first.offset, { expected: `${options.scale}, as asked for`, found: first.scale, hint: 'Leave out the option, or what the file declares.' });
  }
  const scale = first?.scale ?? options.scale;
  if (scale === 'percent') return { divisor: 100, top: highestReflectance * 100, overCode: 'out-of-range', undeclared: false };
  if (scale === 'fraction') return { divisor: 1, top: highestReflectance, overCode: 'out-of-range', undeclared: false };
  if (options.undeclaredScale === 'fraction') return { divisor: 1, top: highestReflectance, overCode: 'scale-undeclared', undeclared: false };
  return { divisor: 1, top: highestReflectance * 100, overCode: 'out-of-range', undeclared: true };
}

export const scaleHint = 'Nothing is guessed: declare the scale, in a sheet by the line "# scale: percent" above the header.';

/** Tells, once for each spectrum, of values above the top of the scale. */
export function tellOver(values: readonly { readonly text: string; readonly offset: number }[], scale: ScaleInUse, faults: TableFaults): void {
  const [first] = values;
  if (first === undefined) return;
  faults.add(scale.overCode, first.offset, {
    expected: `values from 0 to ${scale.top}`, found: `${first.text.slice(0, 60)}${values.length === 1 ? '' : ` and ${values.length - 1} more in this spectrum`}`,
    ...(scale.overCode === 'scale-undeclared' ? { hint: scaleHint } : {}),
  });
}
