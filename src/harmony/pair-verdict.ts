import type { Joint } from '../cabin/cabin.ts';
import { conditionsCheck } from './checks/conditions.ts';
import { glossCheck } from './checks/gloss.ts';
import type { JointInput } from './checks/joint-input.ts';
import { metamerismCheck } from './checks/metamerism.ts';
import { nearMissCheck } from './checks/near-miss.ts';
import { textureCheck } from './checks/texture.ts';
import { applyDecisions } from './decisions.ts';
import type { JudgeContext } from './judge-context.ts';
import { counts, jointInput, totalProbability, worstPair, worstCheck, worstVerdict } from './judge-joint.ts';
import type { JointResult } from './judgement.ts';
import type { PartBasis } from './part-basis.ts';

/** What a plan needs to know of a joint under given picks. */
export type PairVerdict = Pick<JointResult, 'verdict' | 'accepted' | 'limitUse' | 'totalProbability'>;

/**
 * The verdict of one joint by the ordinary checks, without what only explains it: lights that are shown, the spots that would
 * decide, lots and sentences. Same verdict, limit use and total probability as `judgeJoint()` on the same bases.
 */
export function pairVerdict(context: JudgeContext, joint: Joint, bases: ReadonlyMap<string, PartBasis>): PairVerdict {
  const { input, pairing } = jointInput(context, joint, bases);
  const lean = withoutShown(input);
  const colour = worstPair(lean, pairing);
  const checks = [conditionsCheck(lean), colour, nearMissCheck(lean), metamerism(context, input, colour, pairing), glossCheck(lean), textureCheck(lean)]
    .filter((check) => check !== undefined)
    .map((check) => applyDecisions(check, joint.decisions ?? [], context.asOf))
    .filter(counts);
  const verdict = worstVerdict(checks.map((check) => check.verdict));
  const uses = checks.map((check) => check.limitUse).filter((use) => use !== undefined);
  return {
    verdict,
    accepted: verdict === 'clashes' && checks.every((check) => check.verdict !== 'clashes' || check.accepted === true),
    limitUse: worstCheck(checks)?.limitUse ?? (uses.length > 0 ? Math.max(...uses) : undefined),
    totalProbability: totalProbability(lean, checks),
  };
}

/** The same question without the lights that are shown only, and without a search for the spots that would decide. */
function withoutShown(input: JointInput): JointInput {
  const { rule, book } = input;
  return {
    ...input,
    rule: { ...rule, colour: { ...rule.colour, lights: rule.colour.lights.filter((light) => light.standing === 'required') } },
    book: { ...book, assumed: { ...book.assumed, maximumSpots: 0 } },
  };
}

function metamerism(context: JudgeContext, input: JointInput, colour: ReturnType<typeof worstPair>, pairing: ReturnType<typeof jointInput>['pairing']) {
  if (input.rule.metamerism.standing === 'advisory') return undefined;
  const [standard, trial] = pairing.groups?.map((group) => context.sample(group, [])?.spectrum) ?? [];
  return metamerismCheck(input, [standard, trial], colour, context.light);
}
