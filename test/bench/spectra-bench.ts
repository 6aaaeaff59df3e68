import { matrix, multiply } from 'mathjs';
import { Matrix } from 'ml-matrix';
import { labColumns, spectraToLab } from '../../src/colour/batch/index.ts';
import { lightByName, weightsFor } from '../../src/colour/index.ts';
import { seededNumbers, smoothReflectance } from '../support/seeded-numbers.ts';
import { checksumOf, interleaved, scaled } from './bench-line.ts';
import type { BenchLine } from './bench-line.ts';

const [startNm, stepNm, bands] = [400, 10, 31];
const count = 2_000;
const rounds = 15;
const lights = ['D65', 'A', 'FL11', 'D50', 'FL2', 'LED-B3'];

/** Spectra to CIELAB under six lights. The libraries multiply the spectra with the weights and stop there: no white, no cube root, no CIELAB. */
export function spectraBenchmark(): readonly BenchLine[] {
  const random = seededNumbers(31);
  const spectra = Array.from({ length: count }, () => {
    const curve = smoothReflectance(random);
    return Array.from({ length: bands }, (_, band) => curve(startNm + band * stepNm));
  });
  const values = Float64Array.from(spectra.flat());
  const weights = lights.map((name) => {
    const light = lightByName(name);
    if (light === undefined) throw new Error(`no light ${name}`);
    return weightsFor(light, 10, startNm, stepNm, bands);
  });
  const columns = Array.from({ length: bands }, (_, band) => weights.flatMap(({ x, y, z }) => [x[band]!, y[band]!, z[band]!]));
  const into = weights.map(() => labColumns(count));
  const [spectraOfMathjs, weightsOfMathjs] = [matrix(spectra), matrix(columns)];
  const [spectraOfMl, weightsOfMl] = [new Matrix(spectra), new Matrix(columns)];
  let product: Matrix | undefined;
  const { ms, ratio } = interleaved(rounds, {
    own: () => spectraToLab(values, weights, into),
    mathjs: () => multiply(spectraOfMathjs, weightsOfMathjs),
    ml: () => { product = spectraOfMl.mmul(weightsOfMl); },
  });
  const [lightness, y] = [into[0]!.L[5]!, product?.get(5, 1) ?? NaN];
  // CIE 015:2018, 8.2.1: L* of Y against a white of 100, for a colour that is not near black.
  if (Math.abs(lightness - (116 * Math.cbrt(y / weights[0]!.white[1]) - 16)) > 1e-9) throw new Error(`L* ${lightness} here, Y ${y} beside`);
  const perSpectrum = 1e3 / count;
  return (['mathjs', 'ml'] as const).map((peer): BenchLine => ({
    name: 'a spectrum to CIELAB under 6 lights', unit: 'µs', own: scaled(ms.own, perSpectrum),
    beside: { name: peer === 'ml' ? 'ml-matrix, product alone' : 'mathjs, product alone', figure: scaled(ms[peer], perSpectrum) },
    ratio: ratio(peer, 'own'), ...(peer === 'mathjs' ? { wanted: 'at least 8' } : {}), checksum: checksumOf(into.flatMap(({ L }) => [...L])),
  }));
}
