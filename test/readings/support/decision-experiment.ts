/**
 * Experiments on the decision rule itself: a pair whose true difference lies exactly on the limit is measured again and again, and
 * each time judged. Whatever is then said but "open" is wrong half of the time at least. Everything that makes the
 * readings is independent of src/readings; the verdict is the product's own.
 */
import { difference, localMetric } from '../../../src/colour/index.ts';
import type { Lab, Matrix3 } from '../../../src/quantities.ts';
import { correctedValue, decide, limitExcess, pooledCovariance, withinProbability } from '../../../src/readings/index.ts';
import { generator, normalGenerator, vectorDraws } from './simulation.ts';

export interface ExperimentSetting {
  readonly spots: number;
  /** sd of L*, a*, b* of one spot, each side. */
  readonly spotSd: readonly [number, number, number];
  /** sd of L*, a*, b* of an instrument's deviation; two unlike instruments measure. */
  readonly instrumentSd: readonly [number, number, number] | undefined;
  readonly limit: number;
  /** Colour of the standard. */
  readonly base: Lab;
  /** Known covariance, or the sample's own pooled with an assumption of the true size worth eight readings. */
  readonly covariance: 'known' | 'pooled';
  readonly experiments: number;
  readonly seed: number;
}

export interface ExperimentResult {
  readonly falseHolds: number;
  readonly falseClashes: number;
  /** Share that would be called a clash without the correction for noise: p <= 1 - P and (q - limit)/u >= 1.645 with q as it is. */
  readonly uncorrectedClashes: number;
}

const diagonal = (sd: readonly [number, number, number], factor: number): Matrix3 =>
  [sd[0] ** 2 * factor, 0, 0, 0, sd[1] ** 2 * factor, 0, 0, 0, sd[2] ** 2 * factor];

export function decisionExperiment(setting: ExperimentSetting): ExperimentResult {
  const { spots, spotSd, instrumentSd, limit, base, covariance, experiments, seed } = setting;
  const formula = { name: 'ciede2000' } as const;
  const direction = generator(seed);
  const normal = normalGenerator(seed + 1);
  const spot = vectorDraws([0, 0, 0], diagonal(spotSd, 1), normal);
  const deviation = vectorDraws([0, 0, 0], diagonal(instrumentSd ?? [0, 0, 0], 1), normal);
  const instrument = instrumentSd === undefined ? diagonal([0, 0, 0], 0) : diagonal(instrumentSd, 2);
  const assumed = diagonal(spotSd, 1);
  let falseHolds = 0;
  let falseClashes = 0;
  let uncorrectedClashes = 0;
  for (let n = 0; n < experiments; n++) {
    const truth = pairOnLimit(base, limit, direction);
    const sides = [base, truth].map((colour) => {
      const offset = [...deviation()];
      const readings = Array.from({ length: spots }, () => {
        const noise = spot();
        return colour.map((value, i) => value + offset[i] + noise[i]);
      });
      const mean = [0, 1, 2].map((i) => readings.reduce((sum, reading) => sum + reading[i], 0) / spots);
      const sample = Array.from({ length: 9 }, (_, at) => (spots < 2 ? 0 : readings.reduce((sum, reading) =>
        sum + (reading[Math.floor(at / 3)] - mean[Math.floor(at / 3)]) * (reading[at % 3] - mean[at % 3]), 0) / (spots - 1)));
      return { mean: mean as unknown as Lab, spread: covariance === 'known' ? assumed : pooledCovariance(assumed, sample, spots, 8) };
    });
    const total = instrument.map((entry, at) => entry + (sides[0].spread[at] + sides[1].spread[at]) / spots) as unknown as Matrix3;
    const within = withinProbability(formula, sides[0].mean, sides[1].mean, total, limit);
    const { value, uncertainty, corrected } = correctedValue(formula, sides[0].mean, sides[1].mean, total);
    const verdict = decide({ rule: 'guarded', confidence: 0.95, within, excess: limitExcess(corrected, uncertainty, limit), inside: value <= limit });
    if (verdict === 'holds') falseHolds++;
    if (verdict === 'clashes') falseClashes++;
    if (within <= 0.05 && limitExcess(value, uncertainty, limit) >= 1.645) uncorrectedClashes++;
  }
  return { falseHolds: falseHolds / experiments, falseClashes: falseClashes / experiments, uncorrectedClashes: uncorrectedClashes / experiments };
}

/** A colour exactly `limit` away from `base`, in a direction even over the ellipsoid of the formula. */
function pairOnLimit(base: Lab, limit: number, random: () => number): Lab {
  const metric = localMetric({ name: 'ciede2000' }, base, base);
  const z = 2 * random() - 1;
  const angle = 2 * Math.PI * random();
  const flat = Math.sqrt(1 - z * z);
  const unit: Lab = [z / Math.sqrt(metric[0]), flat * Math.cos(angle), flat * Math.sin(angle)];
  const at = (scale: number): Lab => [base[0] + scale * unit[0], base[1] + scale * unit[1], base[2] + scale * unit[2]];
  let low = 0;
  let high = 4 * limit;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (difference({ name: 'ciede2000' }, base, at(middle)) < limit) low = middle;
    else high = middle;
  }
  return at(low);
}
