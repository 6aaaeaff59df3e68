/** A pair of materials in either order as one key. */
export const pairKey = (a: string, b: string): string => [a, b].sort().join('+');

/** The two materials of a key. */
export const pairOf = (key: string): readonly [string, string] => {
  const [a = '', b = a] = key.split('+');
  return [a, b];
};
