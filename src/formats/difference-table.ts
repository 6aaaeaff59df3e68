import { isPositiveSemidefinite } from '../cabin/shapes/covariance.ts';
import type { Outcome } from '../issue.ts';
import type { Lab, Matrix3 } from '../quantities.ts';
import type { DelimitedRow, DelimitedTable } from './delimited-text.ts';
import { continueFaults, readDelimited } from './delimited-text.ts';
import { columnsByName, readName, readNumber, requireColumns } from './table-cells.ts';
import type { TableFaults } from './table-faults.ts';

export interface DifferenceRow {
  readonly id: string;
  readonly standard: Lab;
  readonly trial: Lab;
  readonly standardCovariance?: Matrix3;
  readonly trialCovariance?: Matrix3;
  readonly limit?: number;
  readonly line: number;
}

const colours = ['L1', 'a1', 'b1', 'L2', 'a2', 'b2'] as const;
const terms = ['LL', 'La', 'Lb', 'aa', 'ab', 'bb'] as const;
const covarianceColumns = (side: 1 | 2): string[] => terms.map((term) => `c${side}${term}`);

/**
 * Reads a table of colour pairs: columns `id`, `L1,a1,b1` of the standard and `L2,a2,b2` of the trial, in any order. Optional are
 * the covariance of each side, `c1LL,c1La,c1Lb,c1aa,c1ab,c1bb` and `c2...` (CIELAB units squared; all six or none, cells all filled
 * or all empty), and `limit`. L* 0..150, a* and b* within 300 of grey.
 */
export function readDifferenceTable(text: string, file?: string): Outcome<readonly DifferenceRow[]> {
  const delimited = readDelimited(text, file);
  const table = delimited.value;
  if (table === undefined) return { value: undefined, issues: delimited.issues };
  const faults = continueFaults(table, delimited.issues, file);
  const known = ['id', ...colours, ...covarianceColumns(1), ...covarianceColumns(2), 'limit'];
  const columns = columnsByName(table.header, faults, known);
  const sides = ([1, 2] as const).filter((side) => covarianceColumns(side).some((name) => columns.has(name)));
  const wanted = ['id', ...colours, ...sides.flatMap(covarianceColumns)];
  if (!requireColumns(table.header, columns, wanted, faults)) return { value: undefined, issues: faults.list() };
  const seen = new Map<string, number>();
  const rows = table.rows.map((row) => readRow(table, row, columns, seen, faults));
  return { value: faults.errors() > 0 ? undefined : rows, issues: faults.list() };
}

const range = { L: { min: 0, max: 150 }, ab: { min: -300, max: 300 }, covariance: { min: -1e6, max: 1e6 }, limit: { above: 0, max: 1000 } } as const;

function readRow(table: DelimitedTable, row: DelimitedRow, columns: ReadonlyMap<string, number>, seen: Map<string, number>, faults: TableFaults): DifferenceRow {
  const column = (name: string): number => columns.get(name) ?? -1;
  const { line } = table.position(row.offsets[0] ?? 0);
  const id = readName(row, column('id'), 'an id', faults) ?? '';
  const other = seen.get(id);
  if (id !== '' && other !== undefined) {
    faults.add('duplicate-id', row.offsets[column('id')] ?? 0, {
      expected: 'an id that no other row has', found: `${JSON.stringify(id)}, as in line ${other}`,
    });
  } else seen.set(id, line);
  const [L1, a1, b1, L2, a2, b2] = colours.map((name) => readNumber(table, row, column(name), name.startsWith('L') ? range.L : range.ab, faults) ?? 0);
  const standardCovariance = readCovariance(table, row, covarianceColumns(1).map(column), faults);
  const trialCovariance = readCovariance(table, row, covarianceColumns(2).map(column), faults);
  const hasLimit = columns.has('limit') && row.cells[column('limit')] !== '';
  const limit = hasLimit ? readNumber(table, row, column('limit'), range.limit, faults) : undefined;
  return {
    id, line,
    standard: [L1 ?? 0, a1 ?? 0, b1 ?? 0],
    trial: [L2 ?? 0, a2 ?? 0, b2 ?? 0],
    ...(standardCovariance === undefined ? {} : { standardCovariance }),
    ...(trialCovariance === undefined ? {} : { trialCovariance }),
    ...(limit === undefined ? {} : { limit }),
  };
}

function readCovariance(table: DelimitedTable, row: DelimitedRow, columns: readonly number[], faults: TableFaults): Matrix3 | undefined {
  if (columns.every((column) => (row.cells[column] ?? '') === '')) return undefined;
  const values = columns.map((column) => readNumber(table, row, column, range.covariance, faults));
  const [LL, La, Lb, aa, ab, bb] = values;
  if (LL === undefined || La === undefined || Lb === undefined || aa === undefined || ab === undefined || bb === undefined) return undefined;
  const matrix: Matrix3 = [LL, La, Lb, La, aa, ab, Lb, ab, bb];
  if (isPositiveSemidefinite(matrix)) return matrix;
  faults.add('covariance-not-positive', row.offsets[columns[0] ?? 0] ?? 0, {
    expected: 'a covariance without a negative eigenvalue', found: values.join(', '), hint: 'A covariance is at most the root of the product of its variances.',
  });
  return undefined;
}
