import type { Cabin } from '../cabin/cabin.ts';
import { judgeJoint } from '../harmony/judge-joint.ts';
import type { JudgedJoint } from '../harmony/judge-joint.ts';
import { judgeCabin, judgeWith, masterUseIn } from '../harmony/judge.ts';
import type { JudgedCabin } from '../harmony/judge.ts';
import { judgeContext } from '../harmony/judge-context.ts';
import type { JointResult, Summary } from '../harmony/judgement.ts';
import { summarise, summaryBlocks } from '../harmony/summary.ts';
import type { RuleBook } from '../rules/rule-book.ts';

/** Joints that were judged since the last step, with what all judged so far come to. */
export interface JudgedStep {
  readonly joints: readonly JointResult[];
  readonly summary: Summary;
}

/** What is to be told of now: nothing, how many joints are judged, or these themselves. */
export type Telling = 'nothing' | 'count' | 'joints';

/** A cabin before any joint is judged: its parts are. */
export const judgeParts = (cabin: Cabin, book: RuleBook): JudgedCabin => judgeCabin({ ...cabin, joints: [] }, book);

/**
 * Judges a cabin step by step from what `judgeParts()` gave; the end is what judging all of it at once would give.
 * `due` says after every joint what to tell of, by the numbers of joints that are judged and that were told of.
 */
export function* judgeInSteps(cabin: Cabin, parts: JudgedCabin, due: (judged: number, told: number) => Telling): Generator<JudgedStep | number, JudgedCabin, void> {
  const { rules, stage, asOf, memory } = parts.context;
  const context = judgeContext(cabin, rules, stage, asOf, memory);
  const masterUse = masterUseIn(context, parts.judgement.parts);
  const judged: JudgedJoint[] = [];
  let told = 0;
  for (const joint of cabin.joints) {
    judged.push(judgeJoint(context, joint, parts.bases, masterUse));
    const telling = due(judged.length, told);
    if (telling === 'count') yield judged.length;
    if (telling !== 'joints') continue;
    yield stepOf(judged, told);
    told = judged.length;
  }
  if (told < judged.length) yield stepOf(judged, told);
  return judgeWith(context, parts.bookIssues, {
    basis: (_, place) => parts.inOrder[place], part: (_, place) => parts.judgement.parts[place], joint: (_joint, _bases, place) => judged[place], paths: () => undefined,
  });
}

function stepOf(judged: readonly JudgedJoint[], told: number): JudgedStep {
  const results = judged.map(({ result }) => result);
  return { joints: results.slice(told), summary: summarise(summaryBlocks(results)) };
}
