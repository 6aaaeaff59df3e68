import { describe, expect, test } from 'vitest';
import type { Matrix3 } from '../../src/quantities.ts';
import { decide } from '../../src/readings/decide.ts';
import { correctedValue, largestSpread, limitExcess } from '../../src/readings/limit-excess.ts';
import { judgeEvent } from '../../src/readings/judge-event.ts';
import { criterionState } from '../../src/readings/stacked-excess.ts';
import { contrastCriteria, matchCriteria, toneStepCriteria } from '../../src/readings/stacked-event.ts';

const covariance: Matrix3 = [0.04, 0.01, 0.006, 0.01, 0.0225, 0.004, 0.006, 0.004, 0.01];

describe('largestSpread', () => {
  const product = (rows: readonly (readonly number[])[]): Matrix3 =>
    rows.flatMap((p) => rows.map((q) => p.reduce((sum, value, k) => sum + value * q[k], 0))) as unknown as Matrix3;
  /** Largest eigenvalue by powers of Q S, G. H. Golub and C. F. Van Loan, Matrix Computations, 7.3.1: coded here on its own. */
  function byPowers(metric: Matrix3, spread: Matrix3): number {
    let v = [0.6, -0.5, 0.62];
    let value = 0;
    const times = (m: Matrix3, x: readonly number[]) => [0, 1, 2].map((i) => m[3 * i] * x[0] + m[3 * i + 1] * x[1] + m[3 * i + 2] * x[2]);
    for (let step = 0; step < 20_000; step++) {
      const next = times(metric, times(spread, v));
      value = Math.hypot(...next);
      if (value === 0) return 0;
      v = next.map((entry) => entry / value);
    }
    return value;
  }

  test('against powers of Q S over random pairs of full and lower rank', () => {
    let state = 7;
    const random = (): number => {
      state = (state * 48271) % 2147483647;
      return state / 2147483647 - 0.5;
    };
    for (let n = 0; n < 60; n++) {
      const columns = 1 + (n % 3);
      const rows = (count: number) => [0, 1, 2].map(() => Array.from({ length: count }, random));
      const [metric, spread] = [product(rows(3)), product(rows(columns))];
      const expected = byPowers(metric, spread);
      expect(largestSpread(metric, spread) / expected).toBeCloseTo(1, 6);
    }
  });

  test('equal, double and vanishing roots', () => {
    const diagonal = (x: number, y: number, z: number): Matrix3 => [x, 0, 0, 0, y, 0, 0, 0, z];
    expect(largestSpread(diagonal(1, 1, 1), diagonal(0.3, 0.3, 0.3))).toBeCloseTo(0.3, 7);
    expect(largestSpread(diagonal(1, 1, 1), diagonal(0.3, 0.3, 0.1))).toBeCloseTo(0.3, 7);
    expect(largestSpread(diagonal(1, 1, 1), diagonal(0.1, 0.1, 0.3))).toBeCloseTo(0.3, 12);
    expect(largestSpread(diagonal(1, 4, 1), diagonal(0, 0.01, 0))).toBeCloseTo(0.04, 12);
    expect(largestSpread(diagonal(1, 1, 1), diagonal(0, 0, 0))).toBe(0);
  });
});

describe('correctedValue', () => {
  test('the worked pair: distance 0.374166, u 0.172896 by JCGM 100, 5.2, worked by hand', () => {
    const found = correctedValue({ name: 'cie76' }, [0, 0, 0], [0.3, -0.1, 0.2], covariance);
    expect(found.value).toBeCloseTo(0.374166, 6);
    expect(found.uncertainty).toBeCloseTo(0.172896, 6);
    // tr S = 0.0725, u^2 = 0.029893: value^2 - (tr S - u^2) = 0.14 - 0.042607 = 0.097393.
    expect(found.corrected).toBeCloseTo(Math.sqrt(0.097393), 5);
  });

  test('noise larger than the difference leaves nothing', () => {
    expect(correctedValue({ name: 'cie76' }, [0, 0, 0], [0.05, 0, 0], covariance).corrected).toBe(0);
  });

  test('equal means take the largest standard deviation', () => {
    const found = correctedValue({ name: 'cie76' }, [20, 0, 0], [20, 0, 0], [0.01, 0, 0, 0, 0.09, 0, 0, 0, 0.04]);
    expect(found).toMatchObject({ value: 0, corrected: 0 });
    expect(found.uncertainty).toBeCloseTo(0.3, 12);
  });

  test('lightness alone under CIEDE2000: u is the sd over SL, 1.331 at L* 27.5', () => {
    // SL = 1 + 0.015 (L - 50)^2 / sqrt(20 + (L - 50)^2), ISO/CIE 11664-6; there is nothing across the gradient to take off.
    const found = correctedValue({ name: 'ciede2000' }, [27.2, 0, 0], [27.8, 0, 0], [0.01, 0, 0, 0, 0, 0, 0, 0, 0]);
    expect(found.uncertainty).toBeCloseTo(0.1 / 1.331, 4);
    expect(found.corrected).toBeCloseTo(found.value, 12);
  });
});

test.each([[0.9, 0.1, 0.7, 'at most', 2], [0.9, 0.1, 0.7, 'at least', -2], [10, 0.5, 12, 'at least', 4], [0.7, 0, 0.7, 'at most', 0],
  [0.8, 0, 0.7, 'at most', Infinity], [0.6, 0, 0.7, 'at most', -Infinity]] as const)('limitExcess(%d, %d, %d, %s)', (value, u, limit, side, expected) => {
  expect(limitExcess(value, u, limit, side)).toBeCloseTo(expected, 12);
});

describe('decide', () => {
  const base = { rule: 'guarded', confidence: 0.95, within: 0.5, excess: 0, inside: true } as const;
  test.each([
    [{ within: 0.95 }, 'holds'], [{ within: 0.9499 }, 'open'], [{ within: 0.05, excess: 1.645 }, 'clashes'], [{ within: 0.05, excess: 1.64 }, 'open'],
    [{ within: 0.051, excess: 3 }, 'open'], [{ within: 0, excess: Infinity }, 'clashes'], [{ within: 0.01, excess: NaN }, 'open'],
  ])('guarded at 0.95 (JCGM 106:2012, 8.3): %j', (given, verdict) => {
    expect(decide({ ...base, ...given })).toBe(verdict);
  });
  test('simple (JCGM 106:2012, 8.2): the value alone, whatever the probability', () => {
    expect(decide({ ...base, rule: 'simple', within: 0.1, inside: true })).toBe('holds');
    expect(decide({ ...base, rule: 'simple', within: 0.9, inside: false })).toBe('clashes');
  });
});

describe('criterionState', () => {
  const small: Matrix3 = [0.01, 0, 0, 0, 0.04, 0, 0, 0, 0.09];
  test('components: value, sd along the component and the nearer limit', () => {
    const [, step] = [0, criterionState({ kind: 'component', component: 'dL', min: -0.7, max: 0.7 }, [20, 0, 0], [20.5, 0, 0], small)];
    expect(step).toMatchObject({ value: 0.5, inside: true, limit: 0.7 });
    expect(step.uncertainty).toBeCloseTo(0.1, 12);
    expect(step.excess).toBeCloseTo(-2, 9);
    expect(criterionState({ kind: 'component', component: 'dL', min: -0.7, max: 0.7 }, [20, 0, 0], [19, 0, 0], small)).toMatchObject({ inside: false, limit: -0.7 });
  });
  test('chroma along the mean hue, hue across it', () => {
    const state = (component: 'dC' | 'dH') => criterionState({ kind: 'component', component, max: 1 }, [50, 0, 20], [50, 0, 20.5], small);
    expect(state('dC').uncertainty).toBeCloseTo(0.3, 12);
    expect(state('dH').uncertainty).toBeCloseTo(0.2, 12);
  });
  test('tone step and contrast', () => {
    const [lightness, hue] = toneStepCriteria({ minDL: 5, maxDL: 15, maxDH: 2 });
    expect(criterionState(lightness, [30, 0, 0], [26, 0, 0], small)).toMatchObject({ value: 4, inside: false, limit: 5 });
    expect(criterionState(hue, [30, 5, 0], [24, 5, 0], small)).toMatchObject({ value: 0, inside: true, limit: 2 });
    const [contrast] = contrastCriteria({ name: 'cie76' }, 12);
    expect(criterionState(contrast, [30, 0, 0], [40, 0, 0], small).excess).toBeGreaterThan(15);
  });
});

test('judgeEvent names the worst light and gives both verdicts', () => {
  const light = (dL: number) => ({ standard: [30, 0, 0] as const, trial: [30 + dL, 0, 0] as const, criteria: matchCriteria({ name: 'cie76' }, 0.7) });
  const spread = Float64Array.from({ length: 36 }, (_, at) => (at % 7 === 0 ? 0.0025 : 0));
  expect(judgeEvent({ lights: [light(0.1), light(0.65)], covariance: spread }, 'guarded', 0.95)).toMatchObject({ verdict: 'open', simple: 'holds', worstLight: 1 });
  expect(judgeEvent({ lights: [light(1.4), light(0.1)], covariance: spread }, 'guarded', 0.95)).toMatchObject({ verdict: 'clashes', simple: 'clashes', worstLight: 0 });
  expect(judgeEvent({ lights: [light(0.1), light(0.2)], covariance: spread }, 'guarded', 0.95)).toMatchObject({ verdict: 'holds', simple: 'holds' });
});
