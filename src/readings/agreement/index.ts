export * from './agreement-of.ts';
export * from './agreement-study.ts';
export * from './compare-instruments.ts';
export * from './estimate-agreement.ts';
export * from './tile-readings.ts';
