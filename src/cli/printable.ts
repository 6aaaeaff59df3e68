/**
 * Text of a file made safe for a terminal: control characters, escape sequences and
 * marks that reorder text are shown by their code point instead of obeyed.
 */
export function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu, (character) => `\\u{${character.codePointAt(0)?.toString(16) ?? ''}}`);
}

/** Characters of one column each and one UTF-16 unit: Latin and Greek letters and common punctuation, no marks and no pictures. */
const plain = /^[ -\u00a8\u00aa-\u00ad\u00af-\u02ff\u0370-\u03ff\u2010-\u2027]*$/u;

/** Columns that a text takes in a terminal, East Asian wide characters counted as two and combining marks as none. */
export function columnsOf(text: string): number {
  if (plain.test(text)) return text.length;
  let columns = 0;
  for (const character of text) {
    if (/\p{M}/u.test(character)) continue;
    columns += /[\u1100-\u115f\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6]|\p{Extended_Pictographic}/u.test(character) ? 2 : 1;
  }
  return columns;
}

/** The text cut to a number of columns, with an ellipsis where something was cut. */
export function shortened(text: string, columns: number): string {
  if (columnsOf(text) <= columns) return text;
  let kept = '';
  let used = 0;
  for (const character of text) {
    const wide = columnsOf(character);
    if (used + wide > columns - 1) break;
    kept += character;
    used += wide;
  }
  return `${kept}…`;
}
