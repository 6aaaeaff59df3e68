import type { Part } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import { verdictLine } from '../../src/report/figures/verdict-line.ts';
import { limitUseText } from '../../src/report/number-text.ts';
import { element } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';
import { verdictWord } from '../model/leading-check.ts';
import { jointsBetween } from '../model/matrix-cells.ts';
import type { JointsOfPart, MatrixPlace } from '../model/matrix-cells.ts';
import type { PartColour } from '../model/part-colours.ts';
import { tableInk } from './inks.ts';

/** Side of a cell, px. */
export const cellPx = 26;

/** What a matrix of parts shows. */
export interface MatrixContent {
  /** The parts, along both sides. */
  readonly order: readonly Part[];
  readonly joints: JointsOfPart;
  /** Joints that pass the filter; others are drawn as a rest. */
  readonly passing: ReadonlySet<JointResult>;
  readonly colours: ReadonlyMap<string, PartColour>;
}

/** Id of the cell that the keys are at. */
export const cellId = ({ row, column }: MatrixPlace): string => `cell-${row}-${column}`;

/**
 * Rows of a matrix, each a drawing about its own upper edge. A row is the same drawing again as long as it shows the same, and a cell without a
 * joint is one bare element: a large cabin has about a thousand cells in sight.
 */
export class MatrixRows {
  private content: MatrixContent | undefined;
  private columns: readonly number[] = [];
  private readonly known = new Map<number, { readonly at: number | undefined; readonly drawn: SceneElement }>();

  /** The rows at some places with the cells of some columns; `at` is the cell that the keys are at. */
  draw(content: MatrixContent, rows: readonly number[], columns: readonly number[], at: MatrixPlace): readonly { readonly row: number; readonly drawn: SceneElement }[] {
    if (content !== this.content || columns.length !== this.columns.length || columns.some((column, place) => column !== this.columns[place])) this.known.clear();
    this.content = content;
    this.columns = columns;
    const wanted = new Set(rows);
    for (const row of this.known.keys()) if (!wanted.has(row)) this.known.delete(row);
    return rows.map((row) => ({ row, drawn: this.row(content, row, row === at.row ? at.column : undefined) }));
  }

  private row(content: MatrixContent, row: number, at: number | undefined): SceneElement {
    const before = this.known.get(row);
    if (before !== undefined && before.at === at) return before.drawn;
    const drawn = element(
      'g', { role: 'row', 'aria-rowindex': row + 1, transform: `translate(0 ${row * cellPx})` },
      this.columns.map((column) => matrixCell(content, { row, column }, column === at)),
    );
    this.known.set(row, { at, drawn });
    return drawn;
  }
}

function matrixCell({ order, joints, passing, colours }: MatrixContent, place: MatrixPlace, here: boolean): SceneElement {
  const { row, column } = place;
  const [first, second] = [order[row] as Part, order[column] as Part];
  const x = column * cellPx;
  const cell = { role: 'gridcell', id: here ? cellId(place) : undefined, 'aria-colindex': column + 1, 'aria-selected': String(here) };
  const box = { x, y: 0, width: cellPx, height: cellPx };
  if (row === column) return element('rect', { ...cell, 'aria-label': `${first.name} itself`, ...box, class: 'sample', fill: colours.get(first.id)?.css ?? 'none' });
  const between = jointsBetween(joints, first.id, second.id);
  const [joint] = between;
  if (joint === undefined) return element('rect', { ...cell, 'aria-label': `${first.name} and ${second.name}: no joint`, ...box, fill: 'none' });
  const words = between.map((one) => `${one.kind}, ${verdictWord(one)}, limit use ${limitUseText(one.limitUse)}`).join('; ');
  return element(
    'g', { ...cell, 'aria-label': `${first.name} and ${second.name}: ${words}`, opacity: passing.has(joint) ? 1 : 0.3 },
    element('rect', { ...box, fill: 'none' }),
    verdictLine([[x + 3, cellPx / 2], [x + cellPx - 3, cellPx / 2]], joint, tableInk, { scale: 0.9, cased: true }),
  );
}

/** The lines between the cells of some rows and columns, as path data. */
export function matrixLattice(rows: readonly number[], columns: readonly number[]): string {
  const [top, bottom] = [(rows[0] ?? 0) * cellPx, ((rows.at(-1) ?? -1) + 1) * cellPx];
  const [left, right] = [(columns[0] ?? 0) * cellPx, ((columns.at(-1) ?? -1) + 1) * cellPx];
  const edges = (places: readonly number[]): number[] => [...new Set(places.flatMap((place) => [place * cellPx, (place + 1) * cellPx]))];
  return `${edges(rows).map((y) => `M${left} ${y}H${right}`).join('')}${edges(columns).map((x) => `M${x} ${top}V${bottom}`).join('')}`;
}
