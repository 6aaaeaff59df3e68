/** A stream of seeded pseudo-random numbers: the same seed gives the same numbers on every machine. */
export interface Random {
  /** Uniform over 0..1, 1 left out. */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/** Seed of a name, by the FNV-1a hash of its characters: a part keeps its noise when other parts come or go. */
function seedOf(name: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < name.length; index += 1) hash = Math.imul(hash ^ name.charCodeAt(index), 0x01000193);
  return hash >>> 0;
}

/** A stream for a name. Weyl sequence with a multiplicative mix of 32 bits. */
export function randomOf(name: string): Random {
  let state = seedOf(name);
  const uniform = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state ^ (state >>> 16);
    mixed = Math.imul(mixed, 0x21f0aaad);
    mixed ^= mixed >>> 15;
    mixed = Math.imul(mixed, 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 0x1_0000_0000;
  };
  return {
    uniform,
    // Box and Muller; 1 - u keeps the logarithm from zero.
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

/** Normal draws with mean zero exactly, so that the mean of a specimen's spots is the value that was planned. */
export function centredNormals(random: Random, count: number): number[] {
  const draws = Array.from({ length: count }, () => random.normal());
  const mean = draws.reduce((sum, draw) => sum + draw, 0) / count;
  return draws.map((draw) => draw - mean);
}
