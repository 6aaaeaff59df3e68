import type { Part } from '../cabin/cabin.ts';

/** The two sides as sentences call them. */
export interface SideNames {
  readonly standard: string;
  readonly trial: string;
}

/** A part's name, with its id where another part of the cabin has the same name. */
export function partNames(parts: readonly Part[]): ReadonlyMap<string, string> {
  const count = new Map<string, number>();
  for (const part of parts) count.set(part.name, (count.get(part.name) ?? 0) + 1);
  return new Map(parts.map((part) => [part.id, (count.get(part.name) ?? 0) > 1 ? `${part.name} (${part.id})` : part.name]));
}
