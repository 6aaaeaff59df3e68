import { createHash } from 'node:crypto';
import { zipSync } from 'fflate';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { md5 } from '../../src/formats/surface-checksums.ts';
import type { SurfaceOptions } from '../../src/formats/surface-file.ts';
import { surfaceIssueCodes } from '../../src/formats/surface-issue-codes.ts';
import { numberOf } from '../../src/formats/surface-numbers.ts';
import { readSurface } from '../../src/formats/surface-reader.ts';
import { bytesOf, mainXml, sdfBytes, sdfText } from './support/surface-files.ts';

function heightsOf(bytes: Uint8Array, options?: SurfaceOptions) {
  const { value, issues } = readSurface(bytes, options);
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  if (value?.kind !== 'heights') throw new Error('no heights');
  return { map: value.map, issues };
}

function refusals(bytes: Uint8Array, options?: SurfaceOptions) {
  const { value, issues } = readSurface(bytes, options);
  expect(value).toBeUndefined();
  for (const { code } of issues) expect(surfaceIssueCodes).toHaveProperty([code]);
  return issues;
}

test('numbers are read to the last bit', () => {
  fc.assert(fc.property(fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer().map((value) => value / 1000)), (value) => {
    const bytes = bytesOf(String(value));
    expect(numberOf(bytes, 0, bytes.length)).toBe(Number(String(value)));
  }), { numRuns: 2000 });
  for (const text of ['', '-', '.', 'e5', '1e', '1e+', '1..2', '1 2', 'BAD', '0x10', '1,5', '--1', '1e12345']) {
    const bytes = bytesOf(text);
    expect(numberOf(bytes, 0, bytes.length), text).toBeNaN();
  }
  for (const [text, value] of [['+1.50', 1.5], ['.5', 0.5], ['5.', 5], ['1E-3', 0.001], ['-0', -0], ['123456789012345680000', 123456789012345680000]] as const) {
    const bytes = bytesOf(text);
    expect(numberOf(bytes, 0, bytes.length)).toBe(value);
  }
  const comma = bytesOf('1,25');
  expect(numberOf(comma, 0, comma.length, 0x2c)).toBe(1.25);
});

test('MD5 is that of RFC 1321 and of the platform', () => {
  // RFC 1321, appendix A.5.
  expect(md5(bytesOf(''))).toBe('d41d8cd98f00b204e9800998ecf8427e');
  expect(md5(bytesOf('message digest'))).toBe('f96b697d7cb7938d525a2f31aaf161d0');
  for (const length of [55, 56, 63, 64, 65, 119, 120, 1000]) {
    const bytes = Uint8Array.from({ length }, (_, index) => index * 37);
    expect(md5(bytes)).toBe(createHash('md5').update(bytes).digest('hex'));
  }
});

test('SDF in ASCII: metres to millimetres and micrometres, BAD is missing', () => {
  const { map, issues } = heightsOf(bytesOf(sdfText(3, 2, [1, -2.5, 'BAD', 4e0, 5, 6])));
  expect(map).toMatchObject({ width: 3, height: 2, missing: 1 });
  expect(map.spacingMm[0]).toBeCloseTo(0.01, 12);
  expect(map.spacingMm[1]).toBeCloseTo(0.02, 12);
  expect([...map.values]).toEqual([1, -2.5, NaN, 4, 5, 6]);
  expect(issues).toEqual([]);
  expect([...heightsOf(bytesOf(sdfText(2, 1, [10, 20], { Zscale: '1e-9', Yscale: '0' }))).map.values]).toEqual([0.01, 0.02].map((value) => expect.closeTo(value, 12)));
});

test('an SDF of another version is read with a warning', () => {
  const { issues } = heightsOf(bytesOf(sdfText(2, 1, [1, 2]).replace('aISO-1.0', 'aXYZ-V1.0')));
  expect(issues.map(({ code, severity }) => [code, severity])).toEqual([['unknown-version', 'warning']]);
});

test.each([
  ['unsigned 8 bit', 0, 1, (view: DataView, at: number, value: number) => view.setUint8(at, value), [1, 200, 255], []],
  ['unsigned 16 bit', 1, 2, (view: DataView, at: number, value: number) => view.setUint16(at, value, true), [1, 60000, 65535], []],
  ['unsigned 32 bit', 2, 4, (view: DataView, at: number, value: number) => view.setUint32(at, value, true), [1, 4e9, 7], []],
  ['32 bit floating', 3, 4, (view: DataView, at: number, value: number) => view.setFloat32(at, value, true), [0.5, -1.25, NaN], [2]],
  ['signed 8 bit', 4, 1, (view: DataView, at: number, value: number) => view.setInt8(at, value), [1, -127, -128], [2]],
  ['signed 16 bit', 5, 2, (view: DataView, at: number, value: number) => view.setInt16(at, value, true), [-32767, 5, -32768], [2]],
  ['signed 32 bit', 6, 4, (view: DataView, at: number, value: number) => view.setInt32(at, value, true), [-2147483647, 5, -2147483648], [2]],
  ['64 bit floating', 7, 8, (view: DataView, at: number, value: number) => view.setFloat64(at, value, true), [Math.PI, -Number.MAX_VALUE, Infinity], [1, 2]],
] as const)('binary SDF, %s', (_, type, size, set, values, missing) => {
  const bytes = sdfBytes({ width: 3, height: 1, type, size, write: (view, at, index) => set(view, at, values[index]!) });
  const { map } = heightsOf(bytes);
  expect(map.missing).toBe(missing.length);
  values.forEach((value, index) => {
    if (missing.some((place) => place === index)) expect(map.values[index]).toBeNaN();
    else expect(map.values[index]! / value).toBeCloseTo(1, 6);
  });
  expect(map.spacingMm[0]).toBeCloseTo(0.01, 12);
});

test('faults of an SDF are all listed with their place', () => {
  expect(refusals(bytesOf(sdfText(3, 2, [1, 'x', 3, 4, 'BADD', 6])))).toMatchObject([
    { code: 'not-a-number', line: 15, column: 3, path: 'profiles[0].points[1]', found: '"x"' },
    { code: 'not-a-number', line: 16, column: 3, path: 'profiles[1].points[1]' },
  ]);
  expect(refusals(bytesOf(sdfText(3, 2, [1, 2, 3, 4, 5])))).toMatchObject([{ code: 'missing-data', expected: '6' }]);
  expect(refusals(bytesOf(sdfText(3, 1, [1, 2, 3], { NumPoints: '2' })))).toMatchObject([{ code: 'extra-data', line: 15, column: 5 }]);
  expect(refusals(bytesOf(sdfText(1, 1, [1], { Xscale: '0', Yscale: '-1', Zscale: '0', NumProfiles: '2', Compression: '1', DataType: '9' }))).map(({ path }) => path))
    .toEqual(['header.Xscale', 'header.Yscale', 'header.Zscale', 'header.Compression', 'header.DataType']);
  expect(refusals(bytesOf('aISO-1.0\nNumPoints = 2\nNumPoints = two\nColour = red\n*\n1 2\n*')).map(({ code }) => code))
    .toEqual(['duplicate-field', 'not-a-number', 'unknown-field', 'missing-field', 'missing-field', 'missing-field', 'missing-field']);
  expect(refusals(bytesOf('aISO-1.0\nNumPoints = 2\n'))).toMatchObject([{ code: 'missing-data' }]);
  expect(refusals(bytesOf(sdfText(2, 1, ['BAD', 'BAD'])))).toMatchObject([{ code: 'no-heights' }]);
});

test('a small SDF that claims to be large gets no room', () => {
  for (const [points, profiles, code] of [[30000, 1000, 'missing-data'], [100000, 100000, 'file-too-large'], [0, 3, 'out-of-range'], [1.5, 2, 'out-of-range']] as const) {
    expect(refusals(bytesOf(sdfText(1, 1, [1], { NumPoints: String(points), NumProfiles: String(profiles) })))[0]).toMatchObject({ code });
  }
  const cut = sdfBytes({ width: 4, height: 4, type: 7, size: 8, write: (view, at) => view.setFloat64(at, 1, true) }).slice(0, 150);
  expect(refusals(cut)).toMatchObject([{ code: 'missing-data', path: 'data' }]);
  expect(refusals(cut.slice(0, 60))).toMatchObject([{ code: 'missing-data', path: 'header' }]);
});

const floats = (values: readonly number[]): Uint8Array => new Uint8Array(Float64Array.from(values).buffer);
const valid = (md: string): string => `<DataLink><PointDataLink>bindata/data.bin</PointDataLink>${md}<ValidPointsLink>bindata/valid.bin</ValidPointsLink></DataLink>`;

test('X3P with 64 bit heights, a part of valid points and checksums', () => {
  const data = floats([1e-6, 2e-6, NaN, 4e-6, 5e-6, 6e-6]);
  const digest = createHash('md5').update(data).digest('hex');
  const main = bytesOf(mainXml({ width: 3, height: 2, type: 'D', record3: valid(`<MD5ChecksumPointData>${digest.toUpperCase()}</MD5ChecksumPointData>`) }));
  const parts = { 'main.xml': main, 'bindata/data.bin': data, 'bindata/valid.bin': Uint8Array.of(0b101111), 'md5checksum.hex': bytesOf(`${createHash('md5').update(main).digest('hex')} *main.xml`) };
  const { map, issues } = heightsOf(zipSync(parts));
  expect(issues).toEqual([]);
  expect(map).toMatchObject({ width: 3, height: 2, missing: 2 });
  expect([...map.values]).toEqual([1, 2, NaN, 4, NaN, 6].map((value) => (Number.isNaN(value) ? NaN : expect.closeTo(value, 9))));
  expect(map.spacingMm[1]).toBeCloseTo(0.02, 12);
  // Stored parts instead of deflated ones, and a damaged checksum is a warning.
  const stored = zipSync({ ...parts, 'md5checksum.hex': bytesOf('0'.repeat(32)) }, { level: 0 });
  expect(heightsOf(stored).issues.map(({ code, path }) => [code, path])).toEqual([['bad-checksum', 'main.xml']]);
});

test('X3P with integers scaled by the increment, and with heights in the header', () => {
  const data = new Uint8Array(Int16Array.from([100, -200]).buffer);
  const { map } = heightsOf(zipSync({ 'main.xml': bytesOf(mainXml({ width: 2, height: 1, type: 'I', increment: '1e-9', offset: '1e-6' })), 'bindata/data.bin': data }));
  expect([...map.values]).toEqual([expect.closeTo(1.1, 9), expect.closeTo(0.8, 9)]);
  const list = '<DataList><Datum>0;0;1e-6</Datum><Datum>2e-6</Datum><Datum/><Datum>4e-6</Datum></DataList>';
  const inline = heightsOf(zipSync({ 'main.xml': bytesOf(mainXml({ width: 2, height: 2, type: 'F', record3: list })) }));
  expect([...inline.map.values]).toEqual([expect.closeTo(1, 9), expect.closeTo(2, 9), NaN, expect.closeTo(4, 9)]);
});

test('faults of an X3P', () => {
  const good = { 'main.xml': bytesOf(mainXml({ width: 2, height: 1, type: 'D' })), 'bindata/data.bin': floats([1e-6, 2e-6]) };
  const codes = (parts: Record<string, Uint8Array>): string[] => refusals(zipSync(parts)).map(({ code }) => code);
  expect(codes({ 'bindata/data.bin': good['bindata/data.bin'] })).toEqual(['missing-part']);
  expect(codes({ 'main.xml': good['main.xml'] })).toEqual(['missing-part']);
  expect(codes({ ...good, 'bindata/data.bin': floats([1]) })).toEqual(['missing-data']);
  expect(codes({ ...good, 'bindata/data.bin': floats([1, 2, 3]) })).toEqual(['extra-data']);
  expect(codes({ ...good, 'main.xml': bytesOf(mainXml({ width: 2, height: 1, type: 'Q', xType: 'A', feature: 'PCL' })) })).toEqual(['not-regular', 'not-regular', 'unknown-type']);
  expect(codes({ ...good, 'main.xml': bytesOf(mainXml({ width: 200000, height: 200000, type: 'D' })) })).toEqual(['file-too-large']);
  expect(codes({ ...good, 'main.xml': bytesOf('<other/>') })).toEqual(['unknown-type']);
  const whole = zipSync(good);
  expect(refusals(whole.slice(0, whole.length - 30)).map(({ code }) => code)).toEqual(['zip-damaged']);
  const entity = mainXml({ width: 2, height: 1, type: 'D' }).replace('<p:ISO', '<!DOCTYPE x [<!ENTITY a "aaaa">]><p:ISO');
  expect(readSurface(zipSync({ ...good, 'main.xml': bytesOf(entity) }))).toMatchObject({ value: undefined, issues: [{ code: 'xml-declarations', path: 'main.xml', line: 2 }] });
});

test('an archive that would unpack to more than it declares, or to gigabytes, is refused', () => {
  const zeros = new Uint8Array(30_000_000);
  const bomb = zipSync({ 'main.xml': bytesOf(mainXml({ width: 2, height: 1, type: 'D' })), 'bindata/data.bin': zeros });
  expect(bomb.length).toBeLessThan(100_000);
  expect(refusals(bomb)).toMatchObject([{ code: 'file-too-large', path: 'bindata/data.bin' }]);
  // The directory lies about the size.
  const view = new DataView(bomb.buffer, bomb.byteOffset, bomb.length);
  for (let at = 0; at < bomb.length - 28; at += 1) if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === zeros.length) view.setUint32(at + 24, 16, true);
  expect(refusals(bomb)).toMatchObject([{ code: 'zip-damaged', path: 'bindata/data.bin' }]);
});

test('grids of numbers: separators, decimal commas, missing cells, declarations', () => {
  const options = { spacingMm: 0.01, heightUnit: 'um' } as const;
  for (const text of ['1.5,2\n-3,\n', '1,5;2\r\n-3;\r\n', '1.5\t2\n-3\tNaN\n', '1.5 2\n -3  BAD \n', '\ufeff1,5\t2\n-3\tnan', '1,5 2\n-3 BAD\n', '1.5, 2\n-3, \n']) {
    const { map } = heightsOf(bytesOf(text), options);
    expect([map.width, map.height, ...map.values], JSON.stringify(text)).toEqual([2, 2, 1.5, 2, -3, NaN]);
  }
  const declared = heightsOf(bytesOf('# spacing-mm: 0.01 0.02\n# height-unit: nm\n\n1000,2000\n3000,4000\n')).map;
  expect([...declared.values]).toEqual([1, 2, 3, 4]);
  expect(declared.spacingMm).toEqual([0.01, 0.02]);
  expect([...heightsOf(bytesOf('1,2\n3,4\n'), { spacingMm: 1, heightUnit: 'mm' }).map.values]).toEqual([1000, 2000, 3000, 4000]);
  // Rows that all end in a separator have no column behind it; one row alone that does not keeps the empty cell.
  expect(heightsOf(bytesOf('1;2;\n3;4;\n'), options).map).toMatchObject({ width: 2, missing: 0 });
  expect(heightsOf(bytesOf('1;2;\n3;4;5\n'), options).map).toMatchObject({ width: 3, missing: 1 });
  expect(heightsOf(bytesOf('1,2\n'), { spacingMm: 1 }).issues).toMatchObject([{ code: 'unit-assumed', severity: 'note' }]);
});

test('faults of a grid are all listed with line and column', () => {
  expect(refusals(bytesOf('x,y,z\n1,2,3\n4,5\n'), { spacingMm: 1 }).map(({ code, line, column }) => [code, line, column])).toEqual([
    ['not-a-number', 1, 1], ['not-a-number', 1, 3], ['not-a-number', 1, 5], ['ragged-rows', 3, undefined], ['unit-assumed', undefined, undefined],
  ]);
  expect(refusals(bytesOf('1,2\n'), { heightUnit: 'um' })).toMatchObject([{ code: 'spacing-undeclared' }]);
  expect(refusals(bytesOf('# spacing-mm: -1\n# height-unit: feet\n1,2\n')).map(({ code }) => code)).toEqual(['out-of-range', 'unknown-type']);
  expect(refusals(bytesOf('# nothing\n\n')).map(({ code }) => code)).toEqual(['empty-file']);
  expect(refusals(new Uint8Array())).toMatchObject([{ code: 'empty-file' }]);
  expect(refusals(Uint8Array.of(1, 0, 2, 0))).toMatchObject([{ code: 'not-text' }]);
  expect(refusals(bytesOf(' , \n,\n'), { spacingMm: 1, heightUnit: 'um' })).toMatchObject([{ code: 'no-heights' }]);
  const many = refusals(bytesOf(Array.from({ length: 3000 }, () => 'x').join('\n')), { spacingMm: 1, heightUnit: 'um' });
  expect(many).toHaveLength(1001);
  expect(many.at(-1)).toMatchObject({ code: 'more-issues', severity: 'note' });
});

test('any bytes give a value or issues, never an exception', () => {
  const seeds = [bytesOf(sdfText(3, 2, [1, 2, 3, 4, 5, 6])), zipSync({ 'main.xml': bytesOf(mainXml({ width: 2, height: 1, type: 'D' })), 'bindata/data.bin': floats([1, 2]) }),
    sdfBytes({ width: 2, height: 2, type: 5, size: 2, write: (view, at) => view.setInt16(at, 3, true) }), bytesOf('1,2\n3,4')];
  fc.assert(fc.property(fc.constantFrom(...seeds), fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 8 }), fc.nat(), (seed, edits, cut) => {
    const bytes = seed.slice(0, seed.length - (cut % 5 === 0 ? cut % seed.length : 0));
    for (const [place, byte] of edits) if (bytes.length > 0) bytes[place % bytes.length] = byte;
    const { value, issues } = readSurface(bytes, { spacingMm: 1 });
    expect(value !== undefined || issues.some(({ severity }) => severity === 'error')).toBe(true);
    for (const issue of issues) expect(Object.values(issue)).not.toContain(undefined);
  }), { numRuns: 600, seed: 3 });
});
