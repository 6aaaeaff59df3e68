import type { Faults } from '../schema/index.ts';

/** Shortest and longest wavelength that is read, nm. */
export const shortestNm = 300;
export const longestNm = 1100;
/** A spectrum must reach from here to there at least, nm; colours are not computed from less. */
export const coverFromNm = 420;
export const coverToNm = 680;
/** Widest step, nm: ASTM E308 has weights for 10 and 20 nm, anything finer is interpolated. */
export const widestStepNm = 20;

export interface WavelengthFault {
  readonly code: string;
  readonly field: 'startNm' | 'stepNm' | 'values';
  readonly expected: string;
  readonly found: string;
  readonly hint?: string;
}

interface Spectrum {
  readonly startNm: number;
  readonly stepNm: number;
  readonly values: readonly unknown[];
}

/** What is wrong with the wavelengths of a reflectance spectrum; nothing where they can be used. */
export function wavelengthFault(startNm: number, stepNm: number, count: number): WavelengthFault | undefined {
  if (!Number.isInteger(startNm) || startNm < shortestNm || startNm > longestNm) {
    const expected = `a whole number of nm from ${shortestNm} to ${longestNm}`;
    return { code: 'wavelength-out-of-range', field: 'startNm', expected, found: String(startNm) };
  }
  if (!Number.isInteger(stepNm) || stepNm < 1 || stepNm > widestStepNm) {
    return { code: 'wavelength-step', field: 'stepNm', expected: `a step of 1 to ${widestStepNm} whole nm`, found: String(stepNm) };
  }
  const endNm = startNm + stepNm * (count - 1);
  if (endNm > longestNm) {
    return { code: 'wavelength-out-of-range', field: 'values', expected: `a last wavelength of at most ${longestNm} nm`, found: `${endNm} nm` };
  }
  if (startNm > coverFromNm || endNm < coverToNm) {
    return {
      code: 'wavelengths-missing', field: 'values', expected: `values from ${coverFromNm} nm or below to ${coverToNm} nm or above`,
      found: `${startNm} to ${endNm} nm`, hint: 'A colour cannot be computed from a part of the visible range.',
    };
  }
  return undefined;
}

export function addWavelengthFault(spectrum: Spectrum, faults: Faults): void {
  const fault = wavelengthFault(spectrum.startNm, spectrum.stepNm, spectrum.values.length);
  if (fault === undefined) return;
  const { code, field, ...text } = fault;
  faults.path.push(field);
  faults.add(code, text);
  faults.path.pop();
}
