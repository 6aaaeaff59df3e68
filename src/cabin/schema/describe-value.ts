const shownCharacters = 60;

/** A value in few words, for the `found` of an issue; safe for any value whatever. */
export function describeValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (value === null) return 'null';
  if (Array.isArray(value)) return value.length === 1 ? 'a list of 1' : `a list of ${value.length}`;
  switch (typeof value) {
    case 'string': return JSON.stringify(value.length > shownCharacters ? `${value.slice(0, shownCharacters)}…` : value);
    case 'number': return Number.isFinite(value) ? String(value) : 'a number that is not finite';
    case 'boolean': return String(value);
    case 'object': return 'an object';
    default: return `a ${typeof value}`;
  }
}
