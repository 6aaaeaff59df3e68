import { dayCount } from '../../cabin/day-count.ts';
import type { Cabin } from '../../cabin/cabin.ts';
import type { GaugeShare } from '../../readings/quality/index.ts';
import { agreementWarningShare } from '../../readings/quality/index.ts';
import type { Instrument } from '../../readings/reading.ts';
import type { SpecimenQuality } from './specimen-quality.ts';

/** Where an instrument's agreement takes up most of a limit. */
export interface WorstUse {
  readonly quantity: 'colour' | 'gloss' | 'texture';
  readonly specimen: string;
  readonly part?: string;
  readonly gauge: GaugeShare;
}

/** How far an instrument may be trusted on the day of the judgement. */
export interface InstrumentQuality {
  readonly instrument: string;
  readonly name: string;
  readonly kind: Instrument['kind'];
  readonly calibration: {
    readonly state: 'in date' | 'due' | 'interval not stated' | 'not stated';
    readonly on?: string;
    readonly ageDays?: number;
    readonly intervalDays?: number;
  };
  readonly agreement: {
    /** `assumed`: the rule book's value stands in for what was not measured. */
    readonly state: 'measured' | 'measured before the last calibration' | 'assumed';
    readonly on?: string;
    readonly ageDays?: number;
    readonly tiles?: number;
  };
  /** Specimens that it measured. */
  readonly specimens: number;
  readonly worst?: WorstUse;
  /** The agreement takes more than a quarter of a limit it was used for. */
  readonly exceeds: boolean;
}

/** Every instrument of the register by calibration, agreement and the limit that it takes most of. */
export function instrumentQualities(cabin: Cabin, asOf: string, specimens: readonly SpecimenQuality[]): InstrumentQuality[] {
  return cabin.instruments.map((instrument): InstrumentQuality => {
    const uses = specimens.flatMap((specimen) => usesOf(specimen, instrument.id));
    const worst = uses.flatMap(({ use }) => (use === undefined ? [] : [use]))
      .reduce<WorstUse | undefined>((best, use) => (best === undefined || use.gauge.instrumentShare > best.gauge.instrumentShare ? use : best), undefined);
    return {
      instrument: instrument.id, name: instrument.name, kind: instrument.kind,
      calibration: calibrationOf(instrument, asOf), agreement: agreementStateOf(instrument, asOf),
      specimens: new Set(uses.map(({ specimen }) => specimen)).size,
      ...(worst === undefined ? {} : { worst }),
      exceeds: worst !== undefined && worst.gauge.instrumentShare > agreementWarningShare,
    };
  });
}

function usesOf(specimen: SpecimenQuality, instrument: string): { readonly specimen: string; readonly use: WorstUse | undefined }[] {
  return (['colour', 'gloss', 'texture'] as const).flatMap((quantity) => specimen[quantity]
    .filter((quality) => quality.instrument === instrument)
    .map(({ gauge }) => ({
      specimen: specimen.specimen,
      use: gauge && { quantity, specimen: specimen.specimen, ...(specimen.part === undefined ? {} : { part: specimen.part }), gauge },
    })));
}

function calibrationOf({ calibratedOn, calibrationDays }: Instrument, asOf: string): InstrumentQuality['calibration'] {
  if (calibratedOn === undefined) return { state: 'not stated' };
  const ageDays = dayCount(calibratedOn, asOf);
  if (calibrationDays === undefined) return { state: 'interval not stated', on: calibratedOn, ageDays };
  return { state: ageDays <= calibrationDays ? 'in date' : 'due', on: calibratedOn, ageDays, intervalDays: calibrationDays };
}

function agreementStateOf({ kind, agreement, calibratedOn }: Instrument, asOf: string): InstrumentQuality['agreement'] {
  const measured = kind === 'glossmeter' ? agreement?.glossSd : kind === 'areal profiler' ? agreement?.textureRelativeSd : agreement?.covariance;
  if (agreement === undefined || measured === undefined) return { state: 'assumed' };
  return {
    state: calibratedOn !== undefined && agreement.date < calibratedOn ? 'measured before the last calibration' : 'measured',
    on: agreement.date, ageDays: dayCount(agreement.date, asOf), tiles: agreement.tiles,
  };
}
