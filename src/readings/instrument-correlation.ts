import type { IsoDate } from '../quantities.ts';
import type { Geometry, Instrument } from './reading.ts';

/** How and with what one side was measured, as far as it is known. */
export interface MeasuredSide {
  readonly instrument: Instrument | undefined;
  readonly geometry?: Geometry;
  readonly apertureMm?: number;
  /** First and last day of the readings. */
  readonly from?: IsoDate;
  readonly to?: IsoDate;
}

/** Correlations of the deviations of the instruments on two sides, by what they have in common. Assumption, no source. */
export interface CorrelationLevels {
  readonly sameSession: number;
  readonly sameInstrument: number;
  readonly different: number;
}

export const defaultCorrelation: CorrelationLevels = { sameSession: 1, sameInstrument: 0.5, different: 0 };

export type CorrelationDoubt =
  | 'serial number unknown' | 'unlike geometry' | 'unlike aperture' | 'geometry or aperture unknown' | 'unlike calibration period' | 'calibration period unknown'
  | 'large difference' | 'unlike surfaces';

export interface InstrumentCorrelation {
  readonly rho: number;
  readonly level: 'same session' | 'same instrument' | 'different instruments' | 'unknown instrument';
  /** What keeps one instrument from counting as one session; empty otherwise. */
  readonly doubts: readonly CorrelationDoubt[];
}

/** dE up to which one instrument's deviations cancel between two surfaces. Assumption, no source. */
const CANCELLING_DIFFERENCE = 5;
const DAY_MS = 86_400_000;

/**
 * Correlation between the deviations of the instruments that measured two sides.
 * One session (rho 1: the deviation cancels): the same serial number, geometry, aperture and calibration period,
 * surfaces alike and a colour difference below 5. The same instrument otherwise: 0.5. Different or unknown: 0.
 * A calibration period begins on the instrument's day of calibration and lasts its stated days; readings without a date, or of an
 * instrument without one, leave it unknown. `difference` undefined leaves its size, geometry and aperture out of account (gloss, texture);
 * for colours a geometry or aperture that is not stated, or mixed, keeps one instrument from counting as one session.
 */
export function instrumentCorrelation(
  first: MeasuredSide, second: MeasuredSide,
  pair: { readonly likeSurfaces: boolean; readonly difference?: number }, levels: CorrelationLevels = defaultCorrelation,
): InstrumentCorrelation {
  const p = first.instrument;
  const q = second.instrument;
  if (p === undefined || q === undefined) return { rho: levels.different, level: 'unknown instrument', doubts: [] };
  const same = p.id === q.id || (p.serial !== undefined && p.serial === q.serial && p.name === q.name);
  if (!same) return { rho: levels.different, level: 'different instruments', doubts: [] };

  const doubts: CorrelationDoubt[] = [];
  if (p.serial === undefined || q.serial === undefined) doubts.push('serial number unknown');
  else if (p.serial !== q.serial) return { rho: levels.different, level: 'different instruments', doubts: [] };
  if (first.geometry !== second.geometry) doubts.push('unlike geometry');
  if (first.apertureMm !== second.apertureMm) doubts.push('unlike aperture');
  if (pair.difference !== undefined && [first, second].some(({ geometry, apertureMm }) => geometry === undefined || apertureMm === undefined)) {
    doubts.push('geometry or aperture unknown');
  }
  const periods = [calibrationPeriod(first), calibrationPeriod(second)];
  if (periods.includes(undefined)) doubts.push('calibration period unknown');
  else if (periods[0] !== periods[1] || periods[0] === 'spans two') doubts.push('unlike calibration period');
  if (pair.difference !== undefined && !(pair.difference < CANCELLING_DIFFERENCE)) doubts.push('large difference');
  if (!pair.likeSurfaces) doubts.push('unlike surfaces');
  return doubts.length === 0
    ? { rho: levels.sameSession, level: 'same session', doubts }
    : { rho: levels.sameInstrument, level: 'same instrument', doubts };
}

/** Number of the period, 0 the first after the calibration on record, -1 before it. */
function calibrationPeriod({ instrument, from, to }: MeasuredSide): number | 'spans two' | undefined {
  if (instrument?.calibratedOn === undefined || from === undefined || to === undefined) return undefined;
  const start = dayNumber(instrument.calibratedOn);
  const length = instrument.calibrationDays ?? Infinity;
  const period = (date: IsoDate): number => {
    const days = dayNumber(date) - start;
    if (Number.isNaN(days)) return NaN;
    return days < 0 ? -1 : days < length ? 0 : Math.floor(days / length);
  };
  const [begin, end] = [period(from), period(to)];
  if (Number.isNaN(begin) || Number.isNaN(end)) return undefined;
  return begin === end ? begin : 'spans two';
}

const dayNumber = (date: IsoDate): number => Math.floor(Date.parse(date.slice(0, 10)) / DAY_MS);
