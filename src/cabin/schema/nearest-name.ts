/**
 * The name closest to a misspelt one by the count of letters inserted, dropped, replaced or swapped with their neighbour
 * (Damerau-Levenshtein distance, optimal alignment), case set aside.
 * Undefined where none is within a third of the length, at least 1 and at most 3.
 */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  if (name.length > 60) return undefined;
  let best: string | undefined;
  let bestDistance = Math.min(3, Math.max(1, Math.floor(name.length / 3))) + 1;
  const small = name.toLowerCase();
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= bestDistance) continue;
    const distance = editDistance(small, candidate.toLowerCase());
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const next = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const same = a[row - 1] === b[column - 1];
      let cost = Math.min((last[column] ?? 0) + 1, (next[column - 1] ?? 0) + 1, (last[column - 1] ?? 0) + (same ? 0 : 1));
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        cost = Math.min(cost, (beforeLast[column - 2] ?? 0) + 1);
      }
      next.push(cost);
    }
    beforeLast = last;
    last = next;
  }
  return last[b.length] ?? 0;
}

/** A hint that names the closest known name, or lists the known ones where they are few. */
export function nameHint(name: string, known: Iterable<string>): string | undefined {
  const names = [...known];
  const nearest = nearestName(name, names);
  if (nearest !== undefined) return `Did you mean ${JSON.stringify(nearest)}?`;
  if (names.length === 0) return undefined;
  return names.length <= 12 ? `Known: ${names.join(', ')}.` : undefined;
}
