import { describeValue } from './describe-value.ts';
import type { Faults } from './faults.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';
import { maxTextLength } from './text.ts';

const maxDepth = 48;

/** Whether a value is an object that JSON could have made: no array, no class but Object. */
export function isPlainObject(value: unknown): value is Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === null || prototype === Object.prototype;
}

/** The keys of an object that have a value, of all or of some; the key `__proto__` is a fault and left out. */
export function ownKeys(value: Readonly<Record<string, unknown>>, faults: Faults, among = Object.keys(value)): string[] {
  return among.length === 0 ? among : among.filter((key) => {
    if (key !== '__proto__') return value[key] !== undefined;
    faults.path.push(key);
    faults.add('forbidden-key', { expected: 'another key', found: '"__proto__"', hint: 'Take this member out.' });
    faults.path.pop();
    return false;
  });
}

function copy(value: unknown, faults: Faults, depth: number): unknown {
  if (value === null || typeof value === 'boolean') return value;
  if (typeof value === 'string') {
    if (value.length <= maxTextLength) return value;
    faults.add('text-too-long', { expected: `at most ${maxTextLength} characters`, found: `${value.length} characters` });
    return undefined;
  }
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return value;
    faults.add('not-finite', { expected: 'a finite number', found: describeValue(value) });
    return undefined;
  }
  if (depth >= maxDepth) {
    faults.add('too-deep', { expected: `at most ${maxDepth} levels`, found: 'more' });
    return undefined;
  }
  const at = faults.path.length;
  if (Array.isArray(value)) {
    if (value.length > 1_000_000) {
      faults.add('too-many', { expected: 'at most 1000000 items', found: String(value.length) });
      return undefined;
    }
    const items: unknown[] = [];
    for (let index = 0; index < value.length; index += 1) {
      faults.path[at] = index;
      items.push(copy(value[index], faults, depth + 1));
    }
    faults.path.length = at;
    return items;
  }
  if (isPlainObject(value)) {
    const members: Record<string, unknown> = {};
    for (const key of ownKeys(value, faults)) {
      faults.path[at] = key;
      members[key] = copy(value[key], faults, depth + 1);
    }
    faults.path.length = at;
    return members;
  }
  faults.add('wrong-type', { expected: 'a value of JSON', found: describeValue(value) });
  return undefined;
}

/** Any value of JSON, copied: finite numbers, texts up to the limit, no `__proto__`, at most 48 levels. */
export const jsonValue = (): Schema<unknown> => plain('a value of JSON', (value, faults) => copy(value, faults, 0));

/** An object of JSON whose members are another layer's business. */
export const jsonObject = (): Schema<object> => plain('an object', (value, faults) => {
  if (isPlainObject(value)) return copy(value, faults, 0) as object;
  faults.add('wrong-type', { expected: 'an object', found: describeValue(value) });
  return undefined;
});
