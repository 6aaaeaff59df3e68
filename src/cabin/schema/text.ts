import { describeValue } from './describe-value.ts';
import type { Faults } from './faults.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';

/** Longest text of a document, in UTF-16 code units. */
export const maxTextLength = 10_000;
/** Longest id or name. */
export const maxNameLength = 200;

// Control characters, the marks that turn the direction of writing, and halves of surrogate pairs: none can be seen, all can mislead.
const hidden = /[\p{Cc}\p{Cs}\u2028\u2029\u202a-\u202e\u2066-\u2069]/u;
const hiddenButLines = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\p{Cs}\u202a-\u202e\u2066-\u2069]/u;

function readText(value: unknown, faults: Faults, longest: number, pattern: RegExp, expected: string): string | undefined {
  if (typeof value !== 'string') {
    faults.add('wrong-type', { expected, found: describeValue(value) });
    return undefined;
  }
  if (value.length > longest) {
    faults.add('text-too-long', { expected: `at most ${longest} characters`, found: `${value.length} characters` });
    return undefined;
  }
  const match = pattern.exec(value);
  if (match !== null) {
    const code = (match[0].codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
    faults.add('control-character', { expected: 'text that can be seen', found: `the character U+${code} at place ${match.index + 1}`, hint: 'Take the character out.' });
    return undefined;
  }
  return value;
}

/** A remark: any length up to `maxTextLength`, line breaks and tabs allowed, may be empty. */
export const remark = (): Schema<string> => plain('a text', (value, faults) => readText(value, faults, maxTextLength, hiddenButLines, 'a text'));

/** A name or id: 1 to `maxNameLength` characters on one line, no blank at either end. */
export const name = (expected = 'a name'): Schema<string> => plain(expected, (value, faults) => {
  const text = readText(value, faults, maxNameLength, hidden, expected);
  if (text === undefined) return undefined;
  if (text.trim() === '') {
    faults.add('empty-text', { expected, found: describeValue(text) });
    return undefined;
  }
  if (text.trim() !== text) {
    faults.add('blank-at-end', { expected: 'no blank before or after', found: describeValue(text), hint: `Write ${describeValue(text.trim())}.` });
    return text.trim();
  }
  return text;
});

/** A text of a fixed form. */
export const patternText = (pattern: RegExp, code: string, expected: string): Schema<string> => plain(expected, (value, faults) => {
  const text = readText(value, faults, maxNameLength, hidden, expected);
  if (text === undefined) return undefined;
  if (!pattern.test(text)) {
    faults.add(code, { expected, found: describeValue(text) });
    return undefined;
  }
  return text;
});
