/** Number of single-character changes between two words (Levenshtein), case ignored. */
function wordDistance(a: string, b: string): number {
  const from = a.toLowerCase();
  const to = b.toLowerCase();
  let previous = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const change = from[row - 1] === to[column - 1] ? 0 : 1;
      current.push(Math.min(previous[column]! + 1, current[column - 1]! + 1, previous[column - 1]! + change));
    }
    previous = current;
  }
  return previous[to.length]!;
}

/**
 * The name of a list that is closest to a misspelt one, for hints; undefined where none is near.
 * Near means at most a third of the longer word changed; words over 60 characters get no hint.
 */
export function nearestName(word: string, names: readonly string[]): string | undefined {
  if (word.length > 60) return undefined;
  let best: string | undefined;
  let bestDistance = Infinity;
  for (const name of names) {
    const distance = wordDistance(word, name);
    if (distance <= Math.max(word.length, name.length) / 3 && distance < bestDistance) {
      best = name;
      bestDistance = distance;
    }
  }
  return best;
}

/** `did you mean "x"?` with a list of what is allowed where nothing is near. */
export function nameHint(word: string, names: readonly string[]): string {
  const near = nearestName(word, names);
  return near === undefined ? `Use one of: ${names.join(', ')}` : `Did you mean "${near}"?`;
}
