/**
 * Standardised residual sum of squares between computed and perceived differences, 0 (proportional) to 1.
 *
 * Both lists of equal length, one entry a pair; either may be scaled without changing the value; NaN for empty or all-zero lists.
 * The literature prints it times 100.
 * Source: Garcia, Huertas, Melgosa, Cui, J. Opt. Soc. Am. A 24, 1823 (2007); recommended by CIE 217:2016.
 */
export function stress(computed: readonly number[], perceived: readonly number[]): number {
  if (computed.length !== perceived.length) throw new RangeError(`lists of ${computed.length} and ${perceived.length} differences`);
  let squares = 0;
  let products = 0;
  for (let i = 0; i < computed.length; i++) {
    squares += computed[i]! * computed[i]!;
    products += computed[i]! * perceived[i]!;
  }
  const factor = squares / products;
  let residual = 0;
  let total = 0;
  for (let i = 0; i < computed.length; i++) {
    residual += (computed[i]! - factor * perceived[i]!) ** 2;
    total += (factor * perceived[i]!) ** 2;
  }
  return Math.sqrt(residual / total);
}
