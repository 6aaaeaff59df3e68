import type { Cabin } from '../../src/cabin/cabin.ts';
import { partNames } from '../../src/harmony/names.ts';
import { remembered } from './remembered.ts';

/** The two parts of every joint by their names, by the joint's id. Two joints between the same parts have the same. */
export const jointNames = remembered(({ parts, joints }: Cabin): ReadonlyMap<string, string> => {
  const names = partNames(parts);
  return new Map(joints.map((joint) => [joint.id, joint.parts.map((part) => names.get(part) ?? part).join(' / ')]));
});
