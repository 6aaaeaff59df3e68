export * from './choose-angle.ts';
export * from './fresnel-gloss.ts';
export * from './fresnel-reflectance.ts';
export * from './gloss-angle.ts';
export * from './haze-index.ts';
export * from './verify-gloss.ts';
