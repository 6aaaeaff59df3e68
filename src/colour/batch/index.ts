export * from './difference-batch.ts';
export * from './lab-columns.ts';
export { spectraToLab } from './spectra-to-lab.ts';
