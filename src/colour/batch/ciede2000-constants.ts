const radiansPerDegree = Math.PI / 180;

/** What the two kernels of CIEDE2000 share, so that they work with the same numbers. */
export const ciede2000Constants = {
  power25to7: 25 ** 7,
  cosine30: Math.cos(30 * radiansPerDegree),
  cosine6: Math.cos(6 * radiansPerDegree),
  sine6: Math.sin(6 * radiansPerDegree),
  cosine63: Math.cos(63 * radiansPerDegree),
  sine63: Math.sin(63 * radiansPerDegree),
  /** Sine of the angle by which hues may miss 180 degrees and still count as opposite, as in `ciede2000Difference`. */
  oppositeTolerance: 1e-9,
  /** Product of chromas below which the hue difference counts as none: 1e-50 CIELAB units. */
  leastProduct: 1e-100,
} as const;
