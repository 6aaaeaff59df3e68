import type { Hand, Joint, Lot, SourceStatus, SpecimenKind, Surface, Target, VolumePrice } from '../../../src/cabin/cabin.ts';
import type { Lab } from '../../../src/quantities.ts';
import type { Colouring } from '../physics/recipe.ts';

/** Which measuring session a specimen's colour comes from. */
export type SessionName = 'house' | 'yard' | 'sphere' | 'carpet-line' | 'tri-filter';

/** Texture of a grain as an areal profiler reports it, before the scatter of the spots. */
export interface GrainPlan {
  readonly id: string;
  readonly depthUm: number;
  readonly vdiClass?: number;
  readonly saUm: number;
  readonly salMm: number;
  readonly str: number;
}

export interface SpecimenPlan {
  readonly id: string;
  readonly kind: SpecimenKind;
  readonly lot?: Lot;
  readonly tool?: string;
  readonly cavity?: string;
  readonly producedOn: string;
  readonly session: SessionName;
  readonly spots: number;
  /** CIELAB (D65, 10 degree observer) that the session reports as the mean of the spots. */
  readonly lab: Lab;
  readonly gloss60: number;
  /** Sphere readings, specular included and excluded, beside the first session. */
  readonly sphereToo?: boolean;
  readonly exposure?: { readonly stage: string; readonly method: string; readonly doseKjPerM2: number };
}

export interface SourcePlan {
  readonly id: string;
  readonly supplier: string;
  readonly plant?: string;
  readonly material: string;
  readonly surface?: Surface;
  readonly grain?: GrainPlan;
  readonly colouring?: Colouring;
  readonly status: SourceStatus;
  readonly share?: number;
  readonly piecePrice: number;
  readonly volumePrices?: readonly VolumePrice[];
  readonly toolCost: number;
  readonly setupCost: number;
  readonly leadWeeks: number;
  readonly tool?: string;
  readonly cavities?: number;
  readonly namedColours?: readonly { readonly name: string; readonly areaShare: number; readonly lab: Lab }[];
  readonly note?: string;
  readonly specimens: readonly SpecimenPlan[];
}

export interface PartPlan {
  readonly id: string;
  readonly name: string;
  readonly zone: string;
  readonly hand?: Hand;
  readonly mirrorOf?: string;
  readonly module?: string;
  readonly frozen?: boolean;
  readonly visibility?: number;
  readonly curvatureRadiusMm?: number;
  readonly target?: Target;
  readonly note?: string;
  readonly sources: readonly SourcePlan[];
}

/** A master plaque and what it holds the parts to. */
export interface MasterPlan {
  readonly id: string;
  readonly name: string;
  readonly material: string;
  readonly grain?: GrainPlan;
  readonly lab: Lab;
  readonly gloss60: number;
  readonly issue: string;
}

export type JointPlan = Omit<Joint, 'lengthMm' | 'path'>;
