import { hiddenCharacterText, hiddenInText } from '../cabin/schema/hidden-character.ts';
import type { TextPosition } from '../cabin/text-position.ts';
import { textPositions } from '../cabin/text-position.ts';
import type { Issue, Outcome } from '../issue.ts';
import type { TableFaults } from './table-faults.ts';
import { collectTableFaults } from './table-faults.ts';

export type Separator = ',' | ';' | '\t';

/** Longest text, in UTF-16 code units, and the most of everything that is read. */
export const delimitedLimits = { characters: 64 * 1024 * 1024, cell: 10_000, columns: 5000, rows: 200_000 } as const;

export interface DelimitedRow {
  readonly cells: readonly string[];
  /** Place of each cell in the text; one past the last is where the row ends. */
  readonly offsets: readonly number[];
}

/** A table of text cells that knows where everything stood. Every row has as many cells as the header. */
export interface DelimitedTable {
  readonly separator: Separator;
  /** What stands between whole and fraction in this table; a comma only where the separator is another. */
  readonly decimal: '.' | ',';
  readonly header: DelimitedRow;
  readonly rows: readonly DelimitedRow[];
  /** Comment lines of the form `# name: value`, names in small letters, with their places. */
  readonly declarations: ReadonlyMap<string, { readonly value: string; readonly offset: number }>;
  position(offset: number): TextPosition;
}

/**
 * Reads comma, semicolon or tab separated text (RFC 4180: quoted cells, doubled quotes, line breaks in quotes; LF, CR LF or CR).
 * A byte-order mark, blank lines, rows of nothing but separators at the end and lines that begin with `#` are passed over.
 * The separator is the one most frequent in the first line; nothing else is guessed. All faults are listed with line and column;
 * with an error among them there is no value.
 */
export function readDelimited(text: string, file?: string): Outcome<DelimitedTable> {
  const position = textPositions(text);
  const faults = collectTableFaults(position, file);
  const table = readTable(text, position, faults);
  return { value: faults.errors() === 0 ? table : undefined, issues: faults.list() };
}

function readTable(text: string, position: (offset: number) => TextPosition, faults: TableFaults): DelimitedTable | undefined {
  if (text.length > delimitedLimits.characters) {
    faults.add('file-too-large', 0, {
      found: `${text.length} characters`, expected: `at most ${delimitedLimits.characters}`, hint: 'Split the file.',
    });
    return undefined;
  }
  const declarations = new Map<string, { value: string; offset: number }>();
  const rows: DelimitedRow[] = [];
  let separator: Separator | undefined;
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (at < text.length) {
    if (text[at] === '#') {
      const end = lineEnd(text, at);
      const match = /^#\s*([A-Za-z][\w -]{0,40}?)\s*:\s*(.{0,200}?)\s*$/u.exec(text.slice(at, Math.min(end, at + 300)));
      if (match !== null) declarations.set((match[1] ?? '').toLowerCase(), { value: match[2] ?? '', offset: at });
      at = afterLine(text, end);
      continue;
    }
    separator ??= text.slice(at, lineEnd(text, at)).trim() === '' ? undefined : sniffSeparator(text.slice(at, lineEnd(text, at)));
    const row = readRow(text, at, separator ?? ',', faults);
    if (row === undefined) return undefined;
    at = row.next;
    if (row.cells.every((cell) => cell === '')) continue;
    rows.push({ cells: row.cells, offsets: row.offsets });
    if (rows.length > delimitedLimits.rows + 1) {
      faults.add('too-many-rows', row.offsets[0] ?? 0, {
        expected: `at most ${delimitedLimits.rows} rows`, found: 'more', hint: 'Split the file.',
      });
      return undefined;
    }
  }
  const [header, ...body] = rows;
  if (header === undefined || separator === undefined) {
    faults.add('empty-file', 0, { found: 'no line of data', expected: 'a line of column names and a line for each row' });
    return undefined;
  }
  checkWidths(header, body, separator, faults);
  if (body.length === 0) faults.add('no-rows', header.offsets.at(-1) ?? 0, {
    found: 'column names only', expected: 'at least one row of data',
  });
  return { separator, decimal: decimalOf(body, separator), header, rows: body, declarations, position };
}

function lineEnd(text: string, from: number): number {
  for (let at = from; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 0x0a || code === 0x0d) return at;
  }
  return text.length;
}

const afterLine = (text: string, end: number): number => (text[end] === '\r' && text[end + 1] === '\n' ? end + 2 : end + 1);

function sniffSeparator(line: string): Separator {
  const bare = line.replace(/"[^"]*"/gu, '');
  const count = (separator: string): number => bare.split(separator).length - 1;
  // With equal counts the tab goes first: it stands in no name and no number.
  return (['\t', ';', ','] as const).reduce((best, candidate) => (count(candidate) > count(best) ? candidate : best), '\t' as Separator);
}

interface ReadRow extends DelimitedRow {
  readonly next: number;
}

function readRow(text: string, start: number, separator: Separator, faults: TableFaults): ReadRow | undefined {
  const cells: string[] = [];
  const offsets: number[] = [];
  let at = start;
  for (;;) {
    const cell = text[at] === '"' ? readQuoted(text, at, separator, faults) : readBare(text, at, separator);
    if (cell === undefined) return undefined;
    checkCell(cell.value, at, faults);
    cells.push(cell.value);
    offsets.push(at);
    at = cell.end;
    if (cells.length > delimitedLimits.columns) {
      faults.add('too-many-columns', at, { expected: `at most ${delimitedLimits.columns} columns`, found: 'more' });
      return undefined;
    }
    if (text[at] !== separator) {
      offsets.push(at);
      return { cells, offsets, next: afterLine(text, at) };
    }
    at += 1;
  }
}

interface ReadCell {
  readonly value: string;
  readonly end: number;
}

function readBare(text: string, start: number, separator: Separator): ReadCell {
  let end = start;
  while (end < text.length && text[end] !== separator && text[end] !== '\n' && text[end] !== '\r') end += 1;
  return { value: text.slice(start, end).trim(), end };
}

function readQuoted(text: string, start: number, separator: Separator, faults: TableFaults): ReadCell | undefined {
  let close = text.indexOf('"', start + 1);
  while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
  if (close < 0) {
    faults.add('unclosed-quote', start, {
      found: 'a quotation mark that is not closed', expected: 'a closing quotation mark',
      hint: 'The file may have been cut short, or an inch mark stands alone.',
    });
    return undefined;
  }
  const { value: rest, end } = readBare(text, close + 1, separator);
  if (rest !== '') {
    faults.add('text-after-quote', close + 1, {
      found: JSON.stringify(rest.slice(0, 40)), expected: 'the separator or the end of the line',
      hint: 'A quotation mark inside a quoted cell is doubled.',
    });
  }
  return { value: text.slice(start + 1, close).replaceAll('""', '"').trim(), end };
}

function checkCell(value: string, offset: number, faults: TableFaults): void {
  if (value.length > delimitedLimits.cell) {
    faults.add('cell-too-long', offset, { found: `${value.length} characters`, expected: `at most ${delimitedLimits.cell}` });
    return;
  }
  const match = hiddenInText.exec(value);
  if (match !== null) {
    faults.add('control-character', offset + match.index, {
      found: hiddenCharacterText(match[0]), expected: 'text that can be seen', hint: 'The file may not be a text file in UTF-8.',
    });
  }
}

function checkWidths(header: DelimitedRow, rows: readonly DelimitedRow[], separator: Separator, faults: TableFaults): void {
  const width = header.cells.length;
  for (const { cells, offsets } of rows) {
    if (cells.length < width) {
      faults.add('missing-cells', offsets.at(-1) ?? 0, { found: `${cells.length} cells`, expected: `${width}, as in the header` });
    } else if (cells.length > width) {
      faults.add('extra-cells', offsets[width] ?? 0, {
        found: `${cells.length} cells`, expected: `${width}, as in the header`,
        ...(separator === ',' ? { hint: 'Decimal commas need a semicolon or a tab between the cells.' } : {}),
      });
    }
  }
}

const withComma = /^[+-]?\d*,\d+(?:[eE][+-]?\d+)?$/u;
const withPoint = /^[+-]?\d*\.\d+(?:[eE][+-]?\d+)?$/u;

function decimalOf(rows: readonly DelimitedRow[], separator: Separator): '.' | ',' {
  if (separator === ',') return '.';
  for (const { cells } of rows) {
    for (const cell of cells) {
      if (withComma.test(cell)) return ',';
      if (withPoint.test(cell)) return '.';
    }
  }
  return '.';
}

/** The faults of a table that reads on where `readDelimited` ended; the issues met so far come first. */
export const continueFaults = (table: DelimitedTable, issues: readonly Issue[], file?: string): TableFaults =>
  collectTableFaults(table.position, file, issues);
