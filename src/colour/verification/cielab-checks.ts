import { xyzToLab } from '../cielab.ts';
import type { PublishedCheck } from '../published-check.ts';
import { publishedCheck } from '../published-check.ts';
import { lightnessOrigin, workedCielab, workedLightness } from '../published/cielab.ts';
import { worstCheck } from './worst-check.ts';

/** CIELAB against worked examples. */
export const cielabChecks = (): PublishedCheck[] => [
  ...workedCielab.map(({ origin, xyz, white, lab, tolerance }) =>
    worstCheck('CIELAB', origin, `XYZ ${xyz.join(' ')}, white ${white.map((value) => value.toFixed(3)).join(' ')}`,
      ['L*', 'a*', 'b*'], lab, xyzToLab(xyz, white), tolerance)),
  ...workedLightness.map(({ y, lightness }) =>
    publishedCheck('CIELAB L*', lightnessOrigin, `Y = ${y}`,
      lightness, xyzToLab([y, y, y], [100, 100, 100])[0], 5e-5)),
];
