/** Product of chromas below which the hue difference counts as none: its square would be smaller than any rounding. */
const leastProduct = 1e-150;

/**
 * Square of the CIELAB hue difference of two colours by their a*, b* and the product of their chromas.
 *
 * 2 (C1 C2 - a1 a2 - b1 b2), for hues less than a right angle apart written with the cross product, so that near equal hues lose no
 * digits; 0 for a neutral colour. The sign is left aside: most formulas square it away.
 * Source: Seve, Color Research and Application 16, 217 (1991).
 */
export function squaredHueDifference(a1: number, b1: number, a2: number, b2: number, product: number): number {
  if (product < leastProduct) return 0;
  const dot = a1 * a2 + b1 * b2;
  const cross = a1 * b2 - a2 * b1;
  return dot >= 0 ? (2 * cross * cross) / (product + dot) : 2 * (product - dot);
}
