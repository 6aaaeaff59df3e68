import type { Joint } from '../cabin/cabin.ts';
import { farthestPair, partGraph } from '../cabin/part-graph.ts';
import { formulaLabel } from '../colour/formula-label.ts';
import { colourQuestion } from './checks/colour.ts';
import type { JointInput } from './checks/joint-input.ts';
import { ruleFormula } from './checks/joint-input.ts';
import { evaluateColour } from './colour-evaluation.ts';
import { comparisonPhrase } from './colour-wording.ts';
import type { JudgeContext } from './judge-context.ts';
import type { JudgedJoint } from './judge-joint.ts';
import { jointInput } from './judge-joint.ts';
import type { JointResult, RunResult } from './judgement.ts';
import type { PartBasis } from './part-basis.ts';
import { certainty } from './wording.ts';

/**
 * Drift along paths of parts: the ends of a run against each other, by the rule of a sight line. Runs are those the user drew, and in each
 * zone, for every connected set of three or more parts held together by `match` joints, the way between the two that lie
 * the most joints apart. A run whose ends cannot be compared is left out.
 */
export function judgeRuns(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, joints: readonly JudgedJoint[]): readonly RunResult[] {
  const drawn = (context.cabin.runs ?? []).map((run) => ({ id: run.id, parts: run.parts }));
  const found = pathsOfMatches(context, joints.map(({ result }) => result))
    .filter((parts) => !drawn.some((run) => sameEnds(run.parts, parts)))
    .map((parts) => ({ id: undefined, parts }));
  return [...drawn, ...found].flatMap(({ id, parts }) => judgeRun(context, bases, id, parts) ?? []);
}

const sameEnds = (first: readonly string[], second: readonly string[]): boolean =>
  [first[0], first.at(-1)].sort().join() === [second[0], second.at(-1)].sort().join();

function pathsOfMatches(context: JudgeContext, results: readonly JointResult[]): readonly (readonly string[])[] {
  const graph = partGraph(context.cabin);
  const matching = new Set(results.filter((result) => result.intent.colour === 'match' && result.kind !== 'sightline').map((result) => result.id));
  const passes = (joint: Joint): boolean => matching.has(joint.id);
  return graph.zoneSets(passes).filter(({ parts }) => parts.length > 2).flatMap(({ parts }) => {
    const ends = farthestPair(parts, (first, second) => graph.shortestPath(first, second, passes, parts)?.length);
    const path = ends === undefined ? undefined : graph.shortestPath(ends[0], ends[1], passes, parts);
    return path === undefined ? [] : [path];
  });
}

function judgeRun(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, id: string | undefined, parts: readonly string[]): RunResult | undefined {
  const first = parts[0];
  const last = parts.at(-1);
  if (first === undefined || last === undefined || first === last) return undefined;
  const between = (other: string): JointInput => jointInput(context, sightline(first, other), bases).input;
  const ends = between(last);
  if (typeof ends.colour === 'string' || ends.colour.indicative || ends.rule.colour.notJudged !== undefined) return undefined;
  const { worst, verdict, within } = evaluateColour(ends.colour, colourQuestion(ends));
  if (worst === undefined) return undefined;
  const steps = parts.map((part) => {
    if (part === first) return 0;
    const input = between(part);
    if (typeof input.colour === 'string') return Number.NaN;
    return evaluateColour(input.colour, colourQuestion(input)).lights.find((light) => light.light === worst.light.light)?.value ?? Number.NaN;
  });
  const limit = worst.light.limit ?? worst.criterion.max ?? 0;
  return {
    ...(id === undefined ? {} : { id }),
    parts, value: worst.light.value, limit, limitUse: worst.light.limitUse, light: worst.light.light, formula: formulaLabel(ruleFormula(ends.rule)),
    verdict, steps: steps.map((step) => (Number.isFinite(step) ? step : undefined)),
    sentence: `Along ${parts.length} parts, ${comparisonPhrase(ends.names, worst.light, worst.criterion, ruleFormula(ends.rule))}; ${certainty(verdict, within, undefined, undefined)}.`,
  };
}

const sightline = (first: string, second: string): Joint =>
  ({ id: `${first}..${second}`, parts: [first, second], kind: 'sightline', reference: first, intent: { colour: 'match', gloss: 'free', texture: 'free' } });
