import type { Degrees, IsoDate, Lab, Lux, Micrometres, Millimetres, Nanometres } from '../quantities.ts';
import type { Conditions, Instrument, Reading } from '../readings/reading.ts';

/** The eleven materials of the default books; a rule book may add its own, so the field is a string. */
export const materials = ['moulded', 'soft-skin', 'leather', 'textile', 'carpet', 'painted', 'gloss-black', 'metallised', 'decor-film', 'headliner', 'thread'] as const;
export type Material = string;

export const surfaces = ['solid', 'melange', 'patterned', 'effect', 'translucent'] as const;
export type Surface = (typeof surfaces)[number];

export const jointKinds = ['edge', 'gap', 'step', 'seam', 'sightline'] as const;
export type JointKind = (typeof jointKinds)[number];

export const colourIntents = ['match', 'tone-step', 'contrast', 'free'] as const;
export type ColourIntent = (typeof colourIntents)[number];
export const surfaceIntents = ['match', 'contrast', 'free'] as const;
export type SurfaceIntent = (typeof surfaceIntents)[number];
export interface Intent {
  readonly colour?: ColourIntent;
  readonly gloss?: SurfaceIntent;
  readonly texture?: SurfaceIntent;
}

export const checkNames = ['colour', 'metamerism', 'gloss', 'texture', 'near-miss', 'conditions', 'master', 'cap'] as const;
export type CheckName = (typeof checkNames)[number];

/** Point on the cabin map, millimetres of the unfolded cabin, y down. */
export type MapPoint = readonly [x: Millimetres, y: Millimetres];

export interface Lot {
  readonly id: string;
  readonly resin?: string;
  readonly paint?: string;
  readonly dye?: string;
  readonly hide?: string;
  readonly roll?: string;
}

/** A named stage: `new` where there is none. */
export interface Exposure {
  readonly stage: string;
  readonly method?: string;
  readonly doseKjPerM2?: number;
  readonly hours?: number;
}

export const specimenKinds = ['plaque', 'tool part', 'series part', 'master', 'boundary sample'] as const;
export type SpecimenKind = (typeof specimenKinds)[number];

/** One physical thing that was measured. */
export interface Specimen {
  readonly id: string;
  readonly kind: SpecimenKind;
  readonly lot?: Lot;
  readonly tool?: string;
  readonly cavity?: string;
  readonly producedOn?: IsoDate;
  readonly phase?: string;
  readonly exposure?: Exposure;
  readonly parentMaster?: string;
  readonly issue?: string;
  readonly expires?: IsoDate;
  readonly remeasureOn?: IsoDate;
  readonly note?: string;
  readonly readings: readonly Reading[];
}

export interface Grain {
  readonly id: string;
  readonly depthUm?: Micrometres;
  readonly vdiClass?: number;
}

/** A colour of a patterned surface with its share of the area, 0..1. */
export interface NamedColour {
  readonly name: string;
  readonly areaShare: number;
  readonly lab?: Lab;
}

export const sourceStatuses = ['candidate', 'approved', 'series'] as const;
export type SourceStatus = (typeof sourceStatuses)[number];

/** How far something can be taken from where it is, up or down on each axis: CIELAB units under D65 and gloss units, 0 or more. */
export interface Reach {
  readonly L: number;
  readonly a: number;
  readonly b: number;
  readonly gloss: number;
}

/** What a mend has to keep to at one part. */
export interface PartMend {
  /** A mend leaves the part as it is, though another source may be chosen for it. */
  readonly locked?: boolean;
  /** What a change of it costs in all, in place of the set-up and the tool that its source states. */
  readonly cost?: number;
  /** In place of the reach of its material. */
  readonly reach?: Reach;
}

/** What plans of the cabin go by, beside what its parts and sources state. */
export interface Planning {
  /** Reach by material, in place of the one that is assumed. */
  readonly reach?: Readonly<Record<string, Reach>>;
  /** Seconds that a plan may take as a whole. */
  readonly timeLimitS?: number;
  /** ISO 4217 code of the money that plans are reckoned in. */
  readonly currency?: string;
  /** What one unit of another currency is worth in that money, by its ISO 4217 code. */
  readonly rates?: Readonly<Record<string, number>>;
}

/** One price of a piece from a yearly volume upward. */
export interface VolumePrice {
  readonly fromVolume: number;
  readonly piecePrice: number;
}

/** One supplier's version of a part. */
export interface Source {
  readonly id: string;
  readonly supplier: string;
  readonly plant?: string;
  readonly material: Material;
  readonly surface: Surface;
  readonly grain?: Grain;
  /** Polymer of the outermost layer, that of a lacquer where there is one: PP, ABS, PC and so on. */
  readonly polymer?: string;
  /** Refractive index of the outermost layer at 589 nm; it goes before that of the polymer. */
  readonly refractiveIndex?: number;
  readonly namedColours?: readonly NamedColour[];
  readonly status: SourceStatus;
  /** Share of the volume, 0..1. */
  readonly share?: number;
  readonly piecePrice?: number;
  readonly volumePrices?: readonly VolumePrice[];
  /** Freight, packing and insurance of one piece to the line, and duty as a share of its price. */
  readonly freightPerPiece?: number;
  readonly dutyShare?: number;
  readonly toolCost?: number;
  readonly setupCost?: number;
  readonly currency?: string;
  readonly leadWeeks?: number;
  readonly tool?: string;
  readonly cavities?: number;
  /** Explicit choice of the specimen that stands for this source, by stage. */
  readonly standsBy?: Readonly<Record<string, string>>;
  readonly specimens: readonly Specimen[];
  readonly note?: string;
}

/** What a part is held to, beside its neighbours. Limits left out come from the rule book's class of the material. */
export interface Target {
  /** Id of a master in the cabin. */
  readonly master: string;
  readonly colourLimit?: number;
  readonly glossLimit?: number;
}

export const hands = ['left', 'right', 'none'] as const;
export type Hand = (typeof hands)[number];

/** One visible face: one material, grain and colour. */
export interface Part {
  readonly id: string;
  readonly name: string;
  readonly partNumber?: string;
  readonly revision?: string;
  readonly zone: string;
  /** Polygon on the cabin map; an open polyline for thread. */
  readonly outline?: readonly MapPoint[];
  readonly hand?: Hand;
  readonly mirrorOf?: string;
  /** Faces bought together: one supplier serves a module. */
  readonly module?: string;
  /** Carry-over part: plans leave it as it is. */
  readonly frozen?: boolean;
  readonly mend?: PartMend;
  /** Weight of what a customer sees, 0..1; 1 where absent. */
  readonly visibility?: number;
  readonly flatAreaMm?: Millimetres;
  readonly curvatureRadiusMm?: Millimetres;
  readonly target?: Target;
  /** Id of the source that the part stands by; the first source where absent. */
  readonly source?: string;
  readonly sources: readonly Source[];
  readonly note?: string;
}

export interface Decision {
  readonly id: string;
  readonly check: CheckName;
  readonly reason: string;
  readonly role: string;
  readonly date: IsoDate;
  readonly expires: IsoDate;
  /** The value that was agreed; a worse one voids the decision. */
  readonly value: number;
  /** The light it was agreed under; another worst light voids the decision. */
  readonly light?: string;
  /** What `value` is where it is not the check's own difference: `dL*`, `20°`, `Sa ratio`; another worst criterion voids the decision. */
  readonly criterion?: string;
}

export const visualResults = ['match', 'acceptable', 'clash'] as const;
export type VisualResult = (typeof visualResults)[number];

/** What the light booth said of a joint. */
export interface VisualRecord {
  readonly date: IsoDate;
  readonly light: string;
  readonly illuminanceLx?: Lux;
  readonly observers: { readonly count: number; readonly roles: readonly string[] };
  readonly result: VisualResult;
  readonly rating?: { readonly scale: 'ISO 3668' | 'ISO 105-A02'; readonly grade: number };
  readonly note?: string;
}

/** A change of one side of a joint: CIELAB under D65 in the observer of the rule book, and gloss units at every angle that was read. */
export interface ProposedShift {
  readonly part: string;
  readonly dL?: number;
  readonly da?: number;
  readonly db?: number;
  readonly dGloss?: number;
}

/** A change that was tried on a joint and is kept for talks; it changes no verdict. */
export interface Proposal {
  readonly id: string;
  readonly date: IsoDate;
  readonly shifts?: readonly ProposedShift[];
  readonly gapMm?: Millimetres;
  readonly viewMm?: Millimetres;
  readonly note?: string;
}

/** Two parts that meet, or are only seen together (`sightline`). */
export interface Joint {
  readonly id: string;
  readonly parts: readonly [string, string];
  readonly kind: JointKind;
  readonly gapMm?: Millimetres;
  readonly stepMm?: Millimetres;
  readonly lengthMm?: Millimetres;
  readonly viewMm?: Millimetres;
  readonly tiltDeg?: Degrees;
  readonly weight?: number;
  /** Which of the two parts is the standard of the ordered formulas and of the signed words. */
  readonly reference?: string;
  readonly intent?: Intent;
  /** Where the joint runs on the map; computed from the outlines where absent. */
  readonly path?: readonly MapPoint[];
  readonly visualRecords?: readonly VisualRecord[];
  readonly decisions?: readonly Decision[];
  readonly proposals?: readonly Proposal[];
  readonly note?: string;
}

/** A path of parts along which drift is watched. */
export interface Run {
  readonly id: string;
  readonly name?: string;
  readonly parts: readonly string[];
}

/** A zone's own limit on its parts. */
export interface Cap {
  readonly id: string;
  readonly quantity: 'gloss' | 'lightness';
  readonly max: number;
  /** Gloss caps: the angle. */
  readonly angle?: 20 | 60 | 85;
  readonly basis: string;
  readonly caution?: string;
}

export interface Zone {
  readonly id: string;
  readonly name: string;
  readonly caps?: readonly Cap[];
}

export interface Supplier {
  readonly id: string;
  readonly name: string;
  readonly setupCost?: number;
}

/** A user's own light as a spectral power distribution, relative, evenly spaced. */
export interface UserLight {
  readonly id: string;
  readonly name: string;
  readonly startNm: Nanometres;
  readonly stepNm: Nanometres;
  readonly values: readonly number[];
}

export interface SourceFile {
  readonly id: string;
  readonly name: string;
  readonly sha256: string;
}

/** One tile of a set: a stable surface that several instruments read. */
export interface Tile {
  readonly id: string;
  readonly name?: string;
  /** Absolute readings, each under the conditions of the instrument that took it. */
  readonly readings: readonly Reading[];
}

/** Tiles that were measured on several instruments, to learn how well these agree. */
export interface TileSet {
  readonly id: string;
  readonly name: string;
  readonly note?: string;
  readonly tiles: readonly Tile[];
}

/** The document: one trim level in one colourway at one build phase. Plain immutable JSON. */
export interface Cabin {
  readonly format: 'adjoin-cabin';
  readonly version: 1;
  readonly id: string;
  readonly name: string;
  readonly trimLevel?: string;
  readonly colourway?: string;
  readonly phase?: string;
  readonly revision?: string;
  /** The day that calibration, expiry and decisions are judged on; never a clock. */
  readonly asOf: IsoDate;
  /** Stage that is judged where none is asked for: `new`. */
  readonly stage?: string;
  readonly note?: string;
  /** Yearly volume, for prices. */
  readonly volume?: number;
  readonly planning?: Planning;
  readonly zones: readonly Zone[];
  readonly suppliers: readonly Supplier[];
  readonly instruments: readonly Instrument[];
  readonly conditions: readonly Conditions[];
  readonly files?: readonly SourceFile[];
  readonly lights?: readonly UserLight[];
  /** Recorded masters: specimens of kind `master`. */
  readonly masters?: readonly Specimen[];
  /** Shared tiles that instruments were compared on. */
  readonly tileSets?: readonly TileSet[];
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly runs?: readonly Run[];
  /** Id of a built-in rule book, or a rule book carried in the document (checked by the rules layer). */
  readonly ruleBook?: string | object;
}
