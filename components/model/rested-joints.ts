import type { JointResult } from '../../src/harmony/judgement.ts';

const none: ReadonlySet<string> = new Set();

/** Ids of the joints outside the filter; the same empty set each time where all pass, so that nothing is drawn anew for it. */
export function restedJoints(joints: readonly JointResult[], listed: readonly JointResult[]): ReadonlySet<string> {
  if (listed.length === joints.length) return none;
  const shown = new Set(listed.map(({ id }) => id));
  return new Set(joints.map(({ id }) => id).filter((id) => !shown.has(id)));
}
