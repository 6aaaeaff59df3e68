import { jointPath, parseCabin } from '../cabin/index.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { judge } from '../harmony/index.ts';
import { hasErrors } from '../issue.ts';
import type { Outcome } from '../issue.ts';
import { builtInRuleBooks, restoreRuleBook, ruleBookById } from '../rules/index.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import type { JointPaths, JudgedReply, JudgeRequest, ReadReply, RefusedReply } from './judge-protocol.ts';
import { unjudged } from './unjudged.ts';

/**
 * Reads a cabin file and judges it by the rule book it names or carries, else by the first built-in one.
 * `read` is told of the cabin before the joints are judged, so that it can be shown meanwhile.
 */
export function judgeText({ text, file }: JudgeRequest, read: (reply: ReadReply) => void): JudgedReply | RefusedReply {
  const { value: cabin, issues } = parseCabin(text, file);
  if (cabin === undefined || hasErrors(issues)) return { kind: 'refused', issues };
  const book = ruleBookOf(cabin);
  if (book.value === undefined || hasErrors(book.issues)) {
    const faults = book.issues.map((issue) => ({ ...issue, file, path: ['ruleBook', issue.path].filter(Boolean).join('.') }));
    return { kind: 'refused', issues: [...issues, ...faults] };
  }
  read({ kind: 'read', cabin, judgement: unjudged(cabin, book.value) });
  return { kind: 'judged', judgement: judge(cabin, book.value), paths: pathsOf(cabin), issues: [...issues, ...book.issues] };
}

function pathsOf(cabin: Cabin): JointPaths {
  return new Map(cabin.joints.flatMap((joint) => {
    const path = jointPath(cabin, joint);
    return path === undefined ? [] : [[joint.id, path] as const];
  }));
}

function ruleBookOf(cabin: Cabin): Outcome<RuleBook> {
  if (cabin.ruleBook === undefined) return { value: builtInRuleBooks[0], issues: [] };
  if (typeof cabin.ruleBook === 'object') return restoreRuleBook(cabin.ruleBook);
  const value = ruleBookById(cabin.ruleBook);
  if (value !== undefined) return { value, issues: [] };
  const expected = builtInRuleBooks.map((book) => book.id).join(', ');
  return { value: undefined, issues: [{ code: 'unknown-rule-book', severity: 'error', found: cabin.ruleBook, expected }] };
}
