import type { Cabin } from '../cabin/cabin.ts';
import { partAppearance } from '../harmony/appearance.ts';
import { judgeContext } from '../harmony/judge-context.ts';
import type { Judgement } from '../harmony/judgement.ts';
import { partBasis } from '../harmony/part-bases.ts';
import { compileRuleBook } from '../rules/index.ts';
import type { RuleBook } from '../rules/rule-book.ts';

/** What is known of a cabin before any joint is judged: how every part looks by its readings. */
export function unjudged(cabin: Cabin, book: RuleBook): Judgement {
  const stage = cabin.stage ?? 'new';
  const { value: rules } = compileRuleBook(book);
  const context = rules === undefined ? undefined : judgeContext(cabin, rules, stage, cabin.asOf);
  return {
    cabin: cabin.name,
    stage,
    asOf: cabin.asOf,
    ruleBook: book.id,
    decisionRule: book.decision.rule,
    observer: book.observer,
    lights: book.lights.map(({ light }) => light),
    summary: { holds: 0, nothingJudged: 0, open: 0, clashes: 0, accepted: 0, expectedWrongHolds: 0, coverage: 0, visual: { joints: 0, agree: 0, differ: [] } },
    joints: [],
    parts: context === undefined
      ? []
      : cabin.parts.map((part) => ({ id: part.id, appearance: partAppearance(context, partBasis(context, part)), checks: [] })),
    runs: [],
    requests: [],
    issues: [],
  };
}
