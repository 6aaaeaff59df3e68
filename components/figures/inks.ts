import type { FigureTheme } from '../../src/report/figures/theme.ts';

/** Figures on paper: panels, scales, plots. */
export const paperInk: FigureTheme = {
  ink: 'var(--ink)',
  quiet: 'var(--quiet)',
  faint: 'var(--faint)',
  paper: 'var(--paper)',
  table: 'var(--table)',
  tableInk: 'var(--table-ink)',
  casing: 'var(--casing)',
  core: 'var(--core)',
  holds: 'var(--holds)',
  open: 'var(--open)',
  clashes: 'var(--clashes)',
};

/** Figures on the table, among samples: the verdict lines stand on their own light edge. */
export const tableInk: FigureTheme = {
  ...paperInk,
  quiet: 'var(--table-quiet)',
  holds: 'var(--map-holds)',
  open: 'var(--map-open)',
  clashes: 'var(--map-clashes)',
};
