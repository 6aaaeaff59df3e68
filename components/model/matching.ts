/** One of the things that can be chosen. */
export interface Choice {
  readonly id: string;
  readonly name: string;
}

/** Choices that a browser's own list bears: thousands of options in it hold the page up. */
export const mostInList = 120;

/** The choices that have every word of a search in their name or id, whatever the case; those whose name begins with the search come first, in their own order. */
export function matching(choices: readonly Choice[], search: string): readonly Choice[] {
  const wanted = search.trim().toLowerCase();
  const words = wanted.split(/\s+/).filter(Boolean);
  if (words.length === 0) return choices;
  const [first, others]: [Choice[], Choice[]] = [[], []];
  for (const choice of choices) {
    const name = choice.name.toLowerCase();
    const text = `${name} ${choice.id.toLowerCase()}`;
    if (words.every((word) => text.includes(word))) (name.startsWith(wanted) ? first : others).push(choice);
  }
  return [...first, ...others];
}
