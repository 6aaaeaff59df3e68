import { lightNames } from '../colour/lights.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { bookOfCabin } from './carried-book.ts';

/** Kinds of item that an argument may name by its id. */
export const referenceKinds = [
  'part', 'source', 'specimen', 'master', 'joint', 'decision', 'proposal', 'run', 'zone', 'cap', 'user light', 'light', 'supplier', 'instrument', 'conditions', 'file', 'material', 'paired material', 'rule',
] as const;
export type ReferenceKind = (typeof referenceKinds)[number];

/** Something that can be named, with the words a list shows for it. */
export interface Named {
  readonly id: string;
  readonly name: string;
}

const listed = (items: readonly { readonly id: string; readonly name?: string }[] | undefined): readonly Named[] =>
  (items ?? []).map(({ id, name }) => ({ id, name: name ?? id }));

const materialsOf = (cabin: Cabin): readonly Named[] => (bookOfCabin(cabin)?.materials ?? []).map(({ material }) => ({ id: material, name: material }));

/** Everything of a kind that an argument may name, in the order of the document. Sources are those of the part given. */
export function namedItems(cabin: Cabin, kind: ReferenceKind, part?: string): readonly Named[] {
  switch (kind) {
    case 'part': return listed(cabin.parts);
    case 'source': {
      const suppliers = cabinIndex(cabin).suppliers;
      return (cabinIndex(cabin).parts.get(part ?? '')?.sources ?? [])
        .map((source) => ({ id: source.id, name: `${suppliers.get(source.supplier)?.name ?? source.supplier}, ${source.material}` }));
    }
    case 'specimen': return listed([...cabinIndex(cabin).specimens.values()].map(({ specimen }) => ({ id: specimen.id })));
    case 'master': return listed([...cabinIndex(cabin).masters.values()].map(({ id }) => ({ id })));
    case 'joint': return cabin.joints.map((joint) => ({ id: joint.id, name: joint.parts.map((id) => cabinIndex(cabin).parts.get(id)?.name ?? id).join(' and ') }));
    case 'decision': return cabin.joints.flatMap((joint) => (joint.decisions ?? []).map(({ id, reason }) => ({ id, name: reason === '' ? id : reason })));
    case 'proposal': return cabin.joints.flatMap((joint) => (joint.proposals ?? []).map(({ id, note }) => ({ id, name: note === undefined || note === '' ? id : note })));
    case 'run': return listed(cabin.runs);
    case 'zone': return listed(cabin.zones);
    case 'cap': return cabin.zones.flatMap((zone) => (zone.caps ?? []).map(({ id, quantity }) => ({ id, name: `${quantity} in ${zone.name}` })));
    case 'user light': return listed(cabin.lights);
    case 'light': return [...lightNames.map((id) => ({ id, name: id })), ...listed(cabin.lights)];
    case 'supplier': return listed(cabin.suppliers);
    case 'instrument': return listed(cabin.instruments);
    case 'conditions': return listed(cabin.conditions.map(({ id }) => ({ id })));
    case 'file': return listed(cabin.files);
    case 'material': return materialsOf(cabin);
    case 'paired material': return [{ id: '*', name: 'any material' }, ...materialsOf(cabin)];
    case 'rule': return listed((bookOfCabin(cabin)?.rules ?? []).map(({ id }) => ({ id })));
  }
}

/** Whether the cabin has an item of the kind with that id. */
export function isNamed(cabin: Cabin, kind: ReferenceKind, id: string, part?: string): boolean {
  const index = cabinIndex(cabin);
  switch (kind) {
    case 'part': return index.parts.has(id);
    case 'joint': return index.joints.has(id);
    case 'specimen': return index.specimens.has(id);
    case 'master': return index.masters.has(id);
    case 'conditions': return index.conditions.has(id);
    default: return namedItems(cabin, kind, part).some((item) => item.id === id);
  }
}
