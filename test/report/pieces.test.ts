import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { csvCell } from '../../src/formats/csv-cell.ts';
import { verdictBand } from '../../src/report/figures/verdict-band.ts';
import { printTheme } from '../../src/report/figures/theme.ts';
import { escapeText } from '../../src/report/markup.ts';
import { coverageText, fixed, limitUseText, percent, probability, signed } from '../../src/report/number-text.ts';
import { serialiseScene } from '../../src/report/scene.ts';
import { sourceSansLatin } from '../../src/report/styles/source-sans.ts';
import { cssString } from '../../src/report/styles/style-sheet.ts';

test('numbers are rounded with a true minus, never minus zero, and an en dash for none', () => {
  expect([fixed(-1.234, 2), fixed(-0.001, 2), fixed(0.5, 0), fixed(undefined, 2), fixed(Number.NaN, 1)]).toEqual(['\u22121.23', '0.00', '1', '–', '–']);
  expect([signed(0.12, 1), signed(0.001, 2), signed(-3, 1)]).toEqual(['+0.1', '0.00', '\u22123.0']);
  expect([percent(0.456), limitUseText(12), limitUseText(1.04)]).toEqual(['46\u00a0%', '>\u00a0999\u00a0%', '104\u00a0%']);
});

test('only a coverage of all is printed as 100 %', () => {
  expect([1, 0.998, 0.9].map(coverageText)).toEqual(['100\u00a0%', '>\u00a099\u00a0%', '90\u00a0%']);
});

test('a probability never claims certainty', () => {
  expect([0, 0.004, 0.05, 0.5, 0.996, 1].map(probability)).toEqual(['<\u00a01\u00a0%', '<\u00a01\u00a0%', '5\u00a0%', '50\u00a0%', '>\u00a099\u00a0%', '>\u00a099\u00a0%']);
});

test('the typeface is the one of the package, byte for byte', () => {
  const file = createRequire(import.meta.url).resolve('@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2');
  expect(Buffer.from(sourceSansLatin, 'base64').equals(readFileSync(file))).toBe(true);
});

test('a CSS string cannot end its rule, its string or its element', () => {
  expect(cssString('a"}</style>\n\\')).toBe('"a\\22 \\7d \\3c \\2f style\\3e  \\5c "');
});

test('text of a page is escaped and shows what would reorder it', () => {
  expect(escapeText('<a href="x">\'&\u202e\u0007\ud800')).toBe('&lt;a href=&quot;x&quot;&gt;&#39;&amp;\\u{202e}\\u{7}\ufffd');
});

// RFC 4180 for quoting; the leading characters are those a spreadsheet takes for a formula (OWASP, CSV injection).
test.each([
  ['=1+1', "'=1+1"], ['+1', "'+1"], ['-1', "'-1"], ['@x', "'@x"], ['\t=x', '"\'\t=x"'], [' =x', "' =x"], ['a,b', '"a,b"'], ['a"b', '"a""b"'], ['a\nb', '"a\nb"'], ['plain', 'plain'], [undefined, ''],
])('cell %j is written %j', (value, written) => {
  expect(csvCell(value)).toBe(written);
});

test('numbers of a CSV keep their sign and full precision', () => {
  expect([csvCell(-0.1), csvCell(1 / 3), csvCell(Number.NaN), csvCell(true)]).toEqual(['-0.1', '0.3333333333333333', '', 'true']);
});

test('the band gives every verdict its share and leaves out those that do not occur', () => {
  const scene = verdictBand([
    { verdict: 'clashes', count: 0, label: 'clash' }, { verdict: 'open', count: 25, label: 'are open' }, { verdict: 'holds', count: 75, label: 'joints hold' },
  ], { width: 680, height: 104 }, printTheme);
  const xs = [...serialiseScene(scene).matchAll(/<path d="M(\d+(?:\.\d+)?) 74L(\d+(?:\.\d+)?) 74"/g)].map((match) => Number(match[2]) - Number(match[1]));
  expect(xs).toHaveLength(2);
  // 680 px less one gap of 14 px, shared 1 : 3.
  expect(xs[0]).toBeCloseTo(666 / 4, 1);
  expect(xs[1]).toBeCloseTo((666 * 3) / 4, 1);
});
