import { seededUniform } from './seeded-noise.ts';

export interface CellPattern {
  readonly width: number;
  readonly height: number;
  /** Points from one cell to the next across the lay. */
  readonly pitch: number;
  /** Length of a cell along x, the lay, over its width. */
  readonly stretch: number;
  readonly seed: number;
}

/** How far a cell's centre may lie from its place in the brickwork, as a share of the pitch. */
const disorder = 0.78;
/** Width of a furrow in pitches. */
const furrow = 0.34;
/** The folds that run over the cells: their size and height against the cells. */
const foldSize = 0.43;
const foldHeight = 0.3;
/** How much the cells differ in height. */
const unevenness = 0.3;

/**
 * Heights of rounded cells between furrows, with finer folds over them: the kind of pattern that hides and most grained mouldings have. The
 * pattern repeats at its edges; heights are about 0..1 and their scale means nothing.
 *
 * Distances to the two nearest of scattered centres decide where a furrow runs (S. Worley, A cellular texture basis function, SIGGRAPH 1996).
 */
export function cellPattern({ width, height, pitch, stretch, seed }: CellPattern): Float64Array {
  const values = new Float64Array(width * height);
  addCells(values, width, height, pitch, stretch, seed, 1);
  addCells(values, width, height, pitch * foldSize, stretch, seed + 1, foldHeight);
  return values;
}

function addCells(values: Float64Array, width: number, height: number, pitch: number, stretch: number, seed: number, weight: number): void {
  const columns = Math.max(2, Math.round(width / (pitch * stretch)));
  // An even number of rows, since every second one is shifted by half a cell.
  const rows = Math.max(2, 2 * Math.round(height / pitch / 2));
  const random = seededUniform(seed);
  const centres = Array.from({ length: 3 }, () => new Float64Array(columns * rows));
  const [acrossAt, downAt, level] = centres;
  for (let index = 0; index < columns * rows; index += 1) {
    const row = Math.floor(index / columns);
    acrossAt[index] = 0.5 + 0.5 * (row % 2) + disorder * (random() - 0.5);
    downAt[index] = 0.5 + disorder * (random() - 0.5);
    level[index] = unevenness * (random() - 0.5);
  }
  for (let y = 0; y < height; y += 1) {
    const v = (y * rows) / height;
    const row = Math.floor(v);
    for (let x = 0; x < width; x += 1) {
      const u = (x * columns) / width;
      const column = Math.floor(u);
      let [nearest, second, found] = [Infinity, Infinity, 0];
      for (let down = -1; down <= 1; down += 1) {
        const line = ((row + down + rows) % rows) * columns;
        // The shift of every second row puts its centres up to one and a half columns to the right.
        for (let across = -2; across <= 1; across += 1) {
          const index = line + ((column + across + columns) % columns);
          const dx = column + across + acrossAt[index] - u;
          const dy = row + down + downAt[index] - v;
          const square = dx * dx + dy * dy;
          if (square < nearest) [second, nearest, found] = [nearest, square, index];
          else if (square < second) second = square;
        }
      }
      const edge = (Math.sqrt(second) - Math.sqrt(nearest)) / furrow;
      const rise = (edge * edge) / (0.25 + edge * edge);
      values[y * width + x] += weight * rise * (1 + level[found]);
    }
  }
}
