import { expect, test } from 'vitest';
import { lotsOut, seriesTerms, withLot } from '../../components/model/series-terms.ts';
import { lotCabin } from '../series/support/lot-cabin.ts';

const lots = ['L1', 'L,2', 'L:3'].map((id, day) => ({ id, day, lab: [30, 0, 0] as const }));
const cabin = lotCabin(lots, lots);

test('what an address asks for, and nothing else', () => {
  expect(seriesTerms({}, cabin)).toEqual({});
  expect(seriesTerms({ confidence: '0.99', first: '6', ahead: '90', against: 'master' }, cabin)).toEqual({ confidence: 0.99, base: 6, aheadDays: 90, reference: 'master' });
  for (const odd of ['0', '-1', '1.5', 'many', '99999']) expect(seriesTerms({ confidence: odd, first: odd, ahead: odd, against: odd }, cabin)).toEqual({});
});

test('lots with signs in their names are taken out and put back', () => {
  const one = withLot({}, 'a', 'L,2', false);
  const two = withLot(one, 'b', 'L:3', false);
  expect(seriesTerms(two, cabin).available).toEqual({ a: ['L1', 'L:3'], b: ['L1', 'L,2'] });
  expect([...lotsOut(withLot(two, 'a', 'L,2', true)).keys()]).toEqual(['b']);
  expect(seriesTerms(withLot(withLot(two, 'a', 'L,2', true), 'b', 'L:3', true), cabin)).toEqual({});
  expect(lotsOut({ out: '%E0%A4%A,a:%,:,z' }).size).toBe(0);
});
