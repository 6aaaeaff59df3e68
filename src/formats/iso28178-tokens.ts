import { delimitedLimits } from './delimited-text.ts';
import type { TableFaults } from './table-faults.ts';

export interface Token {
  readonly text: string;
  readonly offset: number;
  readonly quoted: boolean;
}

const isBlank = (code: number): boolean => code === 0x20 || code === 0x09;
const isEnd = (code: number): boolean => code === 0x0a || code === 0x0d;
const hidden = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\p{Cs}\u202a-\u202e\u2066-\u2069]/u;

/**
 * The tokens of each line that has any: separated by blanks and tabs, strings with blanks in double quotation marks (doubled
 * inside), the rest of a line from `#` a comment. Calls `line` for each and stops where it returns false.
 */
export function scanLines(text: string, faults: TableFaults, line: (tokens: Token[], end: number) => boolean): void {
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  let tokens: Token[] = [];
  while (at < text.length) {
    const code = text.charCodeAt(at);
    if (isEnd(code)) {
      if (tokens.length > 0 && !line(tokens, at)) return;
      tokens = [];
      at += 1;
    } else if (isBlank(code)) at += 1;
    else if (code === 0x23) at = endOfLine(text, at);
    else {
      if (tokens.length >= delimitedLimits.columns) {
        faults.add('too-many-columns', at, { expected: `at most ${delimitedLimits.columns} values in a line`, found: 'more' });
        return;
      }
      const end = code === 0x22 ? endOfString(text, at) : endOfWord(text, at);
      if (end === undefined) {
        faults.add('unclosed-quote', at, { found: 'a quotation mark that is not closed', expected: 'a closing quotation mark in the same line' });
        return;
      }
      const quoted = code === 0x22;
      tokens.push({ text: quoted ? text.slice(at + 1, end - 1).replaceAll('""', '"').trim() : text.slice(at, end), offset: at, quoted });
      if (end - at > delimitedLimits.cell) {
        faults.add('cell-too-long', at, { found: `${end - at} characters`, expected: `at most ${delimitedLimits.cell}` });
        return;
      }
      checkHidden(tokens.at(-1), faults);
      at = end;
    }
  }
  if (tokens.length > 0) line(tokens, text.length);
}

function checkHidden(token: Token | undefined, faults: TableFaults): void {
  const match = token === undefined ? null : hidden.exec(token.text);
  if (match === null) return;
  const code = (match[0].codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  faults.add('control-character', token?.offset ?? 0, { found: `the character U+${code}`, expected: 'text that can be seen' });
}

function endOfLine(text: string, from: number): number {
  let at = from;
  while (at < text.length && !isEnd(text.charCodeAt(at))) at += 1;
  return at;
}

function endOfWord(text: string, from: number): number {
  let at = from;
  while (at < text.length && !isEnd(text.charCodeAt(at)) && !isBlank(text.charCodeAt(at))) at += 1;
  return at;
}

/** The place behind the closing quotation mark. */
function endOfString(text: string, from: number): number | undefined {
  for (let at = from + 1; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (isEnd(code)) return undefined;
    if (code !== 0x22) continue;
    if (text.charCodeAt(at + 1) !== 0x22) return at + 1;
    at += 1;
  }
  return undefined;
}
