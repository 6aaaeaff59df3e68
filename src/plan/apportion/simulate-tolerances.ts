import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { ApportionLimit } from './apportion-problem.ts';
import { DrawnBlock } from './drawn-block.ts';
import type { DrawnTolerances } from './drawn-block.ts';
import { Draws } from './drawn-parts.ts';
import type { LimitedTerm } from './worst-case-radii.ts';

/** Cabins built at random from parts in tolerance. */
export interface Simulated {
  readonly draws: number;
  /** Cabins with at least one joint outside its limits. */
  readonly clashes: number;
  /** Joints that were outside in some cabin, the most often first, with their share of cabins. */
  readonly joints: readonly { readonly joint: string; readonly share: number }[];
  /** How the parts were drawn. */
  readonly law: string;
}

export interface SimulationInput extends DrawnTolerances {
  readonly terms: readonly Pick<LimitedTerm, 'term' | 'items'>[];
  readonly gloss: readonly ApportionLimit[];
  readonly joints: readonly string[];
  readonly draws: number;
}

const slack = 1e-9;
/** Cabins that are drawn together. */
const block = 250;
/** Joints that are asked without a pause. */
const stretch = 100;

/** A share in per cent, without decimals that say nothing. */
export const perCentText = (share: number): string => `${Number((100 * share).toFixed(3))} %`;

/**
 * Draws cabins and counts those with a joint outside its limits. Worst case: parts are even over their ellipsoids and bands, so that none is
 * outside its tolerance. By squares: normal, the law's share of the parts inside. Seeded.
 */
export async function simulateTolerances(input: SimulationInput, watch?: Watch): Promise<Simulated> {
  const { law, joints, draws: count } = input;
  const draws = new Draws(41);
  const drawn = new DrawnBlock(input, Math.min(block, count));
  const judged = judgedJoints(input);
  const broken = new Map<number, number>();
  let clashes = 0;
  for (let from = 0; from < count; from += block) {
    const size = Math.min(block, count - from);
    drawn.draw(draws, size);
    const [any, out] = [new Uint8Array(size), new Uint8Array(size)];
    for (const [index, { joint, terms, gloss }] of judged.entries()) {
      if (index % stretch === 0) await step(watch, (from + (size * index) / judged.length) / count, 'drawing parts in tolerance');
      out.fill(0);
      for (const { term, items } of terms) drawn.markOutside(term, items, slack, out);
      for (const limit of gloss) markGloss(limit, drawn.gloss, out);
      let times = 0;
      for (let at = 0; at < size; at++) {
        times += out[at];
        any[at] |= out[at];
      }
      if (times > 0) broken.set(joint, (broken.get(joint) ?? 0) + times);
    }
    for (const one of any) clashes += one;
  }
  return {
    draws: count, clashes,
    joints: [...broken].map(([joint, times]) => ({ joint: joints[joint], share: times / count })).sort((a, b) => b.share - a.share),
    law: law === undefined ? 'parts even over their tolerances' : `parts normal about their targets, ${perCentText(law.inTolerance)} of them in tolerance`,
  };
}

interface JudgedJoint {
  readonly joint: number;
  readonly terms: SimulationInput['terms'][number][];
  readonly gloss: ApportionLimit[];
}

function judgedJoints({ terms, gloss }: SimulationInput): readonly JudgedJoint[] {
  const joints = new Map<number, JudgedJoint>();
  const at = (joint: number): JudgedJoint => {
    const made = joints.get(joint) ?? { joint, terms: [], gloss: [] };
    joints.set(joint, made);
    return made;
  };
  for (const own of terms) at(own.term.joint).terms.push(own);
  for (const limit of gloss) at(limit.joint).gloss.push(limit);
  return [...joints.values()];
}

/** The gap of the targets has a sign only in the readings; parts drawn evenly to both sides make either one as likely. One that is to be small can be too large to both. */
function markGloss({ items, offset, limit }: ApportionLimit, gloss: readonly Float64Array[], out: Uint8Array): void {
  const [first, second] = [gloss[items[0]], gloss[items[1]]];
  for (let at = 0; at < out.length; at++) {
    const by = first[at] - second[at];
    if (offset + by > limit + slack || (limit > 0 && -offset - by > limit + slack)) out[at] = 1;
  }
}
