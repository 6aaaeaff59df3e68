/**
 * Generating vector of a rank-1 lattice, good for 2^8 to 2^14 points in up to 32 dimensions.
 * Found component by component with product weights 1/j by test/readings/support/lattice-search.ts.
 * I. H. Sloan and S. Joe, Lattice Methods for Multiple Integration (1994);
 * R. Cools, F. Y. Kuo and D. Nuyens, SIAM J. Sci. Comput. 28 (2006) 2162.
 */
export const latticeVector: readonly number[] = [
  1, 7303, 3407, 2553, 4377, 5409, 2613, 15333, 14501, 1635, 389, 2499, 11407, 5893, 8149, 11745,
  2851, 9559, 2245, 12461, 12239, 10767, 5247, 1097, 3337, 14709, 15811, 805, 3107, 11737, 5655, 1959,
];

export const largestLattice = 2 ** 14;
