import { derived, workedExample } from '../value-origin.ts';

/** Corresponding colour by CMCCAT2000. */
export const workedCmccat2000 = {
  origin: workedExample('Li, Luo, Rigg, Hunt 2002 (CMCCAT2000); colour-science 0.4.6 (BSD-3-Clause)'),
  xyz: [22.48, 22.74, 8.54],
  white: [111.15, 100, 35.2],
  referenceWhite: [94.81, 100, 107.3],
  fields: { testLuminance: 200, referenceLuminance: 200 },
  corresponding: [19.526983, 23.06834, 24.971752],
} as const;

/** Colour inconstancy of the analytic wave spectrum, adapted to D65, 10 deg, complete adaptation; 4 decimals. */
export const inconstancies = [
  { transform: 'cat16', test: 'A', cie76: 0.5841, cmc11: 0.8906, ciede2000: 0.7783 },
  { transform: 'cat02', test: 'A', cie76: 0.5871, cmc11: 0.8941, ciede2000: 0.7888 },
  { transform: 'cat16', test: 'FL11', cie76: 1.7101, cmc11: 2.5795, ciede2000: 2.4157 },
] as const;

/** Where the figures of {@link inconstancies} come from. */
export const inconstancyOrigin = derived('CIE 159:2004 and CIE 248:2022, computed by an independent program, 4 decimals');
