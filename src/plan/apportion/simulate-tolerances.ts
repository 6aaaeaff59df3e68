import type { Lab } from '../../quantities.ts';
import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { ApportionLimit } from './apportion-problem.ts';
import { Draws, excessOf, shiftIn } from './drawn-parts.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import type { StatisticalLaw } from './statistical-law.ts';
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

export interface SimulationInput {
  /** How parts scatter by squares; even over their tolerances where absent. */
  readonly law: StatisticalLaw | undefined;
  readonly terms: readonly Pick<LimitedTerm, 'term' | 'items'>[];
  readonly shapes: readonly (Ellipsoid | undefined)[];
  readonly radii: readonly number[];
  readonly gloss: readonly ApportionLimit[];
  readonly bands: readonly number[];
  readonly joints: readonly string[];
  readonly draws: number;
}

/** Beyond this a part without a limit is not drawn: no joint is judged at it. */
const unlimited = 0;
const slack = 1e-9;

/** A share in per cent, without decimals that say nothing. */
export const perCentText = (share: number): string => `${Number((100 * share).toFixed(3))} %`;

/**
 * Draws cabins and counts those with a joint outside its limits. Worst case: parts are even over their ellipsoids and bands, so that none is
 * outside its tolerance. By squares: normal, the law's share of the parts inside. Seeded.
 */
export async function simulateTolerances(input: SimulationInput, watch?: Watch): Promise<Simulated> {
  const { law, terms, shapes, radii, gloss, bands, joints, draws: count } = input;
  const draws = new Draws(41);
  const broken = new Map<number, number>();
  let clashes = 0;
  for (let draw = 0; draw < count; draw++) {
    if (draw % 200 === 0) await step(watch, draw / count, 'drawing parts in tolerance');
    const shifts = shapes.map((shape, index): Lab => {
      if (shape === undefined) return [0, 0, 0];
      const ball: Lab = law === undefined ? draws.inBall() : [draws.normal() / law.radiusSds, draws.normal() / law.radiusSds, draws.normal() / law.radiusSds];
      return shiftIn(shape, Number.isFinite(radii[index]) ? radii[index] : unlimited, ball);
    });
    const glosses = bands.map((band) => (Number.isFinite(band) ? band : unlimited) * (law === undefined ? draws.inBall()[0] : draws.normal() / law.bandSds));
    const out = new Set<number>();
    for (const { term, items: [a, b] } of terms) {
      if (!out.has(term.joint) && excessOf(term, shifts[a], shifts[b]) > slack) out.add(term.joint);
    }
    // The gap of the targets has a sign only in the readings; parts drawn evenly to both sides make either one as likely. One that is to be small can be too large to both.
    for (const { joint, items, offset, limit } of gloss) {
      const by = glosses[items[0]] - glosses[items[1]];
      if (offset + by > limit + slack || (limit > 0 && -offset - by > limit + slack)) out.add(joint);
    }
    if (out.size > 0) clashes++;
    for (const joint of out) broken.set(joint, (broken.get(joint) ?? 0) + 1);
  }
  return {
    draws: count, clashes,
    joints: [...broken].map(([joint, times]) => ({ joint: joints[joint], share: times / count })).sort((a, b) => b.share - a.share),
    law: law === undefined ? 'parts even over their tolerances' : `parts normal about their targets, ${perCentText(law.inTolerance)} of them in tolerance`,
  };
}
