/** What a scan of a JSON text tells on the way; offsets count UTF-16 code units of the text. */
export interface JsonVisitor {
  /** A key of the innermost object, with its escapes resolved. */
  key(name: string, offset: number): void;
  /** A value begins: the member named by the last key, the next item of the array, or the document. */
  value(offset: number): void;
  /** The value that just began is an object or an array and is entered; `false` ends the scan. */
  open(kind: 'object' | 'array', offset: number): boolean;
  close(): void;
}

/** Where and why a text is not JSON (RFC 8259). */
export interface JsonFault {
  readonly offset: number;
  readonly found: string;
  readonly expected: string;
  readonly hint?: string;
}

const wordPattern = /[\p{L}_$][\p{L}\p{N}_$]*/uy;

const QUOTE = 0x22;
const BACKSLASH = 0x5c;

/**
 * One pass over a text by the grammar of RFC 8259, without recursion and without building the value.
 * Returns the first fault, or nothing when the text is well-formed or the visitor ended the scan.
 */
export function scanJson(text: string, visitor: JsonVisitor): JsonFault | undefined {
  const kinds: ('object' | 'array')[] = [];
  let at = skipSpace(text, text.charCodeAt(0) === 0xfeff ? 1 : 0);
  for (;;) {
    visitor.value(at);
    const code = text.charCodeAt(at);
    let entered = false;
    if (code === 0x7b || code === 0x5b) {
      const kind = code === 0x7b ? 'object' : 'array';
      if (!visitor.open(kind, at)) return undefined;
      kinds.push(kind);
      at = skipSpace(text, at + 1);
      if (text.charCodeAt(at) === (kind === 'object' ? 0x7d : 0x5d)) {
        kinds.pop();
        visitor.close();
        at = skipSpace(text, at + 1);
      } else entered = true;
    } else {
      const end = scalarEnd(text, at);
      if (typeof end === 'object') return end;
      at = skipSpace(text, end);
    }
    if (!entered) {
      for (;;) {
        const kind = kinds.at(-1);
        if (kind === undefined) {
          if (at >= text.length) return undefined;
          return { ...fault(text, at, 'the end of the document'), hint: 'Take out what follows the closing bracket.' };
        }
        const next = text.charCodeAt(at);
        if (next === 0x2c) {
          const comma = at;
          at = skipSpace(text, at + 1);
          if (text.charCodeAt(at) === 0x7d || text.charCodeAt(at) === 0x5d) {
            return { ...fault(text, comma, 'another value after the comma'), hint: 'Take out the comma before the closing bracket.' };
          }
          break;
        }
        if (next !== (kind === 'object' ? 0x7d : 0x5d)) return separatorFault(text, at, kind);
        kinds.pop();
        visitor.close();
        at = skipSpace(text, at + 1);
      }
    }
    if (kinds.at(-1) === 'object') {
      if (text.charCodeAt(at) !== QUOTE) return keyFault(text, at);
      const end = stringEnd(text, at);
      if (typeof end === 'object') return end;
      const raw = text.slice(at + 1, end - 1);
      visitor.key(raw.includes('\\') ? String(JSON.parse(text.slice(at, end))) : raw, at);
      at = skipSpace(text, end);
      if (text.charCodeAt(at) !== 0x3a) return fault(text, at, 'a colon after the key');
      at = skipSpace(text, at + 1);
    }
  }
}

function skipSpace(text: string, from: number): number {
  let at = from;
  for (;;) {
    const code = text.charCodeAt(at);
    if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return at;
    at += 1;
  }
}

function scalarEnd(text: string, at: number): number | JsonFault {
  const code = text.charCodeAt(at);
  if (code === QUOTE) return stringEnd(text, at);
  if (code === 0x74 || code === 0x66 || code === 0x6e) {
    const word = wordAt(text, at);
    if (word === 'true' || word === 'false' || word === 'null') return at + word.length;
  }
  const end = numberEnd(text, at);
  if (end > at) {
    if (!/[\w.+]/u.test(text.charAt(end))) return end;
    return { ...fault(text, at, 'a number'), hint: 'Numbers are written 12, -0.5 or 1e-3: a point, no leading zeros, no units.' };
  }
  return valueFault(text, at);
}

const isDigit = (code: number): boolean => code >= 0x30 && code <= 0x39;

function digitsEnd(text: string, from: number): number {
  let at = from;
  while (isDigit(text.charCodeAt(at))) at += 1;
  return at;
}

// By hand and not by a regular expression: most of a cabin file is numbers.
function numberEnd(text: string, start: number): number {
  const first = text.charCodeAt(start) === 0x2d ? start + 1 : start;
  let at = text.charCodeAt(first) === 0x30 ? first + 1 : digitsEnd(text, first);
  if (at === first) return start;
  if (text.charCodeAt(at) === 0x2e) {
    const end = digitsEnd(text, at + 1);
    if (end === at + 1) return at;
    at = end;
  }
  if ((text.charCodeAt(at) | 0x20) === 0x65) {
    const sign = text.charCodeAt(at + 1);
    const digits = sign === 0x2b || sign === 0x2d ? at + 2 : at + 1;
    const end = digitsEnd(text, digits);
    if (end > digits) at = end;
  }
  return at;
}

function stringEnd(text: string, start: number): number | JsonFault {
  for (let at = start + 1; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) return at + 1;
    if (code === BACKSLASH) {
      const escape = text.charAt(at + 1);
      if (escape === 'u') {
        if (!/^[\dA-Fa-f]{4}$/u.test(text.slice(at + 2, at + 6))) return { ...fault(text, at, 'four hexadecimal digits after \\u') };
        at += 5;
      } else if (escape === '' || !'"\\/bfnrt'.includes(escape)) {
        return { ...fault(text, at, 'an escape of JSON'), hint: 'A backslash in a text is written \\\\.' };
      } else at += 1;
    } else if (code < 0x20) {
      const broken = code === 0x0a || code === 0x0d;
      return {
        ...fault(text, at, broken ? 'a closing quotation mark on the same line' : 'no control character in a text'),
        hint: broken ? 'Close the text with ", or write a line break inside it as \\n.' : 'Write it as an escape, for example \\t.',
      };
    }
  }
  return { offset: start, found: 'a text that is not closed', expected: 'a closing quotation mark', hint: 'The file may have been cut short.' };
}

function wordAt(text: string, at: number): string {
  wordPattern.lastIndex = at;
  return wordPattern.exec(text)?.[0] ?? '';
}

function fault(text: string, offset: number, expected: string): JsonFault {
  if (offset >= text.length) return { offset: text.length, found: 'the end of the file', expected, hint: 'The file may have been cut short.' };
  const name = wordAt(text, offset);
  const shown = name === '' ? text.slice(offset, offset + 1) : name.slice(0, 40);
  return { offset, found: JSON.stringify(shown), expected };
}

function valueFault(text: string, at: number): JsonFault {
  const base = fault(text, at, 'a value');
  const name = wordAt(text, at);
  const character = text.charAt(at);
  if (/^-?(?:nan|inf|infinity)$/iu.test(name) || /^[-+](?:nan|inf)/iu.test(text.slice(at, at + 4))) {
    return { ...base, hint: 'JSON has no NaN and no Infinity; leave out a value that is missing.' };
  }
  if (character === "'") return { ...base, hint: 'Texts stand in double quotation marks.' };
  if (character === '/' || character === '#') return { ...base, hint: 'JSON has no comments; put the remark into a "note".' };
  if (character === '+' || character === '.' || character === '-') return { ...base, hint: 'Numbers are written 12, -0.5 or 1e-3.' };
  if (character === ',') return { ...base, hint: 'Two commas follow each other, or a value is missing.' };
  if (name !== '') return { ...base, hint: 'Texts stand in double quotation marks; true, false and null are written small.' };
  return base;
}

function keyFault(text: string, at: number): JsonFault {
  const base = fault(text, at, 'a key in double quotation marks');
  const character = text.charAt(at);
  if (character === '/' || character === '#') return { ...base, hint: 'JSON has no comments; put the remark into a "note".' };
  return base.hint === undefined ? { ...base, hint: 'Keys stand in double quotation marks.' } : base;
}

function separatorFault(text: string, at: number, kind: 'object' | 'array'): JsonFault {
  const base = fault(text, at, kind === 'object' ? 'a comma or }' : 'a comma or ]');
  const character = text.charAt(at);
  if (/["{[\d-]/u.test(character)) return { ...base, hint: 'A comma is missing before this.' };
  if (character === '/' || character === '#') return { ...base, hint: 'JSON has no comments; put the remark into a "note".' };
  if (character === '}' || character === ']') return { ...base, hint: 'The brackets do not pair.' };
  return base;
}
