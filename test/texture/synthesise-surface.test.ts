import { describe, expect, test } from 'vitest';
import type { HeightMap } from '../../src/texture/index.ts';
import { leastStr, measureSurfaceSteps, runSteps, seedOf, synthesiseSurfaceSteps } from '../../src/texture/index.ts';

const field = { width: 1024, height: 1024 } as const;
const made = (saUm: number, salMm: number, str: number, pattern: 'random' | 'cells' | 'weave', seed = 5): HeightMap =>
  runSteps(synthesiseSurfaceSteps({ saUm, salMm, str }, { pattern, seed, ...field }));

/** Autocorrelation at a whole lag by its definition: the sum of products point by point, the field taken to repeat. */
function correlation({ width, height, values }: HeightMap, lagX: number, lagY: number): number {
  let [products, squares] = [0, 0];
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const own = values[y * width + x]!;
      products += own * values[((y + lagY) % height) * width + ((x + lagX) % width)]!;
      squares += own * own;
    }
  }
  return products / squares;
}

/** The same between points, by a straight line through the logarithms of the two neighbours, since it falls off like an exponential there. */
function correlationAtLength(map: HeightMap, axis: 0 | 1, mm: number): number {
  const lag = mm / map.spacingMm[axis];
  const low = Math.floor(lag);
  const [a, b] = [low, low + 1].map((steps) => Math.log(correlation(map, axis === 0 ? steps : 0, axis === 1 ? steps : 0)));
  return Math.exp(a! + (lag - low) * (b! - a!));
}

const meanOf = (values: ArrayLike<number>, of: (value: number) => number): number => {
  let sum = 0;
  for (let index = 0; index < values.length; index += 1) sum += of(values[index]!);
  return sum / values.length;
};

describe.each([[6.3, 0.31, 0.62], [12, 0.8, 0.25], [2, 0.1, 1]])('a random field of Sa %d um, Sal %d mm, Str %d', (saUm, salMm, str) => {
  const map = made(saUm, salMm, str, 'random');

  test('has the asked Sa, and an autocorrelation of 0.2 at Sal across and at Sal / Str along the lay, by definition', () => {
    expect(meanOf(map.values, Math.abs)).toBeCloseTo(saUm, 9);
    expect(Math.abs(correlationAtLength(map, 1, salMm) - 0.2)).toBeLessThan(0.005);
    expect(Math.abs(correlationAtLength(map, 0, salMm / str) - 0.2)).toBeLessThan(0.005);
  });

  test('is measured to have the asked parameters', () => {
    const { parameters } = runSteps(measureSurfaceSteps(map));
    expect(parameters.saUm! / saUm).toBeCloseTo(1, 9);
    expect(Math.abs(parameters.salMm! / salMm - 1)).toBeLessThan(0.01);
    expect(Math.abs(parameters.str! - str)).toBeLessThan(0.01);
  });

  test('has the slopes and heights of a normal field with a Gaussian autocorrelation', () => {
    // For exp(-(x/a)^2 - (y/b)^2) the mean square slope is minus the curvature of the autocorrelation at 0: Sdq^2 = 2 Sq^2 (1/a^2 + 1/b^2),
    // and exp(-(Sal/b)^2) = 0.2 gives b = Sal / sqrt(ln 5). Normal heights have Sa = Sq sqrt(2 / pi), Ssk 0 and Sku 3. Derived by hand.
    const across = salMm / Math.sqrt(Math.log(5));
    const along = across / str;
    const { parameters } = runSteps(measureSurfaceSteps(map));
    const expected = (parameters.sqUm! / 1000) * Math.sqrt(2 * (1 / across ** 2 + 1 / along ** 2));
    expect(Math.abs(parameters.sdq! / expected - 1)).toBeLessThan(0.01);
    expect(Math.abs(parameters.saUm! / parameters.sqUm! / Math.sqrt(2 / Math.PI) - 1)).toBeLessThan(0.01);
    expect(Math.abs(parameters.ssk!)).toBeLessThan(0.15);
    expect(Math.abs(parameters.sku! - 3)).toBeLessThan(0.25);
  });
});

test.each([[6.3, 0.31, 0.62], [7.8, 0.53, 0.7], [4.8, 0.22, 0.42], [3, 0.4, 1]])('cells of Sa %d um, Sal %d mm, Str %d have them, as measured and by definition', (saUm, salMm, str) => {
  const map = made(saUm, salMm, str, 'cells');
  const { parameters } = runSteps(measureSurfaceSteps(map));
  expect(meanOf(map.values, Math.abs)).toBeCloseTo(saUm, 9);
  expect(Math.abs(parameters.salMm! / salMm - 1)).toBeLessThan(0.01);
  expect(Math.abs(parameters.str! - str)).toBeLessThan(0.06);
  // The lay runs along x, so that across it the autocorrelation falls fastest or nearly so.
  expect(Math.abs(correlationAtLength(map, 1, salMm) - 0.2)).toBeLessThan(0.05);
  // Furrows are deeper below the mean than the cells stand above it.
  expect(parameters.ssk!).toBeLessThan(0);
});

test('a weave repeats thread by thread', () => {
  const map = made(20, 0.3, 0.87, 'weave');
  const threads = 2 * Math.round(1024 / 21 / 2);
  // A plain weave is the same again after two threads.
  const lag = Math.round((2 * 1024) / threads);
  expect(correlation(map, lag, 0)).toBeGreaterThan(0.8);
  expect(correlation(map, 0, lag)).toBeGreaterThan(0.8);
});

test.each(['random', 'cells', 'weave'] as const)('%s: heights go on over the edges', (pattern) => {
  const { width, height, values } = made(5, 0.3, 0.6, pattern);
  const steps = (from: (index: number) => number, to: (index: number) => number, count: number): number =>
    Array.from({ length: count }, (_, index) => Math.abs(values[from(index)]! - values[to(index)]!)).reduce((sum, step) => sum + step, 0) / count;
  const inside = steps((y) => y * width + 500, (y) => y * width + 501, height);
  expect(steps((y) => y * width, (y) => y * width + width - 1, height)).toBeLessThan(2 * inside);
  const insideDown = steps((x) => 500 * width + x, (x) => 501 * width + x, width);
  expect(steps((x) => x, (x) => (height - 1) * width + x, width)).toBeLessThan(2 * insideDown);
});

test('the same seed gives the same surface, another one another', () => {
  const size = { width: 128, height: 128 };
  const once = (pattern: 'random' | 'cells', seed: number) => runSteps(synthesiseSurfaceSteps({ saUm: 5, salMm: 0.3, str: 0.6 }, { pattern, seed, ...size })).values;
  for (const pattern of ['random', 'cells'] as const) {
    expect(once(pattern, 3)).toEqual(once(pattern, 3));
    expect(once(pattern, 3)).not.toEqual(once(pattern, 4));
  }
});

test('a Str below the least is made with the least; heights of Sa 0 are flat', () => {
  const { parameters } = runSteps(measureSurfaceSteps(made(5, 0.3, 0, 'random')));
  expect(Math.abs(parameters.str! - leastStr)).toBeLessThan(0.01);
  expect(made(0, 0.3, 0.6, 'random').values.every((value) => Math.abs(value) === 0)).toBe(true);
});

test('seeds of texts are those of FNV-1a (published test vectors of the hash: "" and "foobar")', () => {
  expect(seedOf('')).toBe(0x811c9dc5);
  expect(seedOf('foobar')).toBe(0xbf9cf968);
});
