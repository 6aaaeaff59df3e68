import type { Part } from '../cabin/cabin.ts';

/** The two sides as sentences call them. */
export interface SideNames {
  readonly standard: string;
  readonly trial: string;
}

/** Kept for each list, which is never changed, since a page asks for one name at a time. */
const known = new WeakMap<readonly Part[], ReadonlyMap<string, string>>();

/** A part's name, with its id where another part of the cabin has the same name. */
export function partNames(parts: readonly Part[]): ReadonlyMap<string, string> {
  const before = known.get(parts);
  if (before !== undefined) return before;
  const count = new Map<string, number>();
  for (const part of parts) count.set(part.name, (count.get(part.name) ?? 0) + 1);
  const names = new Map(parts.map((part) => [part.id, (count.get(part.name) ?? 0) > 1 ? `${part.name} (${part.id})` : part.name]));
  known.set(parts, names);
  return names;
}
