import type { View } from '../controllers/route.ts';
import { loadFormulas } from '../platform/formulas.ts';

/** A place of the workbench that is loaded when it is first gone to. */
export interface RegisteredView {
  readonly view: View;
  /** As in the row of places. */
  readonly title: string;
  /** What one does there, for the palette and as a hint. */
  readonly about: string;
  readonly group: 'see' | 'data' | 'plan' | 'tell';
  readonly tag: string;
  readonly load: () => Promise<unknown>;
}

/** In the order of the row of places. The cabin and its joints are part of the shell and always there. */
export const registeredViews: readonly RegisteredView[] = [
  {
    view: 'parts', title: 'Parts', about: 'Parts, sources, specimens and readings, to look at and edit', group: 'data', tag: 'adjoin-parts-view',
    load: () => import('./parts/adjoin-parts-view.ts'),
  },
  {
    view: 'import', title: 'Import', about: 'Read files of measurements into the cabin', group: 'data', tag: 'adjoin-import-view',
    load: () => import('./import/adjoin-import-view.ts'),
  },
  {
    view: 'readings', title: 'Readings', about: 'How good the measurements are, and what to ask suppliers for', group: 'data', tag: 'adjoin-readings-view',
    load: () => import('./readings/adjoin-readings-view.ts'),
  },
  {
    view: 'masters', title: 'Masters', about: 'Recorded masters, their drift, and what clashes within them', group: 'data', tag: 'adjoin-masters-view',
    load: () => import('./masters/adjoin-masters-view.ts'),
  },
  {
    view: 'surfaces', title: 'Surfaces', about: 'Measure a height map or photograph of a surface', group: 'data', tag: 'adjoin-surface-view',
    load: () => import('./surface/adjoin-surface-view.ts'),
  },
  {
    view: 'rules', title: 'Rules', about: 'The rule book: pairs of materials, limits and their bases', group: 'data', tag: 'adjoin-rules-view',
    load: () => Promise.all([import('./rules/adjoin-rules-view.ts'), loadFormulas()]),
  },
  {
    view: 'sources', title: 'Sources', about: 'Choose one source for each part by harmony and cost', group: 'plan', tag: 'adjoin-sources-view',
    load: () => import('./sources/adjoin-sources-view.ts'),
  },
  {
    view: 'mend', title: 'Mend', about: 'The fewest parts to change so that every joint holds', group: 'plan', tag: 'adjoin-mend-view',
    load: () => import('./mend/adjoin-mend-view.ts'),
  },
  {
    view: 'apportion', title: 'Apportion', about: 'Turn the limits of joints into tolerances of parts', group: 'plan', tag: 'adjoin-apportion-view',
    load: () => import('./apportion/adjoin-apportion-view.ts'),
  },
  {
    view: 'series', title: 'Series', about: 'Lots over time: trends, the first joint to clash, and which lots to build together', group: 'plan', tag: 'adjoin-series-view',
    load: () => import('./series/adjoin-series-view.ts'),
  },
  {
    view: 'compare', title: 'Compare', about: 'Two cabins, or two stages of one, joint by joint', group: 'tell', tag: 'adjoin-compare-view',
    load: () => import('./compare/adjoin-compare-view.ts'),
  },
  {
    view: 'review', title: 'Review', about: 'One joint at a time, worst first, by keyboard', group: 'tell', tag: 'adjoin-review-view',
    load: () => import('./review/adjoin-review-view.ts'),
  },
  {
    view: 'report', title: 'Report', about: 'The harmony report: preview, print, export', group: 'tell', tag: 'adjoin-report-view',
    load: () => import('./report/adjoin-report-view.ts'),
  },
];

export const registeredView = (view: View): RegisteredView | undefined => registeredViews.find((one) => one.view === view);
