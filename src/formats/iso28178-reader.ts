import type { Outcome } from '../issue.ts';
import { textPositions } from '../cabin/text-position.ts';
import type { Column } from './column.ts';
import { readColumn } from './column.ts';
import type { FieldName } from './column-names.ts';
import { readDateTime, readLight, readObserver } from './condition-words.ts';
import type { FormatInput, FormatReader, ReadOptions } from './format-reader.ts';
import type { ExchangeTable } from './iso28178-tables.ts';
import { readExchangeTables } from './iso28178-tables.ts';
import type { Token } from './iso28178-tokens.ts';
import { collectReadings } from './reading-collector.ts';
import type { ReadingSet } from './reading-set.ts';
import { collectTableFaults } from './table-faults.ts';
import { readTableReadings } from './table-readings.ts';
import type { DeclaredCell, TableSource } from './table-source.ts';

/**
 * Text of ISO 28178 (the format of CGATS.17): keywords, then tables of named fields. Spectra as `SPECTRAL_NM` with
 * `SPECTRAL_DEC` or `SPECTRAL_PCT`, or as one field a wavelength (`SPECTRAL_NM_400`, `SPECTRAL_400`, `SPECTRAL_DEC_400`,
 * `SPECTRAL_PCT_400`, `nm400`); per cent or decimal by the field's name only, else asked. CIELAB as `LAB_L LAB_A LAB_B`,
 * `LAB_L LAB_C LAB_H` or `LCH_L LCH_C LCH_H`. Fields and keywords that the standard leaves to the parties are known by the words
 * of the tables of readings (`LOT`, `SPOT`, `GLOSS_60`, `RA_UM`).
 */
export const iso28178Reader: FormatReader = {
  id: 'iso28178', label: 'ISO 28178 text', extensions: ['.txt', '.cgats', '.it8'],
  sniff(text) {
    if (/^\ufeff?\s*[<{]/u.test(text.slice(0, 1000))) return 0;
    return /^[ \t]*BEGIN_DATA(?:_FORMAT)?(?=[ \t\r\n]|$)/imu.test(text.slice(0, 100_000)) ? 0.95 : /^\ufeff?(?:ISO ?28178|CGATS\.17)\s/u.test(text.slice(0, 40)) ? 0.9 : 0;
  },
  read(input: FormatInput, options: ReadOptions = {}): Outcome<ReadingSet> {
    const { text, file, sha256 } = input;
    const position = textPositions(text);
    const faults = collectTableFaults(position, file);
    const tables = readExchangeTables(text, faults);
    const collector = collectReadings();
    if (tables.length === 0 && faults.errors() === 0) faults.add('no-rows', 0, { expected: 'a table between BEGIN_DATA and END_DATA', found: 'none' });
    let row = 1;
    if (faults.errors() === 0) {
      for (const table of tables) {
        if (table.sets.length === 0) continue;
        // The convention of spectra tables is not this format's: its field names say the scale, or it is asked.
        readTableReadings(sourceOf(table, position), undefined, { ...options, undeclaredScale: 'ask' }, collector, faults, row);
        row += table.sets.length;
      }
      if (row === 1) faults.add('no-rows', 0, { expected: 'at least one set of data', found: 'none' });
    }
    const created = readDateTime(tables[0]?.keywords.get('CREATED')?.text ?? '');
    const set = collector.finish({ reader: 'iso28178', file, sha256, created });
    return { value: faults.errors() > 0 ? undefined : set, issues: faults.list() };
  },
};

const fieldWords: Readonly<Record<string, Column>> = {
  SAMPLE_ID: { kind: 'field', field: 'id', factor: 1 },
  SAMPLEID: { kind: 'field', field: 'id', factor: 1 },
  SAMPLE_NAME: { kind: 'field', field: 'specimen', factor: 1 },
  SPECTRAL_NM: { kind: 'field', field: 'wavelength', factor: 1 },
  SPECTRAL_DEC: { kind: 'field', field: 'value', factor: 1, scale: 'fraction' },
  SPECTRAL_PCT: { kind: 'field', field: 'value', factor: 1, scale: 'percent' },
};

function fieldColumn({ text }: Token): Column {
  const word = text.toUpperCase();
  if (Object.hasOwn(fieldWords, word)) return fieldWords[word];
  // XYZ, xyY and densities carry the names of CIELAB columns only by accident of spelling; they stay labels.
  return /^(?:XYZ_|XYY_|D_|STDEV_|MEAN_|CMYK|RGB)/u.test(word) ? { kind: 'label', name: text } : readColumn(text);
}

/** Keywords of the standard by what they state; others are known by the words of the columns. */
const keywordFields: Readonly<Record<string, FieldName>> = {
  INSTRUMENTATION: 'instrument', MEASUREMENT_GEOMETRY: 'geometry', SAMPLE_BACKING: 'backing', FILTER: 'uv',
};
/** Keywords that name no property of a reading although a column of their name would. */
const fileKeywords = new Set(['ORIGINATOR', 'FILE_DESCRIPTOR', 'DESCRIPTOR', 'CREATED', 'MEASUREMENT_SOURCE', 'PRINT_CONDITIONS', 'MANUFACTURER', 'PROD_DATE', 'SERIAL', 'MATERIAL']);

function sourceOf(table: ExchangeTable, position: TableSource['table']['position']): TableSource {
  return {
    table: {
      decimal: '.', separator: '\t', position,
      header: rowOf(table.fields),
      rows: table.sets.map(rowOf),
    },
    columns: table.fields.map(fieldColumn),
    declared: declaredOf(table),
  };
}

const rowOf = (tokens: readonly Token[]): { cells: string[]; offsets: number[] } => ({ cells: tokens.map((token) => token.text), offsets: tokens.map((token) => token.offset) });

function declaredOf({ keywords, weightings }: ExchangeTable): Map<FieldName, DeclaredCell> {
  const declared = new Map<FieldName, DeclaredCell>();
  for (const [word, { text, offset }] of keywords) {
    if (fileKeywords.has(word)) continue;
    const column = readColumn(word);
    const field = Object.hasOwn(keywordFields, word) ? keywordFields[word] : column.kind === 'field' && column.factor === 1 ? column.field : undefined;
    if (field === undefined) continue;
    // FILTER names many kinds of filter; only words about ultraviolet say something here.
    if (word === 'FILTER' && !/uv|cut|exclu|inclu/iu.test(text)) continue;
    declared.set(field, { value: text, offset });
  }
  for (const { text, offset } of weightings) {
    const rest = text.slice(0, 200).replace(/^\s*(?:illuminant|observer)\s*,?\s*/iu, '');
    if (/^\s*observer/iu.test(text)) {
      if (readObserver(rest) !== undefined) declared.set('observer', { value: rest, offset });
      continue;
    }
    if (readLight(rest).light !== undefined) declared.set('light', { value: rest, offset });
  }
  return declared;
}
