/**
 * Experiments on the decision rule under several lights at once: two spectra whose true difference lies exactly on the limit of that light
 * which asks most, measured again and again and judged as one event. The spectra, their noise and the stacked covariance are made
 * here; the verdict is the product's own.
 */
import { difference, lightByName, spectrumToLab } from '../../../src/colour/index.ts';
import type { Lab } from '../../../src/quantities.ts';
import { judgeEvent, matchCriteria } from '../../../src/readings/index.ts';
import { normalGenerator } from './simulation.ts';

export interface StackedSetting {
  readonly spots: number;
  /** Limit under each light by its name. */
  readonly limits: Readonly<Record<string, number>>;
  /** Reflectance factor of the flat grey that both sides are near to. */
  readonly reflectance: number;
  /** Standard deviation of a spot along each of the smooth curves, as a share of the reflectance. */
  readonly spotSd: number;
  /** The same for the deviation of an instrument; each side has its own instrument. 0: one instrument that cancels. */
  readonly instrumentSd: number;
  readonly experiments: number;
  readonly seed: number;
}

export interface StackedResult {
  readonly falseHolds: number;
  readonly falseClashes: number;
  /** Share of experiments in which another light than D65 is the one on its limit. */
  readonly elsewhere: number;
}

const curves = 5;
const count = 31;
/** Level, slope and three waves over 400 nm to 700 nm, the finer ones weaker as in real surfaces. */
const curve = Array.from({ length: curves }, (_, order) => Array.from({ length: count }, (__, i) => Math.cos((order * Math.PI * i) / (count - 1)) / (1 + order)));

export function stackedExperiment({ spots, limits, reflectance, spotSd, instrumentSd, experiments, seed }: StackedSetting): StackedResult {
  const names = Object.keys(limits);
  const lights = names.map((name) => lightByName(name)!);
  const labs = (coefficients: readonly number[]): Lab[] => {
    const values = Array.from({ length: count }, (_, i) => coefficients.reduce((sum, each, k) => sum + each * curve[k]![i]!, reflectance));
    return lights.map((light) => spectrumToLab({ startNm: 400, stepNm: 10, values }, light, 10));
  };
  const normal = normalGenerator(seed);
  const vector = (sd: number): number[] => Array.from({ length: curves }, () => sd * reflectance * normal());
  const variance = 2 * reflectance ** 2 * (spotSd ** 2 / spots + instrumentSd ** 2);
  const formula = { name: 'ciede2000' } as const;
  const share = (standard: readonly Lab[], trial: readonly Lab[]): number[] =>
    names.map((name, light) => difference(formula, standard[light]!, trial[light]!) / limits[name]!);
  let [holds, clashes, elsewhere] = [0, 0, 0];
  for (let n = 0; n < experiments; n += 1) {
    const standard = vector(0.02);
    const truth = onLimit(standard, vector(1), (trial) => Math.max(...share(labs(standard), labs(trial))));
    const shares = share(labs(standard), labs(truth));
    if (shares.indexOf(Math.max(...shares)) !== names.indexOf('D65')) elsewhere += 1;
    const [p, q] = [standard, truth].map((side) => {
      const offset = vector(instrumentSd);
      const readings = Array.from({ length: spots }, () => labs(side.map((each, k) => each + offset[k]! + spotSd * reflectance * normal())));
      return names.map((_, light) => [0, 1, 2].map((axis) => readings.reduce((sum, reading) => sum + reading[light]![axis]!, 0) / spots) as unknown as Lab);
    }) as [Lab[], Lab[]];
    const event = {
      lights: names.map((name, light) => ({ standard: p[light]!, trial: q[light]!, criteria: matchCriteria(formula, limits[name]!) })),
      covariance: stackedCovariance(standard, labs, variance), points: 1024,
    };
    const { verdict } = judgeEvent(event, 'guarded', 0.95);
    if (verdict === 'holds') holds += 1;
    if (verdict === 'clashes') clashes += 1;
  }
  return { falseHolds: holds / experiments, falseClashes: clashes / experiments, elsewhere: elsewhere / experiments };
}

/** The colour along a direction at which the largest share of a limit is exactly 1, by bisection. */
function onLimit(from: readonly number[], direction: readonly number[], largest: (trial: readonly number[]) => number): number[] {
  const at = (scale: number): number[] => from.map((each, k) => each + scale * direction[k]!);
  let [low, high] = [0, 1];
  while (largest(at(high)) > 1 && high > 1e-3) high /= 2;
  high *= 2;
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (largest(at(middle)) < 1) low = middle;
    else high = middle;
  }
  return at(low);
}

/** Covariance of L*, a*, b* under all lights where every curve's coefficient has the same variance: J J' by central differences. */
function stackedCovariance(at: readonly number[], labs: (coefficients: readonly number[]) => Lab[], variance: number): Float64Array {
  const step = 1e-4;
  const slopes = at.map((_, k) => {
    const [up, down] = [step, -step].map((by) => labs(at.map((each, i) => each + (i === k ? by : 0))).flat());
    return up!.map((value, i) => (value - down![i]!) / (2 * step));
  });
  const size = slopes[0]!.length;
  return Float64Array.from({ length: size * size }, (_, entry) =>
    slopes.reduce((sum, slope) => sum + variance * slope[Math.floor(entry / size)]! * slope[entry % size]!, 0));
}
