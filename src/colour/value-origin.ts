/**
 * Of what kind a check value is: printed as a table by a standard, a handbook or a paper; the result of an example that a publication or a
 * library works through; or derived from published equations by another program than this one, or by hand.
 */
export type ValueKind = 'published table' | 'worked example' | 'derived';

/** Where a check value comes from. */
export interface ValueOrigin {
  readonly kind: ValueKind;
  /** The publication, and by whose hand the figure was made where that is not the publication's. */
  readonly source: string;
}

export const publishedTable = (source: string): ValueOrigin => ({ kind: 'published table', source });
export const workedExample = (source: string): ValueOrigin => ({ kind: 'worked example', source });
export const derived = (source: string): ValueOrigin => ({ kind: 'derived', source });
