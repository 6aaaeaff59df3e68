import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Cabin, Specimen } from '../../src/cabin/cabin.ts';
import { checkChanges } from '../../src/cabin/check-changes.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** The document with one value replaced, sharing everything that is not on the way to it. */
function replacedAt(value: unknown, [key, ...rest]: readonly (string | number)[], next: unknown): unknown {
  if (key === undefined) return next;
  if (Array.isArray(value)) return value.flatMap((item: unknown, index) => (index !== key ? [item] : rest.length === 0 && next === undefined ? [] : [replacedAt(item, rest, next)]));
  const copy: Record<string, unknown> = { ...(value as Record<string, unknown>) };
  if (rest.length === 0 && next === undefined) delete copy[key];
  else copy[key] = replacedAt(copy[key], rest, next);
  return copy;
}

const paths = (value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] => {
  if (typeof value !== 'object' || value === null) return [path];
  const members = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [path, ...members.flatMap((key) => paths((value as Record<string | number, unknown>)[key], [...path, key]))];
};

const start = restoreCabin(smallCabin()).value as Cabin;
/** Values of spectra are left aside but for the first two, since there are hundreds of them and all alike; format and version, since migration refuses them first. */
const places = paths(start).filter((path) => path.length > 0 && path[0] !== 'format' && path[0] !== 'version' && !(path.at(-2) === 'values' && Number(path.at(-1)) > 1));
const ids = [...new Set(places.filter((path) => path.at(-1) === 'id').map((path) => path.reduce<unknown>((value, key) => (value as Record<string | number, unknown>)[key], start)))];

const values = fc.oneof(
  fc.constantFrom<unknown>(undefined, '', 'x', 'left', 'right', 'master', 'plaque', 'edge', '2031-02-28', '2999-01-01', 0, 1, -1, 0.5, 30, 1e9, null, true, [], {}),
  fc.constantFrom(...ids),
);

let refused = 0;
let taken = 0;

test('a change is refused where reading the whole document refuses it, and nowhere else', () => {
  fc.assert(fc.property(fc.array(fc.tuple(fc.constantFrom(...places), values), { minLength: 1, maxLength: 3 }), (changes) => {
    const after = changes.reduce<unknown>((document, [path, value]) => {
      const holder = path.slice(0, -1).reduce<unknown>((at, key) => (typeof at === 'object' && at !== null ? (at as Record<string | number, unknown>)[key] : undefined), document);
      return typeof holder === 'object' && holder !== null ? replacedAt(document, path, value) : document;
    }, start) as Cabin;
    // The lists themselves are the business of the types; a document without them never comes from an edit.
    fc.pre([after.zones, after.suppliers, after.instruments, after.conditions, after.files, after.lights, after.masters, after.parts, after.joints, after.runs]
      .every((list) => list === undefined || (Array.isArray(list) && list.every((item) => typeof item === 'object' && item !== null))));
    fc.pre([after.zones, after.suppliers, after.instruments, after.conditions, after.parts, after.joints].every(Array.isArray));
    fc.pre(after.parts.every((part) => Array.isArray(part.sources) && part.sources.every((source) => Array.isArray(source?.specimens) && source.specimens.every((one: Specimen | undefined) => Array.isArray(one?.readings)))));
    fc.pre(after.joints.every((joint) => Array.isArray(joint.parts) && (joint.decisions === undefined || (Array.isArray(joint.decisions) && joint.decisions.every((one) => typeof one === 'object' && one !== null)))));
    const whole = restoreCabin(after);
    const errors = whole.issues.filter(({ severity, code }) => severity === 'error' || code === 'null-field');
    const result = checkChanges(start, after);
    if (errors.length === 0) taken += 1;
    else refused += 1;
    expect(result.value === undefined, JSON.stringify(changes)).toBe(errors.length > 0);
    if (result.value !== undefined) {
      expect(result.value).toBe(after);
      expect(whole.value).toEqual(after);
    }
    if (errors.length > 0) expect(result.issues.some((issue) => errors.some((error) => error.code === issue.code && error.path === issue.path)), JSON.stringify([changes, errors, result.issues])).toBe(true);
  }), { numRuns: 6000, seed: 20261125 });
  expect(refused).toBeGreaterThan(1000);
  expect(taken).toBeGreaterThan(250);
}, 300_000);

test('warnings are of what changed only', () => {
  const crossing = smallCabin({ parts: start.parts.map((part) => (part.id === 'console' ? { ...part, outline: [[0, 0], [9, 9], [9, 0], [0, 9]] as const } : part)) });
  const before = restoreCabin(crossing).value as Cabin;
  const moved: Cabin = { ...before, parts: before.parts.map((part) => (part.id === 'dash-upper' ? { ...part, outline: [[0, 0], [5, 5], [5, 0], [0, 5]] as const } : part)) };
  expect(checkChanges(before, moved).issues.map(({ code, path }) => [code, path])).toEqual([['outline-crosses-itself', 'parts[0].outline']]);
});
