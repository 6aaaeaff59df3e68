import type { Cabin } from '../../cabin/cabin.ts';
import type { JointResult } from '../../harmony/judgement.ts';
import type { ReportDecision } from './report-model.ts';
import { voidReason } from '../../harmony/decisions.ts';

/** Notice before a decision ends, days: common practice, no source. */
const noticeDays = 90;

const daysBetween = (from: string, to: string): number => Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);

const order = ['in force', 'void', 'expired', 'not needed'];

/** Every decision on record with what has become of it on the day of the report; those in force first, the next to expire on top. */
export function reportDecisions(cabin: Cabin, results: ReadonlyMap<string, JointResult>, asOf: string): ReportDecision[] {
  const rows = cabin.joints.flatMap((joint) => (joint.decisions ?? []).map((decision): ReportDecision => {
    const check = results.get(joint.id)?.checks.find((candidate) => candidate.check === decision.check);
    const reason = check && voidReason(decision, check, asOf);
    if (decision.expires < asOf) return { joint: joint.id, decision, status: 'expired', expiring: false, why: `expired on ${decision.expires}` };
    if (check === undefined) return { joint: joint.id, decision, status: 'not needed', expiring: false, why: 'the rule has no such check' };
    if (check.verdict !== 'clashes') return { joint: joint.id, decision, status: 'not needed', expiring: false, why: `the check is now: ${check.verdict}` };
    if (reason !== undefined) return { joint: joint.id, decision, status: 'void', expiring: false, why: reason };
    return { joint: joint.id, decision, status: 'in force', expiring: daysBetween(asOf, decision.expires) <= noticeDays, why: `until ${decision.expires}` };
  }));
  return rows.sort((first, second) =>
    order.indexOf(first.status) - order.indexOf(second.status)
    || first.decision.expires.localeCompare(second.decision.expires)
    || first.decision.id.localeCompare(second.decision.id));
}
