import type { Cabin, Proposal, ProposedShift } from '../cabin/cabin.ts';
import type { PartChange } from '../plan/index.ts';
import { idsOf, numberedId } from './next-id.ts';

/** What a proposal that comes of a mend says of itself. */
export const mendProposalNote = 'Of a mend plan: a target to the supplier, not a forecast of a recipe.';

const shiftOf = ({ part, dL, da, db, dGloss }: PartChange): ProposedShift => ({
  part, ...(dL === 0 ? {} : { dL }), ...(da === 0 ? {} : { da }), ...(db === 0 ? {} : { db }), ...(dGloss === 0 ? {} : { dGloss }),
});

/**
 * The cabin with the changes of a mend plan kept as proposals, dated as the document: one at every joint that the plan mends, and at every
 * joint of a changed part that has none of these. Readings and verdicts stay as they are, since a target is no reading.
 */
export function withMendProposals(cabin: Cabin, changes: readonly PartChange[], mended: readonly string[], note: string): Cabin {
  const shifts = new Map(changes.map((change) => [change.part, shiftOf(change)]));
  const mends = new Set(mended);
  const served = new Set(cabin.joints.filter(({ id }) => mends.has(id)).flatMap(({ parts }) => parts));
  const ids = cabin.joints.flatMap(({ proposals }) => idsOf(proposals));
  return {
    ...cabin,
    joints: cabin.joints.map((joint) => {
      const own = joint.parts.flatMap((part) => shifts.get(part) ?? []);
      if (own.length === 0 || !(mends.has(joint.id) || own.some(({ part }) => !served.has(part)))) return joint;
      const id = numberedId('proposal', ids);
      ids.push(id);
      const made: Proposal = { id, date: cabin.asOf, shifts: own, note };
      return { ...joint, proposals: [...(joint.proposals ?? []), made] };
    }),
  };
}
