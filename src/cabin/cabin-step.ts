import type { Cabin } from './cabin.ts';

/** An edit that left every part and joint in its place: which of them are other objects now, and which other fields of the document. */
export interface CabinStep {
  readonly parts: readonly number[];
  readonly joints: readonly number[];
  readonly fields: readonly (keyof Cabin)[];
}

interface Told {
  readonly before: Cabin;
  readonly after: Cabin;
  readonly step: CabinStep | undefined;
}

/** The last answer: an edit is asked about at every stage of taking it in. Older ones are let go, since they would keep their documents. */
let told: Told | undefined;

/**
 * What is other in a document than in the one before it, told by identity; undefined where parts or joints came, went, moved or have
 * other ids. Looks at every place once and at nothing within.
 */
export function cabinStep(before: Cabin, after: Cabin): CabinStep | undefined {
  if (told?.before === before && told.after === after) return told.step;
  const parts = changedPlaces(before.parts, after.parts);
  const joints = changedPlaces(before.joints, after.joints);
  const step = parts === undefined || joints === undefined ? undefined : { parts, joints, fields: changedFields(before, after) };
  told = { before, after, step };
  return step;
}

type Listed = readonly { readonly id: string }[];

/** Places of a list whose items are other objects than before; undefined where an item came, went, moved or has another id. */
export function changedPlaces(before: Listed, after: Listed): readonly number[] | undefined {
  if (before === after) return [];
  if (before.length !== after.length) return undefined;
  const places: number[] = [];
  for (let place = 0; place < after.length; place++) {
    if (before[place] === after[place]) continue;
    if (before[place].id !== after[place].id) return undefined;
    places.push(place);
  }
  return places;
}

function changedFields(before: Cabin, after: Cabin): readonly (keyof Cabin)[] {
  const names = Object.keys({ ...before, ...after }) as (keyof Cabin)[];
  return names.filter((name) => name !== 'parts' && name !== 'joints' && before[name] !== after[name]);
}
