/**
 * Seeded stream of 32-bit unsigned integers (SplitMix32: a Weyl sequence through the finaliser of MurmurHash3;
 * G. L. Steele et al., OOPSLA 2014). The same seed gives the same stream on every engine.
 */
export function seededBits(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let bits = state ^ (state >>> 16);
    bits = Math.imul(bits, 0x85ebca6b);
    bits ^= bits >>> 13;
    bits = Math.imul(bits, 0xc2b2ae35);
    return (bits ^ (bits >>> 16)) >>> 0;
  };
}
