import { lightNames } from '../../colour/lights.ts';
import type { Cabin } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { entriesOf } from './reference-index.ts';

interface PlacedId {
  readonly id: string | undefined;
  readonly path: string;
}

function checkUnique(ids: Iterable<PlacedId>, what: string, faults: Faults): void {
  const first = new Map<string, string>();
  for (const { id, path } of ids) {
    if (id === undefined) continue;
    const other = first.get(id);
    if (other === undefined) first.set(id, path);
    else faults.add('duplicate-id', { expected: `an id that no other ${what} has`, found: `${JSON.stringify(id)}, as at ${other}` }, path);
  }
}

const placed = (list: readonly ({ readonly id?: string } | undefined)[] | undefined, path: string): PlacedId[] =>
  entriesOf(list).map(([index, item]) => ({ id: item.id, path: `${path}[${index}].id` }));

/** Ids are unique in their register; specimens, caps, decisions and proposals over the whole cabin; sources within their part, tiles within their set. */
export function checkDuplicateIds(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  checkUnique(placed(cabin.zones, 'zones'), 'zone', faults);
  checkUnique(placed(cabin.suppliers, 'suppliers'), 'supplier', faults);
  checkUnique(placed(cabin.instruments, 'instruments'), 'instrument', faults);
  checkUnique(placed(cabin.conditions, 'conditions'), 'conditions', faults);
  checkUnique(placed(cabin.files, 'files'), 'file', faults);
  checkUnique(placed(cabin.lights, 'lights'), 'light', faults);
  checkUnique(placed(cabin.parts, 'parts'), 'part', faults);
  checkUnique(placed(cabin.joints, 'joints'), 'joint', faults);
  checkUnique(placed(cabin.runs, 'runs'), 'run', faults);
  checkUnique(placed(cabin.tileSets, 'tileSets'), 'tile set', faults);
  checkUnique(index.specimens.map(({ specimen, path }) => ({ id: specimen.id, path: `${path}.id` })), 'specimen', faults);
  checkUnique(entriesOf(cabin.zones).flatMap(([at, zone]) => placed(zone.caps, `zones[${at}].caps`)), 'cap', faults);
  checkUnique(entriesOf(cabin.joints).flatMap(([at, joint]) => placed(joint.decisions, `joints[${at}].decisions`)), 'decision', faults);
  checkUnique(entriesOf(cabin.joints).flatMap(([at, joint]) => placed(joint.proposals, `joints[${at}].proposals`)), 'proposal', faults);
  for (const [at, part] of entriesOf(cabin.parts)) checkUnique(placed(part.sources, `parts[${at}].sources`), 'source of the part', faults);
  for (const [at, set] of entriesOf(cabin.tileSets)) checkUnique(placed(set.tiles, `tileSets[${at}].tiles`), 'tile of the set', faults);
  for (const [at, light] of entriesOf(cabin.lights)) {
    if (light.id !== undefined && lightNames.includes(light.id)) {
      faults.add('light-name-taken', { expected: 'an id that no built-in light has', found: JSON.stringify(light.id) }, `lights[${at}].id`);
    }
  }
}
