import type { Cabin, Joint } from '../cabin/cabin.ts';
import { farthestPair, partGraph } from '../cabin/part-graph.ts';
import { formulaLabel } from '../colour/formula-label.ts';
import { criterionValue } from '../readings/criterion-test.ts';
import { colourQuestion } from './checks/colour.ts';
import type { JointInput } from './checks/joint-input.ts';
import { ruleFormula } from './checks/joint-input.ts';
import type { ColourPair } from './colour-pair.ts';
import { criterionName } from './colour-evaluation.ts';
import type { Pairing } from './colour-pairing.ts';
import type { JudgeContext } from './judge-context.ts';
import { jointInput, jointRule, orderedSides, worstPair } from './judge-joint.ts';
import type { CheckResult, JointResult, RunResult } from './judgement.ts';
import type { PartBasis } from './part-basis.ts';
import { sameRule } from './same-rule.ts';

/**
 * Drift along paths of parts: the ends of a run against each other in colour, by the rule of a sight line and by the very check that
 * joints get, so that a run is open for the same causes. Runs are those the user drew, and the paths found by `pathsOfMatches()`
 * whose ends no drawn run has. The direction in which a run was drawn orders its steps and plays no part in its verdict.
 */
export function judgeRuns(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, paths: readonly (readonly string[])[]): readonly RunResult[] {
  const drawn = (context.cabin.runs ?? []).map((run) => ({ id: run.id, parts: run.parts }));
  const found = paths
    .filter((parts) => !drawn.some((run) => sameEnds(run.parts, parts)))
    .map((parts) => ({ id: undefined, parts }));
  return [...drawn, ...found].map(({ id, parts }) => judgeRun(context, bases, id, parts));
}

/** The runs of before with those anew that touch one of some parts. */
export function runsAfter(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, before: readonly RunResult[], touched: ReadonlySet<string>): readonly RunResult[] {
  return before.map((run) => (run.parts.some((part) => touched.has(part)) ? judgeRun(context, bases, run.id, run.parts) : run));
}

const sameEnds = (first: readonly string[], second: readonly string[]): boolean =>
  [first[0], first.at(-1)].sort().join() === [second[0], second.at(-1)].sort().join();

/** In each zone, for every connected set of three or more parts held together by `match` joints, the way between the two that lie the most joints apart. */
export function pathsOfMatches(cabin: Cabin, results: readonly JointResult[]): readonly (readonly string[])[] {
  const graph = partGraph(cabin);
  const matching = new Set(results.filter((result) => result.intent.colour === 'match' && result.kind !== 'sightline').map((result) => result.id));
  const passes = (joint: Joint): boolean => matching.has(joint.id);
  return graph.zoneSets(passes).filter(({ parts }) => parts.length > 2).flatMap(({ parts }) => {
    const ends = farthestPair(parts, jointsApart(parts, (part) => graph.neighbours(part, passes)));
    const path = ends === undefined ? undefined : graph.shortestPath(ends[0], ends[1], passes, parts);
    return path === undefined ? [] : [path];
  });
}

/** How many joints lie between two of some parts, breadth first from each part once. */
function jointsApart(parts: readonly string[], neighbours: (part: string) => readonly string[]): (first: string, second: string) => number | undefined {
  const among = new Set(parts);
  const beside = new Map(parts.map((part) => [part, neighbours(part).filter((other) => among.has(other))]));
  const from = new Map<string, ReadonlyMap<string, number>>();
  const reach = (start: string): ReadonlyMap<string, number> => {
    const depths = new Map([[start, 0]]);
    for (const [part, depth] of depths) for (const next of beside.get(part) ?? []) if (!depths.has(next)) depths.set(next, depth + 1);
    return depths;
  };
  return (first, second) => {
    const depths = from.get(first) ?? reach(first);
    from.set(first, depths);
    return depths.get(second);
  };
}

function judgeRun(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, id: string | undefined, parts: readonly string[]): RunResult {
  const named = id === undefined ? {} : { id };
  const first = parts[0];
  const last = parts.at(-1);
  if (first === undefined || last === undefined || first === last) {
    return {
      ...named, parts, formula: context.book.formula, verdict: 'open', simple: 'open', cause: 'missing data', steps: parts.map(() => undefined), cautions: [],
      sentence: 'A run needs two ends: this one names one part alone.',
    };
  }
  const ends = seenTogether(context, bases, first, last);
  const check = checkOf(ends);
  const { value, limit, limitUse, light, criterion, uncertainty, withinProbability, cause, spotsNeeded, indicative, missingLights, cautions } = check;
  const known = { value, limit, limitUse: indicative === true ? undefined : limitUse, light, criterion, uncertainty, withinProbability, cause, spotsNeeded, indicative, missingLights };
  return {
    ...named, parts, formula: formulaLabel(ruleFormula(ends.input.rule)),
    ...Object.fromEntries(Object.entries(known).filter(([, entry]) => entry !== undefined)),
    verdict: check.verdict === 'holds' || check.verdict === 'clashes' ? check.verdict : 'open',
    simple: check.simple === 'holds' || check.simple === 'clashes' ? check.simple : 'open',
    cautions,
    steps: parts.map((part) => (part === first ? 0 : stepOf(seenTogether(context, bases, first, part), check))),
    sentence: `Along ${parts.length} parts, end against end. ${check.sentence}`,
  };
}

/** The leading criterion's value between the first part of a run and another one, under the leading light; its size where only that is limited. */
function stepOf({ input, pairing }: SeenTogether, { light: name, criterion: leading = 'ΔE' }: CheckResult): number | undefined {
  const pair: ColourPair | string = pairing.colour;
  if (typeof pair === 'string' || pair.indicative) return undefined;
  const light = pair.lights.find((candidate) => candidate.light === name);
  const asked = colourQuestion(input).demands.find((demand) => demand.light === name)?.criteria.find((one) => criterionName(one) === leading);
  if (light === undefined || asked === undefined) return undefined;
  const value = criterionValue(asked, light.standard, light.trial);
  const sized = asked.kind === 'component' && asked.min !== undefined && asked.max === -asked.min;
  return Number.isFinite(value) ? sized ? Math.abs(value) : value : undefined;
}

/** Two parts as a sight line, made ready to be judged in colour. */
interface SeenTogether {
  readonly input: JointInput;
  readonly pairing: Pairing;
}

/**
 * What was seen of two parts, by what they are judged on in colour: that is made anew whenever anything it rests on changes, so that
 * together with the rule it stands for all that this comes from.
 */
const seen = new WeakMap<object, WeakMap<object, SeenTogether>>();
/** The check of two ends; it stands as long as the pairing that it was made from. */
const judgedEnds = new WeakMap<Pairing, CheckResult>();

function checkOf({ input, pairing }: SeenTogether): CheckResult {
  const made = judgedEnds.get(pairing) ?? worstPair(input, pairing);
  judgedEnds.set(pairing, made);
  return made;
}

function seenTogether(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, first: string, second: string): SeenTogether {
  const joint = sightline(first, second);
  const sides = orderedSides(joint, bases);
  const [standard, trial] = sides;
  if (standard.colour === undefined || trial.colour === undefined) return jointInput(context, joint, bases);
  const beside = seen.get(standard.colour) ?? new WeakMap<object, SeenTogether>();
  seen.set(standard.colour, beside);
  const before = beside.get(trial.colour);
  if (before !== undefined && before.input.sides[0] === standard && before.input.sides[1] === trial) return before;
  if (before !== undefined && sameRule(before.input.rule, jointRule(context, joint, sides))) {
    const carried: SeenTogether = { ...before, input: { ...before.input, sides } };
    beside.set(trial.colour, carried);
    return carried;
  }
  const made = jointInput(context, joint, bases);
  beside.set(trial.colour, made);
  return made;
}

const sightline = (first: string, second: string): Joint =>
  ({ id: `${first}..${second}`, parts: [first, second], kind: 'sightline', intent: { colour: 'match', gloss: 'free', texture: 'free' } });
