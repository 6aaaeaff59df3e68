import { wavelengthFault } from '../cabin/shapes/wavelengths.ts';
import type { TableFaults } from './table-faults.ts';

export interface WavelengthAt {
  readonly nm: number;
  readonly offset: number;
}

export interface WavelengthGrid {
  readonly startNm: number;
  readonly stepNm: number;
}

/** Evenly spaced, rising wavelengths of a spectrum, or a fault at the first that is not in step. */
export function wavelengthGrid(found: readonly WavelengthAt[], faults: TableFaults): WavelengthGrid | undefined {
  const [first, second] = found;
  if (first === undefined || second === undefined) {
    faults.add('wavelengths-missing', first?.offset ?? 0, { expected: 'a spectrum of wavelengths in nm: 400, 410, ...', found: `${found.length} wavelengths` });
    return undefined;
  }
  const step = second.nm - first.nm;
  for (let index = 1; index < found.length; index += 1) {
    const entry = found[index];
    const previous = found[index - 1];
    if (step > 0 && entry.nm === previous.nm + step) continue;
    const text = `${entry.nm} nm after ${previous.nm} nm`;
    if (entry.nm === previous.nm) {
      faults.add('duplicate-wavelength', entry.offset, { expected: 'each wavelength once', found: text, hint: 'Repeated readings of one specimen need a column that tells their spots apart.' });
    } else if (entry.nm < previous.nm) faults.add('wavelengths-unsorted', entry.offset, { expected: 'wavelengths that rise', found: text, hint: 'Repeated readings of one specimen need a column that tells their spots apart.' });
    else faults.add('wavelengths-irregular', entry.offset, { expected: `an even step of ${step} nm`, found: text, hint: 'A wavelength may be missing.' });
    return undefined;
  }
  const fault = wavelengthFault(first.nm, step, found.length);
  if (fault === undefined) return { startNm: first.nm, stepNm: step };
  const { code, field, ...what } = fault;
  faults.add(code, (field === 'values' ? found.at(-1) ?? first : first).offset, what);
  return undefined;
}
