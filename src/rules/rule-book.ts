import type { Cap, CheckName, ColourIntent, Intent, JointKind, Material, SurfaceIntent } from '../cabin/cabin.ts';
import type { FormulaName } from '../colour/difference-formula.ts';
import type { GlossAngle, GeometryClass, ObserverDegrees } from '../readings/reading.ts';

/** A limit or factor: a number, or a mathjs expression over the documented variables. */
export type Expression = number | string;

/** Where a value comes from: a published source in full, or `common practice, no source`, or `assumption, no source`. */
export type Basis = string;

export type Standing = 'required' | 'if-measured' | 'advisory';

export interface LightRule {
  /** A light of the one list, or a user's own light of the cabin. */
  readonly light: string;
  /** Factor on the colour limit under this light. */
  readonly factor: number;
  /** `shown` lights are computed and printed but never judged. */
  readonly standing: 'required' | 'shown';
  readonly basis: Basis;
}

/** A limit on one signed or absolute component of the difference, trial minus standard, under every required light. */
export interface ComponentRule {
  readonly component: 'dL' | 'da' | 'db' | 'dC' | 'dH';
  /** Smallest and largest value allowed; one of them may be absent. */
  readonly min?: Expression;
  readonly max?: Expression;
  /** Applies only where the mean L* of the pair is below this. */
  readonly belowL?: number;
  readonly basis: Basis;
}

/** How two hazes may differ, in the unit that they were read in; judged at 20 degrees, where both sides have it. */
export interface HazeLimit {
  readonly limit: number;
  readonly basis: Basis;
}

/** How two glosses may differ. */
export type GlossRule =
  | { readonly kind: 'limit'; readonly limit: Expression; readonly angle: GlossAngle; readonly haze?: HazeLimit; readonly basis: Basis }
  /** Level rule: max(floor, share of mean GU60) up to `switchGu60`, above it `limit20` at 20 degrees. */
  | { readonly kind: 'level'; readonly floor: number; readonly share: number; readonly switchGu60: number; readonly limit20: number; readonly basis: Basis }
  | { readonly kind: 'not applicable'; readonly reason: string; readonly basis: Basis };

/** Values of a material class whose basis may differ from that of the row. */
export const materialValues = [
  'family', 'colourLimit', 'kL', 'lightnessCap', 'readingSd', 'glossSd', 'wanted', 'masterColourLimit', 'masterGlossLimit', 'advisory', 'sameGeometryOnly',
] as const;
export type MaterialValue = (typeof materialValues)[number];

/** Values of the book itself that carry no basis of their own. */
export const bookValues = ['observer', 'formula', 'geometryOrder', 'standing', 'kinds', 'defaultIntents'] as const;
export type BookValue = (typeof bookValues)[number];

/** One row of the book's table of materials. */
export interface MaterialClass {
  readonly material: Material;
  /** hard, skin, pile, shiny, or the book's own. */
  readonly family: string;
  /** Colour limit of a match between two parts of this material. */
  readonly colourLimit: number;
  readonly kL: number;
  /** Cap on abs(dL*) where the pair's mean L* is below `combination.lightnessCapBelowL`. */
  readonly lightnessCap?: number;
  readonly gloss: GlossRule;
  /** Assumed standard deviation of one reading in L*, a*, b*. */
  readonly readingSd: readonly [number, number, number];
  /** Assumed standard deviation of one gloss reading, GU. */
  readonly glossSd: number;
  readonly wanted: { readonly spots: number; readonly rotations?: number; readonly specimens?: number };
  /** Limits against the part's own master; without a gloss limit the class's gloss rule holds. */
  readonly masterColourLimit: number;
  readonly masterGlossLimit?: number;
  /** Colour of this material is advisory only, and free by default against any other material. */
  readonly advisory?: boolean;
  /** Readings are compared only where their geometries are the same by name, not by class alone. */
  readonly sameGeometryOnly?: boolean;
  /** Of every value of the row that `bases` does not name. */
  readonly basis: Basis;
  readonly bases?: Partial<Readonly<Record<MaterialValue, Basis>>>;
}

/** A rule for one unordered pair of materials, on top of what the classes give. The most specific one wins. */
export interface PairRule {
  readonly id: string;
  /** Two materials; `*` stands for any. */
  readonly pair: readonly [Material, Material];
  readonly intent?: ColourIntent;
  readonly kind?: JointKind;
  readonly zone?: string;
  readonly defaultIntent?: Intent;
  readonly colour?: {
    readonly formula?: FormulaName;
    readonly limit?: Expression;
    readonly kL?: Expression;
    readonly kC?: Expression;
    readonly kH?: Expression;
    readonly lights?: readonly LightRule[];
    readonly components?: readonly ComponentRule[];
  };
  readonly gloss?: GlossRule;
  readonly metamerismLimit?: Expression;
  readonly standing?: Partial<Record<CheckName, Standing>>;
  readonly basis: Basis;
}

export interface RuleBook {
  readonly format: 'adjoin-rules';
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly observer: ObserverDegrees;
  readonly formula: FormulaName;
  /** For CMC(l:c): the factors. */
  readonly cmc?: { readonly l: number; readonly c: number };
  readonly decision: { readonly rule: 'guarded' | 'simple'; readonly confidence: number; readonly basis: Basis };
  readonly geometryOrder: readonly GeometryClass[];
  readonly lights: readonly LightRule[];
  readonly standing: Readonly<Record<CheckName, Standing>>;
  readonly materials: readonly MaterialClass[];
  readonly combination: {
    /** Added to the larger of the two colour limits where the families differ. */
    readonly unlikeFamilyAllowance: number;
    /** The caps on dL* act where the pair's mean L* is below this; 35 where absent. */
    readonly lightnessCapBelowL?: number;
    readonly basis: Basis;
  };
  readonly assumed: {
    /** nu0: weight of the assumed covariance, as a number of readings. */
    readonly priorReadings: number;
    /** Agreement of an instrument with no agreement set: sd of L*, a*, b*. */
    readonly agreementSd: readonly [number, number, number];
    readonly agreementGlossSd: number;
    readonly textureRelativeSd: number;
    readonly textureAgreementRelativeSd: number;
    readonly correlation: { readonly sameSession: number; readonly sameInstrument: number; readonly different: number };
    readonly maximumSpots: number;
    readonly basis: Basis;
  };
  readonly texture: {
    readonly ratio: readonly [low: number, high: number];
    readonly strDifference: number;
    readonly vdiClass: number;
    readonly basis: Basis;
  };
  /** How textures are looked at, and what two of them may differ by for the eye. */
  readonly visibleTexture: {
    /** On the parts, in the booth or the cabin. */
    readonly illuminanceLx: number;
    /** Side of the square that the eye takes in of a part. */
    readonly fieldMm: number;
    /** Largest visible difference of a match, in threshold units. */
    readonly limit: Expression;
    readonly basis: Basis;
  };
  /** Opt-in kL from the visible texture of the smoother side; the class's kL stands where it is larger. */
  readonly textureLightness: { readonly enabled: boolean; readonly formula: Expression; readonly basis: Basis };
  readonly toneStep: { readonly minDL: number; readonly maxDL: number; readonly maxDH: number; readonly basis: Basis };
  readonly contrast: { readonly minDifference: number; readonly basis: Basis };
  readonly kinds: Readonly<Record<JointKind, number>>;
  /** Opt-in factor on the colour limit for a visible gap. */
  readonly gapFactor: { readonly enabled: boolean; readonly formula: Expression; readonly basis: Basis };
  readonly caps: readonly (Cap & { readonly zone: string })[];
  /** How many readings are wanted on which occasion, in words. */
  readonly readingsWanted?: readonly { readonly occasion: string; readonly wanted: string; readonly basis: Basis }[];
  readonly rules: readonly PairRule[];
  /** Bases of the values that have none beside them. */
  readonly bases?: Partial<Readonly<Record<BookValue, Basis>>>;
}

/** Variables that expressions may use; none depends on which side is called first. */
export interface RuleVariables {
  readonly gapMm: number;
  readonly viewMm: number;
  readonly gapArcmin: number;
  /** Visual angle of the smaller part at the viewing distance. */
  readonly fieldDeg: number;
  readonly lengthMm: number;
  readonly tiltDeg: number;
  readonly meanL: number;
  readonly meanC: number;
  readonly meanGloss: number;
  readonly minSa: number;
  readonly maxSa: number;
  readonly minSal: number;
  readonly maxSal: number;
  readonly minVisibleContrast: number;
  readonly maxVisibleContrast: number;
  readonly visibility: number;
}

/** The variables, and what the choice of the gloss angle needs beside them; expressions may not name it. */
export interface ResolvingVariables extends RuleVariables {
  /** Smaller gloss of the two parts at 60 degrees, GU; the mean stands in where absent. */
  readonly minGloss?: number;
}

/** What one side of a joint brings to the choice of the rule. */
export interface RuleSide {
  readonly material: Material;
  readonly surface: 'solid' | 'melange' | 'patterned' | 'effect' | 'translucent';
  /** A patterned surface whose colours are named with their shares of the area, so that they can be judged one by one. */
  readonly namedColours?: boolean;
  readonly grain?: string;
  readonly zone: string;
}

export interface ResolvedLight {
  readonly light: string;
  readonly limit: number;
  readonly standing: 'required' | 'shown';
  readonly basis: Basis;
}

export interface ResolvedComponent {
  readonly component: 'dL' | 'da' | 'db' | 'dC' | 'dH';
  readonly min?: number;
  readonly max?: number;
  readonly basis: Basis;
}

export type ResolvedGloss =
  | { readonly applicable: false; readonly reason: string; readonly basis: Basis }
  | { readonly applicable: true; readonly angle: GlossAngle; readonly limit: number; readonly haze?: HazeLimit; readonly standing: Standing; readonly basis: Basis };

/** A relaxing factor that a book has and may switch on, where it acts or would act on a joint. */
export interface OptionalFactor {
  readonly name: 'kL from texture' | 'visible gap';
  readonly enabled: boolean;
  /** kL, or the factor on the limit; undefined where it is switched on and a variable that it needs is not known. */
  readonly value: number | undefined;
  /** Names of the variables that are not known. */
  readonly unknown: readonly string[];
  readonly basis: Basis;
  /** The colour limits with this one factor switched the other way. */
  readonly otherwise?: ResolvedRule['colour'];
}

/** The rule that holds for one joint, all expressions evaluated. */
export interface ResolvedRule {
  /** `moulded + painted` where the classes decide, the id of the pair rule where one wins. */
  readonly id: string;
  /** One plain sentence: which rule won and why. */
  readonly why: string;
  readonly intent: { readonly colour: ColourIntent; readonly gloss: SurfaceIntent; readonly texture: SurfaceIntent };
  readonly colour: {
    readonly formula: FormulaName;
    readonly kL: number;
    readonly kC: number;
    readonly kH: number;
    /** kL where it comes from the texture of the smoother side. */
    readonly kLFromTexture?: number;
    readonly l: number;
    readonly c: number;
    /** Limit before the lights' factors. */
    readonly limit: number;
    readonly lights: readonly ResolvedLight[];
    readonly components: readonly ResolvedComponent[];
    readonly standing: Standing;
    /** The colour cannot be judged by instrument: why, and what to do instead. */
    readonly notJudged?: string;
    /** `by eye`: a surface that instruments do not judge; `no rule`: the book has no usable limit for it here. */
    readonly notJudgedKind?: 'by eye' | 'no rule';
    /** Readings are compared only where their geometries are the same by name. */
    readonly sameGeometryOnly?: boolean;
    readonly toneStep: RuleBook['toneStep'];
    readonly contrast: RuleBook['contrast'];
    readonly basis: Basis;
  };
  readonly gloss: ResolvedGloss;
  readonly texture: RuleBook['texture'] & {
    readonly standing: Standing;
    /** `limit` is absent where a variable that it needs is not known. */
    readonly visible: { readonly illuminanceLx: number; readonly fieldMm: number; readonly limit?: number; readonly basis: Basis };
  };
  readonly metamerism: { readonly limit?: number; readonly standing: Standing };
  /** Standing of every check here: the book's, with what the winning rule changes. */
  readonly standing?: Readonly<Record<CheckName, Standing>>;
  readonly nearMiss: { readonly standing: Standing };
  readonly conditions: { readonly standing: Standing };
  /** Factors that were applied to the limit, in words, with their basis. */
  readonly factors: readonly { readonly name: string; readonly value: number; readonly basis: Basis }[];
  /** Factors that the book may switch on, those that act and those that would. */
  readonly optionalFactors: readonly OptionalFactor[];
}
