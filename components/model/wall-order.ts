import type { JointResult } from '../../src/harmony/judgement.ts';

const rank = (joint: JointResult): number =>
  joint.verdict === 'clashes' ? (joint.accepted ? 1 : 0) : joint.verdict === 'open' ? 2 : 3;

/** Worst first: clashes, accepted clashes, open, holds; within each the greater limit use first, ties by id. */
export const worstFirst = (joints: readonly JointResult[]): JointResult[] =>
  [...joints].sort((a, b) => rank(a) - rank(b) || (b.limitUse ?? -1) - (a.limitUse ?? -1) || (a.id < b.id ? -1 : 1));
