import type { Issue, Outcome } from '../issue.ts';
import type { Cabin, Joint, Part, Specimen } from './cabin.ts';
import type { CabinStep } from './cabin-step.ts';
import { cabinStep } from './cabin-step.ts';
import { cabinIndex, carryIndex } from './cabin-index.ts';
import { checkReferences } from './references/check-references.ts';
import { indexInside } from './references/reference-index.ts';
import type { Draft, Faults, Schema } from './schema/index.ts';
import { collectFaults } from './schema/index.ts';
import { cabinListSizes, cabinShape } from './shapes/cabin-shape.ts';
import { jointShape } from './shapes/joint-shape.ts';
import { partShape } from './shapes/part-shape.ts';
import { conditionsShape, fileShape, instrumentShape, lightShape, runShape, supplierShape, zoneShape } from './shapes/register-shapes.ts';
import { specimenShape } from './shapes/specimen-shape.ts';
import { tileSetShape } from './shapes/tile-set-shape.ts';

/** The lists of a cabin, whose items keep their identity from one document to the next where nothing changed in them. */
export type CabinList = keyof typeof cabinListSizes;

const itemShapes: Readonly<Record<CabinList, Schema<object>>> = {
  zones: zoneShape, suppliers: supplierShape, instruments: instrumentShape, conditions: conditionsShape, files: fileShape,
  lights: lightShape, masters: specimenShape, tileSets: tileSetShape, parts: partShape, joints: jointShape, runs: runShape,
};
export const cabinLists = Object.keys(itemShapes) as readonly CabinList[];

/**
 * Checks a cabin that was made from a valid one, as `restoreCabin()` would, and looks closely only at what changed: items that
 * are the same objects as before are taken to be valid in themselves. The value is `after` itself, or nothing where it has an
 * error. A field that is null is refused, not dropped. Warnings are given for changed items only; members that are not known are
 * kept without a word.
 */
export function checkChanges(before: Cabin, after: Cabin): Outcome<Cabin> {
  if (after === before) return { value: after, issues: [] };
  const faults = collectFaults();
  checkFields(before, after, faults);
  const step = cabinStep(before, after);
  const changed = cabinLists.flatMap((name) => checkItems(name, before[name] ?? [], after[name] ?? [], step, faults));
  // A file may hold a null for what is left out, and reading drops it; nothing is dropped here, so it must not be there.
  const nulls = faults.list().filter(({ code }) => code === 'null-field');
  if (nulls.length > 0) return { value: undefined, issues: nulls.map((issue) => ({ ...issue, severity: 'error' as const, hint: 'Leave the field out.' })) };
  if (faults.errors() === 0) checkChangedReferences(before, after, step, faults);
  const issues = faults.list().filter((issue) => issue.severity === 'error' || concerns(issue, changed));
  return { value: faults.errors() === 0 ? after : undefined, issues };
}

/** The fields of the document itself, its lists left out. */
function checkFields(before: Cabin, after: Cabin, faults: Faults): void {
  const { ruleBook, ...fields } = after;
  const emptied = Object.fromEntries(cabinLists.filter((name) => after[name] !== undefined).map((name) => [name, []]));
  cabinShape.read({ ...fields, ...emptied, ...(ruleBook === before.ruleBook ? {} : { ruleBook }) }, faults);
}

/** Checks what is new in a list; gives the paths of the new items. */
function checkItems(name: CabinList, before: readonly object[], after: readonly object[], step: CabinStep | undefined, faults: Faults): readonly string[] {
  if (before === after) return [];
  if (after.length > cabinListSizes[name]) {
    faults.add('too-many', { expected: `at most ${cabinListSizes[name]} ${name}`, found: String(after.length) }, name);
    return [];
  }
  const places = step !== undefined && (name === 'parts' || name === 'joints') ? step[name] : newPlaces(before, after);
  return places.map((place) => {
    faults.path.push(name, place);
    itemShapes[name].read(after[place], faults);
    faults.path.length = 0;
    return `${name}[${place}]`;
  });
}

/** Places of the items that are nowhere in the list before. */
function newPlaces(before: readonly object[], after: readonly object[]): readonly number[] {
  const known = new Set(before);
  return [...after.keys()].filter((place) => after[place] !== before[place] && !known.has(after[place]));
}

/** Warnings that an edit can have caused: of the items changed, or of a field of the document. */
const concerns = ({ code, path }: Issue, changed: readonly string[]): boolean =>
  code !== 'unknown-field' && (path === undefined || !path.includes('[') || changed.some((item) => path === item || path.startsWith(`${item}.`)));

/** Only as much of the second pass as the change can have upset. */
function checkChangedReferences(before: Cabin, after: Cabin, step: CabinStep | undefined, faults: Faults): void {
  if (step !== undefined) carryIndex(before, after, step);
  if (step !== undefined && onlyInsides(before, after, step)) checkInsides(after, step, faults);
  else checkReferences(readingsMayFail(before, after) ? after : withoutKnownReadings(before, after), faults);
}

const registers = ['instruments', 'conditions', 'files', 'lights', 'masters'] as const;

/** Whether readings of unchanged specimens may refer to something that is gone or another now. */
function readingsMayFail(before: Cabin, after: Cabin): boolean {
  if (registers.some((name) => before[name] !== after[name])) return true;
  const [gone, fresh] = [partsOnlyIn(before, after).flatMap(mastersOf), partsOnlyIn(after, before).flatMap(mastersOf)];
  return gone.length !== fresh.length || gone.some((master, index) => master !== fresh[index]);
}

function partsOnlyIn(cabin: Cabin, other: Cabin): readonly Part[] {
  const known = new Set(other.parts);
  return cabin.parts.filter((part) => !known.has(part));
}

const mastersOf = (part: Part): readonly Specimen[] =>
  part.sources.flatMap((source) => source.specimens.filter((specimen) => specimen.kind === 'master'));

/** The cabin with the parts that did not change reduced to what other places of the document refer to. */
function withoutKnownReadings(before: Cabin, after: Cabin): Draft<Cabin> {
  const known = new Set(before.parts);
  return { ...after, parts: after.parts.map((part) => (known.has(part) ? outwardPart(part) : part)) };
}

const outwardParts = new WeakMap<Part, Draft<Part>>();

function outwardPart(part: Part): Draft<Part> {
  const made = outwardParts.get(part);
  if (made !== undefined) return made;
  const { outline, ...rest } = part;
  const outward: Draft<Part> = {
    ...rest,
    sources: part.sources.map((source) => ({
      ...source,
      specimens: source.specimens.map((specimen) => (specimen.kind === 'master' ? specimen : { ...specimen, readings: [] })),
    })),
  };
  outwardParts.set(part, outward);
  return outward;
}

/** Whether the change lies inside of parts and joints only, and nothing that other places refer to or are compared with is another. */
function onlyInsides(before: Cabin, after: Cabin, { parts, joints, fields }: CabinStep): boolean {
  return ![...registers, 'zones' as const, 'suppliers' as const, 'asOf' as const].some((name) => fields.includes(name))
    && parts.every((place) => sameOutside(before.parts[place], after.parts[place]))
    && joints.every((place) => sameJoining(before.joints[place], after.joints[place]));
}

function sameOutside(before: Part, after: Part): boolean {
  if (before === after) return true;
  if (before.id !== after.id || before.hand !== after.hand || before.mirrorOf !== after.mirrorOf || before.module !== after.module) return false;
  if (before.sources === after.sources) return true;
  const ids = (part: Part): string => JSON.stringify(part.sources.map((source) => [source.id, ...source.specimens.map((specimen) => specimen.id)]));
  return ids(before) === ids(after) && mastersOf(before).length === 0 && mastersOf(after).length === 0;
}

function sameJoining(before: Joint, after: Joint): boolean {
  if (before === after) return true;
  const ids = ({ decisions = [], proposals = [] }: Joint): string => JSON.stringify([decisions, proposals].map((list) => list.map(({ id }) => id)));
  return before.id === after.id && before.kind === after.kind && before.parts[0] === after.parts[0] && before.parts[1] === after.parts[1]
    && ((before.decisions === after.decisions && before.proposals === after.proposals) || ids(before) === ids(after));
}

/**
 * The second pass over the changed parts and joints alone, against all that they may refer to. Modules are as they were, and one face of
 * them would look alone.
 */
function checkInsides(after: Cabin, { parts, joints }: CabinStep, faults: Faults): void {
  const inside = collectFaults();
  const changed: Draft<Cabin> = { ...after, parts: parts.map((place) => ({ ...after.parts[place], module: undefined })), joints: joints.map((place) => after.joints[place]) };
  checkReferences(changed, inside, indexInside(changed, cabinIndex(after)));
  const places = { parts, joints };
  for (const { code, path, ...text } of inside.list()) {
    if (code !== 'nothing-to-judge') faults.add(code, text, path?.replace(/^(parts|joints)\[(\d+)\]/, (_, list: 'parts' | 'joints', at) => `${list}[${places[list][Number(at)]}]`));
  }
}
