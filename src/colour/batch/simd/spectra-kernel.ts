import type { Weights } from '../../weights.ts';
import type { LabColumns } from '../lab-columns.ts';
import { compress, sums, together } from './spectra-functions.ts';
import { numberBytes, wasmMachine } from '../../../wasm/wasm-machine.ts';

interface Functions {
  readonly sums: (values: number, fours: number, bands: number, weights: number, into: number) => void;
  readonly compress: (values: number, count: number) => void;
}

const lightsTogether = 2;
const sumsOfSpectrum = 3 * lightsTogether;
/** Bands that have room; longer spectra are left to the kernel without vectors. */
const mostBands = 1024;
/** Spectra in one go: with 31 bands they and their sums stay in the first cache while all lights pass over them. */
const mostSpectra = 64;
const roomForValues = 32768;
const roomForWeights = sumsOfSpectrum * mostBands;
const weightsAt = 0;
const sumsAt = weightsAt + roomForWeights;
const valuesAt = sumsAt + sumsOfSpectrum * mostSpectra;

interface Machine {
  readonly numbers: Float64Array;
  readonly exports: Functions;
}

/** Made when it is first asked for; `null` where the engine has no vectors or is not allowed to compile. */
let machine: Machine | null | undefined;

function start(): Machine | null {
  const exports = wasmMachine<Functions>([sums, compress], (valuesAt + roomForValues) * numberBytes);
  return exports === null ? null : { exports, numbers: new Float64Array(exports.memory.buffer) };
}

/**
 * CIELAB of spectra under many lights by vectors of two numbers; false, with nothing done, where that cannot be.
 * Sums run in the order of `spectrumToXyz`, each term divided by the white; they and the cube roots differ in the last places.
 */
export function spectraBySimd(values: Float64Array, count: number, weights: readonly Weights[], into: readonly LabColumns[]): boolean {
  const bands = weights[0]?.y.length ?? 0;
  if (bands === 0 || bands > mostBands) return false;
  machine ??= start();
  if (machine === null) return false;
  const { numbers, exports } = machine;
  const block = Math.min(mostSpectra, together * Math.floor(roomForValues / bands / together));
  const lightsAtOnce = lightsTogether * Math.floor(roomForWeights / (bands * sumsOfSpectrum));
  for (let light = 0; light < weights.length; light += lightsAtOnce) {
    const lights = Math.min(lightsAtOnce, weights.length - light);
    for (let pair = 0; pair < lights; pair += lightsTogether) pack(numbers, bands, pair / lightsTogether, weights[light + pair], weights[light + pair + 1] ?? weights[light + pair]);
    for (let first = 0; first < count; first += block) {
      const here = Math.min(block, count - first);
      numbers.set(values.subarray(first * bands, (first + here) * bands), valuesAt);
      for (let one = 0; one < lights; one += lightsTogether) {
        const pair = one / lightsTogether;
        exports.sums(valuesAt * numberBytes, Math.ceil(here / together), bands, (weightsAt + pair * bands * sumsOfSpectrum) * numberBytes, sumsAt * numberBytes);
        exports.compress(sumsAt * numberBytes, here);
        unpack(numbers, 0, first, here, into[light + one]);
        if (one + 1 < lights) unpack(numbers, 3, first, here, into[light + one + 1]);
      }
    }
  }
  return true;
}

/** Lays the weights of two lights beside each other, each as a share of its white, so that the sums are the ratios that CIELAB asks for. */
function pack(numbers: Float64Array, bands: number, pair: number, ...lights: readonly [Weights, Weights]): void {
  lights.forEach(({ x, y, z, white }, light) => {
    for (let band = 0, place = weightsAt + pair * bands * sumsOfSpectrum + 3 * light; band < bands; band++, place += sumsOfSpectrum) {
      numbers[place] = x[band] / white[0];
      numbers[place + 1] = y[band] / white[1];
      numbers[place + 2] = z[band] / white[2];
    }
  });
}

function unpack(numbers: Float64Array, offset: number, first: number, spectra: number, { L, a, b }: LabColumns): void {
  for (let row = 0, place = sumsAt + offset; row < spectra; row++, place += sumsOfSpectrum) {
    const fx = numbers[place];
    const fy = numbers[place + 1];
    const fz = numbers[place + 2];
    L[first + row] = 116 * fy - 16;
    a[first + row] = 500 * (fx - fy);
    b[first + row] = 200 * (fy - fz);
  }
}
