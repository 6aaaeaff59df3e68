export * from './compare-texture.ts';
export * from './vdi-class.ts';
export * from './verify-texture.ts';
