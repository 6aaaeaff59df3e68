import type { DifferenceFormula } from '../difference-formula.ts';
import type { Lab } from '../../quantities.ts';
import type { ValueOrigin } from '../value-origin.ts';

/** A colour pair whose difference has been published. */
export interface DifferenceExample {
  readonly formula: DifferenceFormula;
  readonly origin: ValueOrigin;
  readonly standard: Lab;
  readonly trial: Lab;
  readonly expected: number;
  /** Decimals printed. */
  readonly decimals: number;
}
