/** A number as a reader expects it: at most six significant digits, no trailing zeros. */
export const plainNumber = (value: number): string => `${Number(value.toPrecision(6))}`;
