export * from './aged-part.ts';
export * from './ageing.ts';
export * from './compare-cabins.ts';
export * from './compare-stages.ts';
export * from './joint-change.ts';
export * from './joint-figures.ts';
export * from './judged-state.ts';
export * from './part-change.ts';
