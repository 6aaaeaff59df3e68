import type {
  Degrees, GlossUnits, IsoDate, Lab, Matrix3, Micrometres, Millimetres, Nanometres, ReflectanceFactor,
} from '../quantities.ts';
import type { ContrastRecord } from '../texture/contrast-record.ts';

/** Geometries of measurement by the names of CIE 15; `d:8` spheres say whether the specular part is included (di) or excluded (de). */
export const geometries = ['45a:0', '45c:0', '45x:0', '0:45a', '0:45c', '0:45x', 'di:8', 'de:8', '8:di', '8:de', 'multi-angle', 'unknown'] as const;
export type Geometry = (typeof geometries)[number];
/** What may be compared with what: the classes a rule book orders. */
export type GeometryClass = '45:0' | 'de:8' | 'di:8' | 'multi-angle' | 'unknown';
export type UvState = 'included' | 'excluded' | 'adjusted' | 'unknown';
export type ObserverDegrees = 2 | 10;

/** Conditions that several readings share; readings are grouped by them before any mean is taken. */
export interface Conditions {
  readonly id: string;
  /** Id in the cabin's register of instruments. */
  readonly instrument: string;
  /** Colour readings only. */
  readonly geometry?: Geometry;
  readonly apertureMm?: Millimetres;
  readonly uv?: UvState;
  /** Colour of effect finishes: aspecular angle of a multi-angle reading. */
  readonly aspecularDeg?: Degrees;
  readonly backing?: string;
  readonly temperatureC?: number;
}

export type InstrumentKind = 'spectrophotometer' | 'colorimeter' | 'glossmeter' | 'areal profiler';

/** How well one instrument agrees with the others, from a shared set of tiles. */
export interface Agreement {
  readonly date: IsoDate;
  readonly tiles: number;
  /** Covariance of the instrument's deviation in CIELAB, D65 and the 10 degree observer. */
  readonly covariance?: Matrix3;
  /** Standard deviation of the deviation in gloss units. */
  readonly glossSd?: GlossUnits;
  /** Relative standard deviation of areal parameters. */
  readonly textureRelativeSd?: number;
  /** Covariance shared with another instrument, by its id; none means independent. */
  readonly shared?: Readonly<Record<string, Matrix3>>;
}

export interface Instrument {
  readonly id: string;
  readonly name: string;
  readonly kind: InstrumentKind;
  readonly serial?: string;
  readonly calibratedOn?: IsoDate;
  readonly calibrationDays?: number;
  readonly agreement?: Agreement;
  readonly note?: string;
}

export interface Spot {
  readonly name: string;
  readonly xMm?: Millimetres;
  readonly yMm?: Millimetres;
}

interface ReadingBase {
  readonly spot: Spot;
  /** Id of the conditions it was taken under. */
  readonly conditions: string;
  readonly rotationDeg?: Degrees;
  /** Flashes on the one spot that this reading is already the mean of. */
  readonly averagedFrom?: number;
  readonly measuredAt?: string;
  /** Id of the file it came from, and the row in it. */
  readonly file?: string;
  readonly row?: number;
  /** Marked by the user or by a robust test; never dropped by itself. */
  readonly outlier?: boolean;
  /** Colour of a patterned surface: the named colour that it was read on. */
  readonly colour?: string;
}

export interface SpectrumReading extends ReadingBase {
  readonly quantity: 'spectrum';
  readonly startNm: Nanometres;
  readonly stepNm: Nanometres;
  readonly values: readonly ReflectanceFactor[];
  /** The instrument or its software has corrected for bandpass already. */
  readonly bandpassCorrected?: boolean;
}

export interface CielabReading extends ReadingBase {
  readonly quantity: 'cielab';
  readonly lab: Lab;
  readonly light: string;
  readonly observer: ObserverDegrees;
}

/** A difference to a named master that has absolute values. */
export interface DifferenceReading extends ReadingBase {
  readonly quantity: 'difference';
  readonly difference: Lab;
  readonly light: string;
  readonly observer: ObserverDegrees;
  /** Id of the master specimen. */
  readonly master: string;
}

export type GlossAngle = 20 | 60 | 85;

export interface GlossReading extends ReadingBase {
  readonly quantity: 'gloss';
  readonly angle: GlossAngle;
  readonly gloss: GlossUnits;
  /** Reflection haze (ISO 13803), read beside the mirror direction. */
  readonly haze?: number;
  readonly direction?: 'along' | 'across';
}

/** Areal parameters of ISO 25178-2 and profile parameters of ISO 21920-2, as delivered. */
export interface ArealParameters {
  readonly saUm?: Micrometres;
  readonly sqUm?: Micrometres;
  readonly ssk?: number;
  readonly sku?: number;
  readonly spUm?: Micrometres;
  readonly svUm?: Micrometres;
  readonly szUm?: Micrometres;
  readonly salMm?: Millimetres;
  readonly str?: number;
  readonly stdDeg?: Degrees;
  readonly sdq?: number;
  readonly sdr?: number;
  readonly raUm?: Micrometres;
  readonly rzUm?: Micrometres;
  readonly rsmMm?: Millimetres;
  /** Class of VDI 3400, 0..45. */
  readonly vdiClass?: number;
}

export interface TextureReading extends ReadingBase {
  readonly quantity: 'texture';
  /** Empty where the texture was only photographed. */
  readonly parameters: ArealParameters;
  /** How it looks: contrast by frequency and direction, of the heights under a lamp or of a photograph. */
  readonly visible?: ContrastRecord;
}

export type ColourReading = SpectrumReading | CielabReading | DifferenceReading;
export type Reading = ColourReading | GlossReading | TextureReading;
export type Quantity = Reading['quantity'];
