export * from './cabin-quality.ts';
export * from './instrument-quality.ts';
export * from './quality-limits.ts';
export * from './specimen-quality.ts';
