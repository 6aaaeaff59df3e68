import { hotellingLimit } from '../../readings/hotelling.ts';
import { sampleCovariance } from '../../readings/sample-covariance.ts';
import { meanOfSpots } from '../../readings/spots.ts';
import { inverse } from '../trend/fit-trend.ts';

/** One lot on the chart: T2 against the limit that is right for it. */
export interface ChartedLot {
  readonly statistic: number;
  readonly limit: number;
  /** One of the lots that mean and covariance were taken from, a further one, or a lot against a covariance that is known. */
  readonly against: 'own lot' | 'new lot' | 'known';
  readonly outside: boolean;
}

/** Fewest lots that mean and covariance of three coordinates are taken from. */
export const leastLotsForChart = 5;

/**
 * Hotelling's T2 of lots against the mean and covariance of the first `base` of them: those lots by the limit of lots among their own (beta), the
 * rest by that of further lots (F). Undefined where there are fewer than `leastLotsForChart`, or where the lots lie in a plane, so that
 * their covariance has no inverse.
 */
export function chartOfLots(lots: readonly (readonly number[])[], base: number, confidence: number): readonly ChartedLot[] | undefined {
  const own = lots.slice(0, base);
  const kept = own.length < leastLotsForChart ? undefined : inverse(sampleCovariance(own), 3);
  const limits = { 'own lot': hotellingLimit({ kind: 'own lot', lots: own.length }, 3, confidence), 'new lot': hotellingLimit({ kind: 'new lot', lots: own.length }, 3, confidence) };
  if (kept === undefined || limits['own lot'] === undefined || limits['new lot'] === undefined) return undefined;
  const mean = meanOfSpots(own);
  const { 'own lot': ownLimit, 'new lot': newLimit } = limits;
  return lots.map((lot, index) => {
    const against = index < base ? 'own lot' : 'new lot';
    const statistic = squaredDistance(lot.map((entry, i) => entry - mean[i]), kept);
    const limit = against === 'own lot' ? ownLimit : newLimit;
    return { statistic, limit, against, outside: statistic > limit };
  });
}

/** T2 of one lot whose departure from a standard has a covariance that is known; undefined where that has no inverse. */
export function chartedByKnown(departure: readonly number[], covariance: ArrayLike<number>, confidence: number): ChartedLot | undefined {
  const kept = inverse(covariance, 3);
  const limit = hotellingLimit({ kind: 'known' }, 3, confidence);
  if (kept === undefined || limit === undefined) return undefined;
  const statistic = squaredDistance(departure, kept);
  return { statistic, limit, against: 'known', outside: statistic > limit };
}

const squaredDistance = (v: readonly number[], kept: Float64Array): number =>
  v.reduce((sum, x, i) => sum + x * v.reduce((inner, y, j) => inner + kept[i * v.length + j] * y, 0), 0);
