import type { Cabin } from '../../cabin/cabin.ts';
import type { MaterialReach } from './material-reach.ts';
import type { MendTerms } from './mend-items.ts';

/** What parts of a document say of one thing, by the part's id. */
const stated = <T>(cabin: Cabin, of: (part: Cabin['parts'][number]) => T | undefined): Readonly<Record<string, T>> =>
  Object.fromEntries(cabin.parts.flatMap((part) => { const value = of(part); return value === undefined ? [] : [[part.id, value] as const]; }));

/**
 * The terms of a mend as the document and the caller state them together. What is asked goes before what the document holds, entry by
 * entry; locks add up, but for the parts that are asked to be released.
 */
export function ownTerms<T extends MendTerms & { readonly timeLimitS?: number }>(cabin: Cabin, asked: T): T {
  const released = new Set(asked.released);
  const locked = [...new Set([...(asked.locked ?? []), ...cabin.parts.filter(({ id, mend }) => mend?.locked === true && !released.has(id)).map(({ id }) => id)])];
  const costs = { ...stated(cabin, ({ mend }) => mend?.cost), ...asked.costs };
  const partReach: Readonly<Record<string, MaterialReach>> = { ...stated(cabin, ({ mend }) => mend?.reach), ...asked.partReach };
  const known = new Set<string>(cabin.parts.flatMap(({ sources }) => sources.map(({ material }) => material)));
  // A material that no part has is nothing to plan with; asked for it is a slip, in the document it may be there for later.
  const held = Object.entries(cabin.planning?.reach ?? {}).filter(([material]) => known.has(material));
  const reach = { ...Object.fromEntries(held), ...asked.reach };
  const timeLimitS = asked.timeLimitS ?? cabin.planning?.timeLimitS;
  const filled = (value: object): boolean => Object.keys(value).length > 0;
  return {
    ...asked,
    ...(locked.length === 0 ? {} : { locked }), ...(filled(costs) ? { costs } : {}), ...(filled(partReach) ? { partReach } : {}), ...(filled(reach) ? { reach } : {}),
    ...(timeLimitS === undefined ? {} : { timeLimitS }),
  };
}
