import type { SurfaceFaults } from './surface-faults.ts';

export interface PngLayout {
  readonly width: number;
  readonly height: number;
  readonly depth: 8 | 16;
  readonly alpha: boolean;
  readonly interlaced: boolean;
}

interface Pass {
  readonly left: number;
  readonly top: number;
  readonly stepX: number;
  readonly stepY: number;
}

/** The seven passes of an interlaced picture. Source: PNG specification, clause 8. */
const interlacedPasses: readonly Pass[] = [
  { left: 0, top: 0, stepX: 8, stepY: 8 }, { left: 4, top: 0, stepX: 8, stepY: 8 }, { left: 0, top: 4, stepX: 4, stepY: 8 },
  { left: 2, top: 0, stepX: 4, stepY: 4 }, { left: 0, top: 2, stepX: 2, stepY: 4 }, { left: 1, top: 0, stepX: 2, stepY: 2 },
  { left: 0, top: 1, stepX: 1, stepY: 2 },
];
const passesOf = ({ interlaced }: PngLayout): readonly Pass[] => (interlaced ? interlacedPasses : [{ left: 0, top: 0, stepX: 1, stepY: 1 }]);

const pointBytes = ({ depth, alpha }: PngLayout): number => (depth / 8) * (alpha ? 2 : 1);
const columnsOf = ({ width }: PngLayout, { left, stepX }: Pass): number => Math.max(0, Math.ceil((width - left) / stepX));
const rowsOf = ({ height }: PngLayout, { top, stepY }: Pass): number => Math.max(0, Math.ceil((height - top) / stepY));

/** Bytes of the unpacked picture with a byte for the filter of each row. */
export const packedBytes = (layout: PngLayout): number => passesOf(layout).reduce((sum, pass) => {
  const columns = columnsOf(layout, pass);
  return columns === 0 ? sum : sum + rowsOf(layout, pass) * (1 + columns * pointBytes(layout));
}, 0);

/** Undoes the filters of the rows, in place, and puts the points where they belong. Source: PNG specification, clause 9. */
export function greyPixels(raw: Uint8Array, layout: PngLayout, faults: SurfaceFaults): { values: Uint16Array; opaque: Uint8Array | undefined } | undefined {
  const { width, height, depth, alpha } = layout;
  const size = pointBytes(layout);
  const values = new Uint16Array(width * height);
  const opaque = alpha ? new Uint8Array(width * height) : undefined;
  let at = 0;
  for (const pass of passesOf(layout)) {
    const columns = columnsOf(layout, pass);
    const bytes = columns * size;
    let above: Uint8Array = new Uint8Array(bytes);
    const rows = columns === 0 ? 0 : rowsOf(layout, pass);
    for (let row = 0; row < rows; row += 1) {
      const filter = raw[at];
      const line = raw.subarray(at + 1, at + 1 + bytes);
      if (filter > 4) {
        faults.add('unknown-type', { path: `rows[${pass.top + row * pass.stepY}]`, found: `filter ${filter}`, expected: '0 to 4' });
        return undefined;
      }
      undo(filter, line, above, size);
      const target = (pass.top + row * pass.stepY) * width + pass.left;
      for (let column = 0; column < columns; column += 1) {
        const from = column * size;
        const place = target + column * pass.stepX;
        values[place] = depth === 8 ? line[from] : line[from] * 256 + line[from + 1];
        if (opaque !== undefined) opaque[place] = depth === 8 ? line[from + 1] : line[from + 2] | line[from + 3];
      }
      above = line;
      at += 1 + bytes;
    }
  }
  return { values, opaque };
}

function undo(filter: number, line: Uint8Array, above: Uint8Array, size: number): void {
  if (filter === 0) return;
  for (let index = 0; index < line.length; index += 1) {
    const left = index >= size ? line[index - size] : 0;
    const up = above[index];
    if (filter === 1) line[index] += left;
    else if (filter === 2) line[index] += up;
    else if (filter === 3) line[index] += (left + up) >> 1;
    else line[index] += nearest(left, up, index >= size ? above[index - size] : 0);
  }
}

/** Of left, up and upper left the one nearest to left + up - upper left, the first of equals. */
function nearest(left: number, up: number, corner: number): number {
  const [toLeft, toUp, toCorner] = [Math.abs(up - corner), Math.abs(left - corner), Math.abs(left + up - 2 * corner)];
  if (toLeft <= toUp && toLeft <= toCorner) return left;
  return toUp <= toCorner ? up : corner;
}
