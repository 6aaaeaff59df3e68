import type { Cabin } from '../../src/cabin/cabin.ts';
import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import type { JointResult, Judgement } from '../../src/harmony/judgement.ts';
import { verdictWord } from './leading-check.ts';

const namedAtMost = 2;

/** What an edit did to the verdicts, in one sentence; undefined where it changed none. */
export function changedVerdicts(before: Judgement, after: Judgement, cabin: Cabin): string | undefined {
  if (before.joints === after.joints) return undefined;
  const old = new Map(before.joints.map((joint) => [joint.id, joint]));
  const changed = after.joints.filter((joint) => {
    const was = old.get(joint.id);
    return was !== joint && (was === undefined || verdictWord(was) !== verdictWord(joint));
  });
  if (changed.length === 0) return undefined;
  const parts = cabinIndex(cabin).parts;
  const named = changed.slice(0, namedAtMost).map((joint) => `${joint.parts.map((id) => parts.get(id)?.name ?? id).join(' and ')}: ${told(joint, old.get(joint.id))}`);
  const rest = changed.length - named.length;
  const { holds, clashes, open } = after.summary;
  return `${named.join('; ')}${rest > 0 ? `; ${rest} more verdicts changed` : ''}. Now ${holds} hold, ${clashes} clash, ${open} open.`;
}

const told = (now: JointResult, was: JointResult | undefined): string => (was === undefined ? `new, ${verdictWord(now)}` : `${verdictWord(was)} before, now ${verdictWord(now)}`);
