import { differenceWords } from '../colour/difference-words.ts';
import { masterOf } from '../harmony/checks/held-to.ts';
import { colourSideOf, colourSideOfMaster } from '../harmony/colour-side.ts';
import { pairColours } from '../harmony/colour-pairing.ts';
import type { JudgeContext } from '../harmony/judge-context.ts';
import type { PartBasis } from '../harmony/part-basis.ts';
import type { IsoDate, Lab } from '../quantities.ts';
import type { JudgedLight } from '../readings/colour-sample.ts';
import { differenceCovariance } from '../readings/difference-covariance.ts';
import type { GlossAngle } from '../readings/reading.ts';
import { lightCovariance } from '../readings/stacked-excess.ts';
import { studentQuantile } from '../readings/student-t.ts';
import { chartedByKnown, chartOfLots, leastLotsForChart } from './control/control-chart.ts';
import type { ChartedLot } from './control/control-chart.ts';
import { glossSeries } from './lots/gloss-series.ts';
import { groupOfMostLots, lotSeries } from './lots/lot-series.ts';
import type { LotSeries } from './lots/lot-series.ts';
import { fitTrend, leastLotsForTrend, slopeUncertainty, trendAt } from './trend/fit-trend.ts';
import type { Trend } from './trend/fit-trend.ts';

/** What lots are charted against: the lots themselves, or the part's master. */
export type ChartReference = 'lots' | 'master';

export interface SeriesLot {
  readonly id: string;
  readonly producedOn?: IsoDate;
  readonly specimens: readonly string[];
  readonly spots: number;
  readonly place: number;
  /** Under the first required light. */
  readonly lab: Lab;
  /** Mean spectrum, where it was read as spectra, for samples under other lights. */
  readonly spectrum?: { readonly startNm: number; readonly stepNm: number; readonly values: readonly number[] };
  readonly charted?: ChartedLot;
  /** How it departs from what it is charted against: `lighter`, `yellower`. */
  readonly words: readonly string[];
}

/** A trend as it is told: by one day or lot, with half of the interval of the asked confidence. */
export interface TrendTold {
  readonly state: 'trend' | 'no trend' | 'too few lots';
  /** Lots that a trend needs at least. */
  readonly wanted: number;
  /** Probability of so large a slope where there is none. */
  readonly probability?: number;
  readonly slope?: readonly number[];
  readonly reach?: readonly number[];
  /** The line at each of some places with half of its band, by coordinate, for a picture. */
  readonly line?: readonly { readonly place: number; readonly value: readonly number[]; readonly reach: readonly number[] }[];
}

export interface PartSeries {
  readonly part: string;
  readonly source: string;
  /** Its lots are those of this other hand. */
  readonly borrowedFrom?: string;
  readonly unit: 'day' | 'lot';
  readonly light: string;
  readonly lots: readonly SeriesLot[];
  /** Lots that were read under other conditions, or not in colour. */
  readonly leftOut: readonly string[];
  readonly chart: {
    readonly reference: ChartReference;
    /** Lots that mean and covariance come from; the rest are further ones. */
    readonly base: number;
    readonly master?: string;
    readonly outside: readonly string[];
    /** Why there is no chart. */
    readonly reason?: string;
  };
  readonly trend: TrendTold;
  readonly gloss?: TrendTold & { readonly angle: GlossAngle; readonly lots: readonly { readonly id: string; readonly place: number; readonly mean: number }[] };
}

export interface PartSeriesOptions {
  readonly confidence: number;
  /** What lots are charted against; the lots themselves where there are enough, else the master. */
  readonly reference?: ChartReference;
  /** How many of the first lots the limits are taken from; all where absent. */
  readonly base?: number;
}

/** Points of a line that is given for a picture. */
const linePoints = 25;

/** Lots of a part, their chart and their trend under the first required light of the book; undefined where fewer than two lots were read alike. */
export function partSeries(context: JudgeContext, basis: PartBasis, options: PartSeriesOptions): PartSeries | undefined {
  const { book } = context;
  const name = book.lights.find(({ standing }) => standing === 'required')?.light;
  const light = name === undefined ? undefined : context.light(name);
  if (name === undefined || light === undefined || basis.source.surface === 'patterned') return undefined;
  const lights: readonly JudgedLight[] = [{ name, light, observer: book.observer }];
  const group = groupOfMostLots(context, basis, lights);
  if (group === undefined) return undefined;
  const series = lotSeries(context, basis, group, lights);
  if (series.lots.length < 2) return undefined;
  const { charted, ...chart } = chartOf(context, basis, series, name, options);
  const trend = fitTrend(series.lots.map(({ place, colours, noise }) => ({ place, value: colours[0], noise: noise[0] })), options.confidence);
  const gloss = glossSeries(context, basis, options.confidence);
  const borrowedFrom = basis.colour?.borrowedFrom;
  return {
    part: basis.part.id, source: basis.colour?.source.id ?? basis.source.id, ...(borrowedFrom === undefined ? {} : { borrowedFrom }),
    unit: series.unit, light: name, leftOut: series.leftOut,
    lots: series.lots.map(({ lot, place, colours, spots, group: own }, index): SeriesLot => {
      const spectrum = context.sample(own, lights)?.spectrum;
      const found = charted[index];
      return {
        id: lot.id, ...(lot.producedOn === undefined ? {} : { producedOn: lot.producedOn }), specimens: lot.specimens, spots, place, lab: colours[0],
        ...(spectrum === undefined ? {} : { spectrum: { ...spectrum, values: Array.from(spectrum.values) } }),
        ...(found === undefined ? {} : { charted: found.charted }), words: found === undefined ? [] : differenceWords(found.standard, colours[0]),
      };
    }),
    chart: { ...chart, outside: series.lots.flatMap(({ lot }, index) => (charted[index]?.charted.outside === true ? [lot.id] : [])) },
    trend: told(trend, 3, series.lots.map(({ place }) => place), options.confidence),
    ...(gloss === undefined || gloss.lots.length < 2 ? {} : {
      gloss: { ...told(gloss.trend, 1, gloss.lots.map(({ place }) => place), options.confidence), angle: gloss.angle, lots: gloss.lots.map(({ id, place, mean }) => ({ id, place, mean })) },
    }),
  };
}

interface Charted {
  readonly reference: ChartReference;
  readonly base: number;
  readonly master?: string;
  readonly reason?: string;
  readonly charted: readonly ({ readonly charted: ChartedLot; readonly standard: Lab } | undefined)[];
}

function chartOf(context: JudgeContext, basis: PartBasis, series: LotSeries, light: string, { confidence, reference, base }: PartSeriesOptions): Charted {
  const lots = series.lots.length;
  const master = masterOf(context, basis);
  const enough = lots >= leastLotsForChart;
  if (reference === 'master' || (reference === undefined && !enough && master !== undefined)) return againstMaster(context, basis, series, light, confidence);
  const first = Math.min(lots, base ?? lots);
  const values = series.lots.map(({ colours }) => colours[0]);
  const charted = chartOfLots(values, first, confidence);
  if (charted === undefined) {
    const reason = first < leastLotsForChart ? `${first === 1 ? 'one lot gives' : `${first} lots give`} no covariance of three coordinates: it takes ${leastLotsForChart} at least`
      : 'the lots lie in one plane of the colour space, so that their covariance has no inverse';
    return { reference: 'lots', base: first, reason, charted: [] };
  }
  const mean = [0, 1, 2].map((axis) => values.slice(0, first).reduce((sum, lab) => sum + lab[axis], 0) / first);
  const standard: Lab = [mean[0], mean[1], mean[2]];
  return { reference: 'lots', base: first, charted: charted.map((each) => ({ charted: each, standard })) };
}

/** Each lot against the master as they would be compared, by the covariance that readings and instruments give the difference. */
function againstMaster(context: JudgeContext, basis: PartBasis, series: LotSeries, light: string, confidence: number): Charted {
  const master = masterOf(context, basis);
  const none = { reference: 'master' as const, base: 0, charted: [] };
  if (master === undefined) return { ...none, reason: 'no master is on record for the part' };
  const charted = series.lots.map(({ lot }) => {
    const { colour: pair } = pairColours(context, colourSideOfMaster(context, basis, master), colourSideOf(context, lot.basis), { lights: [{ light, standing: 'required' }] });
    const at = typeof pair === 'string' || pair.indicative ? -1 : pair.lights.findIndex((known) => known.light === light);
    if (typeof pair === 'string' || at < 0) return undefined;
    const { standard, trial } = pair.lights[at];
    const departure = [trial[0] - standard[0], trial[1] - standard[1], trial[2] - standard[2]];
    const found = chartedByKnown(departure, lightCovariance(differenceCovariance(pair.spread), 3 * pair.lights.length, at), confidence);
    return found === undefined ? undefined : { charted: found, standard };
  });
  return charted.every((each) => each === undefined)
    ? { ...none, master: master.id, reason: `the lots and master ${master.id} were not read alike` } : { ...none, master: master.id, charted };
}

function told(trend: Trend | undefined, size: 1 | 3, places: readonly number[], confidence: number): TrendTold {
  const wanted = leastLotsForTrend(size);
  if (trend === undefined) return { state: places.length < wanted ? 'too few lots' : 'no trend', wanted };
  const factor = studentQuantile((1 + confidence) / 2, trend.freedom);
  const [from, to] = [Math.min(...places), Math.max(...places)];
  return {
    state: trend.significant ? 'trend' : 'no trend', wanted, probability: trend.probability, slope: trend.slope, reach: slopeUncertainty(trend).map((u) => factor * u),
    line: Array.from({ length: linePoints }, (_, k) => {
      const place = from + ((to - from) * k) / (linePoints - 1);
      const { value, covariance } = trendAt(trend, place);
      return { place, value, reach: value.map((_entry, i) => factor * Math.sqrt(Math.max(0, covariance[i * size + i]))) };
    }),
  };
}
