import type { Cabin } from '../../cabin/cabin.ts';
import { sourceOf } from '../../cabin/source-of.ts';

/** A source for each part, by their ids. */
export type Picks = Readonly<Record<string, string>>;

/** The document with its parts standing by the sources picked; a part without a pick stays as it is. */
export const withPicks = (cabin: Cabin, picks: Picks): Cabin => ({
  ...cabin,
  parts: cabin.parts.map((part) => (Object.hasOwn(picks, part.id) && sourceOf(part).id !== picks[part.id] ? { ...part, source: picks[part.id] } : part)),
});

/** The sources that the document's parts stand by now. */
export const presentPicks = (cabin: Cabin): Picks => Object.fromEntries(cabin.parts.map((part) => [part.id, sourceOf(part).id]));
