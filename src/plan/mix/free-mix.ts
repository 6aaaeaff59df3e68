import type { Cabin, Part, Source } from '../../cabin/cabin.ts';
import type { JudgeOptions } from '../../harmony/judge.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { planNames } from '../choose/plan-words.ts';
import { combinations, partGroups } from '../model/groups.ts';
import { pairJudge } from '../model/pair-judge.ts';
import type { PairJudge } from '../model/pair-judge.ts';
import { clashShare as jointClash } from '../model/plan-model.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import { clashShare } from './clash-share.ts';
import type { ClashShare } from './clash-share.ts';
import { largestMix } from './largest-mix.ts';
import type { MixProblem, MixTie } from './mix-problem.ts';

/** What one source does to a mix. */
export interface SourceHarm {
  readonly part: string;
  readonly source: string;
  readonly share: number;
  /** Share of cabins with a clash among those that have it, and if it ran no more. */
  readonly with: number;
  readonly without: number;
  /** What dropping it would save. */
  readonly harm: number;
}

export interface MixedCabin extends ClashShare {
  readonly cabin: string;
  /** The same with joints that clash for certain only, open ones taken to hold. */
  readonly certainShare: number;
  /** Clashes of a cabin on average. */
  readonly expectedClashes: number;
  /** Joints that clash in some cabins, the most often first. */
  readonly joints: readonly { readonly joint: string; readonly share: number }[];
}

/** Several sources run at once: what comes of it. Plain data. */
export interface FreeMix {
  readonly cabins: readonly MixedCabin[];
  /** Sources that may be dropped, the most harmful first; by the sum over all cabins. */
  readonly harm: readonly SourceHarm[];
  readonly largest: {
    /** Sources kept by part; carry-over parts that several cabins share are kept once. */
    readonly kept: Readonly<Record<string, readonly string[]>>;
    readonly dropped: readonly { readonly part: string; readonly source: string }[];
    /** Joints that do not hold for certain whatever is kept. */
    readonly unavoidable: readonly string[];
    readonly proved: boolean;
  };
  readonly words: readonly string[];
}

interface Mixed {
  readonly problem: MixProblem;
  readonly variables: readonly { readonly parts: readonly string[]; readonly alternatives: readonly (readonly Source[])[] }[];
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

/**
 * What comes of running all approved sources at once: the share of cabins with at least one clash, the harm of each source and the largest
 * set that may be mixed freely. Sources of different parts are drawn independently, parts of a module together. Open joints clash by their
 * probability, each independently. Several cabins (colourways): parts carried over between them, frozen in one and with the same
 * sources, are one choice.
 */
export async function freeMix(cabins: readonly Cabin[], book: RuleBook, options: JudgeOptions & { readonly timeLimitS?: number } = {}, watch?: Watch): Promise<FreeMix> {
  const judges = cabins.map((cabin) => pairJudge(cabin, book, options));
  const mixed = await mixOf(cabins, judges, watch);
  const { problem, variables } = mixed;
  const certain: MixProblem = { ...problem, ties: problem.ties.map((tie) => ({ ...tie, clash: tie.clash.map((chance) => (chance >= 1 ? 1 : 0)) })) };
  const results: MixedCabin[] = cabins.map((cabin, index) => {
    const joints = problem.ties.filter((tie) => tie.cabin === index).map((tie) => ({ joint: tie.joint, share: meanClash(problem, tie) }));
    return {
      cabin: cabin.id, ...clashShare(problem, index),
      certainShare: clashShare(certain, index).share,
      expectedClashes: joints.reduce((sum, { share }) => sum + share, 0),
      joints: joints.filter(({ share }) => share > 0).sort((a, b) => b.share - a.share),
    };
  });
  const total = (left: ReadonlyMap<number, readonly number[]>): number =>
    cabins.reduce((sum, _, index) => sum + clashShare(problem, index, left).share, 0) / Math.max(1, cabins.length);
  const whole = results.reduce((sum, { share }) => sum + share, 0) / Math.max(1, cabins.length);
  const harm: SourceHarm[] = [];
  for (const [index, { parts, alternatives }] of variables.entries()) {
    await step(watch, 0.6 + (0.3 * index) / variables.length, 'finding the harm of each source');
    if (alternatives.length < 2) continue;
    alternatives.forEach((way, label) => {
      const without = total(new Map([[index, alternatives.map((_, other) => other).filter((other) => other !== label)]]));
      parts.forEach((part, place) => harm.push({
        part, source: way[place].id, share: problem.shares[index][label], with: total(new Map([[index, [label]]])), without, harm: whole - without,
      }));
    });
  }
  harm.sort((a, b) => b.harm - a.harm);
  await step(watch, 0.95, 'finding the largest set that may be mixed freely');
  const largest = await largestMix(problem, options.timeLimitS ?? 60);
  const kept = Object.fromEntries(variables.flatMap(({ parts, alternatives }, index) =>
    parts.map((part, place) => [part, [...new Set(largest.kept[index].map((label) => alternatives[label][place].id))]] as const)));
  const dropped = variables.flatMap(({ parts, alternatives }) => parts.flatMap((part, place) =>
    [...new Set(alternatives.map((way) => way[place].id))].filter((source) => !kept[part].includes(source)).map((source) => ({ part, source }))));
  const mix: Omit<FreeMix, 'words'> = {
    cabins: results, harm,
    largest: { kept, dropped, unavoidable: largest.unavoidable.map((index) => problem.ties[index].joint), proved: largest.proved },
  };
  return { ...mix, words: mixWords(mix, cabins, judges, variables.some(({ alternatives }) => alternatives.length > 1)) };
}

const meanClash = (problem: MixProblem, { first, second, clash }: MixTie): number => {
  const width = problem.shares[second].length;
  return clash.reduce((sum, chance, entry) => {
    const [a, b] = [Math.floor(entry / width), entry % width];
    const weight = first === second ? (a === b ? problem.shares[first][a] : 0) : problem.shares[first][a] * problem.shares[second][b];
    return sum + weight * chance;
  }, 0);
};

async function mixOf(cabins: readonly Cabin[], judges: readonly PairJudge[], watch: Watch | undefined): Promise<Mixed> {
  const variables: { parts: readonly string[]; alternatives: readonly (readonly Source[])[] }[] = [];
  const shares: Float64Array[] = [];
  const known = new Map<string, number>();
  const ties: MixTie[] = [];
  for (const [index, cabin] of cabins.entries()) {
    const places = new Map<string, { readonly variable: number; readonly place: number }>();
    for (const group of partGroups(cabin, [])) {
      const parts = group.parts.map((id) => judges[index].context.index.parts.get(id)!);
      const running = new Map(parts.map((part) => [part.id, runningSources(part).map(({ source, share }) => ({ source: source.id, supplier: source.supplier, own: source, share }))]));
      const ways = combinations(group, running, 5000) ?? [];
      const usable = ways.length > 0 ? ways : [parts.map((part) => running.get(part.id)![0])];
      const key = JSON.stringify([group.parts, usable.map((way) => way.map(({ source }) => source))]);
      const carried = parts.every((part) => cabins.some((other) => other.parts.some((each) => each.id === part.id && each.frozen === true)));
      let variable = carried ? known.get(key) : undefined;
      if (variable === undefined) {
        variable = variables.push({ parts: group.parts.map((id) => (carried || cabins.length === 1 ? id : `${cabin.id}/${id}`)), alternatives: usable.map((way) => way.map(({ own }) => own)) }) - 1;
        const weights = usable.map((way) => way.reduce((sum, { share }) => sum + share, 0));
        const sum = weights.reduce((total, weight) => total + weight, 0);
        shares.push(Float64Array.from(weights, (weight) => (sum > 0 ? weight / sum : 1 / weights.length)));
        if (carried) known.set(key, variable);
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
  return { problem: { shares, ties }, variables };
}

const perCent = (share: number): string => (share > 0 && share < 0.001 ? 'under 0.1 %' : `${Number((100 * share).toFixed(1))} %`);

function mixWords(mix: Omit<FreeMix, 'words'>, cabins: readonly Cabin[], judges: readonly PairJudge[], mixes: boolean): readonly string[] {
  const names = cabins.map((cabin, index) => planNames({ cabin, judge: judges[index], currency: '' }));
  if (cabins.every((cabin) => cabin.parts.length === 0)) return ['There are no parts: nothing is mixed.'];
  const worst = mix.harm[0];
  const named = (part: string, source: string): string => {
    const [own, id] = part.includes('/') ? [cabins.findIndex((cabin) => part.startsWith(`${cabin.id}/`)), part.slice(part.indexOf('/') + 1)] : [0, part];
    return names[Math.max(0, own)].source(id, source);
  };
  return [
    ...mix.cabins.map((result, index) => `${perCent(result.share)} of the cabins ${cabins[index].name}${cabins.length > 1 && cabins[index].colourway !== undefined ? ` (${cabins[index].colourway})` : ''} have at least one clash `
      + `${result.draws === 0 ? '(exact, over all combinations)' : `(simulated over ${result.draws} cabins, standard error ${perCent(result.error)})`}; ${Number(result.expectedClashes.toFixed(2))} clashes a cabin on average. Counting only joints that clash for certain: ${perCent(result.certainShare)}.`),
    ...(mixes ? [] : ['No part has more than one approved source: nothing is mixed.']),
    ...(worst !== undefined && worst.harm > 0 ? [`${named(worst.part, worst.source)} does most harm: without it the share would be ${perCent(worst.without)}.`] : []),
    mix.largest.dropped.length === 0
      ? `All approved sources may be mixed freely${mix.largest.unavoidable.length > 0 ? `, but for ${mix.largest.unavoidable.length} joints that do not hold for certain whatever runs` : ''}.`
      : `Mixed freely may be all but ${mix.largest.dropped.map(({ part, source }) => named(part, source)).join(', ')}${mix.largest.unavoidable.length > 0 ? `; ${mix.largest.unavoidable.length} joints do not hold for certain whatever runs` : ''}.`,
  ];
}
