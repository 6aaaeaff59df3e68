export * from './expression.ts';
export * from './rule-book.ts';
export * from './variables.ts';
