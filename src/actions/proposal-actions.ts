import type { Cabin, Proposal } from '../cabin/cabin.ts';
import { proposedShifts } from '../cabin/shapes/joint-shape.ts';
import { defineAction } from './action.ts';
import { aDate, aNumber, aReference, aText, needed, optional, structure } from './argument.ts';
import { editJoint, setFields, setList, setOptionalList, without } from './edit.ts';
import { idsOf, numberedId } from './next-id.ts';
import { jointName } from './wording.ts';

const ownerOf = (cabin: Cabin, proposal: string): string =>
  cabin.joints.find(({ proposals }) => proposals?.some(({ id }) => id === proposal))?.id ?? '';

export const addProposal = defineAction({
  id: 'proposal.add', title: 'Propose a change at a joint', keywords: ['what-if', 'keep', 'shift', 'trial', 'mend'], group: 'Decisions', context: 'joint',
  arguments: {
    joint: needed(aReference('Joint', 'joint')),
    date: needed(aDate('Date')),
    gapMm: optional(aNumber('Gap', { min: 0, max: 1000, unit: 'mm' })),
    viewMm: optional(aNumber('Viewing distance', { above: 0, max: 100_000, unit: 'mm' })),
    shifts: optional(structure('Shifts of the parts', proposedShifts)),
    note: optional(aText('Note')),
  },
  label: ({ joint }, cabin) => `Propose a change at joint ${jointName(cabin, joint)}`,
  edit: (cabin, { joint, date, ...changes }) => editJoint(cabin, joint, (of) => {
    const made: Proposal = { id: numberedId('proposal', cabin.joints.flatMap(({ proposals }) => idsOf(proposals))), date };
    return setList(of, 'proposals', [...(of.proposals ?? []), setFields(made, changes)]);
  }),
});

export const removeProposal = defineAction({
  id: 'proposal.remove', title: 'Remove proposal', keywords: ['what-if', 'delete', 'withdraw'], keys: ['Delete'], group: 'Decisions', context: 'proposal',
  arguments: { proposal: needed(aReference('Proposal', 'proposal')) },
  label: ({ proposal }, cabin) => `Remove ${proposal} at joint ${jointName(cabin, ownerOf(cabin, proposal))}`,
  edit: (cabin, { proposal }) => editJoint(cabin, ownerOf(cabin, proposal), (of) =>
    setOptionalList(of, 'proposals', without(of.proposals ?? [], ({ id }) => id === proposal))),
});

export const proposalActions = [addProposal, removeProposal] as const;
