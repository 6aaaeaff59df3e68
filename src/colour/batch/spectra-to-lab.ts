import { xyzToLab } from '../cielab.ts';
import type { Weights } from '../weights.ts';
import type { LabColumns } from './lab-columns.ts';

/**
 * CIELAB of many spectra on one grid under many lights, each against the white of its own weights.
 *
 * `values` holds the reflectance factors of the spectra one after the other. `into` has columns for each of the `weights`, in their order,
 * of at least as many colours as there are spectra. The sums run in the order of `spectrumToXyz` and give the same numbers to the last
 * bit; four spectra go through one light together, so that its weights are read once for the four. A RangeError where a length does not fit.
 * Source: ASTM E308-15; ISO/CIE 11664-4:2019.
 */
export function spectraToLab(values: Float64Array, weights: readonly Weights[], into: readonly LabColumns[]): void {
  weights.forEach((own, light) => {
    const bands = own.y.length;
    const count = values.length / bands;
    if (!Number.isInteger(count) || !(into[light]?.L.length >= count)) throw new RangeError(`${values.length} values and room for ${into[light]?.L.length} colours of ${bands} bands`);
    const whole = count - (count % 4);
    for (let first = 0; first < whole; first += 4) fourSpectra(values, bands, first, own, into[light]);
    for (let first = whole; first < count; first++) oneSpectrum(values, bands, first, own, into[light]);
  });
}

function fourSpectra(values: Float64Array, bands: number, first: number, { x, y, z, white }: Weights, into: LabColumns): void {
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
  put(into, first, px, py, pz, white);
  put(into, first + 1, qx, qy, qz, white);
  put(into, first + 2, rx, ry, rz, white);
  put(into, first + 3, sx, sy, sz, white);
}

function oneSpectrum(values: Float64Array, bands: number, first: number, { x, y, z, white }: Weights, into: LabColumns): void {
  let sumX = 0, sumY = 0, sumZ = 0;
  for (let i = 0; i < bands; i++) {
    const value = values[first * bands + i];
    sumX += x[i] * value;
    sumY += y[i] * value;
    sumZ += z[i] * value;
  }
  put(into, first, sumX, sumY, sumZ, white);
}

function put(into: LabColumns, place: number, X: number, Y: number, Z: number, white: Weights['white']): void {
  const [L, a, b] = xyzToLab([X, Y, Z], white);
  into.L[place] = L;
  into.a[place] = a;
  into.b[place] = b;
}
