export * from './difference-batch.ts';
export * from './lab-columns.ts';
export * from './spectra-to-lab.ts';
