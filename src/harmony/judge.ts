import type { Cabin, Joint, Part } from '../cabin/cabin.ts';
import { DerivedMap } from '../cabin/derived-map.ts';
import type { Issue } from '../issue.ts';
import { compileRuleBook } from '../rules/compile-rule-book.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import { partAppearance } from './appearance.ts';
import { capCheck, capsOf } from './checks/cap.ts';
import { masterChecks } from './checks/master.ts';
import { judgeContext } from './judge-context.ts';
import type { JudgeContext } from './judge-context.ts';
import { judgeJoint } from './judge-joint.ts';
import type { JudgedJoint } from './judge-joint.ts';
import type { JointResult, Judgement, PartResult, RunResult } from './judgement.ts';
import { partBasis } from './part-bases.ts';
import type { PartBasis } from './part-basis.ts';
import { measurementRequests } from './requests/measurement-requests.ts';
import type { RankedRequest } from './requests/measurement-requests.ts';
import { judgeRuns, pathsOfMatches } from './runs.ts';
import { summarise, summaryBlocks } from './summary.ts';
import type { SummaryBlock } from './summary.ts';

export interface JudgeOptions {
  /** Named stage to judge; the cabin's own, else `new`. */
  readonly stage?: string;
  /** Day on which decisions and masters are looked at, `YYYY-MM-DD`; the cabin's own where absent. */
  readonly asOf?: string;
}

/** A judgement with what it was made from, for plans and views that go on from it. */
export interface JudgedCabin {
  readonly judgement: Judgement;
  readonly context: JudgeContext;
  readonly bases: ReadonlyMap<string, PartBasis>;
  /** The same in the order of the document. */
  readonly inOrder: readonly PartBasis[];
  readonly joints: readonly JudgedJoint[];
  /** Paths between the parts that lie farthest apart, as `pathsOfMatches()` found them. */
  readonly paths: readonly (readonly string[])[];
  /** What compiling the rule book had to say. */
  readonly bookIssues: readonly Issue[];
  /** Counts and requests in the form that an edit changes in place. */
  readonly blocks: readonly SummaryBlock[];
  readonly ranked: readonly RankedRequest[];
}

/** What was judged before and still stands; nothing where it does not, or was not judged yet. Places are those in the lists of the document. */
export interface StillStanding {
  readonly basis: (part: Part, place: number) => PartBasis | undefined;
  readonly part: (basis: PartBasis, place: number) => PartResult | undefined;
  readonly joint: (joint: Joint, bases: ReadonlyMap<string, PartBasis>, place: number) => JudgedJoint | undefined;
  readonly paths: (joints: readonly JointResult[]) => JudgedCabin['paths'] | undefined;
}

const nothing = (): undefined => undefined;
const nothingStands: StillStanding = { basis: nothing, part: nothing, joint: nothing, paths: nothing };

/**
 * Judges every joint, part and run of a cabin by a rule book. Pure and deterministic: the same input gives the same result.
 * The cabin must have come through `restoreCabin()`. Throws a RangeError for a rule book that does not compile, which
 * `restoreRuleBook()` would have refused.
 */
export const judge = (cabin: Cabin, book: RuleBook, options: JudgeOptions = {}): Judgement => judgeCabin(cabin, book, options).judgement;

/** The same, with the working behind it. */
export function judgeCabin(cabin: Cabin, book: RuleBook, options: JudgeOptions = {}, asked: Asked = {}): JudgedCabin {
  const { value: rules, issues } = compileRuleBook(book);
  if (rules === undefined) throw new RangeError(`rule book ${book.id} does not compile: ${issues[0]?.code ?? 'unknown fault'}`);
  const context = judgeContext(cabin, rules, options.stage ?? cabin.stage ?? 'new', options.asOf ?? cabin.asOf);
  return judgeWith(context, issues, nothingStands, asked);
}

/** The same without requests for measurements, for what asks about verdicts alone. */
export function judgeVerdicts(cabin: Cabin, book: RuleBook, options: JudgeOptions = {}): JudgedCabin {
  return judgeCabin(cabin, book, options, { withoutRequests: true });
}

interface Asked {
  readonly withoutRequests?: boolean;
}

/** Judges what does not stand yet, and puts all together. */
export function judgeWith(context: JudgeContext, bookIssues: readonly Issue[], standing: StillStanding, { withoutRequests }: Asked = {}): JudgedCabin {
  const { cabin, index } = context;
  const inOrder = cabin.parts.map((part, place) => standing.basis(part, place) ?? partBasis(context, part));
  const bases = new DerivedMap(index.partPlaces, (place) => inOrder[place]);
  const parts = inOrder.map((basis, place) => standing.part(basis, place) ?? judgePart(context, basis));
  const masterUse = masterUseIn(context, parts);
  const joints = cabin.joints.map((joint, place) => standing.joint(joint, bases, place) ?? judgeJoint(context, joint, bases, masterUse));
  const results = joints.map(({ result }) => result);
  const paths = standing.paths(results) ?? pathsOfMatches(cabin, results);
  return judgedCabin({
    context, bookIssues, bases, inOrder, joints, parts, paths, runs: judgeRuns(context, bases, paths),
    blocks: summaryBlocks(results), ranked: withoutRequests === true ? [] : measurementRequests({ context, joints, parts, bases }), results,
  });
}

/** All that was judged, for the document's judgement to be put together from. */
export interface Judged extends Omit<JudgedCabin, 'judgement'> {
  readonly results: readonly JointResult[];
  readonly parts: readonly PartResult[];
  readonly runs: readonly RunResult[];
}

export function judgedCabin({ results, parts, runs, ...judged }: Judged): JudgedCabin {
  const { context, bookIssues, blocks, ranked } = judged;
  const { cabin, book } = context;
  const judgement: Judgement = {
    cabin: cabin.name,
    stage: context.stage,
    asOf: context.asOf,
    ruleBook: book.id,
    decisionRule: decisionRuleText(book),
    observer: book.observer,
    lights: book.lights.map(({ light }) => light),
    summary: summarise(blocks),
    joints: results,
    parts,
    runs,
    requests: ranked.map(({ request }) => request),
    issues: [...bookIssues, ...dataIssues(context)],
  };
  return { judgement, ...judged };
}

/** How much of its master's limit a part uses in colour, by its id. */
export const masterUseIn = ({ index }: JudgeContext, parts: readonly PartResult[]) => (part: string): number | undefined =>
  masterUse(parts[index.partPlaces.get(part) ?? -1]);

const masterUse = (part: PartResult | undefined): number | undefined =>
  part?.checks.find((check) => check.check === 'master' && check.subject === 'colour' && check.verdict !== 'open')?.limitUse;

export function judgePart(context: JudgeContext, basis: PartBasis): PartResult {
  return {
    id: basis.part.id,
    appearance: partAppearance(context, basis),
    checks: [...masterChecks(context, basis), ...capsOf(context, basis.part.zone).map((cap) => capCheck(context, basis, cap))],
  };
}

const decisionRuleText = (book: RuleBook): string => (book.decision.rule === 'simple'
  ? 'Simple: value against limit'
  : `Guarded: holds with a probability of at least ${book.decision.confidence}, clashes with at most ${Number((1 - book.decision.confidence).toPrecision(6))} and a clear excess, else open`);

/** What a reader should know of the data and that no single check says. */
function dataIssues({ cabin, asOf }: JudgeContext): readonly Issue[] {
  return cabin.instruments.flatMap((instrument, index): Issue[] => {
    if (instrument.calibratedOn === undefined || instrument.calibrationDays === undefined) return [];
    const age = Math.floor((Date.parse(asOf) - Date.parse(instrument.calibratedOn)) / 86_400_000);
    return age <= instrument.calibrationDays ? [] : [{
      code: 'calibration-due', severity: 'warning', path: `instruments[${index}]`,
      found: `${instrument.name} calibrated on ${instrument.calibratedOn}`, expected: `within ${instrument.calibrationDays} days of ${asOf}`,
      hint: 'Calibrate it and measure again before the verdicts that rest on it are used.',
    }];
  });
}
