import { maxNameLength } from '../cabin/schema/text.ts';
import type { FieldName } from './column-names.ts';
import { textureFields } from './column-names.ts';
import type { DelimitedRow } from './delimited-text.ts';
import type { ReadOptions } from './format-reader.ts';
import type { ReadingCollector } from './reading-collector.ts';
import { defined } from './reading-collector.ts';
import type { FoundData, FoundSpectrum, ReadingRecord } from './reading-set.ts';
import type { StatedScale } from './reflectance-scale.ts';
import type { RowReader } from './row-identity.ts';
import { rowReader } from './row-identity.ts';
import { colourLayout, rowColours } from './table-colours.ts';
import type { TableFaults } from './table-faults.ts';
import { fieldCells } from './table-source.ts';
import type { TableSource } from './table-source.ts';
import type { SpectraLayout, SpectrumCells } from './table-spectra.ts';
import { addPairCells, emptySpectrum, hasPairCells, spectraLayout, spectrumOf, wideCells } from './table-spectra.ts';
import { rowGloss, rowTexture } from './table-surface.ts';
import { wavelengthGrid } from './wavelength-grid.ts';

/** Fields that say where a row belongs and how it was measured; the rest are values. */
const contextFields: ReadonlySet<FieldName> = new Set([
  'id', 'part', 'source', 'supplier', 'specimen', 'kind', 'lot', 'stage', 'spot', 'spotX', 'spotY', 'namedColour', 'rotation', 'averagedFrom', 'measuredAt', 'instrument', 'serial', 'calibratedOn',
  'geometry', 'specular', 'aperture', 'uv', 'aspecular', 'backing', 'temperature', 'light', 'observer', 'master', 'angle', 'direction', 'haze', 'bandpassCorrected',
]);
const glossFields: readonly FieldName[] = ['gloss', 'gloss20', 'gloss60', 'gloss85'];
const surfaceFields: readonly FieldName[] = [...glossFields, ...textureFields];

interface PendingSpectrum {
  readonly record: Omit<ReadingRecord, 'data'>;
  readonly cells: SpectrumCells;
  readonly bandpassCorrected: boolean | undefined;
}

/**
 * Reads the rows of a table whose columns are understood: every row gives the readings that it has cells for. A row without any
 * is a fault. Spectra stand in columns by wavelength, or with one wavelength a row (gathered over rows that share part, source,
 * specimen, lot, stage, spot and conditions). Returns the number of rows read, with `firstRow` the number of the first.
 */
export function readTableReadings(source: TableSource, scale: StatedScale | undefined, options: ReadOptions, collector: ReadingCollector, faults: TableFaults, firstRow = 1): void {
  const { table, columns } = source;
  const cells = fieldCells(withoutPairs(source), faults);
  const read = rowReader(source, cells, faults);
  const spectra = spectraLayout(source, scale, options, faults);
  const colours = colourLayout(source, faults);
  if (!checkColumns(source, spectra, colours.groups.length > 0, faults)) return;
  const before = faults.errors();
  const grid = spectra.wide.length === 0 ? undefined : wavelengthGrid(spectra.wideAt, faults);
  if (faults.errors() > before && grid === undefined && spectra.wide.length > 0) return;
  const labelColumns = columns.flatMap((column, index): [string, number][] => {
    if (column.kind === 'label') return [[column.name, index]];
    const leftOver = column.kind === 'field' && !contextFields.has(column.field) && !surfaceFields.includes(column.field)
      && !colours.used.has(index) && !spectra.pairs.some(({ wavelength, value }) => index === wavelength || index === value);
    return leftOver ? [[(table.header.cells[index] ?? '').replaceAll(/\s+/gu, ' ').slice(0, maxNameLength), index]] : [];
  });
  const hasGloss = glossFields.some((field) => cells.has(field));
  const hasTexture = textureFields.some((field) => cells.has(field));
  const pending = new Map<string, PendingSpectrum>();
  const standards = new Set<string>();
  let droppedDifferences = false;

  table.rows.forEach((row, at) => {
    if (at % 4096 === 0) options.progress?.(at / table.rows.length);
    const identity = read.identity(row);
    if (identity === undefined) return;
    const conditions = collector.conditions(read.conditions(row));
    const rowNumber = firstRow + at;
    const labels = labelsOf(row, labelColumns);
    const record = { ...identity, conditions, ...(labels === undefined ? {} : { labels }), row: rowNumber, line: table.position(row.offsets[0] ?? 0).line };
    let found = 0;
    const add = (data: FoundData): void => {
      found += 1;
      collector.add({ ...record, data });
    };
    const wide = spectra.wide.length === 0 ? undefined : wideCells(source, row, spectra, faults);
    if (wide !== undefined) {
      const data = spectrumOf(wide, spectra.scale, faults, grid);
      found += 1;
      if (data !== undefined) collector.add({ ...record, data: withBandpass(data, readBandpass(row, read)) });
    }
    if (hasPairCells(row, spectra)) {
      found += 1;
      const key = spectra.pairs.length > 1 ? String(at) : JSON.stringify([identity, conditions]);
      const known = pending.get(key) ?? { record, cells: emptySpectrum(), bandpassCorrected: readBandpass(row, read) };
      pending.set(key, known);
      addPairCells(known.cells, source, row, spectra, faults);
    }
    const { colours: values, standards: pairs } = rowColours(source, row, colours, read, faults);
    values.forEach(add);
    for (const data of pairs) {
      found += 1;
      addStandard(record, data, read.text(row, 'master'), standards, collector);
    }
    droppedDifferences = droppedDifferences || (values.some(({ quantity }) => quantity === 'cielab') && colours.groups.some(({ triples }) => triples.has('difference')));
    if (hasGloss) rowGloss(row, cells, read, faults).forEach(add);
    const texture = hasTexture ? rowTexture(row, read) : undefined;
    if (texture !== undefined) add(texture);
    if (found === 0 && faults.errors() === before) {
      faults.add('nothing-measured', row.offsets[0] ?? 0, { expected: 'a spectrum, CIELAB values, a difference, gloss or texture in the row', found: 'none of them' });
    }
  });
  for (const { record, cells: points, bandpassCorrected } of pending.values()) {
    const data = spectrumOf(points, spectra.scale, faults);
    if (data !== undefined) collector.add({ ...record, data: withBandpass(data, bandpassCorrected) });
  }
  if (droppedDifferences) {
    faults.add('difference-not-used', table.header.offsets[0] ?? 0, { severity: 'note', expected: 'absolute values or differences', found: 'both', hint: 'The absolute values are taken; the differences follow from them.' });
  }
}

const yesOrNo: Readonly<Record<string, boolean>> = { yes: true, true: true, 1: true, no: false, false: false, 0: false };
const readBandpass = (row: DelimitedRow, read: RowReader): boolean | undefined =>
  read.word(row, 'bandpassCorrected', (text) => (Object.hasOwn(yesOrNo, text.toLowerCase()) ? yesOrNo[text.toLowerCase()] : undefined), 'yes or no');
const withBandpass = (data: FoundSpectrum, bandpassCorrected: boolean | undefined): FoundSpectrum => (bandpassCorrected === undefined ? data : { ...data, bandpassCorrected });

/** The table as the search for doubled columns sees it: wavelengths and values may repeat. */
const withoutPairs = (source: TableSource): TableSource => ({
  ...source,
  columns: source.columns.map((column) => (column.kind === 'field' && (column.field === 'wavelength' || column.field === 'value') ? { kind: 'label', name: column.field } : column)),
});

function checkColumns({ table, columns, declared }: TableSource, spectra: SpectraLayout, hasColours: boolean, faults: TableFaults): boolean {
  const before = faults.errors();
  const fields = new Set(columns.flatMap((column) => (column.kind === 'field' ? [column.field] : [])));
  const start = table.header.offsets[0] ?? 0;
  columns.forEach((column, index) => {
    if (column.kind === 'label' && column.name.length > maxNameLength) {
      faults.add('text-too-long', table.header.offsets[index] ?? 0, { expected: `a name of at most ${maxNameLength} characters`, found: `${column.name.length} characters` });
    }
    if (column.kind === 'label' && column.unit !== undefined) {
      faults.add('unknown-unit', table.header.offsets[index] ?? 0, { severity: 'warning', expected: 'a unit that is known for this quantity', found: JSON.stringify(column.unit.slice(0, 40)), hint: 'The column is kept as a label.' });
    }
  });
  if (spectra.wide.length === 0 && spectra.pairs.length === 0 && !hasColours && !surfaceFields.some((field) => fields.has(field)) && before === faults.errors()) {
    const half = fields.has('wavelength') || fields.has('value');
    faults.add(half ? 'missing-column' : 'no-quantity', start, {
      expected: half ? 'a column of wavelengths and a column of reflectances' : 'columns of wavelengths in nm, of L*, a*, b*, of differences, of gloss or of texture parameters',
      found: half ? 'one of the two' : 'none of these',
    });
  }
  if (!['specimen', 'id', 'part'].some((field) => fields.has(field as FieldName) || declared.has(field as FieldName))) {
    faults.add('missing-column', start, { expected: 'a column "specimen", "id" or "part"', found: 'none' });
  }
  return faults.errors() === before;
}

function labelsOf(row: DelimitedRow, columns: readonly (readonly [string, number])[]): Record<string, string> | undefined {
  const labels: Record<string, string> = {};
  let filled = false;
  for (const [name, index] of columns) {
    const text = row.cells[index] ?? '';
    if (text === '') continue;
    labels[name] = text;
    filled = true;
  }
  return filled ? labels : undefined;
}

/** The standard of a pair becomes a master of its own, once however many trials were compared with it. */
function addStandard(record: Omit<ReadingRecord, 'data'>, data: FoundData, master: string | undefined, seen: Set<string>, collector: ReadingCollector): void {
  const specimen = master ?? `${record.specimen} standard`;
  const key = JSON.stringify([specimen, record.conditions, data]);
  if (seen.has(key)) return;
  seen.add(key);
  const { conditions, row, line, part } = record;
  collector.add(defined({ specimen, kind: 'master' as const, part, conditions, row, line, data }));
}

