/**
 * Even numbers in 0..1 from a 32-bit seed (xorshift of G. Marsaglia, J. Stat. Software 8 (2003) 14, with its first numbers left out).
 * The same seed gives the same stream on every engine.
 */
export function seededUniform(seed: number): () => number {
  let state = (Math.imul(seed, 0x9e3779b1) ^ 0x85ebca6b) >>> 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  for (let round = 0; round < 16; round += 1) next();
  return next;
}

/** A number of a text, for seeds: 32 bits by the hash of Fowler, Noll and Vo (FNV-1a). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  return hash >>> 0;
}
