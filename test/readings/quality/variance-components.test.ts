import { describe, expect, it } from 'vitest';
import type { PlacedValue } from '../../../src/readings/quality/placed-values.ts';
import type { VarianceComponents } from '../../../src/readings/quality/variance-components.ts';
import { varianceComponents } from '../../../src/readings/quality/variance-components.ts';
import { normalGenerator } from '../support/simulation.ts';
import { dyestuff, pastes, penicillin } from './davies-goldsmith.ts';

const at = (spot: number, rotation: number, value: number): PlacedValue => ({ spot: `s${spot}`, rotation, value });

describe('variance components of published data', () => {
  it('of one level: the batches of the dyestuff', () => {
    const found = varianceComponents(dyestuff.flatMap((batch, spot) => batch.map((value) => at(spot, 0, value))));
    expect(found.design).toBe('spots');
    // lme4: 1764 and 2451, printed without decimals.
    expect(Math.abs((found.spot?.variance ?? 0) - 1764)).toBeLessThan(0.5);
    expect(Math.abs((found.flash?.variance ?? 0) - 2451)).toBeLessThan(0.5);
    expect([found.spot?.freedom, found.flash?.freedom]).toEqual([5, 24]);
    expect(found.rotation).toBeUndefined();
  });

  it('of nested levels: casks within batches of the paste', () => {
    // A rotation of its own for every cask, since no cask goes with one of another batch.
    const found = varianceComponents(pastes.flatMap((batch, spot) => batch.flatMap((cask, place) => cask.map((value) => at(spot, 10 * spot + place, value)))));
    expect(found.design).toBe('rotations within spots');
    expect(found.rotation?.variance).toBeCloseTo(8.434, 3);
    expect(found.spot?.variance).toBeCloseTo(1.657, 3);
    expect(found.flash?.variance).toBeCloseTo(0.678, 3);
  });

  it('of crossed levels: plates by samples of the penicillin', () => {
    const found = varianceComponents(penicillin.flatMap((plate, spot) => plate.map((value, sample) => at(spot, sample, value))));
    expect(found.design).toBe('spots by rotations');
    expect(found.spot?.sd).toBeCloseTo(0.8467, 4);
    expect(found.rotation?.sd).toBeCloseTo(1.9316, 4);
    expect(found.spotByRotation?.sd).toBeCloseTo(0.5499, 4);
    expect(found.flashHidden).toBe(true);
    expect(found.flash).toBeUndefined();
  });
});

/** Mean of many estimates from invented readings of known components, and the standard error of that mean. */
function meanEstimates(make: (normal: () => number) => PlacedValue[], level: 'spot' | 'rotation' | 'spotByRotation' | 'flash', rounds = 1500) {
  const normal = normalGenerator(11);
  const estimates = Array.from({ length: rounds }, () => {
    const found: VarianceComponents = varianceComponents(make(normal));
    const component = found[level];
    return component === undefined || component.belowZero ? NaN : component.variance;
  });
  // Truncation at zero would bias the mean: the components are chosen so large that it does not occur.
  expect(estimates.every(Number.isFinite)).toBe(true);
  const mean = estimates.reduce((sum, value) => sum + value, 0) / rounds;
  const sd = Math.sqrt(estimates.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (rounds - 1));
  return { mean, error: sd / Math.sqrt(rounds) };
}

const near = ({ mean, error }: { mean: number; error: number }, truth: number): void => {
  expect(Math.abs(mean - truth)).toBeLessThan(4 * error);
  expect(error).toBeLessThan(0.05 * truth);
};

describe('variance components of unequal numbers of flashes are unbiased', () => {
  const flashes = [1, 3, 2, 1, 4, 1, 2, 1];

  it('from spot to spot', () => {
    const make = (normal: () => number): PlacedValue[] => flashes.flatMap((count, spot) => {
      const level = 3 * normal();
      return Array.from({ length: count }, () => at(spot, 0, level + 0.5 * normal()));
    });
    near(meanEstimates(make, 'spot'), 9);
    near(meanEstimates(make, 'flash'), 0.25);
  });

  it('from spot to spot, rotation to rotation and both together', () => {
    const make = (normal: () => number): PlacedValue[] => {
      const turned = [0, 1, 2, 3, 4, 5].map(() => 3 * normal());
      return flashes.flatMap((count, spot) => {
        const level = 4 * normal();
        return turned.flatMap((rotation, r) => {
          const both = 0.7 * normal();
          return Array.from({ length: r === 0 ? count : 1 }, () => at(spot, 60 * r, level + rotation + both + 0.3 * normal()));
        });
      });
    };
    near(meanEstimates(make, 'spot'), 16);
    near(meanEstimates(make, 'rotation'), 9);
    near(meanEstimates(make, 'spotByRotation'), 0.49);
  });

  it('for rotations of their own on every spot', () => {
    const make = (normal: () => number): PlacedValue[] => flashes.flatMap((count, spot) => {
      const level = 6 * normal();
      return Array.from({ length: 2 + (spot % 2) }, (_, r) => {
        const rotation = 2 * normal();
        return Array.from({ length: count }, () => at(spot, 100 * spot + r, level + rotation + 0.4 * normal()));
      }).flat();
    });
    near(meanEstimates(make, 'spot'), 36);
    near(meanEstimates(make, 'rotation'), 4);
  });
});

describe('variance components of little', () => {
  it('name no level for one reading', () => {
    expect(varianceComponents([at(0, 0, 3)])).toEqual({ design: 'single reading', flashHidden: true });
  });

  it('know only the flashes of one place', () => {
    // Variance of 1, 2, 3 with n - 1: 1, by hand.
    expect(varianceComponents([at(0, 0, 1), at(0, 0, 2), at(0, 0, 3)])).toEqual({
      design: 'single reading', flashHidden: false, flash: { variance: 1, sd: 1, freedom: 2, belowZero: false },
    });
  });

  it('say that an estimate was below zero', () => {
    // Means of both spots 0, so the between-spot variance 0 less half of the within-spot variance 2.
    expect(varianceComponents([at(0, 0, -1), at(0, 0, 1), at(1, 0, -1), at(1, 0, 1)]).spot).toEqual({ variance: 0, sd: 0, freedom: 1, belowZero: true });
  });
});
