import type { DifferenceFormula } from '../colour/difference-formula.ts';
import type { Lab } from '../quantities.ts';

export type DifferenceComponent = 'dL' | 'da' | 'db' | 'dC' | 'dH';

/** One thing that is asked of a pair of colours under one light. */
export type Criterion =
  | {
    readonly kind: 'difference';
    readonly formula: DifferenceFormula;
    readonly atMost?: number;
    readonly atLeast?: number;
    /** Formulas that depend on which side is the reference: take the larger of both directions. */
    readonly stricterDirection?: boolean;
  }
  | {
    readonly kind: 'component';
    readonly component: DifferenceComponent;
    readonly min?: number;
    readonly max?: number;
    /** The limits apply to the size of the component, its sign left aside. */
    readonly absolute?: boolean;
  };

/** The pair under one light, by its mean colours, and all that is asked of it there. */
export interface StackedLight {
  readonly standard: Lab;
  readonly trial: Lab;
  readonly criteria: readonly Criterion[];
}

/** "Everything asked for holds under every light", for differences that vary together. */
export interface StackedEvent {
  readonly lights: readonly StackedLight[];
  /** Row-major 3K x 3K covariance of the stacked differences trial - standard, lights in the same order; may be singular. */
  readonly covariance: ArrayLike<number>;
  /** Draws, a power of two 4..32768; where absent 1024, and 8192 where those leave the answer between 0.015 and 0.985. */
  readonly points?: number;
  readonly seed?: number;
}

export interface ComponentLimit {
  readonly component: DifferenceComponent;
  readonly min?: number;
  readonly max?: number;
}

/** A match: the difference is at most the limit and every limited component inside its range. */
export const matchCriteria = (
  formula: DifferenceFormula, limit: number, components: readonly ComponentLimit[] = [], stricterDirection = false,
): Criterion[] => [
  { kind: 'difference', formula, atMost: limit, stricterDirection },
  ...components.map(({ component, min, max }): Criterion => ({ kind: 'component', component, min, max })),
];

/** A contrast: the difference is at least `minimum`. */
export const contrastCriteria = (formula: DifferenceFormula, minimum: number): Criterion[] =>
  [{ kind: 'difference', formula, atLeast: minimum }];

/** A tone step: lightness apart by enough and not by too much, hue kept. CIELAB units. */
export const toneStepCriteria = (step: { readonly minDL: number; readonly maxDL: number; readonly maxDH: number }): Criterion[] => [
  { kind: 'component', component: 'dL', min: step.minDL, max: step.maxDL, absolute: true },
  { kind: 'component', component: 'dH', max: step.maxDH, absolute: true },
];
