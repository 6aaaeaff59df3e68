import type { JointResult, Summary } from './judgement.ts';

/**
 * Counts of a judged cabin. `clashes` are the unaccepted ones; `expectedWrongHolds`
 * is the sum, over the joints called `holds`, of the probability that they do not;
 * coverage is the share of wanted checks that had data, 1 where none is wanted.
 */
export function summarise(joints: readonly JointResult[]): Summary {
  let [holds, nothingJudged, open, clashes, accepted, expectedWrongHolds, wanted, withData, seen, agree] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  const differ: string[] = [];
  for (const joint of joints) {
    wanted += joint.coverage.wanted;
    withData += joint.coverage.withData;
    if (joint.verdict === 'holds') {
      holds += 1;
      if (joint.coverage.wanted === 0) nothingJudged += 1;
      expectedWrongHolds += 1 - joint.totalProbability;
    } else if (joint.verdict === 'open') open += 1;
    else if (joint.accepted) accepted += 1;
    else clashes += 1;
    if (joint.visual === undefined || joint.verdict === 'open') continue;
    seen += 1;
    if (joint.visual.agrees) agree += 1;
    else differ.push(joint.id);
  }
  return { holds, nothingJudged, open, clashes, accepted, expectedWrongHolds, coverage: wanted === 0 ? 1 : withData / wanted, visual: { joints: seen, agree, differ } };
}
