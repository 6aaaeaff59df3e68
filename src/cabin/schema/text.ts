import { describeValue } from './describe-value.ts';
import type { Faults } from './faults.ts';
import { hiddenCharacterText, hiddenInName, hiddenInText } from './hidden-character.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';

/** Longest text of a document, in UTF-16 code units. */
export const maxTextLength = 10_000;
/** Longest id or name. */
export const maxNameLength = 200;

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
    faults.add('control-character', {
      expected: 'text that can be seen', found: `${hiddenCharacterText(match[0])} at place ${match.index + 1}`, hint: 'Take the character out.',
    });
    return undefined;
  }
  return value;
}

/** A remark: any length up to `maxTextLength`, line breaks and tabs allowed, may be empty. */
export const remark = (): Schema<string> =>
  plain('a text', (value, faults) => readText(value, faults, maxTextLength, hiddenInText, 'a text'));

/** A name or id: 1 to `maxNameLength` characters on one line, no blank at either end. */
export const name = (expected = 'a name'): Schema<string> => plain(expected, (value, faults) => {
  const text = readText(value, faults, maxNameLength, hiddenInName, expected);
  if (text === undefined) return undefined;
  if (text.trim() === '') {
    faults.add('empty-text', { expected, found: describeValue(text) });
    return undefined;
  }
  if (text.trim() !== text) {
    faults.add('blank-at-end', {
      expected: 'no blank before or after', found: describeValue(text), hint: `Write ${describeValue(text.trim())}.`,
    });
    return text.trim();
  }
  return text;
});

/** A text of a fixed form. */
export const patternText = (pattern: RegExp, code: string, expected: string): Schema<string> => plain(expected, (value, faults) => {
  const text = readText(value, faults, maxNameLength, hiddenInName, expected);
  if (text === undefined) return undefined;
  if (!pattern.test(text)) {
    faults.add(code, { expected, found: describeValue(text) });
    return undefined;
  }
  return text;
});
