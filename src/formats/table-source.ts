import type { Column } from './column.ts';
import type { FieldName } from './column-names.ts';
import type { DelimitedRow, DelimitedTable } from './delimited-text.ts';
import type { TableFaults } from './table-faults.ts';

/** A value that holds for every row of a table: a comment line of a sheet, a keyword of ISO 28178. */
export interface DeclaredCell {
  readonly value: string;
  readonly offset: number;
}

/** A table of text cells with columns that are understood. */
export interface TableSource {
  readonly table: Pick<DelimitedTable, 'decimal' | 'separator' | 'header' | 'rows' | 'position'>;
  readonly columns: readonly Column[];
  readonly declared: ReadonlyMap<FieldName, DeclaredCell>;
}

export interface Cell {
  readonly text: string;
  readonly offset: number;
}

/** The cells of rows by the fields of their columns. */
export interface FieldCells {
  has(field: FieldName): boolean;
  column(field: FieldName): Extract<Column, { kind: 'field' }> | undefined;
  /** The filled cell of the field in this row, or what is declared for all rows. */
  cell(row: DelimitedRow, field: FieldName): Cell | undefined;
}

/** Fields that occur once; the second column of a field is a fault, except where it holds CIELAB values under another light. */
export function fieldCells({ table, columns, declared }: TableSource, faults: TableFaults): FieldCells {
  const byField = new Map<FieldName, number>();
  columns.forEach((column, index) => {
    if (column.kind !== 'field' || column.view !== undefined) return;
    const other = byField.get(column.field);
    if (other === undefined) byField.set(column.field, index);
    else {
      faults.add('duplicate-column', table.header.offsets[index] ?? 0, {
        expected: 'one column of a kind', found: `${JSON.stringify(table.header.cells[index]?.slice(0, 60))} beside ${JSON.stringify(table.header.cells[other]?.slice(0, 60))}`,
      });
    }
  });
  return {
    has: (field) => byField.has(field) || declared.has(field),
    column(field) {
      const column = columns[byField.get(field) ?? -1];
      return column?.kind === 'field' ? column : undefined;
    },
    cell(row, field) {
      const index = byField.get(field);
      const text = index === undefined ? '' : row.cells[index] ?? '';
      if (text !== '') return { text, offset: row.offsets[index ?? 0] ?? 0 };
      const everywhere = declared.get(field);
      return everywhere === undefined || everywhere.value === '' ? undefined : { text: everywhere.value, offset: everywhere.offset };
    },
  };
}
