import type { Joint } from '../cabin/cabin.ts';
import type { JointResult, Verdict } from './judgement.ts';

/**
 * The latest visual record of a joint beside the verdict. The booth's `match` and
 * `acceptable` agree with `holds`, its `clash` with `clashes`; an open joint
 * agrees with neither.
 */
export function visualBeside(joint: Joint, verdict: Verdict): JointResult['visual'] {
  const latest = [...(joint.visualRecords ?? [])].sort((first, second) => first.date.localeCompare(second.date)).at(-1);
  if (latest === undefined) return undefined;
  const agrees = verdict === 'clashes' ? latest.result === 'clash' : verdict === 'holds' && latest.result !== 'clash';
  return { result: latest.result, date: latest.date, agrees };
}
