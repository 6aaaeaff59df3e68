import type { Cabin } from '../cabin/cabin.ts';

/** Whether a source of any part has two lots on record, so that there is a series to look at. */
export const hasLots = ({ parts }: Cabin): boolean =>
  parts.some(({ sources }) => sources.some(({ specimens }) => new Set(specimens.flatMap(({ lot }) => (lot === undefined ? [] : [lot.id]))).size > 1));
