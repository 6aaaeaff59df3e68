import type { ExpectedIssue } from '../cabin/faulty/cases.ts';

/** The faulty tables, with the place of each fault counted by hand. */
export interface TableCase {
  readonly name: string;
  readonly verb: 'colour' | 'difference' | 'metamerism' | 'gloss';
  readonly text: string;
  readonly issues: readonly ExpectedIssue[];
}

const nm = Array.from({ length: 16 }, (_, index) => 400 + 20 * index);
const header = `id,${nm.join(',')}`;
const row = (id: string, value = '0.1', at?: number, other?: string): string => [id, ...nm.map((_, index) => (index === at ? other ?? '' : value))].join(',');
const lines = (...all: string[]): string => `${all.join('\n')}\n`;
const semicolon = (text: string): string => text.replaceAll(',', ';');

const spectra = (name: string, text: string, ...issues: ExpectedIssue[]): TableCase => ({ name, verb: 'colour', text, issues });
const difference = (name: string, text: string, ...issues: ExpectedIssue[]): TableCase => ({ name, verb: 'difference', text, issues });
const gloss = (name: string, text: string, ...issues: ExpectedIssue[]): TableCase => ({ name, verb: 'gloss', text, issues });
const pairs = 'id,L1,a1,b1,L2,a2,b2';
const covariance = ',c1LL,c1La,c1Lb,c1aa,c1ab,c1bb';

export const tableCases: readonly TableCase[] = [
  spectra('empty', '\n\n', { code: 'empty-file', line: 1, column: 1 }),
  spectra('comments-only', '# scale: percent\n', { code: 'empty-file', line: 1, column: 1 }),
  spectra('header-only', lines(header), { code: 'no-rows', line: 1 }),
  spectra('per-cent-undeclared', lines(header, row('a'), row('b', '41.5')), { code: 'scale-undeclared', line: 3, column: 3 }),
  spectra('per-cent-over-range', lines('# scale: percent', header, row('a', '41.5', 2, '160')), { code: 'out-of-range', line: 3, column: 13 }),
  spectra('scale-unknown', lines('# scale: permille', header, row('a')), { code: 'unknown-scale', line: 1, column: 1 }),
  spectra('negative', lines(header, row('a', '0.1', 1, '-0.01')), { code: 'negative', line: 2, column: 7 }),
  spectra('nan', lines(header, row('a', '0.1', 0, 'NaN')), { code: 'not-a-number', line: 2, column: 3 }),
  spectra('overflow', lines(header, row('a', '0.1', 0, '1e999')), { code: 'not-finite', line: 2, column: 3 }),
  spectra('text-for-number', lines(header, row('a', '0.1', 3, 'dark')), { code: 'not-a-number', line: 2, column: 15 }),
  spectra('empty-cell', lines(header, row('a', '0.1', 2, '')), { code: 'missing-value', line: 2, column: 11 }),
  spectra('short-row', lines(header, row('a'), 'b,0.1,0.1'), { code: 'missing-cells', line: 3, column: 10 }),
  spectra('decimal-comma-in-comma-file', lines(header, row('a', '0,1')), { code: 'extra-cells', line: 2 }),
  spectra('decimal-comma-quoted', lines(header, row('a', '0.1', 0, '"0,1"')), { code: 'not-a-number', line: 2, column: 3 }),
  spectra('mixed-decimals', semicolon(lines(header, row('a', '0.1'))) + semicolon(row('b', '0.1')).replaceAll('0.1', '0,1').concat('\n'), { code: 'mixed-decimals', line: 3, column: 3 }),
  spectra('id-twice', lines(header, row('a'), row('b'), row('a')), { code: 'duplicate-id', line: 4, column: 1 }),
  spectra('id-empty', lines(header, row('')), { code: 'missing-value', line: 2, column: 1 }),
  spectra('id-column-missing', lines(header.replace('id', 'name'), row('a')), { code: 'missing-column', line: 1, column: 1 }),
  spectra('wavelengths-none', lines('id,red,green,blue', 'a,0.1,0.2,0.3'), { code: 'wavelengths-missing', line: 1 }),
  spectra('wavelength-left-out', lines(`id,${[...nm.slice(0, 5), ...nm.slice(6)].join(',')}`, row('a').slice(0, -4)), { code: 'wavelengths-irregular', line: 1, column: 24 }),
  spectra('wavelengths-falling', lines(`id,${nm.toReversed().join(',')}`, row('a')), { code: 'wavelengths-unsorted', line: 1, column: 8 }),
  spectra('wavelength-twice', lines(header.replace('440', '420'), row('a')), { code: 'duplicate-wavelength', line: 1, column: 12 }, { code: 'wavelengths-irregular', line: 1, column: 16 }),
  spectra('column-twice', lines(header.replace('id', 'id,grain,grain'), row('a,b,c')), { code: 'duplicate-column', line: 1, column: 10 }),
  spectra('wavelengths-infrared', lines(`id,${nm.map((value) => value + 500).join(',')}`, row('a')), { code: 'wavelength-out-of-range', line: 1 }),
  spectra('wavelengths-half', lines(`id,${nm.slice(0, 8).join(',')}`, row('a').slice(0, 2 + 8 * 4 - 1)), { code: 'wavelengths-missing', line: 1 }),
  spectra('wavelengths-step-wide', lines('id,380,430,480,530,580,630,680,730', 'a,0.1,0.1,0.1,0.1,0.1,0.1,0.1,0.1'), { code: 'wavelength-step', line: 1, column: 4 }),
  spectra('column-without-name', lines(`${header},`, `${row('a')},`), { code: 'empty-column-name', line: 1, column: 68 }),
  spectra('quote-open', lines(header, row('"a')), { code: 'unclosed-quote', line: 2, column: 1 }),
  spectra('quote-then-text', lines(header, row('"a"b')), { code: 'text-after-quote', line: 2, column: 4 }),
  spectra('cell-too-long', lines(header, row('x'.repeat(10_001))), { code: 'cell-too-long', line: 2, column: 1 }),
  spectra('binary', lines(header, row('a\0b')), { code: 'control-character', line: 2, column: 2 }),
  spectra('many-faults', lines(header, row('a', '0.1', 0, '-1'), row('a', '0.1', 1, 'x'), row('c', '0.1', 2, '7')),
    { code: 'negative', line: 2, column: 3 }, { code: 'duplicate-id', line: 3, column: 1 }, { code: 'not-a-number', line: 3, column: 7 }, { code: 'scale-undeclared', line: 4, column: 11 }),
  { name: 'metamerism-role-missing', verb: 'metamerism', text: lines(header.replace('id', 'pair'), row('p1')), issues: [{ code: 'missing-column', line: 1, column: 1 }] },
  { name: 'metamerism-pair-twice', verb: 'metamerism', text: lines(header.replace('id', 'pair,role'), row('p1,standard'), row('p1,standard')), issues: [{ code: 'duplicate-id', line: 3, column: 1 }] },
  difference('pair-column-missing', lines('id,L1,a1,b1,L2,a2', 'x,50,0,0,51,0'), { code: 'missing-column', line: 1, column: 1 }),
  difference('pair-lightness-negative', lines(pairs, 'x,-1,0,0,51,0,0'), { code: 'negative', line: 2, column: 3 }),
  difference('pair-out-of-range', lines(pairs, 'x,50,0,0,51,0,900'), { code: 'out-of-range', line: 2, column: 15 }),
  difference('pair-text', lines(pairs, 'x,50,0,0,51,zero,0'), { code: 'not-a-number', line: 2, column: 13 }),
  difference('pair-id-twice', lines(pairs, 'x,50,0,0,51,0,0', 'x,50,0,0,51,0,0'), { code: 'duplicate-id', line: 3, column: 1 }),
  difference('covariance-half', lines(`${pairs},c1LL,c1aa,c1bb`, 'x,50,0,0,51,0,0,1,1,1'), { code: 'missing-column', line: 1, column: 1 }),
  difference('covariance-half-filled', lines(pairs + covariance, 'x,50,0,0,51,0,0,1,0,,1,0,1'), { code: 'missing-value', line: 2, column: 21 }),
  difference('covariance-negative', lines(pairs + covariance, 'x,50,0,0,51,0,0,1,2,0,1,0,1'), { code: 'covariance-not-positive', line: 2, column: 17 }),
  difference('limit-zero', lines(`${pairs},limit`, 'x,50,0,0,51,0,0,0'), { code: 'out-of-range', line: 2, column: 17 }),
  gloss('angle-45', lines('specimen,angle,gloss', 'a,45,12'), { code: 'unknown-gloss-angle', line: 2, column: 3 }),
  gloss('gloss-negative', lines('specimen,angle,gloss', 'a,60,-0.1'), { code: 'negative', line: 2, column: 6 }),
  gloss('gloss-too-high', lines('specimen,angle,gloss', 'a,60,2500'), { code: 'out-of-range', line: 2, column: 6 }),
  gloss('angle-missing', lines('specimen,gloss', 'a,12'), { code: 'missing-column', line: 1, column: 1 }),
  gloss('specimen-empty', lines('specimen,angle,gloss', ',60,12'), { code: 'missing-value', line: 2, column: 1 }),
  gloss('haze-text', lines('specimen,angle,gloss,haze', 'a,60,12,some'), { code: 'not-a-number', line: 2, column: 9 }),
];
