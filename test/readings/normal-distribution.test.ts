import { erf } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { normalCdf, normalDensity, normalQuantile } from '../../src/readings/normal-distribution.ts';

describe('normalCdf', () => {
  test.each([
    // M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, table 26.1.
    [0, 0.5], [0.5, 0.691462461274013], [1, 0.841344746068543], [2, 0.977249868051821], [3, 0.998650101968370],
    [-1, 0.158655253931457],
  ])('at %d is the printed value', (z, expected) => {
    expect(normalCdf(z)).toBeCloseTo(expected, 14);
  });

  test.each([
    // JCGM 106:2012: conformance probability Phi((TL - y) / u), here TL = 1 and u = 0.1; four to five digits.
    [0.8, 0.97725], [0.836, 0.9495], [0.9, 0.84134], [1.0, 0.5],
  ])('gives the conformance probability of a value of %d with TL 1 and u 0.1', (y, expected) => {
    expect(normalCdf((1 - y) / 0.1)).toBeCloseTo(expected, 4);
  });

  test('agrees with the error function of mathjs (W. J. Cody 1969) to 2e-15 and is symmetric', () => {
    let worst = 0;
    for (let z = -9; z <= 9; z += 0.0173) {
      worst = Math.max(worst, Math.abs(normalCdf(z) - 0.5 * (1 + erf(z / Math.SQRT2))), Math.abs(normalCdf(z) + normalCdf(-z) - 1));
    }
    expect(worst).toBeLessThan(2e-15);
  });

  test('keeps the relative accuracy of a far tail', () => {
    // P(Z < -10) = 7.61985302416053e-24, Abramowitz and Stegun, table 26.2: -log10 Q(10) = 23.11805.
    expect(-Math.log10(normalCdf(-10))).toBeCloseTo(23.11805, 5);
  });

  test('answers infinities and NaN', () => {
    expect([normalCdf(-Infinity), normalCdf(Infinity), normalCdf(NaN)]).toEqual([0, 1, NaN]);
  });
});

describe('normalQuantile', () => {
  test.each([
    // The check values printed with Algorithm AS 241, Applied Statistics 37 (1988) 477.
    [0.25, -0.6744897501960817], [0.001, -3.090232306167814], [1e-20, -9.26234008979841],
    // Abramowitz and Stegun, table 26.5, with more digits in common use.
    [0.95, 1.6448536269514722], [0.975, 1.959963984540054],
  ])('of %d is the published value', (p, expected) => {
    expect(normalQuantile(p)).toBeCloseTo(expected, 12);
  });

  test('undoes normalCdf', () => {
    for (let z = -8; z < 5; z += 0.037) expect(normalQuantile(normalCdf(z))).toBeCloseTo(z, 8);
  });

  test('answers the ends and refuses what is no probability', () => {
    expect([0, 1, -0.1, 1.1, NaN].map(normalQuantile)).toEqual([-Infinity, Infinity, NaN, NaN, NaN]);
  });
});

test('the density is the slope of the distribution function', () => {
  for (const z of [-3, -1, 0, 0.4, 2.5]) {
    expect((normalCdf(z + 1e-5) - normalCdf(z - 1e-5)) / 2e-5).toBeCloseTo(normalDensity(z), 9);
  }
});
