import type { Weights } from '../../weights.ts';
import type { LabColumns } from '../lab-columns.ts';
import { compress, sums, together } from './spectra-functions.ts';
import { wasmModule } from './wasm-module.ts';

interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly sums: (values: number, fours: number, bands: number, weights: number, into: number) => void;
  readonly compress: (values: number, count: number, whites: number) => void;
}

declare const WebAssembly: undefined | {
  readonly Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
  readonly Instance: new (module: object) => { readonly exports: Exports };
};

const numberBytes = 8;
const lightsTogether = 2;
const sumsOfSpectrum = 3 * lightsTogether;
/** Bands and spectra that have room; longer spectra are left to the kernel without vectors. */
const mostBands = 1024;
const mostSpectra = 256;
const roomForValues = 32768;
const whitesAt = 0;
const weightsAt = whitesAt + sumsOfSpectrum;
const sumsAt = weightsAt + sumsOfSpectrum * mostBands;
const valuesAt = sumsAt + sumsOfSpectrum * mostSpectra;
const pages = Math.ceil(((valuesAt + roomForValues) * numberBytes) / 65536);

interface Machine {
  readonly numbers: Float64Array;
  readonly exports: Exports;
}

/** Made when it is first asked for; `null` where the engine has no vectors or is not allowed to compile. */
let machine: Machine | null | undefined;

function start(): Machine | null {
  if (typeof WebAssembly === 'undefined') return null;
  try {
    const { exports } = new WebAssembly.Instance(new WebAssembly.Module(wasmModule([sums, compress], pages)));
    return { exports, numbers: new Float64Array(exports.memory.buffer) };
  } catch {
    return null;
  }
}

/**
 * CIELAB of spectra under many lights by vectors of two numbers; false, with nothing done, where that cannot be.
 * Sums run in the order of `spectrumToXyz`; cube roots differ from those of `Math.cbrt` by a few units in the last place.
 */
export function spectraBySimd(values: Float64Array, count: number, weights: readonly Weights[], into: readonly LabColumns[]): boolean {
  const bands = weights[0]?.y.length ?? 0;
  if (bands === 0 || bands > mostBands) return false;
  machine ??= start();
  if (machine === null) return false;
  const { numbers } = machine;
  const block = Math.min(mostSpectra, together * Math.floor(roomForValues / bands / together));
  for (let first = 0; first < count; first += block) {
    const here = Math.min(block, count - first);
    numbers.set(values.subarray(first * bands, (first + here) * bands), valuesAt);
    for (let light = 0; light < weights.length; light += lightsTogether) {
      const pair = [weights[light], weights[light + 1] ?? weights[light]] as const;
      twoLights(machine, here, bands, pair);
      unpack(numbers, 0, first, here, into[light]);
      if (light + 1 < weights.length) unpack(numbers, 3, first, here, into[light + 1]);
    }
  }
  return true;
}

function twoLights({ numbers, exports }: Machine, spectra: number, bands: number, pair: readonly [Weights, Weights]): void {
  pair.forEach(({ x, y, z, white }, light) => {
    numbers.set(white, whitesAt + 3 * light);
    for (let band = 0, place = weightsAt + 3 * light; band < bands; band++, place += sumsOfSpectrum) {
      numbers[place] = x[band];
      numbers[place + 1] = y[band];
      numbers[place + 2] = z[band];
    }
  });
  exports.sums(valuesAt * numberBytes, Math.ceil(spectra / together), bands, weightsAt * numberBytes, sumsAt * numberBytes);
  exports.compress(sumsAt * numberBytes, spectra, whitesAt * numberBytes);
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
