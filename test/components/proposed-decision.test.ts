import { expect, test } from 'vitest';
import { proposedDecision } from '../../components/model/proposed-decision.ts';
import { voidReason } from '../../src/harmony/decisions.ts';
import type { CheckResult } from '../../src/harmony/judgement.ts';

const check = (more: Partial<CheckResult>): CheckResult =>
  ({ check: 'colour', standing: 'required', verdict: 'clashes', simple: 'clashes', unit: '', sentence: '', basis: '', lights: [], cautions: [], light: 'D65', ...more });
const decided = (of: CheckResult) =>
  ({ id: 'd', reason: 'agreed', role: 'design', date: '2026-01-01', expires: '2027-01-01', ...proposedDecision(of) }) as unknown as Parameters<typeof voidReason>[0];

test.each([
  ['a difference', check({ value: 1.17049 }), check({ value: 1.2 })],
  ['a component', check({ value: -0.8041, criterion: 'dL*' }), check({ value: -0.83, criterion: 'dL*' })],
  ['a step that is too small', check({ check: 'near-miss', value: 4.3386, criterion: 'dL*', atLeast: true }), check({ check: 'near-miss', value: 4.2, criterion: 'dL*', atLeast: true })],
])('what is proposed for %s covers it and nothing worse', (_, now, worse) => {
  expect(voidReason(decided(now), now, '2026-06-01')).toBeUndefined();
  expect(voidReason(decided(now), worse, '2026-06-01')).toBeDefined();
});

test('another criterion is not covered', () => {
  expect(voidReason(decided(check({ value: 1 })), check({ value: 0.9, criterion: 'dL*' }), '2026-06-01')).toContain('dL*');
});

test('with no check nothing is proposed', () => expect(proposedDecision(undefined)).toEqual({}));
