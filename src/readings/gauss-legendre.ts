export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/** Nodes and weights on -1..1 by Newton's method on the Legendre polynomial (Abramowitz and Stegun 25.4.29); `n` at least 1. */
export function gaussLegendre(n: number): QuadratureRule {
  const x = new Float64Array(n);
  const w = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let node = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 20; step++) {
      let previous = 1;
      let value = node;
      for (let k = 2; k <= n; k++) [previous, value] = [value, ((2 * k - 1) * node * value - (k - 1) * previous) / k];
      slope = (n * (node * value - previous)) / (node * node - 1);
      const move = value / slope;
      node -= move;
      if (Math.abs(move) < 1e-16) break;
    }
    x[i] = node;
    w[i] = 2 / ((1 - node * node) * slope * slope);
  }
  return { nodes: x, weights: w };
}
