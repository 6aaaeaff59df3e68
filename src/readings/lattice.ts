/**
 * Generating vector of a rank-1 lattice, good for 2^8 to 2^14 points in up to 32 dimensions.
 * Found component by component with equal product weights by test/readings/support/lattice-search.ts.
 * I. H. Sloan and S. Joe, Lattice Methods for Multiple Integration (1994);
 * R. Cools, F. Y. Kuo and D. Nuyens, SIAM J. Sci. Comput. 28 (2006) 2162.
 */
export const latticeVector: readonly number[] = [
  1, 13873, 3213, 3667, 5337, 1469, 14695, 11601, 483, 15319, 2881, 2947, 16035, 4693, 14793, 15243,
  5999, 15345, 12323, 2433, 11079, 59, 2793, 5453, 10887, 15583, 12943, 9709, 4727, 12847, 4535, 3303,
];

export const largestLattice = 2 ** 14;
