type Scalar = string | number | boolean | null | undefined;

/**
 * A value after the first pass over a faulty document: any member may be missing and any item of a list may be a gap.
 * Tuples (colours, points, matrices) are whole or missing.
 */
export type Draft<T> = T extends Scalar ? T
  : T extends readonly (infer Item)[]
    ? number extends T['length'] ? readonly (Draft<Item> | undefined)[] : T
    : { readonly [K in keyof T]?: Draft<T[K]> };
