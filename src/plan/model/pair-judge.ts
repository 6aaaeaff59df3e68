import type { Cabin, Joint } from '../../cabin/cabin.ts';
import { judgeContext } from '../../harmony/judge-context.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { JudgeOptions } from '../../harmony/judge.ts';
import { pairVerdict } from '../../harmony/pair-verdict.ts';
import type { PairVerdict } from '../../harmony/pair-verdict.ts';
import { partBasis } from '../../harmony/part-bases.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import { compileRuleBook } from '../../rules/compile-rule-book.ts';
import type { RuleBook } from '../../rules/rule-book.ts';

/** Judges joints under any picks of sources; everything is computed once and when it is first asked for. */
export interface PairJudge {
  readonly context: JudgeContext;
  readonly basis: (part: string, source: string) => PartBasis;
  /** The joint with its parts, in its own order, standing by these sources. */
  readonly at: (joint: Joint, first: string, second: string) => PairVerdict;
}

interface KnownJudge {
  readonly book: RuleBook;
  readonly stage: string | undefined;
  readonly asOf: string | undefined;
  readonly judge: PairJudge;
}

/** Judges of documents, which never change: the next plan of the same one, on other terms, knows all verdicts again. */
const judges = new WeakMap<Cabin, KnownJudge>();

/** Readings that a part borrows from its other hand are those of the source which that part stands by in the document. */
export function pairJudge(cabin: Cabin, book: RuleBook, options: JudgeOptions = {}): PairJudge {
  const { stage, asOf } = options;
  const known = judges.get(cabin);
  if (known !== undefined && known.book === book && known.stage === stage && known.asOf === asOf) return known.judge;
  const judge = newJudge(cabin, book, options);
  judges.set(cabin, { book, stage, asOf, judge });
  return judge;
}

function newJudge(cabin: Cabin, book: RuleBook, options: JudgeOptions): PairJudge {
  const { value: rules, issues } = compileRuleBook(book);
  if (rules === undefined) throw new RangeError(`rule book ${book.id} does not compile: ${issues[0]?.code ?? 'unknown fault'}`);
  const context = judgeContext(cabin, rules, options.stage ?? cabin.stage ?? 'new', options.asOf ?? cabin.asOf);
  const bases = new Map<string, PartBasis>();
  const verdicts = new Map<Joint, Map<string, PairVerdict>>();
  const basis = (part: string, source: string): PartBasis => {
    const key = JSON.stringify([part, source]);
    const known = bases.get(key) ?? partBasis(context, context.index.parts.get(part)!, source);
    bases.set(key, known);
    return known;
  };
  const at = (joint: Joint, first: string, second: string): PairVerdict => {
    const known = verdicts.get(joint) ?? new Map<string, PairVerdict>();
    verdicts.set(joint, known);
    const key = JSON.stringify([first, second]);
    const verdict = known.get(key) ?? pairVerdict(context, joint, new Map([
      [joint.parts[0], basis(joint.parts[0], first)], [joint.parts[1], basis(joint.parts[1], second)],
    ]));
    known.set(key, verdict);
    return verdict;
  };
  return { context, basis, at };
}
