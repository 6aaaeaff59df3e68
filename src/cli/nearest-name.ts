/** Number of insertions, deletions, replacements and swaps of neighbours that turn one word into the other (optimal string alignment). */
export function editDistance(from: string, to: string): number {
  const rows = Array.from({ length: from.length + 1 }, (_, row) => Array.from({ length: to.length + 1 }, (_, column) => (row === 0 ? column : column === 0 ? row : 0)));
  for (let i = 1; i <= from.length; i += 1) {
    for (let j = 1; j <= to.length; j += 1) {
      const replace = from[i - 1] === to[j - 1] ? 0 : 1;
      let best = Math.min(rows[i - 1][j] + 1, rows[i][j - 1] + 1, rows[i - 1][j - 1] + replace);
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) best = Math.min(best, rows[i - 2][j - 2] + 1);
      rows[i][j] = best;
    }
  }
  return rows[from.length][to.length];
}

/** The name most like `word`, or undefined where none is near enough to be a slip of the hand. Case does not count. */
export function nearestName(word: string, names: readonly string[]): string | undefined {
  const typed = word.slice(0, 64).toLowerCase();
  let best: string | undefined;
  let bestDistance = Math.max(1, Math.floor(typed.length / 3)) + 1;
  for (const name of names) {
    const lower = name.toLowerCase();
    const distance = typed.length >= 3 && lower.startsWith(typed) ? 0.5 : editDistance(typed, lower);
    if (distance < bestDistance) [best, bestDistance] = [name, distance];
  }
  return best;
}
