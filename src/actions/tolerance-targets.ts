import type { Cabin, Part } from '../cabin/cabin.ts';
import type { ApportionPlan, PartTolerance } from '../plan/index.ts';
import { editEach, setFields } from './edit.ts';

/** Hundredths, towards nought: a limit that is written down is never wider than the one that was reckoned. */
const hundredths = (value: number): number => Math.floor(value * 100 + 1e-9) / 100;

/**
 * The limits that a tolerance comes to as a part's own against its master, where a joint asks for less than it is held to now; undefined where it has no
 * master recorded, or nothing becomes tighter: what its joints would leave it beyond that is not for a plan to give.
 */
function limitsOf(part: Part, { about, radius, glossBand, heldBy, heldTo }: PartTolerance): { readonly colourLimit?: number; readonly glossLimit?: number } | undefined {
  if (part.target === undefined || about !== 'master') return undefined;
  const tighter = (limit: number | undefined, now: number | undefined): number => (limit === undefined || limit >= (now ?? Infinity) ? 0 : hundredths(limit));
  const [colour, gloss] = [heldBy.length === 0 ? 0 : tighter(radius, heldTo.colour), tighter(glossBand, heldTo.gloss)];
  return colour > 0 || gloss > 0 ? { ...(colour > 0 ? { colourLimit: colour } : {}), ...(gloss > 0 ? { glossLimit: gloss } : {}) } : undefined;
}

/**
 * The cabin with the tolerances of a plan as the limits that its parts are held to against their recorded masters, rounded down to hundredths,
 * wherever that is tighter than now. Parts without a recorded master stay as they are: what they are laid about is a reading, not a target.
 */
export function withToleranceTargets(cabin: Cabin, plan: Pick<ApportionPlan, 'parts'>): Cabin {
  const tolerances = new Map(plan.parts.map((one) => [one.id, one]));
  const parts = editEach(cabin.parts, (part) => {
    const tolerance = tolerances.get(part.id);
    const limits = tolerance === undefined ? undefined : limitsOf(part, tolerance);
    return limits === undefined || part.target === undefined ? part : setFields<Part>(part, { target: setFields(part.target, limits) });
  });
  return parts === cabin.parts ? cabin : { ...cabin, parts };
}

/** Parts whose limits the plan sets. */
export const partsWithToleranceTargets = (cabin: Cabin, plan: Pick<ApportionPlan, 'parts'>): number => {
  const after = withToleranceTargets(cabin, plan);
  return cabin.parts.filter((part, place) => after.parts[place] !== part).length;
};
