import { shortened } from './printable.ts';

/** Least time between two lines of progress, seconds. */
const pauseS = 0.1;
/** Nothing is told of work that is done before, seconds. */
const patienceS = 0.3;

export interface ProgressLine {
  readonly tell: (share: number, doing: string) => void;
  /** Takes the line away again. */
  readonly end: () => void;
}

/**
 * One line on a terminal that follows a piece of work and goes when it is done. Nothing is written of short work. It keeps one column free of
 * those that the terminal has at the time, since a line that wraps cannot be taken away again.
 */
export function progressLine(write: (text: string) => void, clock: () => number, columns: () => number): ProgressLine {
  const begun = clock();
  let told = -Infinity;
  let shown = false;
  return {
    tell: (share, doing) => {
      const now = clock();
      if (now - begun < patienceS || now - told < pauseS) return;
      told = now;
      shown = true;
      write(`\r\u001b[K${shortened(`${String(Math.round(100 * share)).padStart(3)} %  ${doing}`, Math.max(1, columns() - 1))}`);
    },
    end: () => {
      if (shown) write('\r\u001b[K');
      shown = false;
    },
  };
}
