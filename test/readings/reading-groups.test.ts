import { describe, expect, test } from 'vitest';
import { apertureClass } from '../../src/readings/aperture-class.ts';
import { conditionCautions } from '../../src/readings/condition-cautions.ts';
import { geometryClass } from '../../src/readings/geometry-class.ts';
import type { CielabReading, Conditions } from '../../src/readings/reading.ts';
import { geometries } from '../../src/readings/reading.ts';
import { groupColourReadings } from '../../src/readings/reading-groups.ts';
import { pickSharedGroup } from '../../src/readings/shared-group.ts';

const recorded: Conditions[] = [
  { id: 'ring', instrument: 'one', geometry: '45a:0', apertureMm: 8, uv: 'included' },
  { id: 'ring again', instrument: 'one', geometry: '45c:0', apertureMm: 8, uv: 'included', temperatureC: 23 },
  { id: 'beam', instrument: 'two', geometry: '45x:0', apertureMm: 8, uv: 'included' },
  { id: 'sphere in', instrument: 'three', geometry: 'di:8', apertureMm: 25, uv: 'excluded' },
  { id: 'sphere out', instrument: 'three', geometry: '8:de', apertureMm: 25, uv: 'excluded' },
  { id: 'small', instrument: 'one', geometry: '45a:0', apertureMm: 4, uv: 'included' },
  { id: 'bare', instrument: 'one', geometry: '45a:0', uv: 'included' },
  { id: 'fan 15', instrument: 'four', geometry: 'multi-angle', aspecularDeg: 15 },
  { id: 'fan 45', instrument: 'four', geometry: 'multi-angle', aspecularDeg: 45 },
];
const conditions = new Map(recorded.map((entry) => [entry.id, entry]));
const order = ['45:0', 'de:8', 'di:8'] as const;
let place = 0;
const reading = (under: string, spot = `s${place++}`, more: Partial<CielabReading> = {}): CielabReading =>
  ({ quantity: 'cielab', lab: [50, 0, 0], light: 'D65', observer: 10, conditions: under, spot: { name: spot }, ...more });
const groups = (...readings: CielabReading[]) => groupColourReadings(readings, conditions).groups;

describe('classes', () => {
  test('geometries by the names of CIE 015:2018', () => {
    expect(geometries.map(geometryClass)).toEqual(['45:0', '45:0', '45:0', '45:0', '45:0', '45:0', 'di:8', 'de:8', 'di:8', 'de:8', 'multi-angle', 'unknown']);
    expect(geometryClass(undefined)).toBe('unknown');
  });
  test('apertures by diameter (assumption, no source), upper bounds included', () => {
    expect([undefined, 0, 3, 5, 5.1, 10, 12, 20, 25].map(apertureClass)).toEqual(
      ['unknown', 'unknown', 'up to 5 mm', 'up to 5 mm', '5 to 10 mm', '5 to 10 mm', '10 to 20 mm', '10 to 20 mm', 'over 20 mm']);
  });
});

describe('groupColourReadings', () => {
  test('keeps geometry, aperture, ultraviolet, instrument and angle apart, annular and circumferential together', () => {
    const found = groups(reading('ring'), reading('ring again'), reading('beam'), reading('sphere in'), reading('sphere out'), reading('small'), reading('fan 15'), reading('fan 45'));
    expect(found.map((group) => [group.instrument, group.geometryClass, group.apertureClass, group.spots])).toEqual([
      ['one', '45:0', '5 to 10 mm', 2], ['two', '45:0', '5 to 10 mm', 1], ['three', 'di:8', 'over 20 mm', 1], ['three', 'de:8', 'over 20 mm', 1],
      ['one', '45:0', 'up to 5 mm', 1], ['four', 'multi-angle', 'unknown', 1], ['four', 'multi-angle', 'unknown', 1],
    ]);
  });
  test('counts spots, not flashes, and outliers apart', () => {
    const [group] = groups(reading('ring', 'a'), reading('ring', 'a', { rotationDeg: 90 }), reading('ring', 'b'), reading('ring', 'c', { outlier: true }));
    expect(group).toMatchObject({ spots: 2, outliers: 1 });
    expect(group.readings).toHaveLength(3);
    expect(groups(reading('ring', 'a', { outlier: true }))).toEqual([]);
  });
  test('conditions that are not recorded are an issue and an unknown group', () => {
    const { groups: found, issues } = groupColourReadings([reading('nowhere')], conditions);
    expect(issues).toMatchObject([{ code: 'unknown-conditions', found: 'nowhere' }]);
    expect(found[0].geometryClass).toBe('unknown');
  });
});

describe('pickSharedGroup', () => {
  test('takes the first geometry of the order that both have', () => {
    const first = groups(reading('sphere in'), reading('sphere out'), reading('beam'));
    expect(pickSharedGroup(first, groups(reading('sphere in'), reading('sphere out')), order)).toMatchObject({ kind: 'shared', geometryClass: 'de:8' });
    expect(pickSharedGroup(first, groups(reading('sphere in')), order)).toMatchObject({ kind: 'shared', geometryClass: 'di:8' });
    expect(pickSharedGroup(first, groups(reading('sphere in')), ['di:8', '45:0'])).toMatchObject({ kind: 'shared', geometryClass: 'di:8' });
  });
  test('prefers one instrument over more spots, and the same aperture over another', () => {
    const first = groups(reading('ring'), reading('beam'), reading('beam'), reading('beam'));
    const chosen = pickSharedGroup(first, groups(reading('small'), reading('small'), reading('ring')), order);
    expect(chosen).toMatchObject({ kind: 'shared', first: { instrument: 'one' }, second: { instrument: 'one', apertureClass: '5 to 10 mm' } });
  });
  test('never takes unlike aperture classes for shared: a later geometry of the order goes before', () => {
    const [small, ring] = [groups(reading('small')), groups(reading('ring'))];
    expect(pickSharedGroup(small, ring, order)).toMatchObject({ kind: 'unlike', differs: 'aperture', first: { geometryClass: '45:0' }, second: { geometryClass: '45:0' } });
    const [both, other] = [groups(reading('small'), reading('sphere out')), groups(reading('ring'), reading('sphere out'))];
    expect(pickSharedGroup(both, other, order)).toMatchObject({ kind: 'shared', geometryClass: 'de:8' });
  });
  test('takes an aperture that is not stated for shared, on one side or both', () => {
    const unstated = groups(reading('bare'));
    expect(pickSharedGroup(unstated, groups(reading('ring')), order).kind).toBe('shared');
    expect(pickSharedGroup(unstated, unstated, order).kind).toBe('shared');
    const chosen = pickSharedGroup(groups(reading('bare'), reading('ring')), groups(reading('ring')), order);
    expect(chosen).toMatchObject({ kind: 'shared', first: { apertureClass: '5 to 10 mm' } });
  });
  test('with none shared gives an indicative pair; with none at all says which side is missing', () => {
    expect(pickSharedGroup(groups(reading('ring')), groups(reading('sphere in'), reading('sphere out')), order))
      .toMatchObject({ kind: 'unlike', first: { geometryClass: '45:0' }, second: { geometryClass: 'de:8' } });
    expect(pickSharedGroup([], groups(reading('ring')), order)).toEqual({ kind: 'missing', side: 'first' });
    expect(pickSharedGroup(groups(reading('ring')), [], order)).toEqual({ kind: 'missing', side: 'second' });
    expect(pickSharedGroup([], [], order)).toEqual({ kind: 'missing', side: 'both' });
  });
  test('multi-angle at the same angle only, unknown never', () => {
    expect(pickSharedGroup(groups(reading('fan 15')), groups(reading('fan 45')), ['multi-angle']).kind).toBe('unlike');
    expect(pickSharedGroup(groups(reading('fan 45')), groups(reading('fan 15'), reading('fan 45')), ['multi-angle'])).toMatchObject({ kind: 'shared', second: { aspecularDeg: 45 } });
    const nowhere = groupColourReadings([reading('nowhere')], conditions).groups;
    expect(pickSharedGroup(nowhere, nowhere, ['unknown']).kind).toBe('unlike');
  });
  test('swapping the sides swaps the choice', () => {
    const p = groups(reading('ring'), reading('small'), reading('sphere in'));
    const q = groups(reading('beam'), reading('beam'), reading('small'), reading('ring again'));
    const there = pickSharedGroup(p, q, order);
    const back = pickSharedGroup(q, p, order);
    if (there.kind !== 'shared' || back.kind !== 'shared') throw new Error('nothing shared');
    expect(back.first).toBe(there.second);
    expect(back.second).toBe(there.first);
  });
});

describe('conditionCautions', () => {
  const one = (under: string) => groups(reading(under))[0];
  const codes = (p: string, q: string, about = {}) => conditionCautions(one(p), one(q), about).map((caution) => caution.code);
  test('like with like: none', () => expect(codes('ring', 'ring again', { meanL: 80 })).toEqual([]));
  test('a directed beam against a ring', () => expect(codes('ring', 'beam')).toEqual(['directional against annular']));
  test('apertures', () => expect(codes('ring', 'small')).toEqual(['unlike aperture']));
  test('apertures that are not stated, on one side and on either', () => {
    expect(codes('bare', 'ring')).toEqual(['aperture not stated']);
    const [caution] = conditionCautions(one('bare'), one('bare'));
    expect(caution).toMatchObject({ code: 'aperture not stated' });
    expect(caution.text).toContain('aperture not stated on either side');
  });
  test('ultraviolet, on light parts only', () => {
    const dim = { ...one('ring'), uv: 'excluded' as const };
    expect(conditionCautions(one('ring'), dim, { meanL: 80 }).map((caution) => caution.code)).toEqual(['unlike uv']);
    expect(conditionCautions(one('ring'), dim, { meanL: 30 })).toEqual([]);
  });
  test('a sphere hides unlike gloss of dark parts', () => {
    expect(codes('sphere in', 'sphere in', { meanL: 25, glossDifference: 60 })).toEqual(['gloss hidden by sphere']);
    expect(codes('sphere in', 'sphere in', { meanL: 70, glossDifference: 60 })).toEqual([]);
    expect(codes('sphere out', 'sphere out', { meanL: 25, glossDifference: 60 })).toEqual([]);
  });
});
