import { maxNameLength } from '../cabin/schema/text.ts';

/** A text as a name on one line: blanks and line ends run together to one blank, none at the ends; undefined where nothing is left. Longer than a name may be, it is cut. */
export const nameText = (text: string | undefined): string | undefined => text?.slice(0, 10_000).replaceAll(/\s+/gu, ' ').trim().slice(0, maxNameLength).trim() || undefined;
