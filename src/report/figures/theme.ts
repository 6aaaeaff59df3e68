/** Ink and paper of a figure, as CSS colours. Samples bring their own colours and are never themed. */
export interface FigureTheme {
  /** Text and the lines that carry meaning. */
  readonly ink: string;
  /** Text and lines of second rank; still 4.5:1 on paper. */
  readonly quiet: string;
  /** Grid lines and rests; decorative. */
  readonly faint: string;
  readonly paper: string;
  /** The neutral surround that samples lie on. */
  readonly table: string;
  /** Ink on the table. */
  readonly tableInk: string;
  /** Light edge under a line, so that it shows on any sample. */
  readonly casing: string;
  /** Core of a line on its casing. */
  readonly core: string;
  readonly holds: string;
  readonly open: string;
  readonly clashes: string;
}

/** For white paper. */
export const printTheme: FigureTheme = {
  ink: '#141414',
  quiet: '#4d4d4d',
  faint: '#c4c4c4',
  paper: '#ffffff',
  table: '#b3b3b3',
  tableInk: '#141414',
  casing: '#f7f7f7',
  core: '#141414',
  holds: '#141414',
  open: '#6b5200',
  clashes: '#96261a',
};
