import type { Outcome } from '../issue.ts';
import { heightMap } from '../texture/index.ts';
import type { SurfaceFaults } from './surface-faults.ts';
import { collectSurfaceFaults } from './surface-faults.ts';
import type { HeightUnit, SurfaceFile, SurfaceOptions } from './surface-file.ts';
import { heightUnits } from './surface-file.ts';
import { gridFits, surfaceLimits } from './surface-limits.ts';
import { asciiText, isMissingWord, numberOf } from './surface-numbers.ts';

const [tab, newline, carriage, space, hash, comma, semicolon] = [0x09, 0x0a, 0x0d, 0x20, 0x23, 0x2c, 0x3b];
const toMicrometres: Readonly<Record<HeightUnit, number>> = { um: 1, nm: 1e-3, mm: 1e3 };

/**
 * Reads a grid of heights as text: a row of points a line, cells between commas, semicolons, tabs or blanks.
 *
 * Decimal commas where semicolons, tabs or blanks separate. Empty cells, NaN and BAD are missing. Lines that begin with # are passed over
 * but for `# spacing-mm: 0.01` (one number or two, x and y) and `# height-unit: um`; what the user states goes before them. Without a spacing the
 * file is refused; without a unit heights are micrometres, with a note. All faults are listed with line and column.
 */
export function readHeightGrid(bytes: Uint8Array, options: SurfaceOptions = {}): Outcome<SurfaceFile> {
  const faults = collectSurfaceFaults(options.file);
  const map = readGrid(bytes, options, faults);
  return { value: faults.errors() === 0 && map !== undefined ? { kind: 'heights', format: 'csv', map } : undefined, issues: faults.list() };
}

function readGrid(bytes: Uint8Array, options: SurfaceOptions, faults: SurfaceFaults) {
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  if (bytes.subarray(0, 4096).includes(0)) {
    faults.add('not-text', { line: 1, found: 'the character U+0000', expected: 'a grid of numbers as text in UTF-8 or ASCII' });
    return undefined;
  }
  const declared = new Map<string, string>();
  const values = new GrowingValues();
  let separator: number | undefined;
  let width = 0;
  let height = 0;
  let line = 0;
  // Rows that all end in a separator: it closes their last cell, there is no column behind it.
  let openEnded = true;
  for (let at = start; at < bytes.length;) {
    const end = lineEnd(bytes, at);
    line += 1;
    const begin = at;
    at = bytes[end] === carriage && bytes[end + 1] === newline ? end + 2 : end + 1;
    if (isBlank(bytes, begin, end)) continue;
    if (bytes[begin] === hash) {
      const match = /^#\s*([a-z-]+)\s*:\s*(.*)$/iu.exec(asciiText(bytes, begin, Math.min(end, begin + 200)));
      if (match !== null) declared.set(match[1].toLowerCase(), match[2].trim());
      continue;
    }
    separator ??= separatorOf(bytes, begin, end);
    if (separator === space || !endsWith(bytes, begin, end, separator)) openEnded = false;
    const cells = readRow(bytes, begin, end, separator, { line, row: height }, values, faults);
    if (height === 0) width = cells;
    else if (cells !== width) faults.add('ragged-rows', { line, found: `${cells} cells`, expected: `${width}, as in the first row` });
    height += 1;
    if (values.count > surfaceLimits.points) {
      gridFits(width, height, faults, 'grid');
      return undefined;
    }
  }
  if (height === 0) {
    faults.add('empty-file', { line: 1, column: 1, found: 'no row of numbers', expected: 'a grid of heights' });
    return undefined;
  }
  const spacing = spacingOf(declared, options, faults);
  const unit = unitOf(declared, options, faults);
  if (spacing === undefined || unit === undefined || faults.errors() > 0) return undefined;
  const heights = openEnded && width > 1 ? withoutLastColumn(values.taken(), width, height) : values.taken();
  if (openEnded && width > 1) width -= 1;
  const scale = toMicrometres[unit];
  if (scale !== 1) for (let index = 0; index < heights.length; index += 1) heights[index] *= scale;
  const map = heightMap(width, height, spacing, heights);
  if (map.missing === heights.length) faults.add('no-heights', { path: 'grid', found: 'no measured point', expected: 'at least one' });
  return map;
}

/** Numbers in as much room as they need. */
class GrowingValues {
  private room = new Float64Array(1 << 16);
  count = 0;

  push(value: number): void {
    if (this.count === this.room.length) {
      const larger = new Float64Array(this.count * 2);
      larger.set(this.room);
      this.room = larger;
    }
    this.room[this.count] = value;
    this.count += 1;
  }

  taken(): Float64Array {
    return this.room.slice(0, this.count);
  }
}

function lineEnd(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length && bytes[at] !== newline && bytes[at] !== carriage) at += 1;
  return at;
}

function endsWith(bytes: Uint8Array, start: number, end: number, separator: number): boolean {
  let at = end;
  while (at > start && (bytes[at - 1] === space || (bytes[at - 1] === tab && separator !== tab))) at -= 1;
  return bytes[at - 1] === separator;
}

function withoutLastColumn(values: Float64Array, width: number, height: number): Float64Array {
  const kept = new Float64Array((width - 1) * height);
  for (let row = 0; row < height; row += 1) kept.set(values.subarray(row * width, (row + 1) * width - 1), row * (width - 1));
  return kept;
}

function isBlank(bytes: Uint8Array, start: number, end: number): boolean {
  for (let at = start; at < end; at += 1) if (bytes[at] !== space && bytes[at] !== tab) return false;
  return true;
}

/** The first of semicolon, tab and comma in the first row, else blanks. A comma beside none of them separates. */
function separatorOf(bytes: Uint8Array, start: number, end: number): number {
  const row = bytes.subarray(start, end);
  if (row.includes(semicolon)) return semicolon;
  if (row.includes(tab)) return tab;
  // `1,5 2,5` is two cells, `1, 2` is two as well: a comma that blanks follow separates.
  const text = asciiText(bytes, start, Math.min(end, start + 1000));
  if (!row.includes(comma)) return space;
  return /\d,\d/u.test(text) && /\d +[-+\d]/u.test(text.trim()) && !/, /u.test(text) ? space : comma;
}

interface RowPlace {
  readonly line: number;
  readonly row: number;
}

/** Reads one row into the values and returns how many cells it has; a separator at its end is followed by an empty cell. */
function readRow(
  bytes: Uint8Array, start: number, end: number, separator: number, { line, row }: RowPlace, values: GrowingValues, faults: SurfaceFaults,
): number {
  let cells = 0;
  let at = start;
  for (;;) {
    while (at < end && (bytes[at] === space || (bytes[at] === tab && separator !== tab))) at += 1;
    if (separator === space && at >= end) return cells;
    const begin = at;
    while (at < end && bytes[at] !== separator) at += 1;
    let stop = at;
    while (stop > begin && (bytes[stop - 1] === space || bytes[stop - 1] === tab)) stop -= 1;
    values.push(cell(bytes, begin, stop, separator, { line, row }, cells, begin - start + 1, faults));
    cells += 1;
    if (at >= end) return cells;
    at += 1;
  }
}

function cell(
  bytes: Uint8Array, start: number, end: number, separator: number, { line, row }: RowPlace, column: number, place: number, faults: SurfaceFaults,
): number {
  if (start === end) return NaN;
  let value = numberOf(bytes, start, end);
  if (Number.isNaN(value) && separator !== comma) value = numberOf(bytes, start, end, comma);
  if (!Number.isNaN(value) || isMissingWord(bytes, start, end)) return value;
  faults.add('not-a-number', {
    line, column: place, path: `rows[${row}].cells[${column}]`, found: JSON.stringify(asciiText(bytes, start, Math.min(end, start + 40))), expected: 'a number, NaN or nothing',
    ...(row === 0 ? { hint: 'A grid has no line of column names; put # before it.' } : {}),
  });
  return NaN;
}

function spacingOf(declared: ReadonlyMap<string, string>, { spacingMm }: SurfaceOptions, faults: SurfaceFaults): readonly [number, number] | undefined {
  const numbers = spacingMm === undefined ? declared.get('spacing-mm')?.split(/[\s,;x]+/u).map(Number) : [spacingMm];
  if (numbers === undefined) {
    faults.add('spacing-undeclared', { path: 'grid', found: 'no spacing', expected: 'millimetres from point to point', hint: 'State --spacing-mm, or put a line `# spacing-mm: 0.01` into the file.' });
    return undefined;
  }
  const [x, y = x] = numbers;
  if (numbers.length <= 2 && [x, y].every((value) => value > 0 && value < Infinity)) return [x, y];
  faults.add('out-of-range', { path: 'spacing-mm', found: numbers.join(' '), expected: 'one or two lengths above 0' });
  return undefined;
}

function unitOf(declared: ReadonlyMap<string, string>, { heightUnit }: SurfaceOptions, faults: SurfaceFaults): HeightUnit | undefined {
  if (heightUnit !== undefined) return heightUnit;
  const own = declared.get('height-unit')?.toLowerCase().replace(/^[\u00b5\u03bc]|^\u00c2\u00b5/u, 'u');
  if (own === undefined) {
    faults.add('unit-assumed', { severity: 'note', path: 'grid', found: 'no unit of heights', expected: heightUnits.join(', '), hint: 'Read as um.' });
    return 'um';
  }
  const unit = heightUnits.find((candidate) => candidate === own);
  if (unit === undefined) faults.add('unknown-type', { path: 'height-unit', found: JSON.stringify(own.slice(0, 40)), expected: heightUnits.join(', ') });
  return unit;
}
