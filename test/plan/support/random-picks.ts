import type { PickProblem, PickSolution } from '../../../src/plan/picks/pick-problem.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';

/** What a random problem looks like. */
export interface RandomPicks {
  readonly variables: number;
  readonly alternatives: number;
  readonly pairs: number;
  readonly suppliers: number;
  readonly setups: boolean;
  readonly maxSuppliers?: number;
  /** Between the least and the most that any choice costs. */
  readonly budgetShare?: number;
}

/** Larger than all over-use of a problem together, so that clashes always come first. */
const scale = 1e8;

/** A seeded problem: pairs clash, use too much or hold; prices and suppliers are drawn at random. */
export function randomPicks(seed: number, shape: RandomPicks): PickProblem {
  const random = seededNumbers(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const entry = (): number => {
    const draw = random();
    if (draw < 0.45) return 0;
    if (draw < 0.7) return whole(5000);
    if (draw < 0.85) return whole(3) * scale + whole(300000);
    return scale + whole(9000);
  };
  const variables = Array.from({ length: shape.variables }, () => {
    const count = 1 + whole(shape.alternatives);
    return {
      harmony: Float64Array.from({ length: count }, () => (random() < 0.2 ? entry() : 0)),
      money: Float64Array.from({ length: count }, () => 100 * (1 + whole(40))),
      suppliers: Array.from({ length: count }, () => [whole(shape.suppliers)]),
    };
  });
  const taken = new Set<string>();
  const pairs = Array.from({ length: shape.pairs }, () => [whole(shape.variables), whole(shape.variables)].sort((a, b) => a - b)).flatMap(([first, second]) => {
    if (first === second || taken.has(`${first} ${second}`)) return [];
    taken.add(`${first} ${second}`);
    return [{ first, second, harmony: Float64Array.from({ length: variables[first].money.length * variables[second].money.length }, entry) }];
  });
  const least = variables.reduce((sum, { money }) => sum + Math.min(...money), 0);
  const most = variables.reduce((sum, { money }) => sum + Math.max(...money), 0);
  return {
    variables, pairs, scale,
    setups: Float64Array.from({ length: shape.suppliers }, () => (shape.setups ? 100 * whole(30) : 0)),
    ...(shape.maxSuppliers === undefined ? {} : { maxSuppliers: shape.maxSuppliers }),
    ...(shape.budgetShare === undefined ? {} : { budget: Math.round(least + shape.budgetShare * (most - least)) }),
  };
}

/** Every allowed choice with its value, reckoned straight from the tables: the definition that the solvers are held to. */
export function everyPick(problem: PickProblem): PickSolution[] {
  const { variables, pairs, setups } = problem;
  const found: PickSolution[] = [];
  const choice = variables.map(() => 0);
  const visit = (index: number): void => {
    if (index < variables.length) {
      for (let label = 0; label < variables[index].money.length; label++) {
        choice[index] = label;
        visit(index + 1);
      }
      return;
    }
    const suppliers = new Set(choice.flatMap((label, variable) => [...variables[variable].suppliers[label]]));
    let harmony = 0;
    let money = [...suppliers].reduce((sum, supplier) => sum + setups[supplier], 0);
    choice.forEach((label, variable) => {
      harmony += variables[variable].harmony[label];
      money += variables[variable].money[label];
    });
    for (const pair of pairs) harmony += pair.harmony[choice[pair.first] * variables[pair.second].money.length + choice[pair.second]];
    if (suppliers.size <= (problem.maxSuppliers ?? Infinity) && money <= (problem.budget ?? Infinity)) found.push({ choice: [...choice], harmony, money });
  };
  visit(0);
  return found.sort((a, b) => a.harmony - b.harmony || a.money - b.money);
}
