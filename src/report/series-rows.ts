import type { BuildPlan, CabinSeries, ForecastPlace, PartSeries } from '../series/index.ts';
import type { CsvValue } from '../formats/csv-cell.ts';

/** Columns that only rows of lots fill. */
export const seriesColumns = [
  'lot', 'producedOn', 'spots', 'outside', 'perUnit', 'reachL', 'reachA', 'reachB', 'reach', 'probability', 'state', 'ahead', 'day', 'earliestAhead', 'earliestDay', 'latestAhead', 'latestDay', 'set', 'overUse', 'inOrder', 'inOrderClashes',
] as const;
type SeriesRow = Readonly<Record<string, CsvValue>>;

/**
 * The series of a cabin as rows: `lot` with its colour and its T2 as value, `trend` with the slope by one day or lot and half of its interval (`reach`), `forecast`
 * of each joint, `set` of lots to build together beside the one in order of production.
 */
export const seriesRows = (series: CabinSeries | undefined, observer: number, name: (part: string) => string): SeriesRow[] => (series === undefined ? [] : [
  ...series.parts.flatMap((part) => [...lotRows(part, observer, name), ...trendRows(part, observer, name)]),
  ...series.joints.map(({ joint, check, state, sides, formula, now, there, when, earliest, latest, reason, unit }): SeriesRow => ({
    row: 'forecast', id: joint, standard: name(sides[0]?.part ?? ''), trial: name(sides[1]?.part ?? ''), check, state, formula, unit: check === 'gloss' ? 'GU' : undefined, observer: check === 'gloss' ? undefined : observer, perUnit: unit, light: (there ?? now)?.light, criterion: (there ?? now)?.criterion,
    value: now?.value, limit: now?.limit, limitUse: now?.use, cause: reason, ...placeCells('', when), ...placeCells('earliest', earliest), ...placeCells('latest', latest),
  })),
  ...[...series.sets, ...series.pairs].flatMap((plan) => setRows(plan, name)),
]);

function lotRows({ part, source, light, lots, gloss, chart }: PartSeries, observer: number, name: (part: string) => string): SeriesRow[] {
  return lots.map((lot): SeriesRow => ({
    row: 'lot', id: part, trial: name(part), source, light, observer, lot: lot.id, producedOn: lot.producedOn, spots: lot.spots, L: lot.lab[0], a: lot.lab[1], b: lot.lab[2],
    ...(gloss === undefined ? {} : { [`gloss${gloss.angle}`]: gloss.lots.find(({ id }) => id === lot.id)?.mean }),
    criterion: lot.charted === undefined ? undefined : 'T2', value: lot.charted?.statistic, limit: lot.charted?.limit, subject: lot.charted?.against, outside: lot.charted?.outside, cause: chart.reason, sentence: lot.words.join(', ') || undefined,
  }));
}

function trendRows({ part, source, light, trend, gloss, unit }: PartSeries, observer: number, name: (part: string) => string): SeriesRow[] {
  const base = { row: 'trend', id: part, trial: name(part), source, perUnit: unit };
  return [
    { ...base, check: 'colour', light, observer, state: trend.state, dL: trend.slope?.[0], da: trend.slope?.[1], db: trend.slope?.[2], reachL: trend.reach?.[0], reachA: trend.reach?.[1], reachB: trend.reach?.[2], probability: trend.probability },
    ...(gloss === undefined ? [] : [{ ...base, check: 'gloss', subject: `${gloss.angle}°`, unit: 'GU', state: gloss.state, valueChange: gloss.slope?.[0], reach: gloss.reach?.[0], probability: gloss.probability }]),
  ];
}

const placeCells = (which: 'earliest' | 'latest' | '', place: ForecastPlace | undefined): SeriesRow =>
  ({ [which === '' ? 'ahead' : `${which}Ahead`]: place?.ahead, [which === '' ? 'day' : `${which}Day`]: place?.day });

const setRows = ({ parts, joints, sets, inOrder, proved }: BuildPlan, name: (part: string) => string): SeriesRow[] => sets.map((set, index) => ({
  row: 'set', id: joints.join(' '), trial: parts.map(name).join(' / '), set: index + 1, lot: set.lots.join(' / '), clashes: set.clashes, overUse: set.overUse, inOrder: inOrder[index].lots.join(' / '), inOrderClashes: inOrder[index].clashes, state: proved ? 'proved' : 'not proved',
}));
