import type { DifferenceFormula } from '../difference-formula.ts';
import type { Lab } from '../../quantities.ts';

/** A colour pair whose difference has been published. */
export interface DifferenceExample {
  readonly formula: DifferenceFormula;
  readonly source: string;
  readonly standard: Lab;
  readonly trial: Lab;
  readonly expected: number;
  /** Decimals printed. */
  readonly decimals: number;
}
