import { describe, expect, test } from 'vitest';
import { decisionExperiment } from './support/decision-experiment.ts';

const setting = { spotSd: [0.15, 0.04, 0.06], limit: 0.7, base: [25, 0.2, -0.6], experiments: 10_000, seed: 2024 } as const;

describe('10 000 experiments with the truth exactly on the limit, covariance known', () => {
  // Required of the rule: at most 5 % false holds and 6 % false clashes. The standard error of a share of 5 % is 0.2 %.
  test.each([
    [1, undefined], [3, undefined], [5, undefined],
    [1, [0.1, 0.05, 0.05]], [3, [0.1, 0.05, 0.05]], [5, [0.1, 0.05, 0.05]],
  ] as const)('%i spots a side, instrument term %j', (spots, instrumentSd) => {
    const { falseHolds, falseClashes } = decisionExperiment({ ...setting, spots, instrumentSd, covariance: 'known' });
    expect(falseHolds).toBeLessThanOrEqual(0.05);
    expect(falseClashes).toBeLessThanOrEqual(0.06);
    expect(falseClashes).toBeGreaterThan(0);
  }, 120_000);
});
