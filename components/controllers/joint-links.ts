import { remembered } from '../model/remembered.ts';
import { formatRoute } from './route.ts';
import type { Route } from './route.ts';

/** Addresses of joints from a place, as one function as long as the place is the same, so that nothing is drawn anew for it. */
export const jointLinks = remembered((route: Route) => (joint: string): string => formatRoute({
  ...route, view: 'joint', joint, item: undefined, options: { ...route.options, try: '' }, folds: route.view === 'joint' ? route.folds : undefined,
}));
