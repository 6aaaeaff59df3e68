import type { CabinComparison, JointChange } from '../../src/harmony/compare/index.ts';

/** What may be looked at of a comparison, in the order of its buttons. */
export const changeFilters = ['changed', 'worse verdict', 'worse', 'better verdict', 'better', 'new', 'gone', 'same'] as const;
export type ChangeFilter = (typeof changeFilters)[number];

export const changeTitles: Readonly<Record<ChangeFilter, string>> = {
  changed: 'All changed', 'worse verdict': 'Worse verdict', worse: 'More of the limit', 'better verdict': 'Better verdict', better: 'Less of the limit', new: 'New', gone: 'Gone', same: 'As before',
};

/** The one filter beside `changed` that a change passes. */
export const filterOf = ({ kind, worse }: JointChange): Exclude<ChangeFilter, 'changed'> => (kind === 'verdict' ? (worse ? 'worse verdict' : 'better verdict') : kind);

export const passesFilter = (change: JointChange, filter: ChangeFilter): boolean => (filter === 'changed' ? change.kind !== 'same' : filterOf(change) === filter);

/** How many joints pass each filter. */
export const filterCounts = ({ joints }: CabinComparison): ReadonlyMap<ChangeFilter, number> =>
  new Map(changeFilters.map((filter) => [filter, joints.filter((change) => passesFilter(change, filter)).length]));
