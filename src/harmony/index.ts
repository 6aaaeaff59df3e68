export * from './check-json.ts';
export * from './judge.ts';
export * from './judgement.ts';
export * from './rejudge.ts';
export * from './master-drift.ts';
export * from './master-overview.ts';
export * from './quality/index.ts';
