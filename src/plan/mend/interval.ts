/** All numbers from one to another, both in it. */
export type Interval = readonly [low: number, high: number];

export const sumOf = ([a, b]: Interval, [c, d]: Interval): Interval => [a + c, b + d];
export const lessOf = ([a, b]: Interval, [c, d]: Interval): Interval => [a - d, b - c];
export const timesOf = ([a, b]: Interval, [c, d]: Interval): Interval => [Math.min(a * c, a * d, b * c, b * d), Math.max(a * c, a * d, b * c, b * d)];
export const scaledOf = ([a, b]: Interval, by: number): Interval => (by < 0 ? [b * by, a * by] : [a * by, b * by]);
/** Of the sizes of its numbers. */
export const sizeOf = ([a, b]: Interval): Interval => [a > 0 ? a : b < 0 ? -b : 0, Math.max(-a, b)];
export const squareOf = (own: Interval): Interval => {
  const [low, high] = sizeOf(own);
  return [low * low, high * high];
};
export const rootOf = ([a, b]: Interval): Interval => [Math.sqrt(Math.max(0, a)), Math.sqrt(Math.max(0, b))];
/** What is in both; rounding may leave the ends crossed, which only widens by as much. */
export const bothOf = ([a, b]: Interval, [c, d]: Interval): Interval => [Math.max(a, c), Math.min(b, d)];
