import type { Spectrum } from '../spectrum.ts';

/** A published table written as numbers with white space between them. */
export function tabulated(startNm: number, stepNm: number, text: string): Spectrum {
  return { startNm, stepNm, values: Float64Array.from(text.trim().split(/\s+/), Number) };
}
