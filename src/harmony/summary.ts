import type { JointResult, Summary } from './judgement.ts';

/**
 * Counts of a judged cabin. `clashes` are the unaccepted ones; `expectedWrongHolds`
 * is the sum, over the joints called `holds`, of the probability that they do not;
 * coverage is the share of wanted checks that had data, 1 where none is wanted.
 */
export function summarise(joints: readonly JointResult[]): Summary {
  const holding = joints.filter((joint) => joint.verdict === 'holds');
  const clashing = joints.filter((joint) => joint.verdict === 'clashes');
  const accepted = clashing.filter((joint) => joint.accepted).length;
  const wanted = joints.reduce((sum, joint) => sum + joint.coverage.wanted, 0);
  const withData = joints.reduce((sum, joint) => sum + joint.coverage.withData, 0);
  const seen = joints.filter((joint) => joint.visual !== undefined && joint.verdict !== 'open');
  return {
    holds: holding.length,
    nothingJudged: holding.filter((joint) => joint.coverage.wanted === 0).length,
    open: joints.filter((joint) => joint.verdict === 'open').length,
    clashes: clashing.length - accepted,
    accepted,
    expectedWrongHolds: holding.reduce((sum, joint) => sum + (1 - joint.totalProbability), 0),
    coverage: wanted === 0 ? 1 : withData / wanted,
    visual: {
      joints: seen.length,
      agree: seen.filter((joint) => joint.visual?.agrees).length,
      differ: seen.filter((joint) => !joint.visual?.agrees).map((joint) => joint.id),
    },
  };
}
