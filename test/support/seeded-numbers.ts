/** Numbers between 0 and 1, the same for the same seed (1 or more): S. K. Park, K. W. Miller, Communications of the ACM 31 (1988) 1192. */
export function seededNumbers(seed: number): () => number {
  const modulus = 2147483647;
  let state = (seed * 7919) % modulus;
  return () => {
    state = (state * 48271) % modulus;
    return state / modulus;
  };
}

/** A smooth reflectance curve: a level with three bells, kept within 0.005 and 0.98. */
export function smoothReflectance(random: () => number): (wavelength: number) => number {
  const level = 0.02 + 0.5 * random() ** 2;
  const bells = Array.from({ length: 3 }, () => ({ height: 0.6 * (random() - 0.4), centre: 400 + 320 * random(), width: 25 + 60 * random() }));
  return (wavelength) => {
    const sum = bells.reduce((total, { height, centre, width }) => total + height * Math.exp(-(((wavelength - centre) / width) ** 2)), level);
    return Math.min(0.98, Math.max(0.005, sum));
  };
}
