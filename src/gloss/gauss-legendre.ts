/** Nodes in -1..1 and weights that sum to 2. */
export interface Quadrature {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Gauss-Legendre rule of `order` points, exact for polynomials of degree 2 order - 1.
 *
 * Order 1..200. Nodes are the roots of the Legendre polynomial, by Newton's method from Tricomi's estimate.
 * Source: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 25.4.29 and 22.16.6.
 */
export function gaussLegendre(order: number): Quadrature {
  const nodes = new Float64Array(order);
  const weights = new Float64Array(order);
  for (let index = 0; index < order; index += 1) {
    let x = Math.cos((Math.PI * (order - index - 0.25)) / (order + 0.5));
    let slope = 0;
    for (let round = 0; round < 50; round += 1) {
      let [before, value] = [1, x];
      for (let degree = 2; degree <= order; degree += 1) {
        [before, value] = [value, ((2 * degree - 1) * x * value - (degree - 1) * before) / degree];
      }
      slope = (order * (x * value - before)) / (x * x - 1);
      const change = value / slope;
      x -= change;
      if (Math.abs(change) < 1e-15) break;
    }
    nodes[index] = x;
    weights[index] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}
