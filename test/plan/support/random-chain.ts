import { criterionRangeIn } from '../../../src/plan/mend/difference-range.ts';
import type { LabBox } from '../../../src/plan/mend/difference-range.ts';
import type { MendItem, MendProblem, Shift, ShiftBox } from '../../../src/plan/mend/mend-problem.ts';
import type { Lab } from '../../../src/quantities.ts';
import { criterionValue } from '../../../src/readings/criterion-test.ts';
import type { Criterion } from '../../../src/readings/stacked-event.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';

const axes = [0, 1, 2] as const;
/** Three parts in a row and all shifts of each on a grid of five to an axis. */
export interface Chain {
  readonly problem: MendProblem;
  readonly grid: readonly (readonly Shift[])[];
}
/** A seeded chain with limits on chroma and hue, and differences to be kept; a* and b* lie about no farther from grey than `colourful` on either axis. */
export function randomChain(seed: number, colourful = 8): Chain {
  const random = seededNumbers(seed);
  const spread = (by: number): number => by * (2 * random() - 1);
  const base: Lab = [20 + 50 * random(), spread(colourful), spread(colourful)];
  const labs = axes.map((): Lab => [base[0] + spread(4), base[1] + spread(2), base[2] + spread(2)]);
  const reach = axes.map(() => (random() < 0.2 ? 0 : 0.4 + 2 * random()));
  const items = reach.map((most): MendItem => ({ down: [most, most, most, 0], up: [most, most, most, 0], cost: 1 + Math.floor(6 * random()), glossCost: 0 }));
  const criterion = (): Criterion => {
    const which = random();
    if (which < 0.3) return { kind: 'component', component: random() < 0.5 ? 'dC' : 'dH', absolute: true, max: 0.2 + 0.6 * random() };
    if (which < 0.45) return { kind: 'component', component: random() < 0.5 ? 'dC' : 'dH', min: 0.3 + random() };
    return { kind: 'difference', formula: { name: (['ciede2000', 'cie76', 'cmc', 'cie94'] as const)[Math.floor(4 * random())]! }, atLeast: 1.5 + 3 * random() };
  };
  const limits = ([[0, 1], [1, 2]] as const).flatMap(([a, b], joint) => {
    const asked = criterion();
    const moved = (lab: Lab, shift: Shift): Lab => lab.map((value, axis) => value + shift[axis]!) as unknown as Lab;
    const box = (lab: Lab, { low, high }: ShiftBox): LabBox => lab.map((value, axis) => [value + low[axis]!, value + high[axis]!]) as unknown as LabBox;
    const [least, most] = asked.kind === 'difference' ? [asked.atLeast, undefined] : [asked.min, asked.max];
    const value = (first: Shift, second: Shift): number => criterionValue(asked, moved(labs[a]!, first), moved(labs[b]!, second));
    const range = (first: ShiftBox, second: ShiftBox): readonly [number, number] => criterionRangeIn(asked, box(labs[a]!, first), box(labs[b]!, second))!;
    return [
      ...(most === undefined ? [] : [{ joint, items: [a, b] as const, convex: false, excess: (first: Shift, second: Shift) => value(first, second) - most, leastExcess: (first: ShiftBox, second: ShiftBox) => range(first, second)[0] - most }]),
      ...(least === undefined ? [] : [{ joint, items: [a, b] as const, convex: false, excess: (first: Shift, second: Shift) => least - value(first, second), leastExcess: (first: ShiftBox, second: ShiftBox) => least - range(first, second)[1] }]),
    ];
  });
  const grid = reach.map((most) => {
    const steps = most === 0 ? [0] : [-1, -0.5, 0, 0.5, 1].map((each) => each * most);
    return steps.flatMap((L) => steps.flatMap((A) => steps.map((B): Shift => [L, A, B, 0])));
  });
  return { problem: { items, limits }, grid };
}

/** The least cost over all shifts on the grid: the true least is no more. Undefined where none of them serves. */
export function leastOnGrid({ problem: { items, limits }, grid }: Chain): number | undefined {
  const cost = (item: number, shift: Shift): number => (shift.every((value) => value === 0) ? 0 : items[item]!.cost);
  const holds = (joint: number, first: Shift, second: Shift): boolean => limits.filter((limit) => limit.joint === joint).every(({ excess }) => excess(first, second) <= 0);
  const least = (item: number, serves: (shift: Shift) => boolean): number => grid[item]!.reduce((best, shift) => (cost(item, shift) < best && serves(shift) ? cost(item, shift) : best), Infinity);
  let best = Infinity;
  for (const middle of grid[1]!) {
    const own = cost(1, middle);
    if (own >= best) continue;
    best = Math.min(best, own + least(0, (shift) => holds(0, shift, middle)) + least(2, (shift) => holds(1, middle, shift)));
  }
  return Number.isFinite(best) ? best : undefined;
}
