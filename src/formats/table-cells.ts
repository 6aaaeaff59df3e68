import type { NumberRange } from '../cabin/schema/number.ts';
import { rangeText } from '../cabin/schema/number.ts';
import { nearestName } from '../cabin/schema/nearest-name.ts';
import type { DelimitedRow, DelimitedTable } from './delimited-text.ts';
import type { TableFaults } from './table-faults.ts';

const numeral = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/u;

/** The number that a cell holds by the table's decimal sign; undefined where it holds none, infinite where it overflows. */
export function parseNumber(text: string, decimal: '.' | ','): number | undefined {
  if (decimal === ',' && text.includes('.')) return undefined;
  const plain = decimal === ',' ? text.replace(',', '.') : text;
  return numeral.test(plain) ? Number(plain) : undefined;
}

/** The number in a cell of a row, in its range; every fault is added and gives undefined. An empty cell is `missing-value`. */
export function readNumber(table: Pick<DelimitedTable, 'decimal' | 'separator'>, row: DelimitedRow, column: number, range: NumberRange, faults: TableFaults): number | undefined {
  const text = row.cells[column] ?? '';
  const offset = row.offsets[column] ?? 0;
  if (text === '') {
    faults.add('missing-value', offset, { expected: rangeText(range), found: 'an empty cell' });
    return undefined;
  }
  const value = parseNumber(text, table.decimal);
  const { min = -Infinity, max = Infinity, above = -Infinity } = range;
  // Words for a fault are made only where there is one: tables hold millions of numbers.
  if (value !== undefined && value >= min && value > above && value <= max && Number.isFinite(value)) return value;
  const expected = rangeText(range);
  const found = JSON.stringify(text.slice(0, 60));
  if (value === undefined) {
    const swapped = parseNumber(text, table.decimal === '.' ? ',' : '.') !== undefined;
    if (swapped && table.separator !== ',') {
      faults.add('mixed-decimals', offset, {
        expected: `a number with a decimal ${table.decimal === '.' ? 'point' : 'comma'}, as in the rows before`, found,
      });
    } else {
      faults.add('not-a-number', offset, {
        expected, found, ...(swapped ? { hint: 'Decimal commas need a semicolon or a tab between the cells.' } : {}),
      });
    }
  } else if (!Number.isFinite(value)) faults.add('not-finite', offset, { expected, found });
  else {
    faults.add(value < 0 && range.min === 0 ? 'negative' : 'out-of-range', offset, {
      expected, found, ...(range.hint === undefined ? {} : { hint: range.hint }),
    });
  }
  return undefined;
}

/** The text of a cell that must hold one. */
export function readName(row: DelimitedRow, column: number, expected: string, faults: TableFaults): string | undefined {
  const text = row.cells[column] ?? '';
  if (text !== '') return text;
  faults.add('missing-value', row.offsets[column] ?? 0, { expected, found: 'an empty cell' });
  return undefined;
}

/**
 * Columns of a header by name. Names that occur twice and empty names are faults.
 * With `known` given, other names are passed over with a warning; names that `skip` takes are another reader's and left out.
 */
export function columnsByName(
  header: DelimitedRow, faults: TableFaults, known?: readonly string[], skip: (name: string) => boolean = () => false,
): Map<string, number> {
  const columns = new Map<string, number>();
  header.cells.forEach((name, column) => {
    if (skip(name)) return;
    const offset = header.offsets[column] ?? 0;
    if (name === '') {
      faults.add('empty-column-name', offset, {
        expected: 'a name for every column', found: 'nothing', hint: 'Take out separators at the end of the lines.',
      });
    } else if (name === '__proto__') {
      faults.add('forbidden-key', offset, { expected: 'another name', found: '"__proto__"' });
    } else if (columns.has(name)) {
      faults.add('duplicate-column', offset, { expected: 'each column name once', found: JSON.stringify(name.slice(0, 60)) });
    } else {
      columns.set(name, column);
      if (known !== undefined && !known.includes(name)) {
        const nearest = nearestName(name, known.filter((candidate) => !header.cells.includes(candidate)));
        faults.add('unknown-column', offset, {
          severity: 'warning', expected: `one of ${known.join(', ')}`, found: JSON.stringify(name.slice(0, 60)),
          hint: nearest === undefined ? 'The column is not used.' : `Did you mean ${JSON.stringify(nearest)}? The column is not used.`,
        });
      }
    }
  });
  return columns;
}

/** Adds a fault for each column that is wanted and missing. */
export function requireColumns(header: DelimitedRow, columns: ReadonlyMap<string, number>, wanted: readonly string[], faults: TableFaults): boolean {
  const missing = wanted.filter((name) => !columns.has(name));
  for (const name of missing) {
    const nearest = nearestName(name, columns.keys());
    faults.add('missing-column', header.offsets[0] ?? 0, {
      expected: `a column ${JSON.stringify(name)}`, found: 'none', ...(nearest === undefined ? {} : { hint: `Is ${JSON.stringify(nearest)} meant?` }),
    });
  }
  return missing.length === 0;
}
