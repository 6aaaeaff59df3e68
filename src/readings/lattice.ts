/**
 * Generating vector of a rank-1 lattice, good for 2^8 to 2^14 points in up to 12 dimensions; pairs of later
 * coordinates would come closer to one another than random ones do.
 * Found component by component with equal product weights by test/readings/support/lattice-search.ts.
 * I. H. Sloan and S. Joe, Lattice Methods for Multiple Integration (1994);
 * R. Cools, F. Y. Kuo and D. Nuyens, SIAM J. Sci. Comput. 28 (2006) 2162.
 */
export const latticeVector: readonly number[] = [1, 13873, 3213, 3667, 5337, 1469, 14695, 11601, 483, 15319, 2881, 2947];

export const largestLattice = 2 ** 14;
