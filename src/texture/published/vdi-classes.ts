import { publishedTable } from '../../colour/value-origin.ts';

export const vdiClassesOrigin = publishedTable('VDI 3400, table of classes as reprinted for toolmaking');

/** [class, Ra in micrometres]; Ra is rounded there to preferred numbers, by up to 1.3 %. */
export const vdiClasses: readonly (readonly [vdiClass: number, raUm: number])[] = [
  [0, 0.10], [12, 0.40], [15, 0.56], [18, 0.80], [21, 1.12], [24, 1.60], [27, 2.24], [30, 3.15], [33, 4.5], [36, 6.3], [39, 9.0],
  [42, 12.5], [45, 18],
];

/** Largest deviation in classes that rounding to preferred numbers leaves: 20 log10(1.013). */
export const vdiClassTolerance = 0.112;
