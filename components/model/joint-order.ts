import type { JointResult } from '../../src/harmony/judgement.ts';
import { compareWorstFirst, worstFirst } from '../../src/report/worst-first.ts';
import { remembered } from './remembered.ts';

/**
 * Joints worst first, kept from one judgement to the next: only those that are other results than before are put in their places anew,
 * so that an edit of a large cabin does not sort all of it. The same list again where the joints are the same.
 */
export class JointOrder {
  private joints: readonly JointResult[] = [];
  private order: readonly JointResult[] = [];

  of(joints: readonly JointResult[]): readonly JointResult[] {
    if (joints === this.joints) return this.order;
    const before = this.joints;
    const fresh = joints.filter((joint, place) => joint !== before[place]);
    const sameList = joints.length >= before.length && before.every((joint, place) => joint.id === joints[place]?.id);
    this.order = sameList && fresh.length * 4 < joints.length ? this.woven(before, joints, fresh) : worstFirst(joints);
    this.joints = joints;
    return this.order;
  }

  private woven(before: readonly JointResult[], joints: readonly JointResult[], fresh: readonly JointResult[]): readonly JointResult[] {
    const gone = new Set(before.filter((joint, place) => joint !== joints[place]));
    const coming = worstFirst(fresh);
    const order: JointResult[] = [];
    let next = 0;
    for (const joint of this.order) {
      if (gone.has(joint)) continue;
      while (next < coming.length && compareWorstFirst(coming[next] as JointResult, joint) < 0) order.push(coming[next++] as JointResult);
      order.push(joint);
    }
    return [...order, ...coming.slice(next)];
  }
}

const order = new JointOrder();

/** Joints worst first: the same list for all that show the same joints. */
export const orderedJoints = remembered((joints: readonly JointResult[]) => order.of(joints));
