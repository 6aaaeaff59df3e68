/** 1/12 of the second difference, to the digits that the practice gives. */
const share = 0.083;

/**
 * Reflectance corrected for a triangular passband as wide as the measuring interval.
 *
 * Evenly spaced values; interior `-a R[i-1] + (1 + 2a) R[i] - a R[i+1]`, ends `(1 + a) R[0] - a R[1]`, a = 0.083, always from the measured
 * values. One value is returned as it is. Never to be applied twice, nor together with weights that have the correction built in.
 * Source: ASTM E2729-16; E. I. Stearns and R. E. Stearns, Color Research and Application 13 (1988) 257-259.
 */
export function correctBandpass(values: ArrayLike<number>): number[] {
  const last = values.length - 1;
  return Array.from(values, (value, i) => {
    const before = values[Math.max(i - 1, 0)];
    const after = values[Math.min(i + 1, last)];
    return value + share * (value - before) + share * (value - after);
  });
}
