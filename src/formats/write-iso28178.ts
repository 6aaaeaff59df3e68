import type { Outcome } from '../issue.ts';
import { hasErrors } from '../issue.ts';
import type { ExportCell, ExportColumn } from './export-columns.ts';
import { conditionColumns, identityColumns, labelColumns, valueColumns } from './export-columns.ts';
import type { FormatWriter, WriteOptions } from './format-writer.ts';
import { heldByTables, numberText, writeIssues } from './format-writer.ts';
import type { ReadingRecord, ReadingSet } from './reading-set.ts';

/** Keywords of the standard; the others are announced by KEYWORD. */
const standardKeywords = new Set(['INSTRUMENTATION', 'MEASUREMENT_GEOMETRY', 'SAMPLE_BACKING']);

/**
 * Readings as ISO 28178 text: a table for each quantity, set of wavelengths, light and conditions. Spectra as pairs of SPECTRAL_NM
 * and SPECTRAL_DEC (decimal, 1 for the perfect diffuser), numbers with every digit of a double. A keyword that a table leaves open
 * is written empty, so that it is not taken over from the table before.
 */
export const iso28178Writer: FormatWriter = {
  id: 'iso28178', label: 'ISO 28178', extension: '.txt',
  write(given, options = {}): Outcome<string> {
    const issues = writeIssues(given, 'ISO 28178');
    const set = heldByTables(given);
    if (hasErrors(issues)) return { value: undefined, issues };
    const groups = new Map<string, ReadingRecord[]>();
    for (const record of set.records) {
      const key = groupKey(record);
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [record]);
      else group.push(record);
    }
    const keywords = conditionColumns.filter((column) => set.records.some((record) => column.cell(record, set.conditions[record.conditions] ?? {}) !== undefined));
    return { value: [...preamble(set, options, keywords), ...[...groups.values()].flatMap((records) => tableLines(records, set, keywords))].map((line) => `${line}\n`).join(''), issues };
  },
};

function groupKey({ data, conditions }: ReadingRecord): string {
  const detail = data.quantity === 'spectrum' ? [data.startNm, data.stepNm, data.values.length] : data.quantity === 'cielab' || data.quantity === 'difference' ? [data.light, data.observer] : [];
  return JSON.stringify([conditions, data.quantity, ...detail]);
}

function preamble({ created }: ReadingSet, options: WriteOptions, keywords: readonly ExportColumn[]): string[] {
  const date = options.created ?? created;
  return [
    'ISO28178',
    'ORIGINATOR "Adjoin"',
    'FILE_DESCRIPTOR "Appearance readings"',
    ...(date === undefined ? [] : [`CREATED ${quoted(date)}`]),
    ...keywords.filter(({ field }) => !standardKeywords.has(field)).map(({ field }) => `KEYWORD ${quoted(field)}`),
  ];
}

function tableLines(records: readonly ReadingRecord[], set: ReadingSet, keywords: readonly ExportColumn[]): string[] {
  const [first] = records;
  const found = set.conditions[first.conditions] ?? {};
  const columns: ExportColumn[] = [
    { header: 'id', field: 'SAMPLE_ID', cell: ({ id, row }) => id ?? `r${row}` },
    { header: 'specimen', field: 'SAMPLE_NAME', cell: ({ specimen }) => specimen },
    ...[...identityColumns, ...valueColumns, ...labelColumns(records)].filter((column) => records.some((record) => column.cell(record, found) !== undefined)),
  ];
  const { data } = first;
  const pairs = data.quantity === 'spectrum' ? data.values.flatMap(() => ['SPECTRAL_NM', 'SPECTRAL_DEC']) : [];
  const fields = [...columns.map(({ field }) => (/^[A-Z][A-Z\d_]*$/u.test(field) ? field : quoted(field))), ...pairs];
  return [
    '',
    ...keywords.map((column) => `${column.field} ${token(column.cell(first, found))}`),
    ...(data.quantity === 'cielab' || data.quantity === 'difference'
      ? [`WEIGHTING_FUNCTION ${quoted(`ILLUMINANT, ${data.light ?? 'unknown'}`)}`, `WEIGHTING_FUNCTION ${quoted(`OBSERVER, ${data.observer === undefined ? 'unknown' : `${data.observer} degree`}`)}`]
      : []),
    `NUMBER_OF_FIELDS ${fields.length}`, 'BEGIN_DATA_FORMAT', fields.join(' '), 'END_DATA_FORMAT',
    `NUMBER_OF_SETS ${records.length}`, 'BEGIN_DATA', ...records.map((record) => [...columns.map((column) => token(column.cell(record, found))), ...spectralTokens(record)].join(' ')), 'END_DATA',
  ];
}

const spectralTokens = ({ data }: ReadingRecord): string[] =>
  (data.quantity === 'spectrum' ? data.values.flatMap((value, index) => [numberText(data.startNm + index * data.stepNm), numberText(value)]) : []);

const token = (cell: ExportCell): string => (cell === undefined ? '""' : typeof cell === 'number' ? numberText(cell) : quoted(cell));

/** A string of one line in quotation marks. */
const quoted = (text: string): string => `"${text.replaceAll(/\s+/gu, ' ').trim().replaceAll('"', '""')}"`;

