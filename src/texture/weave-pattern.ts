/**
 * Heights of a plain weave that repeats at its edges: threads along x and along y, each over and under the other in turn. About 0..1.
 *
 * `pitch` is the distance of neighbouring threads in points; it is rounded so that an even number of them fits the field.
 */
export function weavePattern(width: number, height: number, pitch: number): Float64Array {
  const [across, down] = [width, height].map((size) => 2 * Math.max(1, Math.round(size / pitch / 2)));
  const values = new Float64Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const v = (y * down) / height;
    for (let x = 0; x < width; x += 1) {
      const u = (x * across) / width;
      // Where the thread along x is on top, the one along y is below.
      const over = Math.cos(Math.PI * u) * Math.cos(Math.PI * v);
      const [alongX, alongY] = [round(v) * (1 + over), round(u) * (1 - over)];
      values[y * width + x] = Math.max(alongX, alongY) / 2;
    }
  }
  return values;
}

/** Section of a thread, 1 in its middle and 0 on its edge. */
const round = (place: number): number => Math.sqrt(Math.max(0, 1 - (2 * (place - Math.round(place))) ** 2));
