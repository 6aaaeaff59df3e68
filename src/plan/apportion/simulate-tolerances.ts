import type { Lab } from '../../quantities.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { ApportionLimit, ApportionRule } from './apportion-problem.ts';
import { Draws, excessOf, shiftIn } from './drawn-parts.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

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

export interface SimulationInput {
  readonly rule: ApportionRule;
  readonly terms: readonly ToleranceTerm[];
  readonly itemsOf: (term: ToleranceTerm) => readonly [number, number];
  readonly shapes: readonly (Ellipsoid | undefined)[];
  readonly radii: readonly number[];
  readonly gloss: readonly ApportionLimit[];
  readonly bands: readonly number[];
  readonly joints: readonly string[];
  readonly draws: number;
}

/** Square root of the 95 % point of chi-square with 3 degrees of freedom, 7.815, and of the normal law's two-sided 95 %. */
const ellipsoidSd = Math.sqrt(7.815);
const bandSd = 1.96;
/** Beyond this a part without a limit is not drawn: no joint is judged at it. */
const unlimited = 0;
const slack = 1e-9;

/**
 * Draws cabins and counts those with a joint outside its limits. Worst case: parts are even over their ellipsoids and bands, so that none is
 * outside its tolerance. Statistical: normal, 95 % of the parts inside. Seeded.
 */
export async function simulateTolerances(input: SimulationInput, watch?: Watch): Promise<Simulated> {
  const { rule, terms, shapes, radii, gloss, bands, joints, draws: count } = input;
  const draws = new Draws(41);
  const broken = new Map<number, number>();
  let clashes = 0;
  for (let draw = 0; draw < count; draw++) {
    if (draw % 200 === 0) await step(watch, draw / count, 'drawing parts in tolerance');
    const shifts = shapes.map((shape, index): Lab => {
      if (shape === undefined) return [0, 0, 0];
      const ball: Lab = rule === 'worst case' ? draws.inBall() : [draws.normal() / ellipsoidSd, draws.normal() / ellipsoidSd, draws.normal() / ellipsoidSd];
      return shiftIn(shape, Number.isFinite(radii[index]) ? radii[index] : unlimited, ball);
    });
    const glosses = bands.map((band) => (Number.isFinite(band) ? band : unlimited) * (rule === 'worst case' ? draws.inBall()[0] : draws.normal() / bandSd));
    const out = new Set<number>();
    for (const term of terms) {
      const [a, b] = input.itemsOf(term);
      if (!out.has(term.joint) && excessOf(term, shifts[a], shifts[b]) > slack) out.add(term.joint);
    }
    // The gap of the targets has a sign only in the readings; parts drawn evenly to both sides make either one as likely.
    for (const { joint, items, offset, limit } of gloss) if (offset + glosses[items[0]] - glosses[items[1]] > limit + slack) out.add(joint);
    if (out.size > 0) clashes++;
    for (const joint of out) broken.set(joint, (broken.get(joint) ?? 0) + 1);
  }
  return {
    draws: count, clashes,
    joints: [...broken].map(([joint, times]) => ({ joint: joints[joint], share: times / count })).sort((a, b) => b.share - a.share),
    law: rule === 'worst case' ? 'parts even over their tolerances' : 'parts normal about their targets, 95 % of them in tolerance',
  };
}
