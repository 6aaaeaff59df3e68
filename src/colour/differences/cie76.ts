import type { Lab } from '../../quantities.ts';
import { isFinitePair } from './finite-pair.ts';

/**
 * Euclidean difference in CIELAB, dE*ab of 1976.
 *
 * CIELAB units; symmetric; NaN for coordinates that are not finite.
 * Source: ISO/CIE 11664-4:2019.
 */
export function cie76Difference(standard: Lab, trial: Lab): number {
  if (!isFinitePair(standard, trial)) return NaN;
  const dL = trial[0] - standard[0];
  const da = trial[1] - standard[1];
  const db = trial[2] - standard[2];
  return Math.sqrt(dL * dL + da * da + db * db);
}
