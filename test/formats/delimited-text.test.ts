import { csvFormatRows, tsvFormatRows } from 'd3';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDelimited } from '../../src/formats/delimited-text.ts';
import { parseNumber } from '../../src/formats/table-cells.ts';

const cellsOf = (text: string): string[][] | undefined => {
  const table = readDelimited(text).value;
  return table && [table.header, ...table.rows].map((row) => [...row.cells]);
};

describe('readDelimited', () => {
  it('reads the examples of RFC 4180, section 2', () => {
    expect(cellsOf('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual([['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']]);
    expect(cellsOf('"aaa","b \r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([['aaa', 'b \r\nbb', 'ccc'], ['zzz', 'yyy', 'xxx']]);
    expect(cellsOf('"aaa","b""bb","ccc"\r\nzzz,yyy,xxx')).toEqual([['aaa', 'b"bb', 'ccc'], ['zzz', 'yyy', 'xxx']]);
  });

  it('reads back what d3-dsv writes', () => {
    const cell = fc.stringMatching(/^[a-z0-9",;. \n-]{0,8}$/u).map((text) => text.trim());
    const rows = fc.integer({ min: 2, max: 4 }).chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 2, maxLength: 6 }));
    // Names without separators in them, so that the separator is plain from the first line.
    const named = rows.map(([first = [], ...rest]) => [first.map((_, index) => `c${index}`), ...rest]);
    fc.assert(fc.property(named, (table) => {
      const written = table.filter((row) => row.some((text) => text !== ''));
      fc.pre(written.length > 1);
      expect(cellsOf(csvFormatRows(table))).toEqual(written);
      expect(cellsOf(`\ufeff${tsvFormatRows(table).replaceAll('\n', '\r\n')}\r\n`)?.map((row) => row.map((text) => text.replaceAll('\r\n', '\n')))).toEqual(written);
    }));
  });

  it('tells the separator and the decimal sign by the file alone', () => {
    expect(readDelimited('id;a,b\nx;0,5').value).toMatchObject({ separator: ';', decimal: ',' });
    expect(readDelimited('id\ta\nx\t0.5').value).toMatchObject({ separator: '\t', decimal: '.' });
    expect(readDelimited('id,a\nx,0.5').value).toMatchObject({ separator: ',', decimal: '.' });
    expect(readDelimited('"a;b;c",d\nx,1').value).toMatchObject({ separator: ',' });
  });

  it('keeps declarations and passes over other comments', () => {
    const table = readDelimited('# made up\n#Scale : percent \n\nid,a\n# in between\nx,1\n').value;
    expect([...table?.declarations ?? []]).toEqual([['scale', { value: 'percent', offset: 10 }]]);
    expect(table?.rows).toHaveLength(1);
  });

  it('knows the place of every cell, after quoted line breaks too', () => {
    const table = readDelimited('id,note,a\r\nx,"one\r\ntwo",5\r\ny,,6\r\n').value;
    const places = table?.rows.map((row) => table.position(row.offsets[2] ?? 0));
    expect(places).toEqual([{ line: 3, column: 6 }, { line: 4, column: 4 }]);
  });

  it('ends a large file without a closing quote at once', () => {
    const { value, issues } = readDelimited(`id,a\n"${'x,'.repeat(500_000)}`, 'big.csv');
    expect(value).toBeUndefined();
    expect(issues).toEqual([expect.objectContaining({ code: 'unclosed-quote', file: 'big.csv', line: 2, column: 1 })]);
  });

  it('lists a thousand faults and counts the rest', () => {
    const { issues } = readDelimited(`id,a\n${'x\n'.repeat(3000)}`);
    expect(issues).toHaveLength(1001);
    expect(issues.at(-1)).toMatchObject({ code: 'more-issues', found: '2000 more issues' });
  });

  it('never throws and places every issue inside the text', () => {
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom('a', '1', ',', ';', '\t', '"', '\n', '\r', '#', ':', ' ', '\0', '\ufeff', '\ud800'), maxLength: 60 }), (text) => {
      for (const issue of readDelimited(text).issues) {
        expect(issue.line).toBeGreaterThanOrEqual(1);
        expect(issue.line).toBeLessThanOrEqual(text.split(/\r\n|\n|\r/u).length);
      }
    }), { numRuns: 2000 });
  });
});

describe('parseNumber', () => {
  it.each([['0.5', '.', 0.5], ['0,5', ',', 0.5], ['-1e-3', '.', -0.001], ['.5', '.', 0.5], ['5.', '.', 5], ['+7', '.', 7], ['7', ',', 7], ['1e999', '.', Infinity]] as const)('%s with %s', (text, decimal, value) => {
    expect(parseNumber(text, decimal)).toBe(value);
  });

  it.each([['0,5', '.'], ['0.5', ','], ['1.234,5', ','], ['1,234,5', ','], ['NaN', '.'], ['Infinity', '.'], ['0x10', '.'], ['1 000', '.'], ['5%', '.'], ['', '.'], ['--1', '.'], ['1e', '.']] as const)('refuses %s with %s', (text, decimal) => {
    expect(parseNumber(text, decimal)).toBeUndefined();
  });

  it('reads every double that is written in full', () => {
    fc.assert(fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(parseNumber(String(value), '.')).toBe(value === 0 ? Number(String(value)) : value);
    }));
  });
});
