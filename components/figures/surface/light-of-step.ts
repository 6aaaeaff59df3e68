/** Light of an encoded channel 0..1. Source: IEC 61966-2-1:1999, 5.2. */
export const lightOf = (encoded: number): number => (encoded <= 12.92 * 0.0031308 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4);

/** Light of each of the 256 steps of a channel. */
export const lightOfStep: Float64Array = Float64Array.from({ length: 256 }, (_, step) => lightOf(step / 255));
