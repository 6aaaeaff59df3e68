import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgeOptions } from '../../harmony/judge.ts';
import type { Issue } from '../../issue.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { pairJudge } from '../model/pair-judge.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import { clashShare } from './clash-share.ts';
import type { ClashShare } from './clash-share.ts';
import { labelHarm } from './label-harm.ts';
import { largestMix } from './largest-mix.ts';
import { carryOverIssues, mixModel } from './mix-model.ts';
import type { MixVariable } from './mix-model.ts';
import { sharesAt } from './mix-problem.ts';
import type { MixProblem, MixTie } from './mix-problem.ts';
import { mixWords } from './mix-words.ts';

/** What one source does to a mix. */
export interface SourceHarm {
  readonly part: string;
  /** Cabins, by their ids, that have the part from this mix of sources: several for one that is carried over. */
  readonly cabins: readonly string[];
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
  /** Weight of it among all cabins: its yearly volume, where all state one. */
  readonly weight: number;
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
  /** Share of cabins with at least one clash over all of them. */
  readonly share: number;
  /** Parts that several cabins carry over, by their ids: what is mixed there is mixed in all of them. */
  readonly carried: readonly string[];
  /** Sources that may be dropped, the most harmful first; over all cabins. */
  readonly harm: readonly SourceHarm[];
  readonly largest: {
    /** Sources kept of each part; a part that several cabins carry over is there once. */
    readonly kept: readonly { readonly part: string; readonly cabins: readonly string[]; readonly sources: readonly string[] }[];
    readonly dropped: readonly { readonly part: string; readonly cabins: readonly string[]; readonly source: string }[];
    /** Joints that do not hold for certain whatever is kept. */
    readonly unavoidable: readonly { readonly cabin: string; readonly joint: string }[];
    readonly proved: boolean;
  };
  readonly words: readonly string[];
  readonly issues: readonly Issue[];
}

/**
 * What comes of running all approved sources at once: the share of cabins with at least one clash, the harm of each source and the largest
 * set that may be mixed freely. Sources of different parts are drawn independently, parts of a module together. Open joints clash by their
 * probability, each independently. Several cabins are colourways, each judged by its own book where `books` gives several: a part of one
 * id, marked as carried over in at least one of them and served by the same sources in all that have it, is one part, whose set of sources
 * must hold in every one. Cabins count by their volumes, or alike where one states none.
 */
export async function freeMix(
  cabins: readonly Cabin[], books: RuleBook | readonly RuleBook[], options: JudgeOptions & { readonly timeLimitS?: number } = {}, watch?: Watch,
): Promise<FreeMix> {
  const judges = cabins.map((cabin, index) => pairJudge(cabin, Array.isArray(books) ? (books as readonly RuleBook[])[index] : (books as RuleBook), options));
  const { problem, variables } = await mixModel(cabins, judges, watch);
  const carried = variables.filter((variable) => variable.cabins.length > 1).flatMap(({ parts }) => parts);
  const weights = volumeWeights(cabins);
  const certain: MixProblem = { ...problem, ties: problem.ties.map((tie) => ({ ...tie, clash: tie.clash.map((chance) => (chance >= 1 ? 1 : 0)) })) };
  const results: MixedCabin[] = cabins.map((cabin, index) => {
    const joints = problem.ties.filter((tie) => tie.cabin === index).map((tie) => ({ joint: tie.joint, share: meanClash(problem, tie) }));
    return {
      cabin: cabin.id, weight: weights[index], ...clashShare(problem, index),
      certainShare: clashShare(certain, index).share,
      expectedClashes: joints.reduce((sum, { share }) => sum + share, 0),
      joints: joints.filter(({ share }) => share > 0).sort((a, b) => b.share - a.share),
    };
  });
  const share = results.reduce((sum, result) => sum + result.weight * result.share, 0);
  const idsOf = ({ cabins: own }: MixVariable): readonly string[] => own.map((index) => cabins[index].id);
  const harm: SourceHarm[] = [];
  for (const [index, variable] of variables.entries()) {
    await step(watch, 0.6 + (0.3 * index) / variables.length, 'finding the harm of each source');
    for (const [label, found] of labelHarm(problem, weights, index, share).entries()) {
      variable.parts.forEach((part, place) => harm.push({ part, cabins: idsOf(variable), source: variable.alternatives[label][place].id, share: problem.shares[index][label], ...found }));
    }
  }
  harm.sort((a, b) => b.harm - a.harm);
  await step(watch, 0.95, 'finding the largest set that may be mixed freely');
  const largest = await largestMix(problem, options.timeLimitS ?? 60);
  const kept = variables.flatMap((variable, index) => variable.parts.map((part, place) =>
    ({ part, cabins: idsOf(variable), sources: [...new Set(largest.kept[index].map((label) => variable.alternatives[label][place].id))] })));
  const dropped = variables.flatMap((variable, index) => variable.parts.flatMap((part, place) => {
    const left = new Set(largest.kept[index].map((label) => variable.alternatives[label][place].id));
    return [...new Set(variable.alternatives.map((way) => way[place].id))].filter((source) => !left.has(source)).map((source) => ({ part, cabins: idsOf(variable), source }));
  }));
  const mix: Omit<FreeMix, 'words'> = {
    cabins: results, share, carried, harm, issues: [...sameIdIssues(cabins), ...carryOverIssues(cabins, new Set(carried))],
    largest: { kept, dropped, unavoidable: largest.unavoidable.map((index) => ({ cabin: cabins[problem.ties[index].cabin].id, joint: problem.ties[index].joint })), proved: largest.proved },
  };
  return { ...mix, words: mixWords(mix, cabins, judges, variables.some(({ alternatives }) => alternatives.length > 1)) };
}

/** Two colourways under one id cannot be told apart in what is said of them. */
function sameIdIssues(cabins: readonly Cabin[]): readonly Issue[] {
  return cabins.flatMap(({ id }, index): Issue[] => (cabins.findIndex((other) => other.id === id) === index ? []
    : [{ code: 'duplicate-id', severity: 'error', path: `cabin ${index + 1}`, found: id, expected: 'cabins of different ids', hint: 'Give each colourway an id of its own.' }]));
}

function volumeWeights(cabins: readonly Cabin[]): readonly number[] {
  const stated = cabins.map(({ volume }) => volume ?? 0);
  const sum = stated.every((volume) => volume > 0) ? stated.reduce((total, volume) => total + volume, 0) : 0;
  return stated.map((volume) => (sum > 0 ? volume / sum : 1 / cabins.length));
}

const meanClash = (problem: MixProblem, { cabin, first, second, clash }: MixTie): number => {
  const width = problem.shares[second].length;
  return clash.reduce((sum, chance, entry) => {
    const [a, b] = [Math.floor(entry / width), entry % width];
    const own = sharesAt(problem, cabin, first);
    const weight = first === second ? (a === b ? own[a] : 0) : own[a] * sharesAt(problem, cabin, second)[b];
    return sum + weight * chance;
  }, 0);
};
