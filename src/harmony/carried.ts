import type { Joint, Part } from '../cabin/cabin.ts';
import type { JudgeContext } from './judge-context.ts';
import { jointRule, orderedSides } from './judge-joint.ts';
import type { JudgedJoint } from './judge-joint.ts';
import type { PartBasis } from './part-basis.ts';
import { sameRule } from './same-rule.ts';

/** A joint between parts on the same ground: its result stands where what it asks for is the same, whatever was written beside that. */
export function carriedJoint(context: JudgeContext, judged: JudgedJoint, joint: Joint, bases: ReadonlyMap<string, PartBasis>): JudgedJoint | undefined {
  const { input } = judged;
  if (joint !== input.joint && !sameQuestion(joint, input.joint)) return undefined;
  const sides = orderedSides(joint, bases);
  return sameRule(input.rule, jointRule(context, joint, sides)) ? { ...judged, input: { ...input, joint, sides } } : undefined;
}

/** All of a joint that is judged beside its rule; what else it holds counts through the rule only. */
const sameQuestion = (joint: Joint, other: Joint): boolean =>
  joint.parts[0] === other.parts[0] && joint.parts[1] === other.parts[1] && joint.kind === other.kind && joint.reference === other.reference
  && joint.decisions === other.decisions && joint.visualRecords === other.visualRecords;

export const hasMaster = (part: Part | undefined): boolean => part?.sources.some(({ specimens }) => specimens.some(({ kind }) => kind === 'master')) === true;

/** Fields of a part that its own readings and master are not judged by; they count through the rule of a joint, the zone's caps, or not at all. */
const besideTheGround: ReadonlySet<string> = new Set<keyof Part>([
  'zone', 'outline', 'visibility', 'partNumber', 'revision', 'note', 'module', 'frozen', 'mend', 'flatAreaMm', 'curvatureRadiusMm', 'hand',
]);

/** Whether a part is judged on the same of its own as another. */
export function sameButBeside(part: Part, other: Part | undefined): boolean {
  if (part === other) return true;
  if (other === undefined) return false;
  return (Object.keys({ ...part, ...other }) as (keyof Part)[]).every((key) => besideTheGround.has(key) || part[key] === other[key]);
}
