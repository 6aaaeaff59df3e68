export * from './cielab.ts';
