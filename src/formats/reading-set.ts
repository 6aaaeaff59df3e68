import type { SpecimenKind, UserLight } from '../cabin/cabin.ts';
import type { Degrees, GlossUnits, IsoDate, Lab, Millimetres, Nanometres } from '../quantities.ts';
import type { ContrastRecord } from '../texture/contrast-record.ts';
import type { ArealParameters, Geometry, GlossAngle, ObserverDegrees, Spot, UvState } from '../readings/reading.ts';

/** Geometries that a file may state and that leave open what the document must know: the arrangement of the 45 degree ring, or the specular part. */
export const partialGeometries = ['45:0', '0:45', 'd:8', '8:d'] as const;
export type PartialGeometry = (typeof partialGeometries)[number];
export type FoundGeometry = Geometry | PartialGeometry;

/** Conditions as far as a file tells them. */
export interface FoundConditions {
  /** Name of the instrument as the file has it. */
  readonly instrument?: string;
  readonly serial?: string;
  readonly calibratedOn?: IsoDate;
  readonly geometry?: FoundGeometry;
  readonly apertureMm?: Millimetres;
  readonly uv?: UvState;
  readonly aspecularDeg?: Degrees;
  readonly backing?: string;
  readonly temperatureC?: number;
}

export interface FoundSpectrum {
  readonly quantity: 'spectrum';
  readonly startNm: Nanometres;
  readonly stepNm: Nanometres;
  /** Reflectance factors; as they stand in the file where the scale is undeclared. */
  readonly values: readonly number[];
  /** The file does not say whether the values are fractions or per cent. */
  readonly scaleUndeclared?: true;
  readonly bandpassCorrected?: boolean;
}

export interface FoundCielab {
  readonly quantity: 'cielab';
  readonly lab: Lab;
  readonly light?: string;
  readonly observer?: ObserverDegrees;
}

/** Trial minus standard. */
export interface FoundDifference {
  readonly quantity: 'difference';
  readonly difference: Lab;
  readonly light?: string;
  readonly observer?: ObserverDegrees;
  /** Name of the master as the file has it. */
  readonly master?: string;
}

export interface FoundGloss {
  readonly quantity: 'gloss';
  readonly angle: GlossAngle;
  readonly gloss: GlossUnits;
  readonly haze?: number;
  readonly direction?: 'along' | 'across';
}

export interface FoundTexture {
  readonly quantity: 'texture';
  readonly parameters: ArealParameters;
  readonly visible?: ContrastRecord;
}

export type FoundData = FoundSpectrum | FoundCielab | FoundDifference | FoundGloss | FoundTexture;

/** One reading of a file with all that the file says about where it belongs. Names are the file's own, not yet ids of a cabin. */
export interface ReadingRecord {
  /** What the file calls the reading. */
  readonly id?: string;
  readonly part?: string;
  readonly source?: string;
  readonly supplier?: string;
  readonly specimen: string;
  readonly kind?: SpecimenKind;
  readonly lot?: string;
  readonly stage?: string;
  readonly spot?: Spot;
  /** Named colour of a patterned surface. */
  readonly colour?: string;
  readonly rotationDeg?: Degrees;
  readonly averagedFrom?: number;
  readonly measuredAt?: string;
  /** Index into the set's conditions. */
  readonly conditions: number;
  readonly data: FoundData;
  /** What else the file says of this reading, by the file's own names. */
  readonly labels?: Readonly<Record<string, string>>;
  /** Number of the row, object or set in the file, from 1. */
  readonly row: number;
  /** Line of the text where it begins. */
  readonly line?: number;
}

export const questionTopics = ['scale', 'geometry', 'uv', 'aperture', 'instrument', 'light', 'observer', 'master', 'spots', 'averaged'] as const;
export type QuestionTopic = (typeof questionTopics)[number];

/** Something the file leaves open that is asked of the user and never guessed. */
export interface Question {
  /** `topic`, or `topic:index` for one of several conditions. */
  readonly id: string;
  readonly topic: QuestionTopic;
  readonly text: string;
  /** Readings cannot be taken over before it is answered. */
  readonly required: boolean;
  /** The words that may be answered; free text or a number where absent. */
  readonly choices?: readonly string[];
  /** Index of the conditions it is about. */
  readonly conditions?: number;
  /** How many readings it concerns. */
  readonly records: number;
  /** Line of the first of them. */
  readonly line?: number;
}

/** What every reader makes of a file: readings, lights, and what must still be asked. Plain JSON. */
export interface ReadingSet {
  readonly format: 'adjoin-readings';
  readonly version: 1;
  /** Id of the reader. */
  readonly reader: string;
  /** Name of the file, without its folder. */
  readonly file?: string;
  readonly sha256?: string;
  /** Day or time at which the file says it was made. */
  readonly created?: string;
  readonly conditions: readonly FoundConditions[];
  readonly records: readonly ReadingRecord[];
  readonly lights: readonly UserLight[];
  readonly questions: readonly Question[];
}
