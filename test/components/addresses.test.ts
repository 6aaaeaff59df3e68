import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lampAddress, lampOfAddress } from '../../components/figures/surface/lamp-address.ts';
import { lampRange, usualLamp } from '../../components/figures/surface/lamp.ts';
import { pathAddress, pathOfAddress } from '../../components/model/path-address.ts';
import { trialAddress, trialOfAddress } from '../../components/model/trial-address.ts';

const number = fc.integer({ min: -3000, max: 3000 }).map((hundredths) => hundredths / 100).filter((value) => value !== 0);
const shift = fc.record({ dL: number, da: number, db: number, dGloss: number }, { requiredKeys: [] }).filter((fields) => Object.keys(fields).length > 0);

test('a trial in an address is read back as it was, whatever the parts are called', () => {
  fc.assert(fc.property(
    fc.uniqueArray(fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme' }), { minLength: 2, maxLength: 2 }), fc.option(shift), fc.option(shift), fc.option(fc.integer({ min: 0, max: 900 })), fc.option(fc.integer({ min: 1, max: 9000 })),
    ([first = '', second = ''], one, other, gap, view) => {
      const shifts = [...(one === null ? [] : [{ part: first, ...one }]), ...(other === null ? [] : [{ part: second, ...other }])];
      const trial = { ...(shifts.length === 0 ? {} : { shifts }), ...(gap === null ? {} : { gapMm: gap / 10 }), ...(view === null ? {} : { viewMm: view }) };
      expect(trialOfAddress(trialAddress(trial), [first, second])).toEqual(trial);
    },
  ));
});

test('what is no trial in an address, or one of other parts, is nothing', () => {
  for (const text of ['', ';;', 'a', 'a,', 'a,dL=', 'a,dL=x', 'a,dX=1', 'c,dL=1', 'gap=', 'gap=-1', 'gap=x', 'view=0', 'view=NaN', '%E0%A4%A', 'a,dL=0']) expect(trialOfAddress(text, ['a', 'b']), text).toEqual({});
  expect(trialOfAddress('b,dL=0.5,db=x;gap=2', ['a', 'b'])).toEqual({ shifts: [{ part: 'b', dL: 0.5 }], gapMm: 2 });
});

test('a lamp in an address is read back in whole degrees, and stands as usual where the address is of nothing', () => {
  const degrees = (key: keyof typeof lampRange): fc.Arbitrary<number> => fc.integer({ min: lampRange[key][0], max: lampRange[key][1] });
  fc.assert(fc.property(degrees('fromDeg'), degrees('elevationDeg'), degrees('tiltDeg'), (fromDeg, elevationDeg, tiltDeg) => {
    const setting = { fromDeg, elevationDeg, tiltDeg };
    expect(lampOfAddress(lampAddress(setting))).toEqual(setting);
  }));
  expect(lampAddress(usualLamp)).toBe('');
  for (const text of [undefined, '', 'x', ',,', '999,999,999', '1e9']) expect(lampOfAddress(text)).toEqual(usualLamp);
});

test('a path of parts in an address is read back in its order, without what the cabin does not have', () => {
  fc.assert(fc.property(fc.uniqueArray(fc.string({ minLength: 1, maxLength: 8, unit: 'grapheme' }), { minLength: 2, maxLength: 6 }), (parts) => {
    expect(pathOfAddress(pathAddress(parts), (part) => parts.includes(part))).toEqual(parts);
  }));
  expect(pathAddress(['a'])).toBe('');
  expect(pathOfAddress('b,a,b,%E0%A4,c', (part) => part !== 'c')).toEqual(['b', 'a']);
  expect(pathOfAddress(undefined, () => true)).toEqual([]);
});
