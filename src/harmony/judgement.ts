import type { CheckName, ColourIntent, JointKind, SurfaceIntent, VisualResult } from '../cabin/cabin.ts';
import type { Issue } from '../issue.ts';
import type { IsoDate, Lab, Xyz } from '../quantities.ts';
import type { ArealParameters, GeometryClass, GlossAngle, ObserverDegrees } from '../readings/reading.ts';
import type { Standing } from '../rules/rule-book.ts';

export type Verdict = 'holds' | 'open' | 'clashes';
export type CheckVerdict = Verdict | 'not applicable' | 'no data';

/** Why a check is open; `measurable` causes name the number of spots that would decide. */
export type OpenCause =
  | 'too few spots' | 'instruments disagree' | 'spread of the part' | 'conditions' | 'on the limit' | 'missing data' | 'judged by eye';

/** One light's part of a colour check. Differences are trial minus standard. */
export interface LightResult {
  readonly light: string;
  readonly observer: ObserverDegrees;
  readonly standing: 'required' | 'shown';
  /** Value of the rule's formula. */
  readonly value: number;
  /** Limit on that value under this light; undefined where the intent limits something else, or nothing. */
  readonly limit: number | undefined;
  /** Largest use of all that is limited under this light; 0 where nothing is. */
  readonly limitUse: number;
  /** Standard uncertainty of the value, in its own units. */
  readonly uncertainty: number;
  readonly withinProbability: number;
  readonly difference: { readonly dL: number; readonly da: number; readonly db: number; readonly dC: number; readonly dH: number };
  /** lighter/darker, redder/greener, yellower/bluer, more/less chromatic: the words that apply. */
  readonly words: readonly string[];
  readonly standard: Lab;
  readonly trial: Lab;
  /** Everything that is limited under this light beside or instead of the difference, in the order of the rule. */
  readonly criteria: readonly CriterionResult[];
}

/** One limited quantity under one light. */
export interface CriterionResult {
  /** `ΔE`, `dL*`, `dC*` and so on. */
  readonly name: string;
  readonly value: number;
  readonly min?: number;
  readonly max?: number;
  readonly limitUse: number;
  readonly uncertainty: number;
  readonly withinProbability: number;
}

export interface CheckResult {
  readonly check: CheckName;
  /** Text that names what was compared where a check occurs more than once, for example the cap's id. */
  readonly subject?: string;
  readonly standing: Standing;
  readonly verdict: CheckVerdict;
  /** Verdict by value against limit alone. */
  readonly simple: CheckVerdict;
  readonly light?: string;
  readonly formula?: string;
  /** What `value` is, where the formula does not say it: `dL*`, `Sa ratio`. */
  readonly criterion?: string;
  /** GU, CIELAB units, ratio ...: as printed after the value. */
  readonly unit: string;
  readonly value?: number;
  readonly limit?: number;
  /** The limit is a lower one: the value must be at least that. */
  readonly atLeast?: boolean;
  /** value / limit, 1 at the limit; per cent only in print. */
  readonly limitUse?: number;
  readonly uncertainty?: number;
  readonly withinProbability?: number;
  readonly accepted?: boolean;
  readonly acceptedUntil?: IsoDate;
  /** Why a decision on record does not cover this check any more. */
  readonly decisionVoid?: string;
  readonly cause?: OpenCause;
  readonly spotsNeeded?: number;
  /** Whose spots `spotsNeeded` counts in a check of a part by itself; in a check of a joint it is those of each side. */
  readonly spotsOn?: 'part' | 'part and master';
  /** Value that is shown but never counted: unlike conditions, advisory. */
  readonly indicative?: boolean;
  readonly sentence: string;
  readonly basis: string;
  readonly lights: readonly LightResult[];
  /** Required lights for which a side has no data. */
  readonly missingLights?: readonly string[];
  readonly cautions: readonly string[];
  /** What the relaxing factors of the book do here, with and without each; absent where none acts or would act. */
  readonly factorNotes?: readonly string[];
}

/** What one side of a joint was judged on. */
export interface JudgedOn {
  readonly part: string;
  readonly source: string;
  readonly specimen: string;
  readonly kind: string;
  readonly lot?: string;
  readonly spots: number;
  readonly instrument: string;
  readonly geometry: GeometryClass;
  /** Readings were borrowed from this mirror part. */
  readonly borrowedFrom?: string;
}

export interface JointResult {
  readonly id: string;
  readonly parts: readonly [string, string];
  readonly standard: string;
  readonly trial: string;
  readonly kind: JointKind;
  readonly intent: { readonly colour: ColourIntent; readonly gloss: SurfaceIntent; readonly texture: SurfaceIntent };
  readonly rule: string;
  readonly ruleWhy: string;
  readonly verdict: Verdict;
  readonly simple: Verdict;
  /** All clashing required checks are covered by decisions in force. */
  readonly accepted: boolean;
  readonly acceptedUntil?: IsoDate;
  readonly limitUse: number | undefined;
  readonly totalProbability: number;
  readonly coverage: { readonly withData: number; readonly wanted: number };
  readonly sentence: string;
  readonly judgedOn: readonly JudgedOn[];
  readonly checks: readonly CheckResult[];
  readonly visual: { readonly result: VisualResult; readonly date: IsoDate; readonly agrees: boolean } | undefined;
  /** With three or more lots a side: probability that a random pair of parts holds. */
  readonly lotProbability?: number;
}

/** What a part looks like by its readings: what the map, the strips and the report draw. */
export interface PartAppearance {
  readonly part: string;
  readonly source: string;
  readonly specimen: string | undefined;
  readonly borrowedFrom?: string;
  /** Mean spectrum of the group judged first, if there is one. */
  readonly spectrum?: { readonly startNm: number; readonly stepNm: number; readonly values: readonly number[] };
  /** Colour where there is no spectrum: under its own light only. */
  readonly cielab?: { readonly lab: Lab; readonly light: string; readonly observer: ObserverDegrees };
  readonly geometry?: GeometryClass;
  readonly colourSpots: number;
  readonly gloss: readonly { readonly angle: GlossAngle; readonly mean: number; readonly sd: number; readonly spots: number; readonly haze?: number }[];
  readonly texture?: ArealParameters;
}

export interface PartResult {
  readonly id: string;
  readonly appearance: PartAppearance;
  readonly checks: readonly CheckResult[];
}

/** The two ends of a run against each other in colour, as parts that are seen together. */
export interface RunResult {
  readonly id?: string;
  readonly parts: readonly string[];
  /** Value, limit and use of the leading criterion; undefined where the ends have nothing to compare, `limitUse` also where the value is indicative. */
  readonly value?: number;
  readonly limit?: number;
  readonly limitUse?: number;
  readonly uncertainty?: number;
  readonly withinProbability?: number;
  readonly light?: string;
  readonly formula: string;
  /** What the value is, where it is not that of the formula: `dL*`. */
  readonly criterion?: string;
  readonly verdict: Verdict;
  /** Verdict by value against limit alone. */
  readonly simple: Verdict;
  readonly cause?: OpenCause;
  readonly spotsNeeded?: number;
  /** Value that is shown but never counted: unlike conditions. */
  readonly indicative?: boolean;
  /** Required lights for which an end has no data. */
  readonly missingLights?: readonly string[];
  readonly cautions: readonly string[];
  readonly sentence: string;
  /** The leading criterion of every part against the first one, in order, under that light; undefined where it cannot be compared. */
  readonly steps: readonly (number | undefined)[];
}

/** One line of the sheet that asks a supplier for readings. */
export interface MeasurementRequest {
  /** Joint that the readings decide; undefined where they decide a check of the part by itself. */
  readonly joint?: string;
  readonly check: CheckName;
  /** Which of a part's checks: `colour` or `gloss` of its master, or the id of a cap. */
  readonly subject?: string;
  readonly quantity: 'colour' | 'gloss' | 'texture';
  readonly supplier: string;
  readonly part: string;
  readonly source: string;
  readonly specimen: string;
  /** New spots wanted in all, those there are included. */
  readonly spots: number;
  readonly have: number;
  readonly instrument: string;
  readonly geometry: string;
  /** Chance that the check is decided with these readings; undefined where there is nothing to reckon it from. */
  readonly chance: number | undefined;
  readonly reason: string;
}

export interface Summary {
  readonly holds: number;
  /** Those among the holding joints of which nothing is judged, all that is wanted of them being free. */
  readonly nothingJudged: number;
  readonly open: number;
  /** Clashes with no decision in force; `accepted` counts the others. */
  readonly clashes: number;
  readonly accepted: number;
  readonly expectedWrongHolds: number;
  readonly coverage: number;
  readonly visual: { readonly joints: number; readonly agree: number; readonly differ: readonly string[] };
}

/** The whole result of judging one cabin by one rule book. */
export interface Judgement {
  readonly cabin: string;
  readonly stage: string;
  readonly asOf: IsoDate;
  readonly ruleBook: string;
  readonly decisionRule: string;
  readonly observer: ObserverDegrees;
  readonly lights: readonly string[];
  readonly summary: Summary;
  readonly joints: readonly JointResult[];
  readonly parts: readonly PartResult[];
  readonly runs: readonly RunResult[];
  readonly requests: readonly MeasurementRequest[];
  readonly issues: readonly Issue[];
}

/** White and tristimulus values of a part under one light. */
export interface AppearanceUnderLight {
  readonly xyz: Xyz;
  readonly white: Xyz;
  readonly lab: Lab;
}
