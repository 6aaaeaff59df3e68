import type { Xyz } from '../../quantities.ts';

/** Surround of a colour appearance model: degree of adaptation factor F, impact c, chromatic induction Nc. */
export interface Surround {
  readonly F: number;
  readonly c: number;
  readonly Nc: number;
}

/** Values of the average surround; source: CIE 159:2004. */
export const averageSurround: Surround = { F: 1, c: 0.69, Nc: 1 };

/** What an appearance model must know beside the colour. */
export interface ViewingConditions {
  /** White of the light and observer, Y = 100. */
  readonly white: Xyz;
  /** LA, luminance of the adapting field, cd/m2. */
  readonly adaptingLuminance: number;
  /** Yb, relative luminance of the background. */
  readonly background: number;
  readonly surround: Surround;
}

/**
 * Conditions that the CAM differences use: D65 and the 10 degree observer (white summed at 1 nm, 360 nm to 780 nm),
 * LA = 64 cd/m2, Yb = 20, average surround. LA 64 is a fifth of 1000 lx on a white over pi.
 * Source of the conditions: common practice, no source.
 */
export const daylightConditions: ViewingConditions = {
  white: [94.8109, 100, 107.3048], adaptingLuminance: 64, background: 20, surround: averageSurround,
};

/** Quantities that depend on the viewing conditions alone. */
export interface ViewingFactors {
  /** FL, luminance-level adaptation factor. */
  readonly luminanceLevel: number;
  /** D, degree of adaptation to the white, 0..1, from F and LA. */
  readonly adaptation: number;
  /** n = Yb / Yw. */
  readonly backgroundRatio: number;
  /** Nbb = Ncb, induction by the background. */
  readonly induction: number;
  /** z, base exponent of lightness. */
  readonly exponent: number;
  /** Factor on chroma by the background, (1.64 - 0.29^n)^0.73. */
  readonly chromaFactor: number;
  /** Colourfulness of a unit of chroma, FL^0.25. */
  readonly colourfulnessFactor: number;
}

/** Computes them; source: CIE 159:2004, the same in Li et al., Color Research and Application 42, 703 (2017). */
export function viewingFactors(conditions: ViewingConditions): ViewingFactors {
  const { adaptingLuminance, background, surround, white } = conditions;
  const k = 1 / (5 * adaptingLuminance + 1);
  const k4 = k * k * k * k;
  const backgroundRatio = background / white[1];
  const luminanceLevel = 0.2 * k4 * (5 * adaptingLuminance) + 0.1 * (1 - k4) * (1 - k4) * Math.cbrt(5 * adaptingLuminance);
  return {
    luminanceLevel,
    adaptation: Math.min(1, Math.max(0, surround.F * (1 - Math.exp((-adaptingLuminance - 42) / 92) / 3.6))),
    backgroundRatio,
    induction: 0.725 * backgroundRatio ** -0.2,
    exponent: 1.48 + Math.sqrt(backgroundRatio),
    chromaFactor: (1.64 - 0.29 ** backgroundRatio) ** 0.73,
    colourfulnessFactor: luminanceLevel ** 0.25,
  };
}
