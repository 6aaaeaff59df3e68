import type { Cabin, Joint } from '../cabin/cabin.ts';
import { farthestPair, partGraph } from '../cabin/part-graph.ts';
import { formulaLabel } from '../colour/formula-label.ts';
import { colourQuestion } from './checks/colour.ts';
import type { JointInput } from './checks/joint-input.ts';
import { ruleFormula } from './checks/joint-input.ts';
import { evaluateColour } from './colour-evaluation.ts';
import type { ColourEvaluation } from './colour-evaluation.ts';
import { comparisonPhrase } from './colour-wording.ts';
import type { JudgeContext } from './judge-context.ts';
import { jointInput, jointRule, orderedSides } from './judge-joint.ts';
import type { JointResult, RunResult } from './judgement.ts';
import type { PartBasis } from './part-basis.ts';
import { sameRule } from './same-rule.ts';
import { certainty } from './wording.ts';

/**
 * Drift along paths of parts: the ends of a run against each other, by the rule of a sight line. Runs are those the user drew, and the
 * paths found by `pathsOfMatches()` whose ends no drawn run has. A run whose ends cannot be compared is left out.
 */
export function judgeRuns(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, paths: readonly (readonly string[])[]): readonly RunResult[] {
  const drawn = (context.cabin.runs ?? []).map((run) => ({ id: run.id, parts: run.parts }));
  const found = paths
    .filter((parts) => !drawn.some((run) => sameEnds(run.parts, parts)))
    .map((parts) => ({ id: undefined, parts }));
  return [...drawn, ...found].flatMap(({ id, parts }) => judgeRun(context, bases, id, parts) ?? []);
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

function judgeRun(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, id: string | undefined, parts: readonly string[]): RunResult | undefined {
  const first = parts[0];
  const last = parts.at(-1);
  if (first === undefined || last === undefined || first === last) return undefined;
  const between = (other: string): SeenTogether => seenTogether(context, bases, first, other);
  const ends = between(last);
  const { colour } = ends.input;
  if (typeof colour === 'string' || colour.indicative || ends.input.rule.colour.notJudged !== undefined) return undefined;
  const { worst, verdict, within } = ends.evaluation ?? {};
  if (worst === undefined || verdict === undefined || within === undefined) return undefined;
  const steps = parts.map((part) => (part === first ? 0
    : between(part).evaluation?.lights.find((light) => light.light === worst.light.light)?.value));
  const limit = worst.light.limit ?? worst.criterion.max ?? 0;
  const formula = ruleFormula(ends.input.rule);
  return {
    ...(id === undefined ? {} : { id }),
    parts, value: worst.light.value, limit, limitUse: worst.light.limitUse, light: worst.light.light, formula: formulaLabel(formula),
    verdict, steps: steps.map((step) => (Number.isFinite(step) ? step : undefined)),
    sentence: `Along ${parts.length} parts, ${comparisonPhrase(ends.input.names, worst.light, worst.criterion, formula)}; ${certainty(verdict, within, undefined, undefined)}.`,
  };
}

/** Two parts as a sight line, judged in colour where both have data. */
interface SeenTogether {
  readonly input: JointInput;
  readonly evaluation: ColourEvaluation | undefined;
}

/**
 * What was seen of two parts, by what they are judged on in colour: that is made anew whenever anything it rests on changes, so that
 * together with the rule it stands for all that this comes from.
 */
const seen = new WeakMap<object, WeakMap<object, SeenTogether>>();

function seenTogether(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, first: string, second: string): SeenTogether {
  const joint = sightline(first, second);
  const sides = orderedSides(joint, bases);
  const [standard, trial] = sides;
  if (standard.colour === undefined || trial.colour === undefined) return { input: jointInput(context, joint, bases).input, evaluation: undefined };
  const beside = seen.get(standard.colour) ?? new WeakMap<object, SeenTogether>();
  seen.set(standard.colour, beside);
  const before = beside.get(trial.colour);
  if (before !== undefined && before.input.sides[0] === standard && before.input.sides[1] === trial) return before;
  if (before !== undefined && sameRule(before.input.rule, jointRule(context, joint, sides))) {
    const carried: SeenTogether = { ...before, input: { ...before.input, sides } };
    beside.set(trial.colour, carried);
    return carried;
  }
  const { input } = jointInput(context, joint, bases);
  const made: SeenTogether = { input, evaluation: typeof input.colour === 'string' ? undefined : evaluateColour(input.colour, colourQuestion(input)) };
  beside.set(trial.colour, made);
  return made;
}

const sightline = (first: string, second: string): Joint =>
  ({ id: `${first}..${second}`, parts: [first, second], kind: 'sightline', reference: first, intent: { colour: 'match', gloss: 'free', texture: 'free' } });
