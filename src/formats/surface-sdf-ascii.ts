import type { SurfaceFaults } from './surface-faults.ts';
import { asciiText, isMissingWord, numberOf } from './surface-numbers.ts';
import type { SdfHeader } from './surface-sdf.ts';

const [asterisk, newline, carriage, space, tab] = [0x2a, 0x0a, 0x0d, 0x20, 0x09];

/** The data of an ASCII surface data file: numbers between blanks, profile after profile, up to an asterisk or the end. */
export function readSdfHeights(bytes: Uint8Array, dataAt: number, firstLine: number, { points, profiles }: SdfHeader, faults: SurfaceFaults): Float64Array | undefined {
  const wanted = points * profiles;
  // Each number takes two bytes with its blank: a short file with a large header gets no room for it.
  if (bytes.length - dataAt + 1 < 2 * wanted - 1) return tooFew(Math.ceil((bytes.length - dataAt) / 2), wanted, firstLine, faults);
  const heights = new Float64Array(wanted);
  let count = 0;
  let line = firstLine;
  let lineStart = dataAt;
  let at = dataAt;
  while (at < bytes.length) {
    const code = bytes[at];
    if (code === newline || code === carriage) {
      if (code === carriage && bytes[at + 1] === newline) at += 1;
      at += 1;
      line += 1;
      lineStart = at;
      continue;
    }
    if (code === space || code === tab) {
      at += 1;
      continue;
    }
    if (code === asterisk) break;
    const start = at;
    while (at < bytes.length && bytes[at] > space && bytes[at] !== asterisk) at += 1;
    if (at === start) {
      faults.add('not-text', { line, column: at - lineStart + 1, found: `the byte ${code}`, expected: 'text' });
      return undefined;
    }
    if (count >= wanted) {
      faults.add('extra-data', { line, column: start - lineStart + 1, found: `more than ${wanted} heights`, expected: `${profiles} profiles of ${points} points, then *` });
      return undefined;
    }
    let value = numberOf(bytes, start, at);
    if (Number.isNaN(value) && !isMissingWord(bytes, start, at)) {
      faults.add('not-a-number', {
        line, column: start - lineStart + 1, path: `profiles[${Math.floor(count / points)}].points[${count % points}]`,
        found: JSON.stringify(asciiText(bytes, start, Math.min(at, start + 40))), expected: 'a number or BAD',
      });
      value = NaN;
    }
    heights[count] = value;
    count += 1;
  }
  return count < wanted ? tooFew(count, wanted, line, faults) : heights;
}

function tooFew(count: number, wanted: number, line: number, faults: SurfaceFaults): undefined {
  faults.add('missing-data', { line, path: 'data', found: `${count} heights at most`, expected: `${wanted}`, hint: 'The file may have been cut short.' });
  return undefined;
}
