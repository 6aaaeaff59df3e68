import { describe, expect, it } from 'vitest';
import { memberPath, pathSegments, pathText } from '../../src/cabin/json-path.ts';
import { locatePaths, maxJsonDepth, maxJsonLength, parseLocatedJson } from '../../src/cabin/located-json.ts';
import { textPositions } from '../../src/cabin/text-position.ts';

const firstOf = (text: string) => parseLocatedJson(text).issues[0];

describe('parseLocatedJson', () => {
  it('gives the value of a well-formed text, a byte-order mark passed over', () => {
    expect(parseLocatedJson('\ufeff{"a": [1, -0.5e-3, "\\u00e4\\n", true, null]}')).toMatchObject({ value: { a: [1, -0.0005, 'ä\n', true, null] }, issues: [] });
  });

  // Lines and columns counted by hand.
  it.each([
    ['{"a": 1,}', 1, 8, 'Take out the comma before the closing bracket.'],
    ['{\n  "a": [1 2]\n}', 2, 11, 'A comma is missing before this.'],
    ['{\r\n"a": NaN}', 2, 6, 'JSON has no NaN and no Infinity; leave out a value that is missing.'],
    ['{"a": -Infinity}', 1, 7, 'JSON has no NaN and no Infinity; leave out a value that is missing.'],
    ["{'a': 1}", 1, 2, 'Keys stand in double quotation marks.'],
    ['{a: 1}', 1, 2, 'Keys stand in double quotation marks.'],
    ['{"a": 0,5}', 1, 9, 'Keys stand in double quotation marks.'],
    ['{"a": 01}', 1, 7, 'Numbers are written 12, -0.5 or 1e-3: a point, no leading zeros, no units.'],
    ['{"a": .5}', 1, 7, 'Numbers are written 12, -0.5 or 1e-3.'],
    ['{"a": "x\ny"}', 1, 9, 'Close the text with ", or write a line break inside it as \\n.'],
    ['{"a": "x}', 1, 7, 'The file may have been cut short.'],
    ['{"a": 1', 1, 8, 'The file may have been cut short.'],
    ['[1, 2}', 1, 6, 'The brackets do not pair.'],
    ['{"a": True}', 1, 7, 'Texts stand in double quotation marks; true, false and null are written small.'],
    ['{"a": 1} // end', 1, 10, 'Take out what follows the closing bracket.'],
    ['{"a": "\\x"}', 1, 8, 'A backslash in a text is written \\\\.'],
  ])('%j fails at line %i, column %i', (text, line, column, hint) => {
    expect(() => JSON.parse(text) as unknown).toThrow(SyntaxError);
    expect(firstOf(text)).toMatchObject({ code: 'json-syntax', line, column, hint });
  });

  it('tells every repeated key, escaped ones and those of wide objects too', () => {
    const wide = Array.from({ length: 40 }, (_, index) => `"k${index}": 0`).join(', ');
    const { value, issues } = parseLocatedJson(`{"a": {"b": 1, "\\u0062": 2}, "c": [{"d": 1, "d": 2}], ${wide}, "k30": 1}`);
    expect(issues.map(({ code, path }) => `${code} ${path ?? ''}`)).toEqual(['duplicate-key a.b', 'duplicate-key c[0].d', 'duplicate-key k30']);
    expect(value).toBeDefined();
  });

  it('refuses __proto__ however it is written and leaves no prototype changed', () => {
    expect(firstOf('{"x": {"__proto__": {"y": 1}}}')).toMatchObject({ code: 'forbidden-key', path: 'x.__proto__', column: 8 });
    expect(firstOf('{"\\u005f\\u005fproto__": 1}')).toMatchObject({ code: 'forbidden-key' });
  });

  it('reads the deepest nesting allowed and refuses one more, a million brackets as fast', () => {
    const nested = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);
    expect(parseLocatedJson(nested(maxJsonDepth)).issues).toEqual([]);
    expect(firstOf(nested(maxJsonDepth + 1))).toMatchObject({ code: 'too-deep' });
    expect(firstOf('['.repeat(1_000_000))).toMatchObject({ code: 'too-deep', line: 1, column: maxJsonDepth + 1 });
  });

  it('refuses a text that is too long before it looks inside', () => {
    expect(parseLocatedJson(' '.repeat(maxJsonLength + 1), 'big.json')).toMatchObject({ value: undefined, issues: [{ code: 'file-too-large', file: 'big.json' }] });
  });

  it('places an issue without a value at the innermost value there is', () => {
    const text = '{\n  "a": [\n    {"b": 1}\n  ]\n}';
    const places = locatePaths(text, ['a[0].b', 'a[0].c', 'a[7].b', 'z', '']);
    const at = textPositions(text);
    expect([...places].map(([path, offset]) => [path, at(offset)])).toEqual(expect.arrayContaining([
      ['a[0].b', { line: 3, column: 11 }], ['a[0].c', { line: 3, column: 5 }], ['a[7].b', { line: 2, column: 8 }], ['z', { line: 1, column: 1 }], ['', { line: 1, column: 1 }],
    ]));
  });
});

describe('paths', () => {
  it.each([
    [[], ''], [['parts', 3, 'name'], 'parts[3].name'], [['a', 'light exposed'], 'a["light exposed"]'], [['a', 'x-1', 0], 'a["x-1"][0]'], [[''], '[""]'], [['a"]b\\', 'c'], '["a\\"]b\\\\"].c'],
  ])('%j is %s and back', (segments, text) => {
    expect(pathText(segments)).toBe(text);
    expect(pathSegments(text)).toEqual(segments);
  });

  it('appends a member', () => {
    expect([memberPath('a', 'b'), memberPath('a', 'b c'), memberPath('', 'b')]).toEqual(['a.b', 'a["b c"]', 'b']);
  });
});
