import type { Micrometres } from '../quantities.ts';

/**
 * Class of VDI 3400 of a tool surface, 20 log10(10 Ra), not rounded.
 *
 * Ra in micrometres, above 0; 0 for 0.1, 45 for 18; one class is 12.2 % in Ra. NaN for Ra that is not above 0.
 * It grades the tool's surface: a moulded part has another Ra.
 * Source: VDI 3400.
 */
export const vdiClassOfRa = (raUm: Micrometres): number => (raUm > 0 ? 20 * Math.log10(10 * raUm) : NaN);

/**
 * Ra in micrometres of a class of VDI 3400; the inverse of {@link vdiClassOfRa}. The printed table rounds it to preferred numbers.
 *
 * Source: VDI 3400.
 */
export const raOfVdiClass = (vdiClass: number): Micrometres => 0.1 * 10 ** (vdiClass / 20);
