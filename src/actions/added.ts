import type { Cabin, Part } from '../cabin/cabin.ts';
import { cabinStep } from '../cabin/cabin-step.ts';
import { bookOfCabin } from './carried-book.ts';
import { idsOf } from './next-id.ts';
import type { Selection } from './selection.ts';

type Listed = readonly { readonly id: string }[] | undefined;

/** The last item of a list that was not there before. */
function newIn(before: Listed, after: Listed): string | undefined {
  if (before === after) return undefined;
  const known = new Set(idsOf(before));
  return idsOf(after).findLast((id) => !known.has(id));
}

/** What an edit put into the cabin, as a selection to go to; undefined where it added nothing that has an id. */
export function added(before: Cabin, after: Cabin): Selection | undefined {
  const step = cabinStep(before, after);
  if (step !== undefined && step.fields.length === 0) return addedWithin(before, after, step.parts[0], step.joints[0]);
  const part = newIn(before.parts, after.parts);
  if (part !== undefined) return { parts: [part] };
  const simple = [
    ['joint', newIn(before.joints, after.joints)], ['zone', newIn(before.zones, after.zones)], ['run', newIn(before.runs, after.runs)],
    ['light', newIn(before.lights, after.lights)], ['supplier', newIn(before.suppliers, after.suppliers)],
    ['instrument', newIn(before.instruments, after.instruments)], ['conditions', newIn(before.conditions, after.conditions)],
    ['specimen', newIn(before.masters, after.masters)],
  ] as const;
  const found = simple.find(([, id]) => id !== undefined);
  if (found !== undefined) return { [found[0]]: found[1] };
  return addedWithin(before, after, after.parts.findIndex((one, index) => one !== before.parts[index]), after.joints.findIndex((one, index) => one !== before.joints[index]));
}

/** What the first part that is other got, else the first joint, else a zone. */
function addedWithin(before: Cabin, after: Cabin, place = -1, at = -1): Selection | undefined {
  if (before.ruleBook !== after.ruleBook) return addedToBook(before, after);
  const [old, part] = [before.parts[place], after.parts[place]];
  if (old !== undefined && part !== undefined) return addedToPart(old, part);
  const decision = newIn(before.joints[at]?.decisions, after.joints[at]?.decisions);
  if (decision !== undefined) return { joint: after.joints[at]?.id, decision };
  const proposal = newIn(before.joints[at]?.proposals, after.joints[at]?.proposals);
  if (proposal !== undefined) return { joint: after.joints[at]?.id, proposal };
  const zone = after.zones.findIndex((one, index) => one !== before.zones[index]);
  const cap = newIn(before.zones[zone]?.caps, after.zones[zone]?.caps);
  return cap === undefined ? undefined : { zone: after.zones[zone]?.id, cap };
}

/** Another book is no addition to the one before. */
function addedToBook(before: Cabin, after: Cabin): Selection | undefined {
  const [old, book] = [bookOfCabin(before), bookOfCabin(after)];
  if (book?.rules.length === (old?.rules.length ?? 0) + 1) return { rule: newIn(old?.rules, book.rules) };
  const row = book?.materials.length === (old?.materials.length ?? 0) + 1 ? book.materials.find(({ material }) => !old?.materials.some((one) => one.material === material)) : undefined;
  return row === undefined ? undefined : { material: row.material };
}

function addedToPart(old: Part, part: Part): Selection | undefined {
  const source = newIn(old.sources, part.sources);
  if (source !== undefined) return { parts: [part.id], source };
  for (const one of part.sources) {
    const specimen = newIn(old.sources.find(({ id }) => id === one.id)?.specimens, one.specimens);
    if (specimen !== undefined) return { parts: [part.id], source: one.id, specimen };
  }
  return undefined;
}
