import type { Proposal } from '../../cabin/cabin.ts';
import type { JudgedCabin } from '../../harmony/judge.ts';
import type { Verdict } from '../../harmony/judgement.ts';
import { compareCabins } from '../../harmony/compare/index.ts';
import { rejudge } from '../../harmony/rejudge.ts';
import { proposedCabin } from '../../plan/proposal/proposed-cabin.ts';

/** A proposal on record with what the ordinary check says of the cabin if it were done. */
export interface ProposedChange {
  readonly joint: string;
  readonly proposal: Proposal;
  readonly verdict: Verdict;
  readonly limitUse?: number;
  readonly sentence: string;
  /** Ids of joints, this one included, that clash without a decision only then, and those that clash no more. */
  readonly nowClashing: readonly string[];
  readonly noLongerClashing: readonly string[];
  /** Parts that borrow the same readings and so change with it. */
  readonly together: readonly string[];
}

/** Every proposal of the cabin, judged one by one, all else as it is. */
export function proposedChanges(judged: JudgedCabin): readonly ProposedChange[] {
  const { context: { cabin, book }, judgement } = judged;
  const { stage, asOf } = judgement;
  return cabin.joints.flatMap((joint) => (joint.proposals ?? []).flatMap((proposal): ProposedChange[] => {
    const proposed = proposedCabin(cabin, joint.id, proposal, { stage, observer: book.observer });
    const after = rejudge(judged, proposed.cabin, { stage, asOf }).judgement;
    const result = after.joints.find(({ id }) => id === joint.id);
    if (result === undefined) return [];
    const { nowClashing, noLongerClashing } = compareCabins({ cabin, judgement }, { cabin: proposed.cabin, judgement: after }).summary;
    return [{
      joint: joint.id, proposal, verdict: result.verdict, sentence: result.sentence, nowClashing, noLongerClashing, together: proposed.together,
      ...(result.limitUse === undefined ? {} : { limitUse: result.limitUse }),
    }];
  }));
}
