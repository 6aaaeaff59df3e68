import { highestReflectance } from '../cabin/shapes/reflectances.ts';
import { wavelengthFault } from '../cabin/shapes/wavelengths.ts';
import type { Outcome } from '../issue.ts';
import type { DelimitedRow, DelimitedTable } from './delimited-text.ts';
import { continueFaults, readDelimited } from './delimited-text.ts';
import { columnsByName, readName, readNumber, requireColumns } from './table-cells.ts';
import type { TableFaults } from './table-faults.ts';

export type ReflectanceScale = 'fraction' | 'percent';

export interface SpectraRow {
  readonly id: string;
  /** The cells of the columns that are no wavelengths, `id` left out. */
  readonly labels: Readonly<Record<string, string>>;
  /** Reflectance factors, 0..1.5, whatever the scale of the file. */
  readonly values: readonly number[];
  readonly line: number;
}

export interface SpectraTable {
  readonly startNm: number;
  readonly stepNm: number;
  readonly count: number;
  readonly scale: ReflectanceScale;
  readonly rows: readonly SpectraRow[];
}

export interface SpectraTableOptions {
  readonly file?: string;
  /** Scale of the values; a line `# scale: percent` in the file says the same. Without either the values are fractions. */
  readonly scale?: ReflectanceScale;
  /** Columns that must be there and whose cells together are different in every row: `['id']` where absent. */
  readonly key?: readonly string[];
}

const wavelengthName = /^(\d{3,4}(?:\.\d+)?)\s*(?:nm)?$/u;

/**
 * Reads a table of reflectance spectra: a header of text columns and wavelengths in nm (`400`, `400 nm`), evenly spaced and rising,
 * then a row a spectrum. Values are fractions unless declared per cent; nothing is guessed: undeclared values above 1.5 are refused.
 * Where the key has no `id`, a row's id is its key cells joined by blanks.
 */
export function readSpectraTable(text: string, options: SpectraTableOptions = {}): Outcome<SpectraTable> {
  const delimited = readDelimited(text, options.file);
  const table = delimited.value;
  if (table === undefined) return { value: undefined, issues: delimited.issues };
  const faults = continueFaults(table, delimited.issues, options.file);
  const key = options.key ?? ['id'];
  const columns = columnsByName(table.header, faults, undefined, (name) => wavelengthName.test(name));
  requireColumns(table.header, columns, key, faults);
  const wavelengths = readWavelengths(table, faults);
  const scale = readScale(table, options.scale, faults);
  const rows = readRows(table, { columns, wavelengths, key, scale: scale ?? 'fraction', declared: scale !== undefined }, faults);
  const [first, second] = wavelengths;
  const value = faults.errors() > 0 || first === undefined || second === undefined ? undefined : {
    startNm: first.nm, stepNm: second.nm - first.nm, count: wavelengths.length, scale: scale ?? 'fraction', rows,
  };
  return { value, issues: faults.list() };
}

interface WavelengthColumn {
  readonly column: number;
  readonly nm: number;
}

function readWavelengths({ header }: DelimitedTable, faults: TableFaults): WavelengthColumn[] {
  const found = header.cells.flatMap((cell, column) => {
    const match = wavelengthName.exec(cell);
    return match === null ? [] : [{ column, nm: Number(match[1]) }];
  });
  const offset = ({ column }: WavelengthColumn): number => header.offsets[column] ?? 0;
  const [first, second] = found;
  if (first === undefined || second === undefined) {
    faults.add('wavelengths-missing', header.offsets[0] ?? 0, {
      expected: 'columns named by wavelengths in nm: 400, 410, ...', found: `${found.length} such columns`,
    });
    return [];
  }
  const before = faults.errors();
  const step = second.nm - first.nm;
  found.forEach((entry, index) => {
    const previous = found[index - 1];
    if (previous === undefined || entry.nm === previous.nm + step && step > 0) return;
    const text = `${entry.nm} nm after ${previous.nm} nm`;
    if (found.slice(0, index).some(({ nm }) => nm === entry.nm)) faults.add('duplicate-wavelength', offset(entry), {
      expected: 'each wavelength once', found: text,
    });
    else if (entry.nm < previous.nm) faults.add('wavelengths-unsorted', offset(entry), { expected: 'wavelengths that rise', found: text });
    else faults.add('wavelengths-irregular', offset(entry), {
      expected: `an even step of ${step} nm`, found: text, hint: 'A wavelength may be missing.',
    });
  });
  const fault = faults.errors() === before ? wavelengthFault(first.nm, step, found.length) : undefined;
  if (fault !== undefined) {
    const { code, field, ...what } = fault;
    faults.add(code, offset(field === 'values' ? found.at(-1) ?? first : first), what);
  }
  return found;
}

function readScale(table: DelimitedTable, wanted: ReflectanceScale | undefined, faults: TableFaults): ReflectanceScale | undefined {
  const declared = table.declarations.get('scale');
  if (declared === undefined) return wanted;
  const value = declared.value.toLowerCase();
  if (value !== 'percent' && value !== 'fraction') {
    faults.add('unknown-scale', declared.offset, { expected: 'percent or fraction', found: JSON.stringify(declared.value.slice(0, 40)) });
    return wanted;
  }
  if (wanted !== undefined && wanted !== value) {
    faults.add('scale-conflict', declared.offset, {
      expected: `${wanted}, as asked for`, found: value, hint: 'Leave out the option or the line.',
    });
  }
  return value;
}

interface Layout {
  readonly columns: ReadonlyMap<string, number>;
  readonly wavelengths: readonly WavelengthColumn[];
  readonly key: readonly string[];
  readonly scale: ReflectanceScale;
  readonly declared: boolean;
}

function readRows(table: DelimitedTable, layout: Layout, faults: TableFaults): SpectraRow[] {
  const labels = [...layout.columns].filter(([name]) => name !== 'id');
  const seen = new Map<string, number>();
  let highest = 0;
  const rows = table.rows.map((row): SpectraRow => {
    const keys = layout.key.map((name) => {
      const column = layout.columns.get(name);
      return column === undefined ? undefined : readName(row, column, `a text for ${name}`, faults);
    });
    const { line } = table.position(row.offsets[0] ?? 0);
    if (keys.every((cell) => cell !== undefined)) {
      const text = JSON.stringify(keys);
      const other = seen.get(text);
      if (other === undefined) seen.set(text, line);
      else {
        faults.add('duplicate-id', row.offsets[layout.columns.get(layout.key[0] ?? 'id') ?? 0] ?? 0, {
          expected: `${layout.key.join(' and ')} that no other row has`, found: `${keys.join(', ')}, as in line ${other}`,
        });
      }
    }
    const idColumn = layout.columns.get('id');
    const values = readValues(table, row, layout, faults);
    for (const value of values) highest = Math.max(highest, value);
    return {
      id: (idColumn === undefined ? undefined : row.cells[idColumn]) || keys.join(' '),
      labels: Object.fromEntries(labels.map(([name, column]) => [name, row.cells[column] ?? ''])),
      values, line,
    };
  });
  if (layout.scale === 'percent' && faults.errors() === 0 && highest <= highestReflectance / 100) {
    faults.add('scale-doubtful', table.header.offsets[0] ?? 0, {
      severity: 'warning', expected: 'values up to 100, as the scale is per cent', found: `none above ${highestReflectance}`,
      hint: 'If the values are fractions, leave out the declaration.',
    });
  }
  return rows;
}

/** The values of a row as fractions. Values over the top of the scale make one fault a row, at the first of them. */
function readValues(table: DelimitedTable, row: DelimitedRow, layout: Layout, faults: TableFaults): number[] {
  const divisor = layout.scale === 'percent' ? 100 : 1;
  const top = highestReflectance * divisor;
  let over = 0;
  let firstOver = 0;
  const values = layout.wavelengths.map(({ column }) => {
    const value = readNumber(table, row, column, { min: 0 }, faults) ?? 0;
    if (value > top) {
      if (over === 0) firstOver = column;
      over += 1;
    }
    return value / divisor;
  });
  if (over > 0) {
    const found = `${row.cells[firstOver] ?? ''}${over === 1 ? '' : ` and ${over - 1} more in this row`}`;
    const expected = `values from 0 to ${top}`;
    if (layout.declared) faults.add('out-of-range', row.offsets[firstOver] ?? 0, { expected, found });
    else {
      faults.add('scale-undeclared', row.offsets[firstOver] ?? 0, {
        expected, found, hint: 'For per cent say --scale percent, or write the line "# scale: percent" above the header; nothing is guessed.',
      });
    }
  }
  return values;
}
