import type { Cabin, Part, Source } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';
import { combinations, partGroups } from '../model/groups.ts';
import type { PairJudge } from '../model/pair-judge.ts';
import { clashShare as jointClash } from '../model/plan-model.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { MixProblem, MixTie } from './mix-problem.ts';

/** Parts whose sources are mixed as one, with the ways to serve them. */
export interface MixVariable {
  readonly parts: readonly string[];
  /** Positions of the cabins that have it. */
  readonly cabins: readonly number[];
  readonly alternatives: readonly (readonly Source[])[];
}

/** Cabins as a problem of mixing, with the way back from its numbers to parts and sources. */
export interface MixModel {
  readonly problem: MixProblem;
  readonly variables: readonly MixVariable[];
}

/** Sources that run: approved or in series, by their stated shares of the volume, the rest of it spread evenly; all of a part where none is approved. */
export function runningSources(part: Part): readonly { readonly source: Source; readonly share: number }[] {
  const approved = part.sources.filter((source) => source.status !== 'candidate');
  const running = approved.length > 0 ? approved : part.sources;
  const stated = running.reduce((sum, source) => sum + (source.share ?? 0), 0);
  const silent = running.filter((source) => source.share === undefined).length;
  const rest = silent === 0 ? 0 : Math.max(0, 1 - stated) / silent;
  const total = stated + rest * silent;
  return running.map((source) => ({ source, share: total > 0 ? (source.share ?? rest) / total : 1 / running.length }));
}

/** Makes the problem of cabins that share what they carry over: every joint judged under every pair of sources that may meet in it. */
export async function mixModel(cabins: readonly Cabin[], judges: readonly PairJudge[], watch: Watch | undefined): Promise<MixModel> {
  const variables: { readonly parts: readonly string[]; readonly cabins: number[]; readonly alternatives: readonly (readonly Source[])[] }[] = [];
  const shares: Float64Array[] = [];
  const sharesIn = cabins.map(() => new Map<number, Float64Array>());
  const known = new Map<string, number>();
  const ties: MixTie[] = [];
  for (const [index, cabin] of cabins.entries()) {
    const places = new Map<string, { readonly variable: number; readonly place: number }>();
    for (const group of partGroups(cabin, [])) {
      const parts = group.parts.map((id) => judges[index].context.index.parts.get(id)!);
      const running = new Map(parts.map((part) => [part.id, runningSources(part).map(({ source, share }) => ({ source: source.id, supplier: source.supplier, own: source, share }))]));
      const ways = combinations(group, running, 5000) ?? [];
      const usable = ways.length > 0 ? ways : [parts.map((part) => running.get(part.id)![0])];
      const named = (way: readonly { readonly source: string }[]): string => JSON.stringify(way.map(({ source }) => source));
      const carried = cabins.length > 1 && parts.every((part) => cabins.some((other) => other.parts.some((each) => each.id === part.id && each.frozen === true)));
      // The order in which a document lists its sources says nothing.
      const ordered = carried ? [...usable].sort((a, b) => (named(a) < named(b) ? -1 : 1)) : usable;
      const key = JSON.stringify([group.parts, ordered.map(named)]);
      const weights = ordered.map((way) => way.reduce((sum, { share }) => sum + share, 0));
      const sum = weights.reduce((total, weight) => total + weight, 0);
      const own = Float64Array.from(weights, (weight) => (sum > 0 ? weight / sum : 1 / weights.length));
      let variable = carried ? known.get(key) : undefined;
      if (variable === undefined) {
        variable = variables.push({ parts: group.parts, cabins: [index], alternatives: ordered.map((way) => way.map(({ own: source }) => source)) }) - 1;
        shares.push(own);
        if (carried) known.set(key, variable);
      } else {
        variables[variable].cabins.push(index);
        sharesIn[index].set(variable, own);
      }
      const made = variable;
      group.parts.forEach((part, place) => places.set(part, { variable: made, place }));
    }
    for (const [position, joint] of cabin.joints.entries()) {
      await step(watch, (0.6 * (index + position / cabin.joints.length)) / cabins.length, 'judging joints under every pair of sources');
      const [a, b] = joint.parts.map((part) => places.get(part)!);
      const [rows, columns] = [variables[a.variable].alternatives, variables[b.variable].alternatives];
      const same = a.variable === b.variable;
      const verdicts = rows.flatMap((row, r) => columns.map((column, c) =>
        (same && r !== c ? undefined : judges[index].at(joint, row[a.place].id, column[b.place].id))));
      ties.push({
        joint: joint.id, cabin: index, first: a.variable, second: b.variable,
        clash: Float64Array.from(verdicts, (verdict) => (verdict === undefined ? 0 : jointClash(verdict))),
        uncertain: Uint8Array.from(verdicts, (verdict) => (verdict === undefined || verdict.verdict === 'holds' || verdict.accepted ? 0 : 1)),
      });
    }
  }
  return { problem: { shares, sharesIn, ties }, variables };
}

/** Parts that are marked as carried over and yet served differently: they are mixed apart, which a reader should know. */
export function carryOverIssues(cabins: readonly Cabin[], carried: ReadonlySet<string>): readonly Issue[] {
  const marked = new Set(cabins.flatMap((cabin) => cabin.parts.filter((part) => part.frozen === true).map(({ id }) => id)));
  return [...marked].filter((id) => !carried.has(id) && cabins.filter((cabin) => cabin.parts.some((part) => part.id === id)).length > 1).map((id): Issue => ({
    code: 'carry-over-differs', severity: 'warning', path: `part ${id}`, found: 'other approved sources or another module in one of the cabins', expected: 'the same in all that carry it over',
    hint: 'It is mixed in each cabin by itself.',
  }));
}
