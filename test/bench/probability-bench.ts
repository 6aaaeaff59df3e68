import { difference } from '../../src/colour/index.ts';
import { labColumns } from '../../src/colour/batch/index.ts';
import { withinProbabilityBatch } from '../../src/readings/within-probability-batch.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { checksumOf, interleaved, scaled, spreadOf } from './bench-line.ts';
import type { BenchLine } from './bench-line.ts';

const pairs = 240;
/** So many of them are simulated in every round. */
const simulatedPairs = 24;
const draws = 10_000;
const manyDraws = 400_000;
const rounds = 9;
const formula = { name: 'ciede2000' } as const;

/**
 * The probability that a CIEDE2000 is within its limit, of pairs by chance: beside 10 000 draws of the difference, whose normals lie ready.
 * The error is against 400 000 draws; both it and the error of the 10 000 are root mean squares, which the noise of the 400 000, 0.0006, is part of.
 */
export function probabilityBenchmark(): readonly BenchLine[] {
  const random = seededNumbers(106);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const [standard, trial] = [labColumns(pairs), labColumns(pairs)];
  const [covariances, limits, into] = [new Float64Array(9 * pairs), new Float64Array(pairs), new Float64Array(pairs)];
  const factors: number[][] = [];
  for (let i = 0; i < pairs; i += 1) {
    [standard.L[i], standard.a[i], standard.b[i]] = [10 + 70 * random(), 15 * normal(), 15 * normal()];
    [trial.L[i], trial.a[i], trial.b[i]] = [standard.L[i]! + 0.5 * normal(), standard.a[i]! + 0.4 * normal(), standard.b[i]! + 0.4 * normal()];
    const factor = Array.from({ length: 9 }, () => 0.25 * normal());
    for (let r = 0; r < 3; r += 1) for (let c = 0; c < 3; c += 1) for (let k = 0; k < 3; k += 1) covariances[9 * i + 3 * r + c]! += factor[3 * r + k]! * factor[3 * c + k]!;
    factors.push(factor);
    limits[i] = 0.3 + random();
  }
  const normals = Float64Array.from({ length: 3 * manyDraws }, normal);
  const simulated = new Float64Array(pairs);
  const simulate = (count: number, upTo = pairs): Float64Array => {
    for (let i = 0; i < upTo; i += 1) simulated[i] = shareWithin(i, count);
    return simulated.slice();
  };
  const shareWithin = (i: number, count: number): number => {
    const f = factors[i]!;
    const mean = [trial.L[i]! - standard.L[i]!, trial.a[i]! - standard.a[i]!, trial.b[i]! - standard.b[i]!];
    const centre = [(trial.L[i]! + standard.L[i]!) / 2, (trial.a[i]! + standard.a[i]!) / 2, (trial.b[i]! + standard.b[i]!) / 2];
    const [first, second]: [[number, number, number], [number, number, number]] = [[0, 0, 0], [0, 0, 0]];
    let within = 0;
    for (let draw = 0; draw < count; draw += 1) {
      for (let r = 0; r < 3; r += 1) {
        const d = mean[r]! + f[3 * r]! * normals[3 * draw]! + f[3 * r + 1]! * normals[3 * draw + 1]! + f[3 * r + 2]! * normals[3 * draw + 2]!;
        first[r] = centre[r]! - d / 2;
        second[r] = centre[r]! + d / 2;
      }
      if (difference(formula, first, second) <= limits[i]!) within += 1;
    }
    return within / count;
  };
  const { ms, ratio } = interleaved(rounds, {
    own: () => withinProbabilityBatch(formula, standard, trial, covariances, limits, into),
    simulation: () => simulate(draws, simulatedPairs),
  });
  const few = simulate(draws);
  const many = simulate(manyDraws);
  const error = (values: Float64Array): number => Math.sqrt(values.reduce((sum, value, i) => sum + (value - many[i]!) ** 2, 0) / pairs);
  const [perPair, perSimulated] = [1e3 / pairs, 1e3 / simulatedPairs];
  return [
    {
      name: 'probability of being within a CIEDE2000 limit, a pair', unit: 'µs', own: scaled(ms.own, perPair),
      beside: { name: '10 000 draws', figure: scaled(ms.simulation, perSimulated) }, ratio: (ratio('simulation', 'own') * pairs) / simulatedPairs, wanted: 'at least 20', checksum: checksumOf(into),
    },
    {
      name: 'its error, root mean square', unit: '', own: spreadOf([error(into)]), beside: { name: '10 000 draws', figure: spreadOf([error(few)]) },
      wanted: 'below 0.002', checksum: checksumOf(into),
    },
  ];
}
