import { dayAfter, dayCount } from '../../cabin/day-count.ts';
import type { IsoDate } from '../../quantities.ts';
import type { ForecastPlace } from './joint-forecast.ts';

/** Lots on a scale of their own, whose origin is the first of them that was made. */
export interface PlacedLots {
  readonly unit: 'day' | 'lot';
  readonly lots: readonly { readonly place: number; readonly producedOn?: IsoDate }[];
}

/** How places ahead of the latest lot are those of each series. */
export interface CommonScale {
  readonly from: IsoDate | undefined;
  readonly places: (ahead: number) => readonly [number, number];
  /** Days or lots that the lots of the longest trend cover. */
  readonly span: number;
  readonly placeOf: (ahead: number) => ForecastPlace;
}

/** The scale of two series of which those that move count: in days from the latest of their lots, or the next lot of one with the next of the other. */
export function commonScale(series: readonly PlacedLots[], moves: readonly boolean[], unit: 'day' | 'lot'): CommonScale {
  const moving = series.filter((_, side) => moves[side]);
  const last = (own: PlacedLots): number => own.lots.at(-1)?.place ?? 0;
  const span = Math.max(...moving.map((own) => last(own) - (own.lots[0]?.place ?? 0)));
  if (unit === 'lot') {
    // The next lot of one part meets the next lot of the other.
    return { from: undefined, span, places: (ahead) => [last(series[0]) + ahead, last(series[1]) + ahead], placeOf: (ahead) => ({ ahead: Math.ceil(ahead - 1e-6) }) };
  }
  const firstDay = (own: PlacedLots): IsoDate => own.lots[0]?.producedOn ?? '';
  // A side without a trend is where it is on any day, so that its own days do not matter.
  const from = moving.map((own) => dayAfter(firstDay(own), last(own) - own.lots[0].place)).sort().at(-1) ?? '';
  const origin = (own: PlacedLots): number => (moving.includes(own) ? dayCount(firstDay(own), from) + own.lots[0].place : 0);
  const [first, second] = [origin(series[0]), origin(series[1])];
  return {
    from, span, places: (ahead) => [first + ahead, second + ahead],
    placeOf: (ahead) => ({ ahead: Math.ceil(ahead - 1e-6), day: dayAfter(from, Math.ceil(ahead - 1e-6)) }),
  };
}
