import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A published table: its header lines, the names of its columns and its rows of text. */
export interface ReferenceTable {
  readonly notes: readonly string[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Reads `test/reference/<path>`: lines that begin with `#`, one line of column names, then rows of comma-separated cells. */
export function referenceTable(path: string): ReferenceTable {
  const lines = readFileSync(join(import.meta.dirname, '..', 'reference', path), 'utf8').split('\n').filter((line) => line !== '');
  const notes = lines.filter((line) => line.startsWith('#')).map((line) => line.slice(1).trim());
  const [header = '', ...body] = lines.filter((line) => !line.startsWith('#'));
  return { notes, columns: header.split(','), rows: body.map((line) => line.split(',')) };
}

/** One column of a table as numbers. */
export function numbersOf(table: ReferenceTable, column: string): number[] {
  const index = table.columns.indexOf(column);
  if (index < 0) throw new Error(`no column ${column} among ${table.columns.join(', ')}`);
  return table.rows.map((row) => Number(row[index]));
}

/** The rows as records from column name to text. */
export const recordsOf = (table: ReferenceTable): Record<string, string>[] =>
  table.rows.map((row) => Object.fromEntries(table.columns.map((column, index) => [column, row[index] ?? ''])));
