import type { Lab } from '../quantities.ts';
import { certainOutcome } from './certain-outcome.ts';
import { criterionTest } from './criterion-test.ts';
import type { CriterionTest } from './criterion-test.ts';
import { lightCovariance } from './stacked-excess.ts';
import { stackedDraw } from './stacked-draw.ts';
import type { StackedDraw } from './stacked-draw.ts';
import type { StackedEvent, StackedLight } from './stacked-event.ts';

const PILOT_PAIRS = 16;
/** Draws that are enough where the answer is clear, and those that are made where it is not. */
const FIRST_POINTS = 1024;
const ALL_POINTS = 8192;
/** Beyond this probability, or below its complement, no decision rule in use is near its threshold. */
const CLEAR = 0.985;

/** Largest error near 0.95 met over 240 seeds and ranks 4 to 12, rounded up; the root mean square error is 0.001. */
export const stackedProbabilityError = 0.003;

export interface StackedProbability {
  /** Everything asked for holds under every light. */
  readonly all: number;
  /** Everything asked for under that light holds. */
  readonly each: readonly number[];
  /** Per light and criterion. */
  readonly criteria: readonly (readonly number[])[];
  readonly points: number;
}

/**
 * Probability that all criteria hold under all lights together, and under each alone, from one seeded draw.
 * Each side is taken at its pair's mean midpoint -+ d/2 with the stacked differences d ~ N(means, covariance); the draw has
 * as many dimensions as the covariance has numerical rank, widest first. The counts come from the same draws and
 * their number is a power of two, so max(0, 1 - sum(1 - each)) <= all <= min(each) holds exactly (Bonferroni, Frechet).
 * No light: 1. A covariance of zero: 0 or 1.
 */
export function stackedProbability(event: StackedEvent): StackedProbability {
  const { lights } = event;
  const known = lights.map(({ standard, trial, criteria }, light) => criteria.map((criterion) =>
    certainOutcome(criterion, standard, trial, lightCovariance(event.covariance, 3 * lights.length, light))));
  const unknown = lights.map((_, light) => light).filter((light) => known[light].includes(undefined));
  if (unknown.length === 0) return certain(known);
  return unknown.length === lights.length ? drawn(event) : merged(certain(known), unknown, drawn(reduced(event, unknown)));
}

/** The event under some of its lights only. */
function reduced(event: StackedEvent, chosen: readonly number[]): StackedEvent {
  const rows = chosen.flatMap((light) => [3 * light, 3 * light + 1, 3 * light + 2]);
  const size = 3 * event.lights.length;
  const covariance = new Float64Array(rows.length * rows.length);
  let at = 0;
  for (const row of rows) for (const column of rows) covariance[at++] = event.covariance[row * size + column];
  return { ...event, lights: chosen.map((light) => event.lights[light]), covariance };
}

/** What was drawn for some lights put in the place of those lights; a light that fails for certain leaves nothing of the whole. */
function merged(sure: StackedProbability, chosen: readonly number[], drawnOnes: StackedProbability): StackedProbability {
  const pick = <T>(own: readonly T[], other: readonly T[]): T[] =>
    own.map((value, light) => (chosen.includes(light) ? other[chosen.indexOf(light)] : value));
  const failing = sure.each.some((value, light) => value === 0 && !chosen.includes(light));
  return {
    all: failing ? 0 : drawnOnes.all, each: pick(sure.each, drawnOnes.each), criteria: pick(sure.criteria, drawnOnes.criteria), points: drawnOnes.points,
  };
}

function drawn(event: StackedEvent): StackedProbability {
  const { lights } = event;
  if (event.points === undefined) {
    const first = drawn({ ...event, points: FIRST_POINTS });
    return first.all >= CLEAR || first.all <= 1 - CLEAR ? first : drawn({ ...event, points: ALL_POINTS });
  }
  const draw = stackedDraw(event);
  const tests = readyTests(lights, draw);
  const plan = flatPlan(tests);
  const means = meanDifferences(lights);
  const counts: Counts = { all: 0, each: new Int32Array(lights.length), criteria: new Int32Array(tests.flat().length) };
  const departure = new Float64Array(3 * lights.length);
  for (let pair = 0; 2 * pair < draw.points; pair++) {
    draw.departure(pair, departure);
    countDraw(1, means, departure, plan, tests, lights, counts);
    if (draw.points > 1) countDraw(-1, means, departure, plan, tests, lights, counts);
  }
  const share = (count: number): number => count / draw.points;
  let next = 0;
  const criteria = tests.map((own) => own.map(() => share(counts.criteria[next++])));
  return { all: share(counts.all), each: Array.from(counts.each, share), criteria, points: draw.points };
}

interface Counts {
  all: number;
  readonly each: Int32Array;
  readonly criteria: Int32Array;
}

const PLAN_WIDTH = 13;

function countDraw(
  sign: number, means: Float64Array, departure: Float64Array, plan: Float64Array,
  tests: readonly (readonly CriterionTest[])[], lights: readonly StackedLight[], counts: Counts,
): void {
  let everywhere = true;
  let criterion = 0;
  for (let light = 0; light < tests.length; light++) {
    const dL = means[3 * light] + sign * departure[3 * light];
    const da = means[3 * light + 1] + sign * departure[3 * light + 1];
    const db = means[3 * light + 2] + sign * departure[3 * light + 2];
    const own = tests[light].length;
    let here = true;
    for (let c = 0; c < own; c++, criterion++) {
      const p = criterion * PLAN_WIDTH;
      const value = dL * (plan[p] * dL + plan[p + 3] * da + plan[p + 4] * db + plan[p + 6])
        + da * (plan[p + 1] * da + plan[p + 5] * db + plan[p + 7]) + db * (plan[p + 2] * db + plan[p + 8]);
      if ((value >= plan[p + 9] && value <= plan[p + 10])
        || (value >= plan[p + 11] && value <= plan[p + 12] && holdsExactly(tests[light][c], lights[light], dL, da, db))) counts.criteria[criterion]++;
      else here = false;
    }
    if (here) counts.each[light]++;
    else everywhere = false;
  }
  if (everywhere) counts.all++;
}

/** Coefficients and ranges of all tests in one array, for the hot loop. */
const flatPlan = (tests: readonly (readonly CriterionTest[])[]): Float64Array =>
  Float64Array.from(tests.flat().flatMap(({ coefficients, sure, possible }) => [...coefficients, ...sure, ...possible]));

/** All is known without a draw: shares of 0 and 1. */
function certain(known: readonly (readonly ('holds' | 'fails' | undefined)[])[]): StackedProbability {
  const criteria = known.map((row) => row.map((outcome) => Number(outcome === 'holds')));
  const each = criteria.map((row) => Math.min(1, ...row));
  return { all: Math.min(1, ...each), each, criteria, points: 1 };
}

function meanDifferences(lights: readonly StackedLight[]): Float64Array {
  return Float64Array.from(lights.flatMap(({ standard, trial }) => [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]]));
}

/** Both sides at the mean midpoint -+ half the difference. */
function sidesAt({ standard, trial }: StackedLight, dL: number, da: number, db: number): readonly [Lab, Lab] {
  const L = 0.5 * (standard[0] + trial[0]);
  const a = 0.5 * (standard[1] + trial[1]);
  const b = 0.5 * (standard[2] + trial[2]);
  return [[L - 0.5 * dL, a - 0.5 * da, b - 0.5 * db], [L + 0.5 * dL, a + 0.5 * da, b + 0.5 * db]];
}

function holdsExactly(test: CriterionTest, light: StackedLight, dL: number, da: number, db: number): boolean {
  const [first, second] = sidesAt(light, dL, da, db);
  return test.exact(first, second);
}

/** Tests of every criterion, made ready on pairs spread evenly over the lattice, since its first rows are neighbours. */
function readyTests(lights: readonly StackedLight[], draw: StackedDraw): CriterionTest[][] {
  const pairs = Math.min(PILOT_PAIRS, Math.max(1, draw.points / 2));
  const means = meanDifferences(lights);
  const departure = new Float64Array(means.length);
  const pilot: (readonly [Lab, Lab])[][] = lights.map(() => []);
  for (let i = 0; i < pairs; i++) {
    draw.departure(Math.floor((i * draw.points) / (2 * pairs)), departure);
    for (const sign of [1, -1]) {
      const d = means.map((mean, at) => mean + sign * departure[at]);
      lights.forEach((light, l) => pilot[l].push(sidesAt(light, d[3 * l], d[3 * l + 1], d[3 * l + 2])));
    }
  }
  return lights.map(({ standard, trial, criteria }, l) => criteria.map((criterion) => criterionTest(criterion, standard, trial, pilot[l])));
}
