/** Place in a text: lines and columns count from 1, columns in UTF-16 code units. */
export interface TextPosition {
  readonly line: number;
  readonly column: number;
}

/**
 * Turns offsets of a text into lines and columns. A line ends with LF, CR LF or CR.
 * The starts of lines are found once, on the first call; a leading byte-order mark has no column.
 */
export function textPositions(text: string): (offset: number) => TextPosition {
  let starts: number[] | undefined;
  return (offset) => {
    starts ??= lineStarts(text);
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return { line: low + 1, column: Math.max(1, offset - (starts[low] ?? 0) + 1) };
  };
}

function lineStarts(text: string): number[] {
  const starts = [text.charCodeAt(0) === 0xfeff ? 1 : 0];
  for (const match of text.matchAll(/\r\n|\n|\r/gu)) starts.push(match.index + match[0].length);
  return starts;
}
