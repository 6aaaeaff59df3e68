import { eliminationOrder } from './elimination-order.ts';
import type { PickFactor, PickNetwork } from './pick-network.ts';
import { countUp, factorWalk, tiesOf } from './pick-network.ts';

/** One point of a front, with the choices behind it. */
export interface FrontPoint {
  readonly harmony: number;
  readonly money: number;
  readonly variable?: number;
  readonly label?: number;
  readonly before: readonly FrontPoint[];
}

export interface FrontLimits {
  /** Table entries looked at. */
  readonly work: number;
  /** Points made in all. */
  readonly points: number;
}

export const usualFrontLimits: FrontLimits = { work: 2e6, points: 3e6 };

type Front = readonly FrontPoint[];
interface FrontFactor {
  readonly scope: readonly number[];
  readonly fronts: readonly Front[];
}

/**
 * All choices of a network that no other beats in both harmony and money, by variable elimination over sets of points, exact.
 * Points that cannot stay within `budget` are dropped on the way. Undefined where it would cost more than the limits allow.
 * Ascending harmony cost, so descending money; no two points are alike in either.
 * Source: multi-objective bucket elimination, E. Rollon and J. Larrosa, Journal of Heuristics 12 (2006) 307.
 */
export function eliminateFront(network: PickNetwork, budget = Infinity, limits: FrontLimits = usualFrontLimits): Front | undefined {
  const { sizes } = network;
  const { order, work } = eliminationOrder(sizes, tiesOf(network.factors));
  if (work > limits.work) return undefined;
  const cheapest = new Float64Array(sizes.length);
  for (const { scope, money } of network.factors) if (scope.length === 1 && money !== undefined) cheapest[scope[0]] = Math.min(...money);
  const least = network.money + cheapest.reduce((sum, value) => sum + value, 0);
  let plain = [...network.factors];
  let made: FrontFactor[] = [];
  let whole: Front = [{ harmony: network.harmony, money: network.money, before: [] }];
  let points = 0;
  /** Money that is bound to be spent outside of what a message has gathered. */
  const outside = new Map<FrontFactor, number>();
  for (const variable of order) {
    if (sizes[variable] < 2) continue;
    const own = plain.filter(({ scope }) => scope.includes(variable));
    const messages = made.filter(({ scope }) => scope.includes(variable));
    plain = plain.filter((factor) => !own.includes(factor));
    made = made.filter((factor) => !messages.includes(factor));
    const gathered = messages.reduce((sum, message) => sum + (outside.get(message) ?? 0), cheapest[variable]);
    const message = eliminate(own, messages, sizes, variable, budget - (least - gathered), limits.points - points);
    if (message === undefined) return undefined;
    points += message.fronts.reduce((sum, front) => sum + front.length, 0);
    outside.set(message, gathered);
    if (message.scope.length > 0) made.push(message);
    else {
      const sum = sumOf(whole, message.fronts[0], limits.points - points);
      if (sum === undefined) return undefined;
      whole = sum;
      points += whole.length;
    }
  }
  return whole.filter((point) => point.money <= budget);
}

/** Positions of all variables behind a point; 0 for those that were settled before. */
export function labelsOf(point: FrontPoint, count: number): number[] {
  const labels = new Array<number>(count).fill(0);
  const waiting: FrontPoint[] = [point];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if (next.variable !== undefined && next.label !== undefined) labels[next.variable] = next.label;
    waiting.push(...next.before);
  }
  return labels;
}

/** The points that no other is as good as in both; of points alike the first. */
export function undominated<T extends { readonly harmony: number; readonly money: number }>(points: T[]): T[] {
  points.sort((a, b) => a.harmony - b.harmony || a.money - b.money);
  const kept: T[] = [];
  let cheapest = Infinity;
  for (const point of points) {
    if (point.money >= cheapest) continue;
    cheapest = point.money;
    kept.push(point);
  }
  return kept;
}

function sumOf(first: Front, second: Front, allowance: number): Front | undefined {
  if (first.length * second.length > Math.max(allowance, 1)) return undefined;
  const sums: FrontPoint[] = [];
  for (const a of first) for (const b of second) sums.push({ harmony: a.harmony + b.harmony, money: a.money + b.money, before: [a, b] });
  return undominated(sums);
}

function eliminate(
  own: readonly PickFactor[], messages: readonly FrontFactor[], sizes: readonly number[], variable: number, most: number, allowance: number,
): FrontFactor | undefined {
  const scope = [...new Set([...own, ...messages].flatMap((factor) => factor.scope))].filter((other) => other !== variable).sort((a, b) => a - b);
  const scopeSizes = Int32Array.from(scope, (other) => sizes[other]);
  const entries = scopeSizes.reduce((product, size) => product * size, 1);
  const walks = [...own, ...messages].map((factor) => factorWalk(factor, sizes, scope, variable));
  const offsets = new Int32Array(walks.length);
  const counters = new Int32Array(scope.length);
  const fronts: Front[] = [];
  let left = allowance;
  for (let entry = 0; entry < entries; entry++) {
    const points: FrontPoint[] = [];
    for (let label = 0; label < sizes[variable]; label++) {
      let harmony = 0;
      let money = 0;
      own.forEach((factor, f) => {
        const at = offsets[f] + label * walks[f].apart;
        harmony += factor.harmony[at];
        money += factor.money?.[at] ?? 0;
      });
      let front: Front | undefined = [{ harmony, money, variable, label, before: [] }];
      for (let m = 0; m < messages.length && front !== undefined; m++) {
        front = sumOf(front, messages[m].fronts[offsets[own.length + m] + label * walks[own.length + m].apart], left);
      }
      if (front === undefined) return undefined;
      for (const point of front) if (point.money <= most) points.push(point);
    }
    const kept = undominated(points);
    left -= kept.length;
    if (left < 0) return undefined;
    fronts.push(kept);
    countUp(counters, scopeSizes, offsets, walks);
  }
  return { scope, fronts };
}
