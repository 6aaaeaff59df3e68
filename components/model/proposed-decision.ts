import type { CheckResult } from '../../src/harmony/judgement.ts';

/**
 * What an agreed deviation would cover of a check as it stands: its value, light and criterion. The value is rounded to two decimals away from the limit, so
 * that the check is covered by it and a visibly worse one is not.
 */
export function proposedDecision(check: CheckResult | undefined): Readonly<Record<string, string | number>> {
  if (check === undefined) return {};
  const { value, light, criterion = 'ΔE' } = check;
  const rounded = value === undefined ? undefined : (check.atLeast === true ? Math.floor(100 * Math.abs(value)) : Math.ceil(100 * Math.abs(value))) / 100;
  return {
    check: check.check, ...(rounded === undefined ? {} : { value: rounded }), ...(light === undefined ? {} : { light }),
    ...(check.check === 'colour' || check.criterion !== undefined ? { criterion } : {}),
  };
}
