import { seededNumbers } from '../support/seeded-numbers.ts';

/** Invented: a file of so many gloss readings, row by row, of specimens of the parts named, as many of each. The same seed gives the same file. */
export function manyReadings(parts: readonly string[], count: number, seed: number): string {
  const random = seededNumbers(seed);
  const rows = Array.from({ length: count }, (_, at) => {
    const part = parts[Math.floor((at * parts.length) / count)] ?? '';
    return `${part},bulk-${part},${at},gloss-1,${(2 + random()).toFixed(2)}`;
  });
  return `part,specimen,spot,instrument,gloss 60\n${rows.join('\n')}\n`;
}
