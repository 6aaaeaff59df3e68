import { highestGloss } from '../cabin/shapes/reading-shape.ts';
import type { Outcome } from '../issue.ts';
import type { GlossAngle } from '../readings/reading.ts';
import type { DelimitedRow, DelimitedTable } from './delimited-text.ts';
import { continueFaults, readDelimited } from './delimited-text.ts';
import { columnsByName, readName, readNumber, requireColumns } from './table-cells.ts';
import type { TableFaults } from './table-faults.ts';

export interface GlossRow {
  readonly specimen: string;
  readonly angle: GlossAngle;
  readonly gloss: number;
  readonly spot?: string;
  readonly haze?: number;
  readonly instrument?: string;
  readonly line: number;
}

const wanted = ['specimen', 'angle', 'gloss'];
const known = [...wanted, 'spot', 'haze', 'instrument'];

/**
 * Reads a table of gloss readings, a row a reading: columns `specimen`, `angle` (20, 60 or 85 degrees) and `gloss` (0..2000 GU),
 * and if wanted `spot`, `haze` and `instrument`, in any order.
 */
export function readGlossTable(text: string, file?: string): Outcome<readonly GlossRow[]> {
  const delimited = readDelimited(text, file);
  const table = delimited.value;
  if (table === undefined) return { value: undefined, issues: delimited.issues };
  const faults = continueFaults(table, delimited.issues, file);
  const columns = columnsByName(table.header, faults, known);
  if (!requireColumns(table.header, columns, wanted, faults)) return { value: undefined, issues: faults.list() };
  const rows = table.rows.map((row) => readRow(table, row, columns, faults));
  return { value: faults.errors() > 0 ? undefined : rows, issues: faults.list() };
}

function readRow(table: DelimitedTable, row: DelimitedRow, columns: ReadonlyMap<string, number>, faults: TableFaults): GlossRow {
  const column = (name: string): number => columns.get(name) ?? -1;
  const text = (name: string): string | undefined => (columns.has(name) ? row.cells[column(name)] || undefined : undefined);
  const specimen = readName(row, column('specimen'), 'the name of a specimen', faults) ?? '';
  const angle = readAngle(table, row, column('angle'), faults);
  const gloss = readNumber(table, row, column('gloss'), { min: 0, max: highestGloss, unit: 'GU' }, faults) ?? 0;
  const haze = text('haze') === undefined ? undefined : readNumber(table, row, column('haze'), { min: 0, max: highestGloss }, faults);
  const [spot, instrument] = [text('spot'), text('instrument')];
  return {
    specimen, angle: angle ?? 60, gloss, line: table.position(row.offsets[0] ?? 0).line,
    ...(spot === undefined ? {} : { spot }),
    ...(haze === undefined ? {} : { haze }),
    ...(instrument === undefined ? {} : { instrument }),
  };
}

function readAngle(table: DelimitedTable, row: DelimitedRow, column: number, faults: TableFaults): GlossAngle | undefined {
  const value = readNumber(table, row, column, {}, faults);
  if (value === 20 || value === 60 || value === 85) return value;
  if (value !== undefined) {
    faults.add('unknown-gloss-angle', row.offsets[column] ?? 0, { expected: '20, 60 or 85 degrees (ISO 2813)', found: String(value) });
  }
  return undefined;
}
