import type { Cabin } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import type { Arguments } from './argument.ts';

/** A part by its name; its id where there is none of that id. */
export const partName = (cabin: Cabin, id: string): string => cabinIndex(cabin).parts.get(id)?.name ?? id;

/** A joint by the names of its parts. */
export function jointName(cabin: Cabin, id: string): string {
  const joint = cabinIndex(cabin).joints.get(id);
  return joint === undefined ? id : joint.parts.map((part) => partName(cabin, part)).join(' and ');
}

export const count = (number: number, one: string, many = `${one}s`): string => `${number} ${number === 1 ? one : many}`;

/** Words with commas and a last `and`. */
export const listing = (words: readonly string[]): string =>
  (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`);

/** How many fields a label names before it counts the rest. */
const namedFields = 2;

/** What of an item is set, for a label: `gap to 3 mm`, `gap and view`, `gap, view and 3 more`. */
export function changedFields(asked: Arguments, values: Readonly<Record<string, unknown>>, leaveOut: readonly string[]): string {
  const changed = Object.entries(values).filter(([key, value]) => value !== undefined && !leaveOut.includes(key) && Object.hasOwn(asked, key));
  const names = changed.map(([key]) => small(asked[key]?.label ?? key));
  const [only] = changed;
  if (only !== undefined && changed.length === 1) return `${names[0]}${shown(asked, only[0], only[1])}`;
  return names.length <= namedFields + 1 ? listing(names) : `${names.slice(0, namedFields).join(', ')} and ${names.length - namedFields} more`;
}

const small = (label: string): string => (/^\p{Lu}\p{Ll}/u.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label);

const longestShown = 40;

function shown(asked: Arguments, key: string, value: unknown): string {
  if (value === null) return ' to nothing';
  if (typeof value === 'boolean') return value ? ' to yes' : ' to no';
  if (typeof value === 'number') return ` to ${value}${asked[key]?.range?.unit === undefined ? '' : ` ${asked[key]?.range?.unit}`}`;
  if (typeof value === 'string' && value.length <= longestShown && !value.includes('\n')) return value === '' ? ' to nothing' : ` to ${value}`;
  return '';
}
