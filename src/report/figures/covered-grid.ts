import type { Extent } from './map-place.ts';
import type { Point } from './polyline.ts';

/** Which cells of a raster over a drawing are covered, with sums so that any box can be asked at once. */
export interface CoveredGrid {
  /** Whether nothing is covered between the corners, px; what lies outside the drawing counts as bare. */
  bare(left: number, top: number, right: number, bottom: number): boolean;
}

/**
 * Rasters polygons into square cells of `cell` px: a cell is covered where its row's middle line meets a polygon within it,
 * or a line passes it. With `within` only the cells about that box are looked at; what lies elsewhere must not be asked then.
 */
export function coveredGrid(
  polygons: readonly (readonly Point[])[], lines: readonly (readonly Point[])[], width: number, height: number, cell: number, within?: Extent,
): CoveredGrid {
  const [firstColumn, firstRow] = within === undefined ? [0, 0] : [Math.max(0, Math.floor(within.left / cell)), Math.max(0, Math.floor(within.top / cell))];
  const [endColumn, endRow] = [Math.ceil(Math.min(width, within?.right ?? width) / cell), Math.ceil(Math.min(height, within?.bottom ?? height) / cell)];
  const columns = Math.max(0, endColumn - firstColumn);
  const rows = Math.max(0, endRow - firstRow);
  const covered = new Uint8Array(columns * rows);
  const mark = (row: number, from: number, to: number): void => {
    if (row < firstRow || row >= endRow) return;
    const first = Math.max(firstColumn, Math.floor(from / cell));
    const last = Math.min(endColumn - 1, Math.floor(to / cell));
    for (let column = first; column <= last; column += 1) covered[(row - firstRow) * columns + column - firstColumn] = 1;
  };
  for (const polygon of polygons) {
    let [highest, lowest] = [Infinity, -Infinity];
    for (const [, y] of polygon) [highest, lowest] = [Math.min(highest, y), Math.max(lowest, y)];
    const [first, last] = [Math.max(firstRow, Math.floor(highest / cell) - 1), Math.min(endRow - 1, Math.ceil(lowest / cell))];
    for (let row = first; row <= last; row += 1) {
      const crossings = crossingsOf(polygon, (row + 0.5) * cell);
      for (let i = 0; i + 1 < crossings.length; i += 2) mark(row, crossings[i] as number, crossings[i + 1] as number);
    }
  }
  const trace = ([x0, y0]: Point, [x1, y1]: Point): void => {
    const steps = Math.max(1, Math.ceil(Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0)) / cell));
    for (let step = 0; step <= steps; step += 1) {
      const x = x0 + ((x1 - x0) * step) / steps;
      mark(Math.floor((y0 + ((y1 - y0) * step) / steps) / cell), x, x);
    }
  };
  for (const line of lines) for (let i = 1; i < line.length; i += 1) trace(line[i - 1] as Point, line[i] as Point);
  for (const polygon of polygons) polygon.forEach((point, i) => trace(point, polygon[(i + 1) % polygon.length] as Point));
  const sums = new Uint32Array((columns + 1) * (rows + 1));
  for (let row = 0; row < rows; row += 1) {
    let sum = 0;
    for (let column = 0; column < columns; column += 1) {
      sum += covered[row * columns + column] as number;
      sums[(row + 1) * (columns + 1) + column + 1] = (sums[row * (columns + 1) + column + 1] as number) + sum;
    }
  }
  const column = (x: number): number => Math.max(0, Math.min(columns, x - firstColumn));
  const line = (y: number): number => Math.max(0, Math.min(rows, y - firstRow));
  return {
    bare: (left, top, right, bottom) => {
      // Asked thousands of times for a name.
      const c0 = column(Math.floor(left / cell));
      const c1 = column(Math.ceil(right / cell));
      const r0 = line(Math.floor(top / cell)) * (columns + 1);
      const r1 = line(Math.ceil(bottom / cell)) * (columns + 1);
      return sums[r1 + c1] - sums[r0 + c1] - sums[r1 + c0] + sums[r0 + c0] === 0;
    },
  };
}

function crossingsOf(polygon: readonly Point[], y: number): number[] {
  const crossings: number[] = [];
  for (let i = 0; i < polygon.length; i += 1) {
    const [x0, y0] = polygon[i] as Point;
    const [x1, y1] = polygon[(i + 1) % polygon.length] as Point;
    if (y0 <= y !== y1 <= y) crossings.push(x0 + ((x1 - x0) * (y - y0)) / (y1 - y0));
  }
  return crossings.sort((a, b) => a - b);
}
