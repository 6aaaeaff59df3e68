import { describe, expect, test } from 'vitest';
import { clashShare } from '../../src/plan/mix/clash-share.ts';
import { labelHarm } from '../../src/plan/mix/label-harm.ts';
import { largestMix } from '../../src/plan/mix/largest-mix.ts';
import type { MixProblem } from '../../src/plan/mix/mix-problem.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

/** Expected values: every combination of sources, and every set of sources that might be kept, listed one by one. */

function randomMix(seed: number): MixProblem {
  const random = seededNumbers(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const shares = Array.from({ length: 1 + whole(5) }, () => {
    const weights = Array.from({ length: 1 + whole(3) }, () => 0.1 + random());
    return Float64Array.from(weights, (weight) => weight / weights.reduce((sum, each) => sum + each, 0));
  });
  const ties = Array.from({ length: whole(7) }, (_, index) => {
    const [first, second] = [whole(shares.length), whole(shares.length)];
    const clash = Float64Array.from({ length: shares[first].length * shares[second].length }, () => (random() < 0.6 ? 0 : random() < 0.5 ? 1 : random()));
    return { joint: `j${index}`, cabin: 0, first, second, clash, uncertain: Uint8Array.from(clash, (value) => (value > 0 ? 1 : 0)) };
  });
  return { shares, ties };
}

function everyCombination(sizes: readonly number[]): number[][] {
  return sizes.reduce<number[][]>((all, size) => all.flatMap((head) => Array.from({ length: size }, (_, label) => [...head, label])), [[]]);
}

const subsets = (size: number): number[][] => Array.from({ length: 2 ** size - 1 }, (_, mask) => Array.from({ length: size }, (__, label) => label).filter((label) => ((mask + 1) >> label) & 1));

const problems = Array.from({ length: 500 }, (_, index) => randomMix(index + 1));

describe('500 seeded small mixes against all their combinations', () => {
  const listed = ({ shares, ties }: MixProblem): number => everyCombination(shares.map((own) => own.length)).reduce((sum, taken) => {
    const weight = taken.reduce((product, label, variable) => product * shares[variable][label], 1);
    const none = ties.reduce((product, { first, second, clash }) => product * (1 - clash[taken[first] * shares[second].length + taken[second]]), 1);
    return sum + weight * (1 - none);
  }, 0);

  test('share of cabins with a clash', () => {
    for (const [index, problem] of problems.entries()) {
      const { share, error } = clashShare(problem, 0);
      expect(share, `mix ${index}`).toBeCloseTo(listed(problem), 12);
      expect(error).toBe(0);
    }
  });

  test('the simulation is within four of its standard errors', () => {
    for (const [index, problem] of problems.slice(0, 20).entries()) {
      const { share, error } = clashShare(problem, 0, new Map(), true);
      expect(Math.abs(share - listed(problem)), `mix ${index}`).toBeLessThanOrEqual(4 * error + 1e-12);
    }
  });

  test('the harm of every source: the share without it, and among the cabins that have it', () => {
    let worst = 0;
    for (const [index, problem] of problems.entries()) {
      const { shares } = problem;
      const whole = listed(problem);
      for (const variable of shares.keys()) {
        const harm = labelHarm(problem, [1], variable);
        expect(harm.length).toBe(shares[variable].length < 2 ? 0 : shares[variable].length);
        for (const [label, found] of harm.entries()) {
          const only = (kept: (other: number) => boolean): MixProblem => {
            const left = shares[variable].map((share, other) => (kept(other) ? share : 0));
            const sum = left.reduce((total, share) => total + share, 0);
            return { ...problem, shares: shares.map((own, other) => (other === variable ? left.map((share) => share / sum) : own)) };
          };
          const [without, having] = [listed(only((other) => other !== label)), listed(only((other) => other === label))];
          expect(found.without, `mix ${index}`).toBeCloseTo(without, 9);
          expect(found.with, `mix ${index}`).toBeCloseTo(having, 9);
          expect(found.harm, `mix ${index}`).toBeCloseTo(whole - without, 9);
          worst = Math.max(worst, found.harm);
        }
      }
    }
    expect(worst).toBeGreaterThan(0.2);
  });

  test('the largest set that may be mixed freely', async () => {
    for (const [index, { shares, ties }] of problems.entries()) {
      let best = [Infinity, 0];
      for (const taken of everyCombination(shares.map((own) => 2 ** own.length - 1))) {
        const kept = taken.map((choice, variable) => subsets(shares[variable].length)[choice]);
        const unclear = ties.filter(({ first, second, uncertain }) => kept[first].some((a) => kept[second].some((b) =>
          (first !== second || a === b) && uncertain[a * shares[second].length + b] === 1))).length;
        const size = kept.flat().length;
        if (unclear < best[0] || (unclear === best[0] && size > best[1])) best = [unclear, size];
      }
      const found = await largestMix({ shares, ties });
      expect([found.unavoidable.length, found.kept.flat().length, found.proved], `mix ${index}`).toEqual([...best, true]);
    }
  });
});
