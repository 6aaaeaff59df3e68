import type { Cabin, Joint } from '../cabin/cabin.ts';
import { partGraph } from '../cabin/part-graph.ts';
import { judgeContext } from '../harmony/judge-context.ts';
import type { JudgeContext } from '../harmony/judge-context.ts';
import type { JudgeOptions } from '../harmony/judge.ts';
import { partBasis } from '../harmony/part-bases.ts';
import type { PartBasis } from '../harmony/part-basis.ts';
import type { Issue } from '../issue.ts';
import { partOfWork, step } from '../plan/watch.ts';
import type { Watch } from '../plan/watch.ts';
import { compileRuleBook } from '../rules/compile-rule-book.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import { buildTogether, lotJudge } from './build/build-together.ts';
import type { BuildPlan } from './build/build-together.ts';
import { glossForecast } from './forecast/gloss-forecast.ts';
import { jointForecast } from './forecast/joint-forecast.ts';
import type { JointForecast } from './forecast/joint-forecast.ts';
import { partSeries } from './part-series.ts';
import type { ChartReference, PartSeries } from './part-series.ts';
import { seriesWords } from './series-words.ts';

export interface SeriesOptions extends JudgeOptions {
  /** Of limits, trends and ranges, above 0.5 and below 1; 0.95 where absent. */
  readonly confidence?: number;
  /** Only these parts, and the joints that touch them. */
  readonly parts?: readonly string[];
  /** Only these joints, and their parts. */
  readonly joints?: readonly string[];
  readonly reference?: ChartReference;
  /** How many of the first lots the limits of the charts are taken from. */
  readonly base?: number;
  /** How far is looked ahead: 365 days and 12 lots where absent. Assumption, no source. */
  readonly aheadDays?: number;
  readonly aheadLots?: number;
  /** Lots that can be built, of the parts that are named; all lots of the others. */
  readonly available?: Readonly<Record<string, readonly string[]>>;
  /** Pairs of lots that are judged at most to find which to build together; joints that would take more are left out and counted. All where absent. */
  readonly mostPairsOfLots?: number;
}

/** Lots over time: what they did, what they will do to the joints, and which to build together. Plain data. */
export interface CabinSeries {
  readonly cabin: string;
  readonly stage: string;
  readonly confidence: number;
  readonly aheadDays: number;
  readonly aheadLots: number;
  /** Parts with at least two lots that were read alike, in the order of the document. */
  readonly parts: readonly PartSeries[];
  /** Parts looked at that have no two lots. */
  readonly without: readonly string[];
  /** Joints with a part among those, the first to clash first; a joint a second time where its gloss has a forecast beside its colour. */
  readonly joints: readonly JointForecast[];
  /** The joint whose line comes over its limit first. */
  readonly first?: string;
  /** Which lots to build together, for each joint between two parts that have lots, the most to be gained first. */
  readonly pairs: readonly BuildPlan[];
  /** The same for whole sets of parts that hang together by such joints, where they are more than two. */
  readonly sets: readonly BuildPlan[];
  /** Joints whose lots were not matched, since that would have taken more pairs than asked for. */
  readonly notMatched?: readonly string[];
  readonly words: readonly string[];
  readonly issues: readonly Issue[];
}

/** Reckons the series of a cabin by a rule book. Names that are not in the cabin are issues. Throws a RangeError for a book that does not compile. */
export async function cabinSeries(cabin: Cabin, book: RuleBook, options: SeriesOptions = {}, watch?: Watch): Promise<CabinSeries> {
  const { value: rules, issues: bookIssues } = compileRuleBook(book);
  if (rules === undefined) throw new RangeError(`rule book ${book.id} does not compile: ${bookIssues[0]?.code ?? 'unknown fault'}`);
  const context = judgeContext(cabin, rules, options.stage ?? cabin.stage ?? 'new', options.asOf ?? cabin.asOf);
  const confidence = options.confidence ?? 0.95;
  const [aheadDays, aheadLots] = [options.aheadDays ?? 365, options.aheadLots ?? 12];
  const issues = unknownNames(context, options);
  const bases = new Map(cabin.parts.map((part) => [part.id, partBasis(context, part)]));
  const chosen = chosenJoints(cabin, options);
  const lookedAt = chosen.parts.map((id) => bases.get(id)!);
  const parts: PartSeries[] = [];
  for (const [index, basis] of lookedAt.entries()) {
    await step(watch, (0.3 * index) / lookedAt.length, 'looking at the lots of parts');
    const series = partSeries(context, basis, { confidence, ...(options.reference === undefined ? {} : { reference: options.reference }), ...(options.base === undefined ? {} : { base: options.base }) });
    if (series !== undefined) parts.push(series);
  }
  const withLots = new Set(parts.map(({ part }) => part));
  const touched = chosen.joints.filter((joint) => joint.parts.some((part) => withLots.has(part)));
  const joints: JointForecast[] = [];
  for (const [index, joint] of touched.entries()) {
    await step(watch, 0.3 + (0.2 * index) / touched.length, 'carrying trends to the joints');
    const ahead = { confidence, days: aheadDays, lots: aheadLots };
    const gloss = glossForecast(context, joint, bases, ahead);
    joints.push(jointForecast(context, joint, bases, ahead), ...(gloss === undefined ? [] : [gloss]));
  }
  joints.sort((first, second) => urgency(first) - urgency(second));
  const { notMatched, ...plans } = await builds(context, bases, touched, options, partOfWork(watch, 0.5, 1));
  const first = joints.find(({ state }) => state === 'over its limit' || state === 'will clash')?.joint;
  const found = {
    cabin: cabin.name, stage: context.stage, confidence, aheadDays, aheadLots, parts, without: chosen.parts.filter((part) => !withLots.has(part)),
    joints, ...(first === undefined ? {} : { first }), ...plans, ...(notMatched.length === 0 ? {} : { notMatched }), issues,
  };
  return { ...found, words: seriesWords(found, context) };
}

/** Days and lots are not on one scale: those with a day go first. */
function urgency({ state, when, unit, now }: JointForecast): number {
  if (state === 'over its limit') return -1 - (now?.use ?? 0) / 1e4;
  if (state === 'will clash') return (when?.ahead ?? 0) + (unit === 'lot' ? 1e6 : 0);
  return { 'stays within': 1e8, 'no trend': 2e8, 'too few lots': 3e8, 'not judged': 4e8 }[state];
}

/** All parts and joints where none is named; else the joints named with their parts, and the parts named with their joints. */
function chosenJoints(cabin: Cabin, { parts = [], joints = [] }: SeriesOptions): { readonly parts: readonly string[]; readonly joints: readonly Joint[] } {
  if (parts.length === 0 && joints.length === 0) return { parts: cabin.parts.map(({ id }) => id), joints: cabin.joints };
  const kept = cabin.joints.filter((joint) => joints.includes(joint.id) || joint.parts.some((part) => parts.includes(part)));
  const named = new Set([...parts, ...kept.flatMap((joint) => joint.parts)]);
  return { parts: cabin.parts.map(({ id }) => id).filter((id) => named.has(id)), joints: kept };
}

async function builds(
  context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, joints: readonly Joint[], { available, mostPairsOfLots = Infinity }: SeriesOptions, watch: Watch,
): Promise<{ readonly pairs: readonly BuildPlan[]; readonly sets: readonly BuildPlan[]; readonly notMatched: readonly string[] }> {
  const judge = lotJudge(context, bases, available);
  const matchable = joints.filter((joint) => joint.parts.every((part) => judge.lots(part).length > 1));
  let left = mostPairsOfLots;
  const between = matchable.filter((joint) => {
    const wanted = joint.parts.reduce((product, part) => product * judge.lots(part).length, 1);
    if (wanted > left) return false;
    left -= wanted;
    return true;
  });
  const pairs: BuildPlan[] = [];
  for (const [index, joint] of between.entries()) {
    const plan = await buildTogether(judge, [joint], partOfWork(watch, index / (between.length + 1), (index + 1) / (between.length + 1)));
    if (plan !== undefined) pairs.push(plan);
  }
  const gain = ({ asProduced, best }: BuildPlan): number => 1000 * (asProduced.clashes - best.clashes) + asProduced.overUse - best.overUse;
  pairs.sort((first, second) => gain(second) - gain(first));
  const ids = new Set(between.map(({ id }) => id));
  const wholes = partGraph(context.cabin).connectedSets((joint) => ids.has(joint.id)).filter((own) => own.length > 2);
  const sets: BuildPlan[] = [];
  for (const whole of wholes) {
    const plan = await buildTogether(judge, between.filter((joint) => joint.parts.every((part) => whole.includes(part))), partOfWork(watch, 0.95, 1));
    if (plan !== undefined) sets.push(plan);
  }
  return { pairs, sets, notMatched: matchable.filter((joint) => !between.includes(joint)).map(({ id }) => id) };
}

function unknownNames({ index, cabin }: JudgeContext, { parts = [], joints = [], available = {} }: SeriesOptions): readonly Issue[] {
  const lotsOf = (part: string): readonly string[] => cabin.parts.filter(({ id }) => id === part)
    .flatMap(({ sources }) => sources.flatMap(({ specimens }) => specimens.flatMap(({ lot }) => (lot === undefined ? [] : [lot.id]))));
  return [
    ...[...parts, ...Object.keys(available)].filter((part) => !index.parts.has(part)).map((part): Issue => ({ code: 'unknown-part', severity: 'error', path: 'part', found: part, expected: 'the id of a part of the cabin' })),
    ...joints.filter((id) => !cabin.joints.some((joint) => joint.id === id)).map((id): Issue => ({ code: 'unknown-joint', severity: 'error', path: 'joint', found: id, expected: 'the id of a joint of the cabin' })),
    ...Object.entries(available).filter(([part]) => index.parts.has(part)).flatMap(([part, lots]) => lots.filter((lot) => !lotsOf(part).includes(lot))
      .map((lot): Issue => ({ code: 'unknown-lot', severity: 'error', path: `part ${part}`, found: lot, expected: 'the id of a lot of the part' }))),
  ];
}
