/** Half of a symmetric kernel, from its middle outwards; the whole of it sums to one. */
export function gaussianKernel(deviation: number, reach: number): Float64Array {
  const kernel = new Float64Array(deviation > 0 ? Math.max(0, reach) + 1 : 1);
  kernel[0] = 1;
  let sum = 1;
  for (let index = 1; index < kernel.length; index += 1) {
    kernel[index] = Math.exp((-index * index) / (2 * deviation * deviation));
    sum += 2 * kernel[index];
  }
  return kernel.map((value) => value / sum);
}

/** Smooths along x, in place; beyond the ends the grid counts as 0. */
export function smoothRows(values: Float64Array, width: number, height: number, kernel: Float64Array): void {
  const reach = Math.min(kernel.length - 1, width - 1);
  // The row between blanks of zeros, so that the inner loop has no ends to look for.
  const padded = new Float64Array(width + 2 * reach);
  for (let row = 0; row < width * height; row += width) {
    padded.set(values.subarray(row, row + width), reach);
    for (let x = 0; x < width; x += 1) {
      const middle = x + reach;
      let sum = kernel[0] * padded[middle];
      for (let step = 1; step <= reach; step += 1) sum += kernel[step] * (padded[middle - step] + padded[middle + step]);
      values[row + x] = sum;
    }
  }
}

/** Smooths along y, in place, a strip of columns at a time. */
export function smoothColumns(values: Float64Array, width: number, height: number, kernel: Float64Array): void {
  const reach = Math.min(kernel.length - 1, height - 1);
  const strip = 64;
  const padded = new Float64Array((height + 2 * reach) * strip);
  const sums = new Float64Array(strip);
  for (let left = 0; left < width; left += strip) {
    const wide = Math.min(strip, width - left);
    for (let y = 0; y < height; y += 1) {
      padded.set(values.subarray(y * width + left, y * width + left + wide), (y + reach) * strip);
    }
    for (let y = 0; y < height; y += 1) {
      const middle = (y + reach) * strip;
      for (let x = 0; x < strip; x += 1) sums[x] = kernel[0] * padded[middle + x];
      for (let step = 1; step <= reach; step += 1) {
        const weight = kernel[step];
        const above = middle - step * strip;
        const below = middle + step * strip;
        for (let x = 0; x < strip; x += 1) sums[x] += weight * (padded[above + x] + padded[below + x]);
      }
      for (let x = 0; x < wide; x += 1) values[y * width + left + x] = sums[x];
    }
  }
}
