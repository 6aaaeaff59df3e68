/**
 * Regularised incomplete beta function for `x` in 0..1 and `a`, `b` that are whole multiples of one half above zero: 0 at 0, 1 at 1, NaN elsewhere.
 * Continued fraction by the modified method of Lentz, to 1e-14; M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.5.8.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1 && isHalfWhole(a) && isHalfWhole(b))) return Number.NaN;
  if (x === 0 || x === 1) return x;
  // The fraction converges fast on one side of the mean only.
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) + logGammaOfHalves(a + b) - logGammaOfHalves(a) - logGammaOfHalves(b)) / a;
  let [c, d] = [1, 1 / keptFromZero(1 - ((a + b) * x) / (a + 1))];
  let fraction = d;
  for (let m = 1; m < 1000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let step = 1;
    for (const term of [even, odd]) {
      d = 1 / keptFromZero(1 + term * d);
      c = keptFromZero(1 + term / c);
      step = c * d;
      fraction *= step;
    }
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return front * fraction;
}

const isHalfWhole = (value: number): boolean => value > 0 && Number.isInteger(2 * value) && value <= 1e5;
const keptFromZero = (value: number): number => (Math.abs(value) < 1e-300 ? 1e-300 : value);

/** Logarithm of the gamma function at whole multiples of one half, by its recurrence from gamma(1) = 1 and gamma(1/2) = sqrt(pi). */
function logGammaOfHalves(value: number): number {
  let at = Number.isInteger(value) ? 1 : 0.5;
  let sum = at === 1 ? 0 : 0.5 * Math.log(Math.PI);
  for (; at < value; at += 1) sum += Math.log(at);
  return sum;
}
