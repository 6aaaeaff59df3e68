import { expect, test } from 'vitest';
import { parseRoute } from '../../components/controllers/route.ts';
import { surfaceTerms, typedLength } from '../../components/model/surface-terms.ts';

/** What an address says of how a surface is measured and looked at; ours to define. */
const ofAddress = (query: string): ReturnType<typeof surfaceTerms> => surfaceTerms(parseRoute(`#/surfaces?${query}`).options ?? {});

test('an address without terms measures and looks as usual', () => {
  expect(ofAddress('')).toMatchObject({ form: 'plane', of: 'part', sFilter: '', lFilter: '', pitch: '', transfer: '', viewMm: 700, illuminanceLx: 1000, reflectance: 0.05, spot: '1', file: '' });
});

test('terms are read from an address, with a decimal comma as with a point', () => {
  expect(ofAddress('form=second-order&of=tool&s-filter=0%2C02&curve=srgb&set-up=lamp+2&seen=1500&lux=250&factor=40&specimen=a%2Fb&spot=3'))
    .toMatchObject({ form: 'second-order', of: 'tool', sFilter: '0,02', transfer: 'srgb', capture: 'lamp 2', viewMm: 1500, illuminanceLx: 250, reflectance: 0.4, specimen: 'a/b', spot: '3' });
});

test('what is no term is as usual, and numbers stay within their bounds', () => {
  expect(ofAddress('form=cube&of=me&curve=gamma&seen=near&lux=-4&factor=0')).toMatchObject({ form: 'plane', of: 'part', transfer: '', viewMm: 700, illuminanceLx: 1000, reflectance: 0.05 });
  expect(ofAddress('seen=1&factor=300')).toMatchObject({ viewMm: 100, reflectance: 1 });
  expect(ofAddress('seen=1e9').viewMm).toBe(20_000);
});

test('a typed length is a number above nought, none, or wrong', () => {
  expect(typedLength(' ')).toBeUndefined();
  expect(typedLength('0,8')).toBe(0.8);
  for (const text of ['0', '-1', '0.8 mm', 'Infinity', 'x']) expect(typedLength(text), text).toBeNaN();
});
