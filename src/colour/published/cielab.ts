import { derived, workedExample } from '../value-origin.ts';

/** CIELAB of tristimulus values. */
export const workedCielab = [
  {
    origin: workedExample('ISO/CIE 11664-4:2019; colour-science 0.4.6 (BSD-3-Clause), white from x = 0.31270, y = 0.32900'),
    xyz: [20.654008, 12.197225, 5.136952], white: [31.27 / 0.329, 100, 35.83 / 0.329],
    lab: [41.527875, 52.638583, 26.923179], tolerance: 2e-6,
  },
  {
    origin: derived('ISO/CIE 11664-4:2019, computed by an independent program'),
    xyz: [20.654008, 12.197225, 5.136952], white: [95.047, 100, 108.883],
    lab: [41.527875, 52.637099, 26.918141], tolerance: 2e-6,
  },
] as const;

/** Origin of {@link workedLightness}. */
export const lightnessOrigin = derived('ISO/CIE 11664-4:2019, computed by an independent program');

/** Lightness of three luminance factors in per cent, 4 decimals. */
export const workedLightness = [
  { y: 5, lightness: 26.7348 },
  { y: 1, lightness: 8.9914 },
  { y: 0.5, lightness: 4.5165 },
] as const;
