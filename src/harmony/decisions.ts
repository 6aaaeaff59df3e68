import type { Decision } from '../cabin/cabin.ts';
import type { IsoDate } from '../quantities.ts';
import type { CheckResult } from './judgement.ts';

/** Agreed values are written down with two decimals; a value is worse only if it is so beyond that rounding. */
const roundingAllowance = 0.005;

/** Checks whose value must be large, near misses and wanted contrasts: a smaller one is the worse one. */
const largerIsBetter = (check: CheckResult): boolean => check.check === 'near-miss' || check.atLeast === true;

/**
 * Marks a clashing check as accepted where a decision in force covers it.
 * A decision is void after its expiry, under another worst light, by another worst criterion where it names its own,
 * and where the value is worse than the one agreed; the reason is then kept on the check.
 * The verdict stays `clashes` in every case.
 */
export function applyDecisions(check: CheckResult, decisions: readonly Decision[], asOf: IsoDate): CheckResult {
  if (check.verdict !== 'clashes' || check.value === undefined) return check;
  const concerned = decisions.filter((decision) => decision.check === check.check);
  if (concerned.length === 0) return check;
  const reasons: string[] = [];
  const inForce: Decision[] = [];
  for (const decision of concerned) {
    const reason = voidReason(decision, check, asOf);
    if (reason === undefined) inForce.push(decision);
    else reasons.push(reason);
  }
  if (inForce.length === 0) return { ...check, accepted: false, decisionVoid: reasons.join('; ') };
  const acceptedUntil = inForce.map((decision) => decision.expires).sort().at(-1);
  return { ...check, accepted: true, ...(acceptedUntil === undefined ? {} : { acceptedUntil }) };
}

/** Why a decision does not cover this check on that day; undefined where it does. */
export function voidReason(decision: Decision, check: CheckResult, asOf: IsoDate): string | undefined {
  if (decision.expires < asOf) return `decision ${decision.id} expired on ${decision.expires}`;
  if (decision.date > asOf) return `decision ${decision.id} is dated ${decision.date}, after ${asOf}`;
  if (decision.light !== undefined && check.light !== undefined && decision.light !== check.light) {
    return `decision ${decision.id} was agreed under ${decision.light}, the worst light now is ${check.light}`;
  }
  const criterion = check.criterion ?? 'ΔE';
  if (decision.criterion !== undefined && decision.criterion !== criterion) {
    return `decision ${decision.id} was agreed on ${decision.criterion}, the worst criterion now is ${criterion}`;
  }
  const value = Math.abs(check.value ?? 0);
  const agreed = Math.abs(decision.value);
  const worse = largerIsBetter(check) ? value < agreed - roundingAllowance : value > agreed + roundingAllowance;
  if (worse) return `decision ${decision.id} was agreed at ${agreed.toFixed(2)}, the value now is ${value.toFixed(2)}`;
  return undefined;
}
