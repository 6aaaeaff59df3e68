import type { Lab } from '../quantities.ts';
import { hueDifference } from './hue-difference.ts';

/** Signed parts of a difference, trial minus standard, CIELAB units. */
export interface Components {
  readonly dL: number;
  readonly da: number;
  readonly db: number;
  readonly dC: number;
  /** Positive where the hue angle grows from standard to trial. */
  readonly dH: number;
}

/**
 * Signed differences in lightness, a*, b*, chroma and hue, trial minus standard.
 *
 * dL^2 + da^2 + db^2 = dL^2 + dC^2 + dH^2; dH is 0 where either colour is neutral.
 * Source: ISO/CIE 11664-4:2019.
 */
export function components(standard: Lab, trial: Lab): Components {
  const [L1, a1, b1] = standard;
  const [L2, a2, b2] = trial;
  const chroma1 = Math.sqrt(a1 * a1 + b1 * b1);
  const chroma2 = Math.sqrt(a2 * a2 + b2 * b2);
  return {
    dL: L2 - L1, da: a2 - a1, db: b2 - b1, dC: chroma2 - chroma1,
    dH: hueDifference(a1, b1, chroma1, a2, b2, chroma2),
  };
}
