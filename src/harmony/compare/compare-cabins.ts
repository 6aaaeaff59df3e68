import type { Joint } from '../../cabin/cabin.ts';
import { partNames } from '../names.ts';
import type { JointResult } from '../judgement.ts';
import type { JointChange } from './joint-change.ts';
import { jointChange } from './joint-change.ts';
import type { JudgedState, StateName } from './judged-state.ts';
import { stateName, unlikeStates } from './judged-state.ts';
import type { PartChange } from './part-change.ts';
import { partChanges } from './part-change.ts';

/** How many joints changed in which way, and which begin or cease to clash without a decision. */
export interface ComparisonSummary {
  /** Joints that are there in both. */
  readonly both: number;
  readonly worseVerdict: number;
  readonly betterVerdict: number;
  readonly worse: number;
  readonly better: number;
  readonly same: number;
  readonly new: number;
  readonly gone: number;
  /** Ids of joints that clash without a decision now and did not before, new joints included. */
  readonly nowClashing: readonly string[];
  readonly noLongerClashing: readonly string[];
}

/** Two judged states joint by joint: plain data. */
export interface CabinComparison {
  readonly before: StateName;
  readonly after: StateName;
  /** What keeps the figures of the two from being of one measure. */
  readonly notes: readonly string[];
  readonly summary: ComparisonSummary;
  /** What became worse first, what stayed as it was last. */
  readonly joints: readonly JointChange[];
  readonly parts: readonly PartChange[];
}

export interface CompareOptions {
  /** Only the joints that this lets pass, by id. */
  readonly only?: (joint: string) => boolean;
  /** The same of parts. */
  readonly onlyParts?: (part: string) => boolean;
  /** Further notes. */
  readonly notes?: readonly string[];
}

/**
 * Compares two judged states of a cabin, or two cabins: before and after a change of supplier, two build phases, two stages. Joints are
 * matched by id, those left over by the two parts that meet and the kind of joint; parts are matched by id. Changes are after minus before.
 */
export function compareCabins(before: JudgedState, after: JudgedState, { only = () => true, onlyParts = () => true, notes = [] }: CompareOptions = {}): CabinComparison {
  const [then, now] = [resultsOf(before, only), resultsOf(after, only)];
  const names = [partNames(before.cabin.parts), partNames(after.cabin.parts)] as const;
  const named = (result: JointResult, state: 0 | 1): readonly [string, string] =>
    [names[state].get(result.standard) ?? result.standard, names[state].get(result.trial) ?? result.trial];
  const pairs = matched(before.cabin.joints, then, now);
  const matchedBefore = new Set(pairs.values());
  const joints = [
    ...[...now.values()].map((result) => jointChange(then.get(pairs.get(result.id) ?? ''), result, named(result, 1))),
    ...[...then.values()].filter(({ id }) => !matchedBefore.has(id)).map((result) => jointChange(result, undefined, named(result, 0))),
  ].map((change, place) => ({ change, place }));
  joints.sort((first, second) => rank(first.change) - rank(second.change) || weight(second.change) - weight(first.change) || first.place - second.place);
  const changes = joints.map(({ change }) => change);
  const states = [stateName(before), stateName(after)] as const;
  return { before: states[0], after: states[1], notes: [...unlikeStates(...states), ...notes], summary: summarised(changes), joints: changes, parts: partChanges(before, after).filter(({ part }) => onlyParts(part)) };
}

const resultsOf = ({ judgement }: JudgedState, only: (joint: string) => boolean): Map<string, JointResult> =>
  new Map(judgement.joints.filter(({ id }) => only(id)).map((result) => [result.id, result]));

/** Ids before by ids after. */
function matched(jointsBefore: readonly Joint[], then: ReadonlyMap<string, JointResult>, now: ReadonlyMap<string, JointResult>): ReadonlyMap<string, string> {
  const pairs = new Map([...now.keys()].filter((id) => then.has(id)).map((id) => [id, id]));
  const key = ({ parts, kind }: Pick<Joint, 'parts' | 'kind'>): string => JSON.stringify([...parts].sort().concat(kind));
  const left = new Map<string, string[]>();
  for (const joint of jointsBefore) if (then.has(joint.id) && !pairs.has(joint.id)) left.set(key(joint), [...(left.get(key(joint)) ?? []), joint.id]);
  for (const result of now.values()) {
    const id = pairs.has(result.id) ? undefined : left.get(key(result))?.shift();
    if (id !== undefined) pairs.set(result.id, id);
  }
  return pairs;
}

const clashesOpenly = (side: JointChange['before']): boolean => side?.verdict === 'clashes' && !side.accepted;

/** Worse verdicts, new clashes, worse values, better verdicts, better values, new, gone, as it was. */
function rank({ kind, worse, after }: JointChange): number {
  if (kind === 'verdict') return worse ? 0 : 3;
  if (kind === 'new') return clashesOpenly(after) ? 1 : 5;
  return { worse: 2, better: 4, gone: 6, same: 7 }[kind];
}

/** Within a rank: how much more or less of the limit is used, else how much of it. */
const weight = ({ limitUseChange, after, before }: JointChange): number => (limitUseChange !== undefined ? Math.abs(limitUseChange) : (after ?? before)?.limitUse ?? 0);

function summarised(changes: readonly JointChange[]): ComparisonSummary {
  const count = (holds: (change: JointChange) => boolean): number => changes.filter(holds).length;
  const ids = (holds: (change: JointChange) => boolean): string[] => changes.filter(holds).map(({ id }) => id);
  return {
    both: count(({ before, after }) => before !== undefined && after !== undefined),
    worseVerdict: count(({ kind, worse }) => kind === 'verdict' && worse), betterVerdict: count(({ kind, worse }) => kind === 'verdict' && !worse),
    worse: count(({ kind }) => kind === 'worse'), better: count(({ kind }) => kind === 'better'), same: count(({ kind }) => kind === 'same'),
    new: count(({ kind }) => kind === 'new'), gone: count(({ kind }) => kind === 'gone'),
    nowClashing: ids(({ before, after }) => clashesOpenly(after) && !clashesOpenly(before)),
    noLongerClashing: ids(({ before, after }) => clashesOpenly(before) && !clashesOpenly(after)),
  };
}
