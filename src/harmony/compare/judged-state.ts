import type { Cabin } from '../../cabin/cabin.ts';
import type { IsoDate } from '../../quantities.ts';
import type { Judgement } from '../judgement.ts';

/** A cabin as it was judged once: one side of a comparison. */
export interface JudgedState {
  readonly cabin: Cabin;
  readonly judgement: Judgement;
}

/** What tells one judged state from another, as printed. */
export interface StateName {
  readonly id: string;
  readonly name: string;
  readonly colourway?: string;
  readonly phase?: string;
  readonly revision?: string;
  readonly stage: string;
  readonly asOf: IsoDate;
  readonly ruleBook: string;
  readonly decisionRule: string;
  readonly observer: number;
}

export const stateName = ({ cabin, judgement }: JudgedState): StateName => ({
  id: cabin.id, name: cabin.name,
  ...(cabin.colourway === undefined ? {} : { colourway: cabin.colourway }),
  ...(cabin.phase === undefined ? {} : { phase: cabin.phase }),
  ...(cabin.revision === undefined ? {} : { revision: cabin.revision }),
  stage: judgement.stage, asOf: judgement.asOf, ruleBook: judgement.ruleBook, decisionRule: judgement.decisionRule, observer: judgement.observer,
});

/** Why the figures of two states are not of one measure; empty where they are. */
export function unlikeStates(before: StateName, after: StateName): readonly string[] {
  const notes: string[] = [];
  if (before.ruleBook !== after.ruleBook) notes.push(`The two were judged by different rule books, ${before.ruleBook} and ${after.ruleBook}: their limits may differ.`);
  if (before.decisionRule !== after.decisionRule) notes.push('The two were judged by different decision rules: the same value may have another verdict.');
  if (before.observer !== after.observer) notes.push(`The two were judged for different observers, ${before.observer}° and ${after.observer}°: their values are not of one measure.`);
  if (before.asOf !== after.asOf) notes.push(`The two were judged as of different days, ${before.asOf} and ${after.asOf}: a decision may have begun or ended between them.`);
  return notes;
}
