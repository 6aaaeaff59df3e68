import type { Cabin } from '../../cabin/cabin.ts';
import { judge } from '../../harmony/judge.ts';
import type { JudgeOptions } from '../../harmony/judge.ts';
import type { Summary, Verdict } from '../../harmony/judgement.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import type { PairJudge } from '../model/pair-judge.ts';
import type { Picks } from '../model/with-picks.ts';
import { withPicks } from '../model/with-picks.ts';

/** What the ordinary check says of a cabin with the picks made. */
export interface KeptPromise {
  /** Every joint has the verdict that the plan reckoned with. */
  readonly kept: boolean;
  readonly summary: Summary;
  readonly differing: readonly { readonly joint: string; readonly promised: Verdict; readonly judged: Verdict }[];
  /** Runs that drift out of their limit with these picks: the plan does not reckon with them. */
  readonly driftingRuns: number;
}

/** Judges the cabin with the picks made, by the ordinary check, and sets every verdict against the one the plan reckoned with. */
export function judgePromise(cabin: Cabin, book: RuleBook, picks: Picks, promised: PairJudge, options: JudgeOptions): KeptPromise {
  const judgement = judge(withPicks(cabin, picks), book, options);
  const differing = judgement.joints.flatMap((result, index) => {
    const joint = cabin.joints[index];
    const { verdict } = promised.at(joint, picks[joint.parts[0]], picks[joint.parts[1]]);
    return verdict === result.verdict ? [] : [{ joint: joint.id, promised: verdict, judged: result.verdict }];
  });
  return { kept: differing.length === 0, summary: judgement.summary, differing, driftingRuns: judgement.runs.filter((run) => run.verdict === 'clashes').length };
}
