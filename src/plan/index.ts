export * from './apportion/apportion-cabin.ts';
export * from './choose/choose-sources.ts';
export type { ChosenSet } from './choose/chosen-set.ts';
export * from './mend/mend-cabin.ts';
export * from './mix/free-mix.ts';
export type { Share } from './model/groups.ts';
export * from './model/with-picks.ts';
export { locateSolver } from './solver/highs-solver.ts';
export * from './watch.ts';
