import type { ReadOptions } from './format-reader.ts';
import type { Column } from './column.ts';
import type { DelimitedRow } from './delimited-text.ts';
import type { FoundSpectrum } from './reading-set.ts';
import type { ScaleInUse, StatedScale } from './reflectance-scale.ts';
import { scaleInUse, tellOver } from './reflectance-scale.ts';
import { readNumber } from './table-cells.ts';
import type { TableFaults } from './table-faults.ts';
import type { TableSource } from './table-source.ts';
import type { WavelengthAt } from './wavelength-grid.ts';
import { wavelengthGrid } from './wavelength-grid.ts';

/** A column of wavelengths and the column of the values at them. */
export interface SpectralPair {
  readonly wavelength: number;
  readonly value: number;
}

/** How a table holds its spectra. */
export interface SpectraLayout {
  readonly wide: readonly { readonly index: number; readonly nm: number }[];
  /** The wavelengths of `wide` with their places in the header. */
  readonly wideAt: WavelengthAt[];
  readonly pairs: readonly SpectralPair[];
  readonly scale: ScaleInUse;
}

const statedScale = (column: Column | undefined): StatedScale['scale'] | undefined => (column?.kind === 'label' ? undefined : column?.scale);

export function spectraLayout(source: TableSource, declared: StatedScale | undefined, options: ReadOptions, faults: TableFaults): SpectraLayout {
  const { columns, table } = source;
  const wide = columns.flatMap((column, index) => (column.kind === 'reflectance' ? [{ index, nm: column.nm }] : []));
  const pairs = pairsOf(columns);
  const stated = [...wide.map(({ index }) => index), ...pairs.map(({ value }) => value)].flatMap((index): StatedScale[] => {
    const scale = statedScale(columns[index]);
    return scale === undefined ? [] : [{ scale, offset: table.header.offsets[index] ?? 0 }];
  });
  return { wide, wideAt: wide.map(({ index, nm }) => ({ nm, offset: table.header.offsets[index] ?? 0 })), pairs, scale: scaleInUse([...(declared === undefined ? [] : [declared]), ...stated], options, faults) };
}

/** Every wavelength column with the next value column behind it; a value column that stands first goes with the one wavelength column. */
function pairsOf(columns: readonly Column[]): SpectralPair[] {
  const indices = (field: 'wavelength' | 'value'): number[] => columns.flatMap((column, index) => (column.kind === 'field' && column.field === field ? [index] : []));
  const wavelengths = indices('wavelength');
  const values = indices('value');
  if (wavelengths.length === 1 && values.length === 1) return [{ wavelength: wavelengths[0], value: values[0] }];
  return wavelengths.flatMap((wavelength, at) => {
    const value = values.find((index) => index > wavelength && index < (wavelengths[at + 1] ?? Infinity));
    return value === undefined ? [] : [{ wavelength, value }];
  });
}

/** Values that stand in a row or were gathered from several. */
export interface SpectrumCells {
  readonly at: WavelengthAt[];
  readonly values: number[];
  readonly over: { text: string; offset: number }[];
}

export const emptySpectrum = (at: WavelengthAt[] = []): SpectrumCells => ({ at, values: [], over: [] });

/** The values of the wavelength columns of a row; undefined where none is filled. All or none must be. */
export function wideCells({ table }: TableSource, row: DelimitedRow, layout: SpectraLayout, faults: TableFaults): SpectrumCells | undefined {
  if (layout.wide.every(({ index }) => (row.cells[index] ?? '') === '')) return undefined;
  const cells = emptySpectrum(layout.wideAt);
  for (const { index } of layout.wide) addValue(cells, table, row, index, layout.scale, faults);
  return cells;
}

/** Adds the points of a row's pairs to a spectrum. */
export function addPairCells(cells: SpectrumCells, { table }: TableSource, row: DelimitedRow, layout: SpectraLayout, faults: TableFaults): void {
  for (const { wavelength, value } of layout.pairs) {
    if ((row.cells[wavelength] ?? '') === '' && (row.cells[value] ?? '') === '') continue;
    const nm = readNumber(table, row, wavelength, { min: 0, max: 100_000, unit: 'nm' }, faults);
    if (nm === undefined) continue;
    cells.at.push({ nm, offset: row.offsets[wavelength] ?? 0 });
    addValue(cells, table, row, value, layout.scale, faults);
  }
}

export const hasPairCells = (row: DelimitedRow, { pairs }: SpectraLayout): boolean =>
  pairs.some(({ wavelength, value }) => (row.cells[wavelength] ?? '') !== '' || (row.cells[value] ?? '') !== '');

const notNegative = { min: 0 } as const;

function addValue(cells: SpectrumCells, table: TableSource['table'], row: DelimitedRow, column: number, scale: ScaleInUse, faults: TableFaults): void {
  const value = readNumber(table, row, column, notNegative, faults) ?? 0;
  cells.values.push(value / scale.divisor);
  if (value > scale.top) cells.over.push({ text: row.cells[column] ?? '', offset: row.offsets[column] ?? 0 });
}

/** The spectrum, or faults. `grid` may be given where it was checked for all rows together. */
export function spectrumOf(cells: SpectrumCells, scale: ScaleInUse, faults: TableFaults, grid = wavelengthGrid(cells.at, faults)): FoundSpectrum | undefined {
  tellOver(cells.over, scale, faults);
  if (grid === undefined) return undefined;
  return { quantity: 'spectrum', ...grid, values: cells.values, ...(scale.undeclared ? { scaleUndeclared: true } : {}) };
}
