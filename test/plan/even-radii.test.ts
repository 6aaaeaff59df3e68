import { describe, expect, test } from 'vitest';
import type { ApportionProblem, ApportionRule } from '../../src/plan/apportion/apportion-problem.ts';
import { evenRadii } from '../../src/plan/apportion/even-radii.ts';
import { minimise, ProgramRows } from '../../src/plan/solver/highs-solver.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

function randomProblem(seed: number): ApportionProblem {
  const random = seededNumbers(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const count = 1 + whole(4);
  const limits = Array.from({ length: whole(6) }, (_, joint) => {
    const items = [whole(count), whole(count)] as const;
    return { joint, items, scales: [0.5 + whole(3) / 2, 0.5 + whole(3) / 2] as const, offset: whole(4) / 10, limit: 0.4 + whole(10) / 10 };
  }).filter(({ items: [a, b] }) => a !== b);
  return { shares: Array.from({ length: count }, () => 0.5 + whole(3) / 2), most: Array.from({ length: count }, () => 0.3 + whole(5) / 5), limits };
}

const problems = Array.from({ length: 500 }, (_, index) => randomProblem(index + 1));
/** Whether radii keep to a limit, as the two rules are written: sums, or roots of sums of squares. */
const keeps = ({ items: [a, b], scales, offset, limit }: ApportionProblem['limits'][number], rule: ApportionRule, radii: readonly number[]): boolean => {
  const [first, second] = [scales[0] * radii[a], scales[1] * radii[b]];
  return (rule === 'worst case' ? first + second : Math.hypot(first, second)) + offset <= limit + 1e-9;
};

const levels = (problem: ApportionProblem, radii: readonly number[]): number[] => radii.map((radius, index) => radius / problem.shares[index]).sort((a, b) => a - b);

/** First of two sorted lists that differ: which is larger there. */
const larger = (a: readonly number[], b: readonly number[], by: number): boolean => {
  const at = a.findIndex((value, index) => Math.abs(value - b[index]) > by);
  return at >= 0 && a[at] > b[at];
};

describe.each<ApportionRule>(['worst case', 'statistical'])('500 seeded small problems, %s', (rule) => {
  test('no set of radii on a grid is more even or larger; every limit is kept', () => {
    for (const [index, problem] of problems.entries()) {
      const { radii } = evenRadii(problem, rule);
      const allowed = (tried: readonly number[]): boolean => problem.limits.every((limit) => keeps(limit, rule, tried));
      expect(allowed(radii), `problem ${index}`).toBe(true);
      const own = levels(problem, radii);
      const tried = radii.map(() => 0);
      const visit = (part: number): void => {
        if (part === radii.length) {
          if (allowed(tried)) expect(larger(levels(problem, tried), own, 1e-9), `problem ${index}: ${tried.join(' ')} against ${radii.join(' ')}`).toBe(false);
          return;
        }
        for (let radius = 0; radius <= problem.most[part] + 1e-9; radius += 0.1) {
          tried[part] = Math.min(radius, problem.most[part]);
          visit(part + 1);
        }
      };
      visit(0);
    }
  });
});

test('the smallest radius is that of a linear program (worst case)', async () => {
  for (const [index, problem] of problems.entries()) {
    const count = problem.shares.length;
    const rows = new ProgramRows();
    problem.shares.forEach((share, part) => rows.add(0, Infinity, [part, count], [1, -share]));
    for (const { items, scales, offset, limit } of problem.limits) rows.add(-Infinity, limit - offset, [...items], [...scales]);
    const { objective } = await minimise({
      cost: Float64Array.from({ length: count + 1 }, (_, column) => (column === count ? -1 : 0)), lower: new Float64Array(count + 1), upper: Float64Array.from([...problem.most, 100]),
    }, rows);
    expect(levels(problem, evenRadii(problem, 'worst case').radii)[0], `problem ${index}`).toBeCloseTo(-objective, 6);
  }
});

describe('worked by hand', () => {
  const limit = (items: readonly [number, number], most: number, offset = 0) => ({ joint: 0, items, scales: [1, 1] as const, offset, limit: most });
  test('two parts about one target: half the limit each at worst, the limit over root 2 by squares', () => {
    const problem = { shares: [1, 1], most: [Infinity, Infinity], limits: [limit([0, 1], 1)] };
    expect(evenRadii(problem, 'worst case').radii).toEqual([0.5, 0.5]);
    evenRadii(problem, 'statistical').radii.forEach((radius) => expect(radius).toBeCloseTo(Math.SQRT1_2, 12));
  });

  test('a chain: the tight joint stops its parts, the third takes the rest', () => {
    const problem = { shares: [1, 1, 1], most: [Infinity, Infinity, Infinity], limits: [limit([0, 1], 0.6), limit([1, 2], 1)] };
    const { radii, bottlenecks } = evenRadii(problem, 'worst case');
    expect(radii.map((radius) => Number(radius.toFixed(9)))).toEqual([0.3, 0.3, 0.7]);
    expect(bottlenecks).toEqual([0, 1]);
  });

  test('targets that clash leave no tolerance; a part without a joint has no limit', () => {
    expect(evenRadii({ shares: [1, 1], most: [Infinity, Infinity], limits: [limit([0, 1], 0.5, 0.6)] }, 'worst case')).toEqual({ feasible: false, radii: [], bottlenecks: [], impossible: [0] });
    expect(evenRadii({ shares: [1], most: [Infinity], limits: [] }, 'worst case').radii).toEqual([Infinity]);
  });
});
