import type { Outcome } from '../issue.ts';
import { hasErrors } from '../issue.ts';
import { csvCell } from './csv-cell.ts';
import type { ExportCell, ExportColumn } from './export-columns.ts';
import { conditionColumns, identityColumns, labelColumns, valueColumns, viewColumns } from './export-columns.ts';
import type { FormatWriter } from './format-writer.ts';
import { heldByTables, numberText, writeIssues } from './format-writer.ts';
import { groupRecords } from './group-records.ts';
import type { FoundSpectrum, ReadingRecord, ReadingSet } from './reading-set.ts';

/**
 * Readings as comma separated text (RFC 4180, decimal point, every digit of a double), a row for all readings of one row of the source under the
 * same conditions. Spectra stand in columns
 * by wavelength where all have the same ones, else a row a wavelength. Only columns that hold something are written. Text that a
 * spreadsheet would run as a formula has an apostrophe in front; the reader takes it off.
 */
export const csvWriter: FormatWriter = {
  id: 'csv', label: 'CSV', extension: '.csv',
  write(given): Outcome<string> {
    const issues = writeIssues(given, 'CSV');
    const set = heldByTables(given);
    if (hasErrors(issues)) return { value: undefined, issues };
    const { records } = set;
    const spectra = records.flatMap(({ data }) => (data.quantity === 'spectrum' ? [data] : []));
    const [first] = spectra;
    const wide = spectra.every((spectrum) => sameGrid(spectrum, first));
    const rows = wide ? groupRecords(records) : records.map((record) => [record]);
    const ids = rowIds(rows);
    const columns: readonly ExportColumn[] = [...identityColumns, ...conditionColumns, ...viewColumns, ...valueColumns, ...labelColumns(records)]
      .filter((column) => records.some((record) => cellOf(column, record, set) !== undefined));
    const header = ['id', 'specimen', ...columns.map((column) => column.header)];
    const spectral = first === undefined ? [] : wide ? first.values.map((_, index) => numberText(first.startNm + index * first.stepNm)) : ['wavelength (nm)', 'reflectance'];
    const lines = rows.flatMap((group, index) => {
      const cells = columns.map((column) => firstDefined(group, (record) => cellOf(column, record, set)));
      return linesOf(group, [ids[index], group[0]?.specimen, ...cells], wide, spectral.length);
    });
    const text = [...(first === undefined ? [] : ['# scale: fraction']), ...[[...header, ...spectral], ...lines].map((cells) => cells.map(csvCell).join(','))];
    return { value: text.map((line) => `${line}\r\n`).join(''), issues };
  },
};

function firstDefined(group: readonly ReadingRecord[], read: (record: ReadingRecord) => ExportCell): ExportCell {
  for (const record of group) {
    const cell = read(record);
    if (cell !== undefined) return cell;
  }
  return undefined;
}

const cellOf = (column: ExportColumn, record: ReadingRecord, { conditions }: ReadingSet): ExportCell => column.cell(record, conditions[record.conditions] ?? {});

const sameGrid = (a: FoundSpectrum, b: FoundSpectrum | undefined): boolean => a.startNm === b?.startNm && a.stepNm === b.stepNm && a.values.length === b.values.length;

function linesOf(group: readonly ReadingRecord[], cells: readonly ExportCell[], wide: boolean, spectral: number): ExportCell[][] {
  const data = group.map((record) => record.data).find(({ quantity }) => quantity === 'spectrum');
  if (data?.quantity !== 'spectrum') return [[...cells, ...Array.from<undefined>({ length: spectral })]];
  if (wide) return [[...cells, ...data.values]];
  return data.values.map((value, index) => [...cells, data.startNm + index * data.stepNm, value]);
}

/** The readings' own ids, or where one has none its specimen and spot; made different from row to row where they are not. */
function rowIds(rows: readonly (readonly ReadingRecord[])[]): string[] {
  const seen = new Map<string, number>();
  return rows.map(([first]) => {
    const base = first?.id ?? [first?.specimen, first?.spot?.name].filter((word) => word !== undefined).join(' ').slice(0, 180);
    const count = (seen.get(base) ?? 0) + 1;
    seen.set(base, count);
    return count === 1 ? base : `${base} (${count})`;
  });
}
