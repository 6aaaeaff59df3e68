import type { Outcome } from '../issue.ts';
import { readColumn } from './column.ts';
import type { FieldName } from './column-names.ts';
import type { DelimitedTable } from './delimited-text.ts';
import { continueFaults, delimitedLimits, readDelimited } from './delimited-text.ts';
import type { FormatInput, FormatReader, ReadOptions } from './format-reader.ts';
import { inertText } from './inert-text.ts';
import { collectReadings } from './reading-collector.ts';
import type { ReadingSet } from './reading-set.ts';
import type { StatedScale } from './reflectance-scale.ts';
import type { TableFaults } from './table-faults.ts';
import { readTableReadings } from './table-readings.ts';
import type { DeclaredCell } from './table-source.ts';

/**
 * Comma, semicolon or tab separated readings: a header, then a row a reading or a row a wavelength. Lines `# name: value` above
 * state what holds for all rows, by the names of the columns, and `# scale: percent` or `fraction`. Spreadsheets' first line
 * `sep=;` is passed over. Decimal commas are read where the separator is no comma, and a note says so.
 */
export const csvReader: FormatReader = {
  id: 'csv', label: 'Table of readings (CSV, TSV)', extensions: ['.csv', '.tsv', '.txt'],
  sniff(text) {
    const start = text.slice(0, 20_000);
    const line = start.split(/[\r\n]+/u).find((candidate) => candidate.trim() !== '' && !candidate.startsWith('#') && !/^\ufeff?sep=.$/iu.test(candidate));
    if (line === undefined || /^\ufeff?\s*[<{[]/u.test(line)) return 0;
    const separator = ['\t', ';', ','].find((candidate) => line.includes(candidate));
    if (separator === undefined) return 0;
    const known = line.split(separator, 400).filter((cell) => readColumn(cell.replaceAll('"', '').trim()).kind !== 'label').length;
    return known >= 2 ? 0.8 : known === 1 ? 0.5 : 0.2;
  },
  read: readCsv,
};

/** The line of spreadsheets that names the separator, made a comment of the same length so that places stay. */
const asComment = (text: string): string => (/^\ufeff?sep=.[\r\n]/iu.test(text.slice(0, 10)) ? text.replace(/s/iu, '#') : text);

function readCsv(input: FormatInput, options: ReadOptions = {}): Outcome<ReadingSet> {
  const { file, sha256 } = input;
  const delimited = readDelimited(asComment(input.text), file);
  if (delimited.value === undefined) return { value: undefined, issues: delimited.issues };
  const table = withInertText(delimited.value);
  const faults = continueFaults(table, delimited.issues, file);
  const columns = table.header.cells.map(readColumn);
  checkHeader(table, faults);
  if (table.decimal === ',') faults.add('decimal-comma', table.header.offsets[0] ?? 0, { severity: 'note', found: 'decimal commas', hint: 'Numbers are read with a decimal comma.' });
  const collector = collectReadings();
  const { declared, scale } = declarations(table, faults);
  readTableReadings({ table, columns, declared }, scale, options, collector, faults);
  const set = collector.finish({ reader: 'csv', file, sha256 });
  return { value: faults.errors() > 0 ? undefined : set, issues: faults.list() };
}

function checkHeader({ header }: DelimitedTable, faults: TableFaults): void {
  const seen = new Set<string>();
  header.cells.forEach((name, index) => {
    const offset = header.offsets[index] ?? 0;
    if (name === '') faults.add('empty-column-name', offset, { expected: 'a name for every column', found: 'nothing', hint: 'Take out separators at the end of the lines.' });
    else if (name.replace(/^label:\s*/iu, '') === '__proto__') faults.add('forbidden-key', offset, { expected: 'another name', found: '"__proto__"' });
    else if (seen.has(name) && readColumn(name).kind !== 'field') faults.add('duplicate-column', offset, { expected: 'each column name once', found: JSON.stringify(name.slice(0, 60)) });
    seen.add(name);
  });
}

function declarations({ declarations: lines }: DelimitedTable, faults: TableFaults): { declared: Map<FieldName, DeclaredCell>; scale: StatedScale | undefined } {
  const declared = new Map<FieldName, DeclaredCell>();
  let scale: StatedScale | undefined;
  for (const [name, cell] of lines) {
    if (name === 'scale') {
      const word = cell.value.toLowerCase();
      if (word === 'percent' || word === 'fraction') scale = { scale: word, offset: cell.offset };
      else faults.add('unknown-scale', cell.offset, { expected: 'percent or fraction', found: JSON.stringify(cell.value.slice(0, 40)) });
      continue;
    }
    const column = readColumn(name);
    if (column.kind === 'field' && column.factor === 1) declared.set(column.field, cell);
  }
  return { declared, scale };
}

/** Cells as they were before a writer made them safe for spreadsheets. */
function withInertText(table: DelimitedTable): DelimitedTable {
  const needed = table.rows.some(({ cells }) => cells.some((cell) => cell.startsWith("'"))) || table.header.cells.some((cell) => cell.startsWith("'"));
  if (!needed || table.rows.length > delimitedLimits.rows) return table;
  const plain = (row: DelimitedTable['header']): DelimitedTable['header'] => ({ ...row, cells: row.cells.map(inertText.remove) });
  return { ...table, header: plain(table.header), rows: table.rows.map(plain) };
}
