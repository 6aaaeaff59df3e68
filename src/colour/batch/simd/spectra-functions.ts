import { add, addInt, bitsDown, bitsUp, both, countDown, get, greater, int, load, loadTwice, multiply, multiplyInt, or, select, set, store, subtract } from '../../../wasm/wasm-code.ts';
import type { Code } from '../../../wasm/wasm-code.ts';
import { numberBytes } from '../../../wasm/wasm-machine.ts';
import type { WasmFunction } from '../../../wasm/wasm-module.ts';

/** Spectra that are summed together, and numbers that they give: X, Y, Z under two lights, in three vectors. */
export const together = 4;
const vectors = [0, 1, 2] as const;
const vectorBytes = 16;

/**
 * `sums(values, fours, bands, weights, into)`: addresses in bytes; four times `fours` spectra of `bands` values one after the other; for
 * each band the six weights X, Y, Z of two lights; for each spectrum six sums, added in the order of the bands.
 */
export const sums: WasmFunction = (() => {
  const [values, fours, bands, weights, into, weight, left] = [0, 1, 2, 3, 4, 5, 6];
  const spectra = Array.from({ length: together }, (_, index) => 7 + index);
  const firstVector = 7 + together;
  const weightVectors = vectors.map((index) => firstVector + index);
  const value = firstVector + 3;
  const sum = (spectrum: number, index: number): number => firstVector + 4 + 3 * spectrum + index;
  const rowBytes = multiplyInt(get(bands), int(numberBytes));
  const eachSpectrum = (step: (spectrum: number) => Code): Code => spectra.flatMap((_, index) => [...step(index)]);
  const eachVector = (step: (index: number) => Code): Code => vectors.flatMap((index) => [...step(index)]);
  return {
    name: 'sums', parameters: 5, integers: 2 + together, vectors: 4 + 3 * together,
    body: countDown(fours,
      eachSpectrum((index) => [...set(spectra[index], get(values)), ...set(values, addInt(get(values), rowBytes))]),
      set(weight, get(weights)),
      set(left, get(bands)),
      eachSpectrum((spectrum) => eachVector((index) => set(sum(spectrum, index), both(0)))),
      countDown(left,
        eachVector((index) => set(weightVectors[index], load(get(weight), vectorBytes * index))),
        eachSpectrum((spectrum) => [
          ...set(value, loadTwice(get(spectra[spectrum]))),
          ...eachVector((index) => set(sum(spectrum, index), add(get(sum(spectrum, index)), multiply(get(weightVectors[index]), get(value))))),
          ...set(spectra[spectrum], addInt(get(spectra[spectrum]), int(numberBytes))),
        ]),
        set(weight, addInt(get(weight), int(3 * vectorBytes))),
      ),
      eachSpectrum((spectrum) => eachVector((index) => store(get(into), get(sum(spectrum, index)), vectorBytes * (3 * spectrum + index)))),
      set(into, addInt(get(into), int(3 * vectorBytes * together))),
    ),
  };
})();

/** A number of this size has its whole part in the low word of its bits. */
const wholePartLow = 2 ** 52;
/**
 * The high word of 1 / cbrt(t) is about this less a third of that of t, a number's bits being nearly its logarithm: found by trial as
 * the number that leaves |1 - t y^3| smallest at its largest, 0.102.
 */
const guessFrom = 1430186287;
const linearBelow = 216 / 24389;
const slope = 24389 / 27;

/**
 * `compress(values, count)`: address in bytes; `count` times six ratios to the white are put through the compression function of CIELAB, in
 * place. The reciprocal cube root y of t is guessed from the bits and mended twice by the series of (1 - e)^(-1/3) with e = 1 - t y^3, cut
 * after e^3: 0.102 becomes 1e-5, then nothing. No division.
 */
export const compress: WasmFunction = (() => {
  const [values, count] = [0, 1];
  const [ratio, reciprocal, error] = [2, 3, 4];
  const highWord = subtract(or(bitsDown(get(ratio), 32), both(wholePartLow)), both(wholePartLow));
  const guess = bitsUp(add(multiply(highWord, both(-1 / 3)), both(wholePartLow + guessFrom)), 32);
  const series = multiply(get(error), add(both(1 / 3), multiply(get(error), add(both(2 / 9), multiply(get(error), both(14 / 81))))));
  const mend: Code = [
    ...set(error, subtract(both(1), multiply(multiply(get(ratio), get(reciprocal)), multiply(get(reciprocal), get(reciprocal))))),
    ...set(reciprocal, add(get(reciprocal), multiply(get(reciprocal), series))),
  ];
  const root = multiply(multiply(get(ratio), get(reciprocal)), get(reciprocal));
  const line = add(multiply(both(slope / 116), get(ratio)), both(16 / 116));
  const one = (index: number): Code => [
    ...set(ratio, load(get(values), vectorBytes * index)),
    ...set(reciprocal, guess), ...mend, ...mend,
    ...store(get(values), select(root, line, greater(get(ratio), both(linearBelow))), vectorBytes * index),
  ];
  return {
    name: 'compress', parameters: 2, integers: 0, vectors: 3,
    body: countDown(count, ...vectors.map(one), set(values, addInt(get(values), int(3 * vectorBytes)))),
  };
})();
