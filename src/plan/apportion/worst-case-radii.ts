import { step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { ApportionLimit } from './apportion-problem.ts';
import { worstOnBoundary } from './drawn-parts.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import { evenRadii } from './even-radii.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

/** What a term asks of two parts, with the limits that its local metric makes of it. */
export interface LimitedTerm {
  readonly term: ToleranceTerm;
  readonly items: readonly [number, number];
  readonly shapes: readonly [Ellipsoid, Ellipsoid];
  readonly limits: readonly ApportionLimit[];
  /** The targets themselves are outside it. */
  readonly broken: boolean;
}

export interface WorstCase {
  readonly radii: readonly number[];
  /** Joints that hold a radius where it is, the tightest first. */
  readonly bottlenecks: readonly number[];
  /** Joints that no search on the boundary of two tolerances took out of their limits. */
  readonly confirmed: { readonly joints: number; readonly worstExcess: number; readonly rounds: number };
}

/** Times that limits are tightened where the search on the boundary finds the local metric too kind. */
const mostRounds = 8;
/** An excess this small counts as none, in units of the limit. */
export const smallExcess = 1e-3;

/** The largest and most even radii at which a search finds no two parts in tolerance outside a limit. */
export async function worstCaseRadii(terms: readonly LimitedTerm[], shares: readonly number[], most: readonly number[], watch?: Watch): Promise<WorstCase> {
  const tighter = terms.map(() => 1);
  const judged = terms.flatMap((own, index) => (own.broken ? [] : [{ ...own, index }]));
  for (let round = 1; ; round++) {
    const limits = terms.flatMap((own, index) => own.limits.filter(({ limit, offset }) => limit >= offset)
      .map((limit) => ({ ...limit, scales: [limit.scales[0] * tighter[index], limit.scales[1] * tighter[index]] as const })));
    const { radii, bottlenecks } = evenRadii({ shares, most, limits }, 'worst case');
    await step(watch, round / mostRounds, 'searching the boundaries of the tolerances');
    let worstExcess = -Infinity;
    let found = false;
    for (const { term, items, shapes, limits: own, index } of judged) {
      const excess = worstOnBoundary(term, shapes, items.map((item) => Math.min(1e3, radii[item])) as unknown as readonly [number, number]);
      worstExcess = Math.max(worstExcess, excess);
      if (excess <= smallExcess) continue;
      found = true;
      const room = Math.max(0.02, ...own.map((limit) => limit.limit - limit.offset));
      tighter[index] *= 1 + Math.max(0.005, Math.min(0.5, (1.1 * excess) / room));
    }
    if (!found || round === mostRounds) {
      const confirmed = { joints: new Set(judged.map(({ term }) => term.joint)).size, worstExcess: Number.isFinite(worstExcess) ? worstExcess : 0, rounds: round };
      return { radii, bottlenecks: bottlenecks.map((limit) => limits[limit].joint), confirmed };
    }
  }
}
