import type { Cabin, Joint } from '../../cabin/cabin.ts';

/** Length of a joint in a cabin that states none, mm. Assumption, no source. */
const usualLengthMm = 500;

/**
 * Weight of a joint's over-use: its own weight, times what a customer sees of the more visible of its parts, times its length in
 * metres. A joint without a length, such as a sight line, counts with the median length of the cabin's joints.
 */
export function jointWeights(cabin: Cabin): ReadonlyMap<string, number> {
  const visibility = new Map(cabin.parts.map((part) => [part.id, part.visibility ?? 1]));
  const lengths = cabin.joints.flatMap(({ lengthMm }) => (lengthMm === undefined ? [] : [lengthMm])).sort((a, b) => a - b);
  const median = lengths.length === 0 ? usualLengthMm : lengths[Math.floor((lengths.length - 1) / 2)];
  const weight = (joint: Joint): number =>
    (joint.weight ?? 1) * Math.max(...joint.parts.map((part) => visibility.get(part) ?? 1)) * ((joint.lengthMm ?? median) / 1000);
  return new Map(cabin.joints.map((joint) => [joint.id, weight(joint)]));
}
