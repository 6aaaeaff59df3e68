/** A number as a reader expects it: at most six significant digits, no trailing zeros. */
export const plainNumber = (value: number): string => `${Number(value.toPrecision(6))}`;

/** Sums and products of decimal figures without their rounding noise: 0.7 x 1.3 is 0.91, 1.2 + 0.2 is 1.4. */
export const decimal = (value: number): number => Number(value.toPrecision(12));
