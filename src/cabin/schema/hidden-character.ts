// Control characters, the marks that turn the direction of writing, and halves of surrogate pairs: none can be seen, all can mislead.

/** A character that may not stand in a name. */
export const hiddenInName = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u;

/** A character that may not stand in a text of several lines, where tabs and line breaks may. */
export const hiddenInText = /(?![\t\n\r])\p{Cc}|[\p{Cs}\u202a-\u202e\u2066-\u2069]/u;

/** What was found, for the issue: `the character U+0007`. */
export const hiddenCharacterText = (character: string): string =>
  `the character U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;
