import type { JudgeContext } from '../judge-context.ts';
import type { CheckResult } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { masterColour } from './master-colour.ts';
import { masterGloss } from './master-gloss.ts';

/** A part against its recorded master: colour and gloss, each with its own limit; empty where the part has no target. */
export function masterChecks(context: JudgeContext, basis: PartBasis): readonly CheckResult[] {
  if (basis.part.target === undefined) return [];
  return [masterColour(context, basis), masterGloss(context, basis)].filter((check) => check !== undefined);
}
