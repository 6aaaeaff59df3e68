export * from './master-sheet.ts';
