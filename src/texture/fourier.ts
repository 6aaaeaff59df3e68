/**
 * Discrete Fourier transform of any length by mixed radices, many at once: `lanes` transforms lie side by side, element k of lane q
 * at `k * lanes + q`.
 *
 * Lengths whose largest prime factor is small are fast; a large prime factor p costs p operations a point.
 * Source: autosort algorithm of Stockham; C. Van Loan, Computational Frameworks for the Fast Fourier Transform, SIAM 1992, section 1.7.
 */
export class FourierPlan {
  readonly length: number;
  private readonly factors: readonly number[];
  private readonly cosine: Float64Array;
  private readonly sine: Float64Array;

  constructor(length: number) {
    this.length = length;
    this.factors = factorsOf(length);
    this.cosine = new Float64Array(length);
    this.sine = new Float64Array(length);
    for (let index = 0; index < length; index += 1) {
      this.cosine[index] = Math.cos((2 * Math.PI * index) / length);
      this.sine[index] = -Math.sin((2 * Math.PI * index) / length);
    }
  }

  /** X_k = sum of x_j exp(-2 pi i j k / length), in place, with room of the same size. For the inverse, unscaled, give `im` and `re` in each other's place. */
  transform(re: Float64Array, im: Float64Array, roomRe: Float64Array, roomIm: Float64Array, lanes: number): void {
    let [fromRe, fromIm, toRe, toIm] = [re, im, roomRe, roomIm];
    let left = this.length;
    let stride = lanes;
    for (const radix of this.factors) {
      if (radix === 4) this.stageOfFour(fromRe, fromIm, toRe, toIm, left, stride);
      else if (radix === 5) this.stageOfFive(fromRe, fromIm, toRe, toIm, left, stride);
      else if (radix === 3) this.stageOfThree(fromRe, fromIm, toRe, toIm, left, stride);
      else if (radix === 2) this.stageOfTwo(fromRe, fromIm, toRe, toIm, left, stride);
      else this.stage(fromRe, fromIm, toRe, toIm, left, stride, radix);
      [fromRe, fromIm, toRe, toIm] = [toRe, toIm, fromRe, fromIm];
      left /= radix;
      stride *= radix;
    }
    if (fromRe !== re) {
      const size = this.length * lanes;
      re.set(fromRe.subarray(0, size));
      im.set(fromIm.subarray(0, size));
    }
  }

  private stageOfTwo(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, left: number, stride: number): void {
    const half = left / 2;
    const turn = this.length / left;
    for (let p = 0; p < half; p += 1) {
      const [wr, wi] = [this.cosine[p * turn], this.sine[p * turn]];
      let a = stride * p;
      let b = a + stride * half;
      let out = 2 * stride * p;
      for (let q = 0; q < stride; q += 1, a += 1, b += 1, out += 1) {
        const [dr, di] = [xr[a] - xr[b], xi[a] - xi[b]];
        yr[out] = xr[a] + xr[b];
        yi[out] = xi[a] + xi[b];
        yr[out + stride] = dr * wr - di * wi;
        yi[out + stride] = dr * wi + di * wr;
      }
    }
  }

  private stageOfFour(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, left: number, stride: number): void {
    const quarter = left / 4;
    const turn = this.length / left;
    const apart = stride * quarter;
    for (let p = 0; p < quarter; p += 1) {
      const w1r = this.cosine[p * turn];
      const w1i = this.sine[p * turn];
      const w2r = this.cosine[2 * p * turn];
      const w2i = this.sine[2 * p * turn];
      const w3r = this.cosine[3 * p * turn];
      const w3i = this.sine[3 * p * turn];
      let a = stride * p;
      let out = 4 * stride * p;
      for (let q = 0; q < stride; q += 1, a += 1, out += 1) {
        const b = a + apart;
        const c = b + apart;
        const d = c + apart;
        const sumR = xr[a] + xr[c];
        const sumI = xi[a] + xi[c];
        const lessR = xr[a] - xr[c];
        const lessI = xi[a] - xi[c];
        const otherR = xr[b] + xr[d];
        const otherI = xi[b] + xi[d];
        // -i (b - d)
        const turnedR = xi[b] - xi[d];
        const turnedI = xr[d] - xr[b];
        yr[out] = sumR + otherR;
        yi[out] = sumI + otherI;
        let r = lessR + turnedR;
        let i = lessI + turnedI;
        yr[out + stride] = r * w1r - i * w1i;
        yi[out + stride] = r * w1i + i * w1r;
        r = sumR - otherR;
        i = sumI - otherI;
        yr[out + 2 * stride] = r * w2r - i * w2i;
        yi[out + 2 * stride] = r * w2i + i * w2r;
        r = lessR - turnedR;
        i = lessI - turnedI;
        yr[out + 3 * stride] = r * w3r - i * w3i;
        yi[out + 3 * stride] = r * w3i + i * w3r;
      }
    }
  }

  private stageOfThree(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, left: number, stride: number): void {
    const third = left / 3;
    const turn = this.length / left;
    const apart = stride * third;
    const s60 = Math.sqrt(3) / 2;
    for (let p = 0; p < third; p += 1) {
      const w1r = this.cosine[p * turn];
      const w1i = this.sine[p * turn];
      const w2r = this.cosine[2 * p * turn];
      const w2i = this.sine[2 * p * turn];
      let a = stride * p;
      let out = 3 * stride * p;
      for (let q = 0; q < stride; q += 1, a += 1, out += 1) {
        const b = a + apart;
        const c = b + apart;
        const sumR = xr[b] + xr[c];
        const sumI = xi[b] + xi[c];
        const evenR = xr[a] - sumR / 2;
        const evenI = xi[a] - sumI / 2;
        const oddR = s60 * (xi[b] - xi[c]);
        const oddI = s60 * (xr[c] - xr[b]);
        yr[out] = xr[a] + sumR;
        yi[out] = xi[a] + sumI;
        let r = evenR + oddR;
        let i = evenI + oddI;
        yr[out + stride] = r * w1r - i * w1i;
        yi[out + stride] = r * w1i + i * w1r;
        r = evenR - oddR;
        i = evenI - oddI;
        yr[out + 2 * stride] = r * w2r - i * w2i;
        yi[out + 2 * stride] = r * w2i + i * w2r;
      }
    }
  }

  private stageOfFive(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, left: number, stride: number): void {
    const fifth = left / 5;
    const turn = this.length / left;
    const apart = stride * fifth;
    const [c72, s72, c144, s144] = [Math.cos(0.4 * Math.PI), Math.sin(0.4 * Math.PI), Math.cos(0.8 * Math.PI), Math.sin(0.8 * Math.PI)];
    for (let p = 0; p < fifth; p += 1) {
      const w1r = this.cosine[p * turn];
      const w1i = this.sine[p * turn];
      const w2r = this.cosine[2 * p * turn];
      const w2i = this.sine[2 * p * turn];
      const w3r = this.cosine[3 * p * turn];
      const w3i = this.sine[3 * p * turn];
      const w4r = this.cosine[4 * p * turn];
      const w4i = this.sine[4 * p * turn];
      let a = stride * p;
      let out = 5 * stride * p;
      for (let q = 0; q < stride; q += 1, a += 1, out += 1) {
        const b = a + apart;
        const c = b + apart;
        const d = c + apart;
        const e = d + apart;
        const outerR = xr[b] + xr[e];
        const outerI = xi[b] + xi[e];
        const innerR = xr[c] + xr[d];
        const innerI = xi[c] + xi[d];
        const wideR = xr[b] - xr[e];
        const wideI = xi[b] - xi[e];
        const narrowR = xr[c] - xr[d];
        const narrowI = xi[c] - xi[d];
        yr[out] = xr[a] + outerR + innerR;
        yi[out] = xi[a] + outerI + innerI;
        let evenR = xr[a] + c72 * outerR + c144 * innerR;
        let evenI = xi[a] + c72 * outerI + c144 * innerI;
        let oddR = s72 * wideI + s144 * narrowI;
        let oddI = -s72 * wideR - s144 * narrowR;
        let r = evenR + oddR;
        let i = evenI + oddI;
        yr[out + stride] = r * w1r - i * w1i;
        yi[out + stride] = r * w1i + i * w1r;
        r = evenR - oddR;
        i = evenI - oddI;
        yr[out + 4 * stride] = r * w4r - i * w4i;
        yi[out + 4 * stride] = r * w4i + i * w4r;
        evenR = xr[a] + c144 * outerR + c72 * innerR;
        evenI = xi[a] + c144 * outerI + c72 * innerI;
        oddR = s144 * wideI - s72 * narrowI;
        oddI = s72 * narrowR - s144 * wideR;
        r = evenR + oddR;
        i = evenI + oddI;
        yr[out + 2 * stride] = r * w2r - i * w2i;
        yi[out + 2 * stride] = r * w2i + i * w2r;
        r = evenR - oddR;
        i = evenI - oddI;
        yr[out + 3 * stride] = r * w3r - i * w3i;
        yi[out + 3 * stride] = r * w3i + i * w3r;
      }
    }
  }

  private stage(xr: Float64Array, xi: Float64Array, yr: Float64Array, yi: Float64Array, left: number, stride: number, radix: number): void {
    const part = left / radix;
    const turn = this.length / left;
    const root = this.length / radix;
    const apart = stride * part;
    const inR = new Float64Array(radix);
    const inI = new Float64Array(radix);
    const half = (radix - 1) / 2;
    for (let p = 0; p < part; p += 1) {
      for (let q = 0; q < stride; q += 1) {
        const from = q + stride * p;
        const to = q + stride * radix * p;
        // Pairs k and radix - k: their sum meets the cosines, their difference the sines.
        let [allR, allI] = [xr[from], xi[from]];
        for (let k = 1; k <= half; k += 1) {
          const [low, high] = [from + k * apart, from + (radix - k) * apart];
          inR[k] = xr[low] + xr[high];
          inI[k] = xi[low] + xi[high];
          inR[radix - k] = xr[low] - xr[high];
          inI[radix - k] = xi[low] - xi[high];
          allR += inR[k];
          allI += inI[k];
        }
        yr[to] = allR;
        yi[to] = allI;
        for (let j = 1; j <= half; j += 1) {
          let [evenR, evenI, oddR, oddI] = [xr[from], xi[from], 0, 0];
          for (let k = 1; k <= half; k += 1) {
            const angle = ((j * k) % radix) * root;
            const [c, s] = [this.cosine[angle], this.sine[angle]];
            evenR += inR[k] * c;
            evenI += inI[k] * c;
            oddR -= inI[radix - k] * s;
            oddI += inR[radix - k] * s;
          }
          this.put(yr, yi, to + j * stride, evenR + oddR, evenI + oddI, p * j * turn);
          this.put(yr, yi, to + (radix - j) * stride, evenR - oddR, evenI - oddI, p * (radix - j) * turn);
        }
      }
    }
  }

  private put(yr: Float64Array, yi: Float64Array, at: number, r: number, i: number, angle: number): void {
    const [c, s] = [this.cosine[angle], this.sine[angle]];
    yr[at] = r * c - i * s;
    yi[at] = r * s + i * c;
  }
}

function factorsOf(length: number): number[] {
  const factors: number[] = [];
  let left = length;
  while (left % 4 === 0) {
    factors.push(4);
    left /= 4;
  }
  for (let prime = 2; left > 1; prime += prime === 2 ? 1 : 2) {
    if (prime * prime > left) prime = left;
    while (left % prime === 0) {
      factors.push(prime);
      left /= prime;
    }
  }
  return factors;
}

/** Largest prime that may divide a length that is to be transformed quickly. */
const largestPrime = 31;

/** The longest length up to `length` and `most` that is quickly transformed; at least 15/16 of it for lengths above 32. */
export function quickLength(length: number, most = Infinity): number {
  let quick = Math.floor(Math.min(length, most));
  while (quick > 1 && Math.max(...factorsOf(quick)) > largestPrime) quick -= 1;
  return quick;
}
