import type { JointResult } from '../harmony/judgement.ts';

const rank = (joint: JointResult): number => (joint.verdict === 'clashes' ? (joint.accepted ? 1 : 0) : joint.verdict === 'open' ? 2 : 3);

/**
 * Order of joints for a reader: clashes without a decision, accepted clashes, open, holding;
 * inside each by limit use, then by the smaller probability of holding, then by id. Below zero where the first comes first.
 */
export const compareWorstFirst = (first: JointResult, second: JointResult): number =>
  rank(first) - rank(second)
  || (second.limitUse ?? -1) - (first.limitUse ?? -1)
  || first.totalProbability - second.totalProbability
  || (first.id < second.id ? -1 : first.id > second.id ? 1 : 0);

/** Joints in the order for a reader. */
export const worstFirst = (joints: readonly JointResult[]): JointResult[] => [...joints].sort(compareWorstFirst);
