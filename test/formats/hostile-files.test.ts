import { performance } from 'node:perf_hooks';
import { deflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { largestFile, readBytes, readers } from '../../src/formats/index.ts';

// Every file of this list must be refused with an issue, never with an exception, in bounded time. The codes are those that
// the kind of attack calls for; places are counted by hand.

const encoder = new TextEncoder();
const bytes = (text: string): Uint8Array => encoder.encode(text);
const utf16 = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'utf16le'));
const wavelengths = Array.from({ length: 16 }, (_, index) => 400 + 20 * index);
const cxf = (inside: string): string => `<CxF xmlns="http://colorexchangeformat.com/CxF3-core">${inside}</CxF>`;
const spdx = (inside: string): string => `<IESTM2714 xmlns="http://www.ies.org/iestm2714"><Header><Description>x</Description></Header><SpectralDistribution><SpectralQuantity>flux</SpectralQuantity>${inside}</SpectralDistribution></IESTM2714>`;
const exchange = (fields: string, sets: string, counts: readonly [number, number]): string =>
  `ISO28178\nNUMBER_OF_FIELDS ${counts[0]}\nBEGIN_DATA_FORMAT\n${fields}\nEND_DATA_FORMAT\nNUMBER_OF_SETS ${counts[1]}\nBEGIN_DATA\n${sets}\nEND_DATA\n`;

/** Entities that expand tenfold in ten steps: 10^10 characters, were they expanded. */
const laughs = `<?xml version="1.0"?><!DOCTYPE CxF [<!ENTITY a "ha">${Array.from({ length: 10 }, (_, index) => `<!ENTITY ${'bcdefghijk'[index]} "${`&${'abcdefghij'[index]};`.repeat(10)}">`).join('')}]>${cxf('&k;')}`;

interface Attack {
  readonly name: string;
  readonly file: () => Uint8Array;
  readonly code: string;
  readonly line?: number;
  readonly column?: number;
}

const attacks: readonly Attack[] = [
  { name: 'entities that multiply', file: () => bytes(laughs), code: 'xml-declarations', line: 1, column: 22 },
  { name: 'an external entity', file: () => bytes(`<!DOCTYPE CxF [<!ENTITY x SYSTEM "file:///etc/hostname">]>\n${cxf('&x;')}`), code: 'xml-declarations', line: 1, column: 1 },
  { name: 'a parameter entity from a network', file: () => bytes(`<!DOCTYPE CxF [<!ENTITY % x SYSTEM "http://192.0.2.1/x.dtd"> %x;]>\n${cxf('')}`), code: 'xml-declarations' },
  { name: 'an external document type', file: () => bytes(`<!DOCTYPE CxF SYSTEM "http://192.0.2.1/x.dtd">${cxf('')}`), code: 'xml-declarations' },
  { name: 'a document type behind the root tag', file: () => bytes(cxf('<!DOCTYPE a>')), code: 'xml-declarations' },
  { name: 'an entity nobody declared', file: () => bytes(cxf('<Resources>&nbsp;</Resources>')), code: 'xml-entity', line: 1, column: 66 },
  { name: 'a character reference to NUL', file: () => bytes(cxf('<Resources>&#0;</Resources>')), code: 'xml-entity' },
  { name: 'elements in a million levels', file: () => bytes(cxf('<a>'.repeat(1_000_000))), code: 'too-deep' },
  { name: 'a million attributes', file: () => bytes(cxf(`<a ${Array.from({ length: 1_000_000 }, (_, index) => `a${index}="1"`).join(' ')}/>`)), code: 'too-many' },
  { name: 'three million elements', file: () => bytes(cxf('<a/>'.repeat(3_000_000))), code: 'too-many' },
  { name: 'a namespace that is another format\'s', file: () => bytes('<CxF xmlns="urn:other"/>'), code: 'unknown-format' },
  { name: 'XML cut in a tag', file: () => bytes(cxf('<Resources><ObjectCollection><Object Id="a').slice(0, -6)), code: 'xml-syntax' },
  { name: 'XML cut between tags', file: () => bytes(cxf('<Resources>').replace('</CxF>', '')), code: 'xml-syntax' },
  { name: 'tags that cross', file: () => bytes(cxf('<a><b></a></b>')), code: 'xml-syntax' },
  { name: 'an attribute twice', file: () => bytes(cxf('<a b="1" b="2"/>')), code: 'xml-syntax' },
  { name: 'XML with a NUL', file: () => bytes(cxf('a\0b')), code: 'control-character', line: 1, column: 56 },
  { name: 'a spectrum of a million values', file: () => bytes(cxf(`<Resources><ObjectCollection><Object Id="a"><ColorValues><ReflectanceSpectrum StartWL="400" ColorSpecification="s">${'0.1 '.repeat(1_000_000)}</ReflectanceSpectrum></ColorValues></Object></ObjectCollection><ColorSpecificationCollection><ColorSpecification Id="s"/></ColorSpecificationCollection></Resources>`)), code: 'too-many' },
  { name: 'a light of a million wavelengths', file: () => bytes(spdx(Array.from({ length: 1_000_000 }, (_, index) => `<SpectralData wavelength="${index}">1</SpectralData>`).join(''))), code: 'too-many' },
  { name: 'a light to the end of the numbers', file: () => bytes(spdx('<SpectralData wavelength="400">1</SpectralData><SpectralData wavelength="401">1</SpectralData><SpectralData wavelength="1e300">1</SpectralData>')), code: 'too-many' },
  { name: 'a light without wavelengths', file: () => bytes(spdx('')), code: 'wavelengths-missing' },
  { name: 'a line of 100 MB', file: () => new Uint8Array(100 * 1024 * 1024).fill(0x61), code: 'file-too-large' },
  { name: 'a cell of 60 MB', file: () => bytes(`specimen,${wavelengths.join(',')}\n${'x'.repeat(60 * 1024 * 1024)}`), code: 'cell-too-long', line: 2, column: 1 },
  { name: 'a table of a million columns', file: () => bytes(`specimen,${Array.from({ length: 1_000_000 }, (_, index) => `c${index}`).join(',')}\na\n`), code: 'too-many-columns', line: 1 },
  { name: 'a table of a million rows', file: () => bytes(`specimen,gloss 60\n${'a,1\n'.repeat(1_000_000)}`), code: 'too-many-rows', line: 200_002 },
  { name: 'a table cut in a quotation', file: () => bytes('specimen,gloss 60\n"a,1\n'), code: 'unclosed-quote', line: 2, column: 1 },
  { name: 'a table cut in a row', file: () => bytes(`specimen,${wavelengths.join(',')}\na,0.1,0.1`), code: 'missing-cells', line: 2, column: 10 },
  { name: 'a table with a NUL', file: () => bytes('specimen,gloss 60\na\0,1\n'), code: 'control-character', line: 2, column: 2 },
  { name: 'UTF-16 without a byte-order mark', file: () => utf16('specimen,gloss 60\na,1\n'), code: 'control-character', line: 1, column: 2 },
  { name: 'UTF-8 in one row, Latin-1 in the next', file: () => Uint8Array.from([...bytes('specimen,gloss 60\nTür,1\nT'), 0xfc, ...bytes('r,2\n')]), code: 'mixed-encoding', line: 3, column: 2 },
  { name: 'a header of __proto__', file: () => bytes('specimen,gloss 60,__proto__\na,1,b\n'), code: 'forbidden-key', line: 1, column: 19 },
  { name: 'values only from nowhere to nowhere', file: () => bytes(`specimen,${wavelengths.join(',')}\na,${wavelengths.map(() => '1e999').join(',')}\n`), code: 'not-finite' },
  { name: 'ISO 28178 cut before the end', file: () => bytes(exchange('SAMPLE_ID LAB_L LAB_A LAB_B', '1 50 0 0\n2 50 0', [4, 2]).split('END_DATA\n')[0] ?? ''), code: 'section-not-closed' },
  { name: 'ISO 28178 with a set too few', file: () => bytes(exchange('SAMPLE_ID LAB_L LAB_A LAB_B', '1 50 0 0', [4, 2])), code: 'count-differs', line: 6, column: 16 },
  { name: 'ISO 28178 with a value too few in the midst', file: () => bytes(exchange('SAMPLE_ID LAB_L LAB_A LAB_B', '1 50 0\n2 50 0 0\n3 50 0 0', [4, 3])), code: 'extra-cells', line: 9, column: 3 },
  { name: 'ISO 28178 with a million fields', file: () => bytes(exchange('LAB_L '.repeat(1_000_000), '1', [1_000_000, 1])), code: 'too-many-columns' },
  { name: 'ISO 28178 with an open string', file: () => bytes(exchange('SAMPLE_ID LAB_L LAB_A LAB_B', '"1 50 0 0', [4, 1])), code: 'unclosed-quote', line: 8, column: 1 },
  { name: 'ISO 28178 with data and no fields', file: () => bytes('ISO28178\nBEGIN_DATA\n1 2\nEND_DATA\n'), code: 'fields-missing', line: 2 },
  { name: 'JSON in a million brackets', file: () => bytes('{"a":'.repeat(1_000_000)), code: 'too-deep' },
  { name: 'JSON with __proto__', file: () => bytes('{"format":"adjoin-readings","version":1,"__proto__":{"x":1}}'), code: 'forbidden-key' },
  { name: 'JSON cut short', file: () => bytes('{"format":"adjoin-readings","version":1,"records":['), code: 'json-syntax' },
  { name: 'a zip that unpacks a thousandfold', file: () => Uint8Array.from([0x50, 0x4b, 0x03, 0x04, ...deflateRawSync(Buffer.alloc(10_000_000))]), code: 'not-text' },
  { name: 'a workbook\'s first bytes', file: () => Uint8Array.from([0x50, 0x4b, 0x03, 0x04, 0x14]), code: 'not-text' },
  { name: 'nothing', file: () => new Uint8Array(), code: 'empty-file' },
];

describe('hostile and broken files', () => {
  test.each(attacks)('$name is refused: $code', ({ file, code, line, column }) => {
    const content = file();
    const start = performance.now();
    const { value, issues } = readBytes(content, { file: 'hostile' });
    const seconds = (performance.now() - start) / 1000;
    expect(value).toBeUndefined();
    const errors = issues.filter(({ severity }) => severity === 'error');
    expect(errors.map((issue) => issue.code)).toContain(code);
    expect(errors.find((issue) => issue.code === code)).toMatchObject({ file: 'hostile', ...(line === undefined ? {} : { line }), ...(column === undefined ? {} : { column }) });
    expect(issues.length).toBeLessThanOrEqual(1001);
    // Bounded: wide enough for a machine under load.
    expect(seconds).toBeLessThan(20);
  });

  test('sniffing costs little whatever the size', () => {
    const long = `<${'a'.repeat(largestFile / 4)}`;
    for (const text of [long, '"'.repeat(1_000_000), `${'#\n'.repeat(1_000_000)}`, ' '.repeat(5_000_000), '['.repeat(1_000_000), '<!--'.repeat(500_000), '<!['.repeat(500_000)]) {
      const start = performance.now();
      for (const reader of readers) expect(reader.sniff(text)).toBeLessThan(1);
      expect(performance.now() - start).toBeLessThan(2000);
    }
  });

  test('all faults are listed, each with its place', () => {
    const { issues } = readBytes(bytes('specimen,gloss 60,Ra (um)\na,-1,2\nb,x,-3\n,1,1\n'));
    expect(issues.map(({ code, line, column }) => [code, line, column])).toEqual([
      ['negative', 2, 3], ['not-a-number', 3, 3], ['negative', 3, 5], ['missing-value', 4, 1],
    ]);
  });
});
