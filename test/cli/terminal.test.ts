import { expect, test } from 'vitest';
import { columnsOf, printable, shortened } from '../../src/cli/printable.ts';
import { styled, wantsColour } from '../../src/cli/style.ts';
import { textTable, wrapped } from '../../src/cli/text-table.ts';

const plain = { colour: false, columns: 60 };

test('columns are aligned, numbers to the right, no blanks at line ends', () => {
  const text = textTable([{ title: 'part' }, { title: 'use', align: 'right' }, { title: 'light' }], [
    { cells: ['Dash', '7 %', 'A'] }, { cells: ['Door left', '104 %', ''] },
  ], plain);
  expect(text).toBe('part         use  light\nDash         7 %  A\nDoor left  104 %\n');
});

test('wide characters count two columns and combining marks none', () => {
  expect(columnsOf('座席')).toBe(4);
  expect(columnsOf('e\u0301')).toBe(1);
  expect(shortened('abcdef', 4)).toBe('abc…');
  expect(shortened('座席座席', 5)).toBe('座席…');
});

test('escape sequences, line ends and marks that reorder text are shown, never obeyed', () => {
  expect(printable('a\u001b[31mb\nc\u202ed')).toBe('a\\u{1b}[31mb\\u{a}c\\u{202e}d');
  expect(textTable([{ title: 'x' }], [{ cells: ['a\u001b]0;title\u0007'] }], plain)).not.toContain('\u001b');
});

test('sentences wrap between words and keep a word that is too long', () => {
  expect(wrapped('one two three', 8, '  ')).toEqual(['  one', '  two', '  three']);
  expect(wrapped('abcdefghijkl mn', 6)).toEqual(['abcdefghijkl', 'mn']);
});

// no-color.org: colour is off when NO_COLOR is present and not an empty string, whatever its value.
test('NO_COLOR, FORCE_COLOR and the terminal decide on colour', () => {
  expect(wantsColour({}, true)).toBe(true);
  expect(wantsColour({}, false)).toBe(false);
  expect(wantsColour({ NO_COLOR: '1' }, true)).toBe(false);
  expect(wantsColour({ NO_COLOR: '1', FORCE_COLOR: '1' }, true)).toBe(false);
  expect(wantsColour({ NO_COLOR: '' }, true)).toBe(true);
  expect(wantsColour({ FORCE_COLOR: '1' }, false)).toBe(true);
  expect(wantsColour({ TERM: 'dumb' }, true)).toBe(false);
  expect(styled('x', 'alarm', plain)).toBe('x');
  expect(styled('x', 'alarm', { colour: true, columns: 60 })).toBe('\u001b[1;31mx\u001b[22;39m');
});
