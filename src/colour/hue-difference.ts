/** Product of chromas below which a colour is neutral: no reading comes near it, and quotients of smaller numbers overflow. */
const leastProduct = 1e-300;

/**
 * Signed CIELAB hue difference dH of a trial (2) from a standard (1), by their a*, b* and chroma C*.
 *
 * Positive where the hue angle grows from standard to trial by at most 180 degrees; 0 where either is neutral; same units as a*, b*.
 * Equals 2 sqrt(C1 C2) sin(dh / 2), written with the cross and dot product, so near equal hues lose no digits
 * and no angle is computed.
 * Source: ISO/CIE 11664-4:2019 (hue difference); the algebraic form is that of Seve, Color Research and Application 16, 217 (1991).
 */
export function hueDifference(a1: number, b1: number, chroma1: number, a2: number, b2: number, chroma2: number): number {
  const product = chroma1 * chroma2;
  if (product < leastProduct) return 0;
  const cross = a1 * b2 - a2 * b1;
  const dot = a1 * a2 + b1 * b2;
  if (dot >= 0) return cross * Math.sqrt(2 / (product + dot));
  const size = Math.sqrt(2 * (product - dot));
  return cross < 0 ? -size : size;
}
