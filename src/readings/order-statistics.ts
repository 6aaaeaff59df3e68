/**
 * Empirical quantiles of a sample, linear between order statistics (R. J. Hyndman and Y. Fan, American Statistician 50 (1996) 361,
 * type 7). `levels` 0..1; the sample has no NaN and is reordered in place (selection, C. A. R. Hoare, CACM 4 (1961) 321).
 */
export function quantiles(sample: Float64Array, levels: readonly number[]): number[] {
  return levels.map((level) => {
    const place = level * (sample.length - 1);
    const below = Math.floor(place);
    const low = select(sample, below);
    if (place === below) return low;
    let high = Infinity;
    for (let i = below + 1; i < sample.length; i++) high = Math.min(high, sample[i]);
    return low + (place - below) * (high - low);
  });
}

/** Puts the value of rank `rank` in its sorted place, smaller ones before it, larger ones after it. */
function select(values: Float64Array, rank: number): number {
  let left = 0;
  let right = values.length - 1;
  while (left < right) {
    const pivot = medianOfThree(values[left], values[(left + right) >> 1], values[right]);
    let i = left;
    let j = right;
    while (i <= j) {
      while (values[i] < pivot) i++;
      while (values[j] > pivot) j--;
      if (i > j) break;
      const swapped = values[i];
      values[i++] = values[j];
      values[j--] = swapped;
    }
    if (rank <= j) right = j;
    else if (rank >= i) left = i;
    else break;
  }
  return values[rank];
}

const medianOfThree = (p: number, q: number, r: number): number => Math.max(Math.min(p, q), Math.min(Math.max(p, q), r));
