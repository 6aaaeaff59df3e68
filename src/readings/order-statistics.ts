/** Empirical quantiles of a sample (the array is sorted in place), linear between order statistics (R. J. Hyndman, Y. Fan 1996, type 7). */
export function quantiles(sample: Float64Array, levels: readonly number[]): number[] {
  sample.sort();
  return levels.map((level) => {
    const place = level * (sample.length - 1);
    const below = Math.floor(place);
    const above = Math.min(below + 1, sample.length - 1);
    return sample[below] + (place - below) * (sample[above] - sample[below]);
  });
}
