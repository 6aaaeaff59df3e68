import { xyzToLab } from '../cielab.ts';
import type { Xyz } from '../../quantities.ts';
import type { Weights } from '../weights.ts';
import type { LabColumns } from './lab-columns.ts';
import { spectraBySimd } from './simd/spectra-kernel.ts';

/**
 * CIELAB of many spectra on one grid under many lights, each against the white of its own weights.
 *
 * `values` holds the reflectance factors of the spectra one after the other. `into` has columns for each of the `weights`, in their order,
 * of at least as many colours as there are spectra. The sums run in the order of `spectrumToXyz`; the colours agree with those of
 * `spectrumToLab` to 1e-11. By vectors where the engine has them. A RangeError where a length does not fit.
 * Source: ASTM E308-15; ISO/CIE 11664-4:2019.
 */
export function spectraToLab(values: Float64Array, weights: readonly Weights[], into: readonly LabColumns[]): void {
  if (weights.length === 0) return;
  const bands = weights[0].y.length;
  const count = values.length / bands;
  if (!Number.isInteger(count) || weights.some(({ y }, light) => y.length !== bands || !(into[light]?.L.length >= count))) {
    throw new RangeError(`${values.length} values of spectra of ${bands} bands, and columns of ${into.map(({ L }) => L.length).join(', ')} colours for ${weights.length} lights`);
  }
  if (!spectraBySimd(values, count, weights, into)) spectraOneByOne(values, weights, into);
}

/** The same in plain numbers: the same to the last bit as `spectrumToLab`. Four spectra go through a light together, which reads its weights once. */
export function spectraOneByOne(values: Float64Array, weights: readonly Weights[], into: readonly LabColumns[]): void {
  weights.forEach((own, light) => {
    const bands = own.y.length;
    const count = values.length / bands;
    const whole = count - (count % 4);
    for (let first = 0; first < whole; first += 4) fourSpectra(values, bands, first, own, into[light]);
    for (let first = whole; first < count; first++) oneSpectrum(values, bands, first, own, into[light]);
    toLab(into[light], count, own.white);
  });
}

/** Tristimulus values, left in the columns for {@link toLab}. */
function fourSpectra(values: Float64Array, bands: number, first: number, { x, y, z }: Weights, { L: X, a: Y, b: Z }: LabColumns): void {
  const p = first * bands;
  const q = p + bands;
  const r = q + bands;
  const s = r + bands;
  let px = 0, py = 0, pz = 0, qx = 0, qy = 0, qz = 0, rx = 0, ry = 0, rz = 0, sx = 0, sy = 0, sz = 0;
  for (let i = 0; i < bands; i++) {
    const wx = x[i], wy = y[i], wz = z[i];
    const vp = values[p + i], vq = values[q + i], vr = values[r + i], vs = values[s + i];
    px += wx * vp;
    py += wy * vp;
    pz += wz * vp;
    qx += wx * vq;
    qy += wy * vq;
    qz += wz * vq;
    rx += wx * vr;
    ry += wy * vr;
    rz += wz * vr;
    sx += wx * vs;
    sy += wy * vs;
    sz += wz * vs;
  }
  X[first] = px;
  Y[first] = py;
  Z[first] = pz;
  X[first + 1] = qx;
  Y[first + 1] = qy;
  Z[first + 1] = qz;
  X[first + 2] = rx;
  Y[first + 2] = ry;
  Z[first + 2] = rz;
  X[first + 3] = sx;
  Y[first + 3] = sy;
  Z[first + 3] = sz;
}

function oneSpectrum(values: Float64Array, bands: number, first: number, { x, y, z }: Weights, { L: X, a: Y, b: Z }: LabColumns): void {
  let sumX = 0, sumY = 0, sumZ = 0;
  for (let i = 0; i < bands; i++) {
    const value = values[first * bands + i];
    sumX += x[i] * value;
    sumY += y[i] * value;
    sumZ += z[i] * value;
  }
  X[first] = sumX;
  Y[first] = sumY;
  Z[first] = sumZ;
}

/** Turns columns of tristimulus values into columns of CIELAB, in place. */
function toLab({ L, a, b }: LabColumns, count: number, white: Xyz): void {
  for (let i = 0; i < count; i++) {
    const lab = xyzToLab([L[i], a[i], b[i]], white);
    L[i] = lab[0];
    a[i] = lab[1];
    b[i] = lab[2];
  }
}
