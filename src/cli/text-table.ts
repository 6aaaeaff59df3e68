import type { Emphasis } from './style.ts';
import type { Terminal } from './verb.ts';
import { columnsOf, printable, shortened } from './printable.ts';
import { styled } from './style.ts';

export interface TableColumn {
  readonly title: string;
  readonly align?: 'left' | 'right';
  /** Longer cells are cut; 40 where absent. */
  readonly most?: number;
}

export interface TableRow {
  readonly cells: readonly string[];
  readonly emphasis?: Emphasis;
  /** A sentence under the row, wrapped to the terminal. */
  readonly below?: string;
  /** A second, quiet paragraph under that. */
  readonly grounds?: string;
}

/** Rows under aligned headings, two blanks between columns, no blanks at the ends of lines. Cells are made safe for a terminal. */
export function textTable(columns: readonly TableColumn[], rows: readonly TableRow[], terminal: Terminal): string {
  const safe = rows.map((row) => row.cells.map((cell, index) => shortened(printable(cell), columns[index].most ?? 40)));
  const widths = columns.map((column, index) => Math.max(columnsOf(column.title), ...safe.map((cells) => columnsOf(cells[index]))));
  const line = (cells: readonly string[]): string => cells
    .map((cell, index) => {
      const blanks = ' '.repeat(widths[index] - columnsOf(cell));
      return columns[index].align === 'right' ? `${blanks}${cell}` : `${cell}${blanks}`;
    })
    .join('  ')
    .trimEnd();
  const lines = [styled(line(columns.map((column) => column.title)), 'strong', terminal)];
  rows.forEach((row, index) => {
    lines.push(styled(line(safe[index]), row.emphasis, terminal));
    if (row.below !== undefined) lines.push(...wrapped(printable(row.below), terminal.columns, '    '));
    if (row.grounds !== undefined) lines.push(...wrapped(printable(row.grounds), terminal.columns, '    ').map((text) => styled(text, 'quiet', terminal)));
  });
  return `${lines.join('\n')}\n`;
}

/** A sentence broken between words into lines of at most `columns`, each with the indent in front. A word that is longer has a line of its own. */
export function wrapped(text: string, columns: number, indent = ''): string[] {
  const lines: string[] = [];
  let line = '';
  let used = 0;
  for (const word of text.split(/ +/)) {
    const wide = columnsOf(word);
    if (line !== '' && indent.length + used + 1 + wide > columns) {
      lines.push(indent + line);
      [line, used] = ['', 0];
    }
    [line, used] = line === '' ? [word, wide] : [`${line} ${word}`, used + 1 + wide];
  }
  lines.push(indent + line);
  return lines;
}
