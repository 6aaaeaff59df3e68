import { partOfWork, step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { ApportionLimit } from './apportion-problem.ts';
import { evenRadii } from './even-radii.ts';
import { failingShare, largestAlone, largestTogether, shareError } from './failing-share.ts';
import type { ScatteredJoint } from './limit-walls.ts';
import { glossFailing, largestGlossSd } from './gloss-scatter.ts';
import { growthOf } from './grow-evenly.ts';
import type { Grown, Growing, Stop } from './grow-evenly.ts';
import type { Fineness } from './scatter-directions.ts';
import type { StatisticalLaw } from './statistical-law.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';
import type { LimitedTerm } from './worst-case-radii.ts';

/** The colour of a joint and the two parts that it hangs on. */
export interface ColourJoint extends ScatteredJoint {
  readonly joint: number;
  readonly items: readonly [number, number];
}

export interface SquaresInput {
  readonly law: StatisticalLaw;
  readonly shares: readonly number[];
  readonly most: readonly number[];
  readonly colour: readonly ColourJoint[];
  readonly gloss: readonly ApportionLimit[];
}

export interface BySquares {
  readonly radii: readonly number[];
  readonly bands: readonly number[];
  /** Joints that hold a radius, or a band, where it is, the tightest first. */
  readonly bottlenecks: readonly number[];
  readonly glossBottlenecks: readonly number[];
  /** Share of the cabins in which each joint is outside its limits, as reckoned: by the joint's number. */
  readonly reckoned: ReadonlyMap<number, number>;
}

/** The joints whose colour can hold on target, from their terms. */
export function colourJoints(terms: readonly LimitedTerm[]): readonly ColourJoint[] {
  const joints = new Map<number, { readonly own: LimitedTerm; readonly terms: ToleranceTerm[] }>();
  const broken = new Set(terms.filter((own) => own.broken).map(({ term }) => term.joint));
  for (const own of terms) {
    const { joint } = own.term;
    if (broken.has(joint)) continue;
    const known = joints.get(joint) ?? { own, terms: [] };
    known.terms.push(own.term);
    joints.set(joint, known);
  }
  return [...joints].map(([joint, { own: { items, shapes }, terms: all }]) => ({ joint, items, shapes, terms: all }));
}

/**
 * The largest and most even tolerances of parts that are normal about their targets, such that every joint is outside its limits in no more than the
 * share of cabins that the law allows it: colour under all lights and gloss together, which scatter independently. Bands are laid out first with half of what a
 * joint is allowed, then radii with all that its bands leave, then bands with all that its radii leave.
 */
export async function radiiBySquares({ law, shares, most, colour, gloss }: SquaresInput, watch?: Watch): Promise<BySquares> {
  const inColour = new Set(colour.map(({ joint }) => joint));
  const half = 1 - Math.sqrt(law.confidence);
  const glossOf = new Map(gloss.map((limit) => [limit.joint, limit]));
  const bandsWithin = (allowed: (joint: number) => number): ReturnType<typeof evenRadii> => evenRadii({
    shares, most: shares.map(() => Infinity),
    // What a normal difference is allowed is a deviation, and deviations add by squares.
    limits: gloss.map((limit) => ({ ...limit, offset: 0, limit: law.bandSds * largestGlossSd(limit, allowed(limit.joint)) })),
  }, 'statistical');
  const first = bandsWithin((joint) => (inColour.has(joint) ? half : 1 - law.confidence));
  const glossFails = (joint: number, bands: readonly number[]): number => {
    const limit = glossOf.get(joint);
    return limit === undefined ? 0 : glossFailing(limit, Math.hypot(...limit.items.map((item) => bands[item])) / law.bandSds);
  };
  const allowedColour = colour.map(({ joint }) => left(law, glossFails(joint, first.radii)));
  const stops: Stop[] = [];
  for (const [index, joint] of colour.entries()) {
    if (index % 20 === 0) await step(partOfWork(watch, 0, 0.3), index / colour.length, 'reckoning how often joints fail');
    stops.push(stopOf(joint, allowedColour[index] / (1 + shareError), { law, shares, most }));
  }
  const grown = await watchedGrowth({ shares, most, stops }, partOfWork(watch, 0.3, 0.8));
  const failing = new Map<number, number>();
  for (const [index, joint] of colour.entries()) {
    if (index % 20 === 0) await step(partOfWork(watch, 0.8, 1), index / colour.length, 'reckoning how often joints fail');
    failing.set(joint.joint, shareOf(joint, [grown.radii[joint.items[0]] / law.radiusSds, grown.radii[joint.items[1]] / law.radiusSds], 1 - law.confidence));
  }
  const last = bandsWithin((joint) => left(law, (failing.get(joint) ?? 0) * (1 + shareError)));
  for (const { joint } of gloss) failing.set(joint, 1 - (1 - (failing.get(joint) ?? 0)) * (1 - glossFails(joint, last.radii)));
  return {
    radii: grown.radii, bands: last.radii, bottlenecks: grown.bottlenecks.map((index) => colour[index].joint), glossBottlenecks: last.bottlenecks.map((index) => gloss[index].joint), reckoned: failing,
  };
}

/** By few directions where that is less than the error that many are stated to have, in parts of what is allowed. */
function shareOf(joint: ColourJoint, sds: readonly [number, number], allowed: number): number {
  const few = failingShare(joint, sds, 'coarse');
  return few <= shareError * allowed ? few : failingShare(joint, sds);
}

async function watchedGrowth(growing: Growing, watch: Watch | undefined): Promise<Grown> {
  const growth = growthOf(growing);
  for (;;) {
    const next = growth.next();
    if (next.done === true) return next.value;
    await step(watch, next.value, 'making tolerances even');
  }
}

/** What one of two independent ways to fail may still take where the other fails so often. */
const left = ({ confidence }: StatisticalLaw, taken: number): number => Math.max(0, 1 - confidence / (1 - taken));

/** Where the growth of two parts ends at the colour of their joint. */
function stopOf(joint: ColourJoint, allowed: number, { law, shares, most }: Pick<SquaresInput, 'law' | 'shares' | 'most'>): Stop {
  const { items } = joint;
  const own = items.map((item) => shares[item] / law.radiusSds) as unknown as readonly [number, number];
  const cap = Math.max(...items.map((item) => most[item] / shares[item]));
  const rough = largestTogether(joint, own, allowed, cap, 'coarse');
  let together: number | undefined;
  const levelOf = (settled: ReadonlyMap<number, number>, fineness: Fineness): { readonly level: number; readonly most: number } => {
    const radii = items.map((item) => settled.get(item));
    if (radii[0] === undefined && radii[1] === undefined) {
      return { level: fineness === 'coarse' ? rough : together ??= largestTogether(joint, own, allowed, cap, 'fine'), most: cap };
    }
    const side = radii[0] === undefined ? 0 : 1;
    const other = radii[1 - side]! / law.radiusSds;
    const largest = (most[items[side]] / shares[items[side]]) * own[side];
    // By squares and with both sides alike: near enough to begin at.
    const guess = Math.sqrt(Math.max(0, (rough * own[0]) ** 2 + (rough * own[1]) ** 2 - other ** 2));
    return { level: largestAlone(joint, side, other, allowed, largest, guess, fineness) / own[side], most: largest / own[side] };
  };
  return {
    items,
    levelOf: (settled) => {
      const { level, most: end } = levelOf(settled, 'fine');
      return level >= end ? Infinity : level;
    },
    atLeast: (settled) => roughly * levelOf(settled, 'coarse').level,
  };
}

/** A level by few directions, times this, is below the one by many. */
const roughly = 0.93;
