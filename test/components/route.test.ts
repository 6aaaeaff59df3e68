import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changedRoute, formatRoute, parseRoute } from '../../components/controllers/route.ts';
import type { Route } from '../../components/controllers/route.ts';

test('an empty, an unknown and a broken address are the start', () => {
  for (const hash of ['', '#', '#/', '#/nowhere', '#/joint', '#/joint/?light=A', 'rubbish']) expect(parseRoute(hash).view).toBe('start');
});

test('a joint is read with its light and filter', () => {
  expect(parseRoute('#/joint/j%2F7?light=FL11&verdict=clashes&q=door%20left')).toEqual({
    view: 'joint', joint: 'j/7', light: 'FL11', open: undefined, filter: { verdict: 'clashes', search: 'door left' },
  });
});

test('a malformed escape stays as it was written', () => {
  expect(parseRoute('#/joint/50%').joint).toBe('50%');
});

test('the address of a file to open stays readable', () => {
  expect(formatRoute({ view: 'cabin', open: 'demo-data/a.cabin.json', filter: {} })).toBe('#/cabin?open=demo-data/a.cabin.json');
});

test('every route is read back from its own address', () => {
  const word = fc.string({ minLength: 1, unit: 'grapheme' }).filter((text) => encodable(text));
  const filter = fc.record({ search: word, zone: word, verdict: word, check: word, supplier: word }, { requiredKeys: [] });
  const route = fc.record({ light: fc.option(word, { nil: undefined }), open: fc.option(word, { nil: undefined }), filter });
  fc.assert(fc.property(route, fc.option(word, { nil: undefined }), (rest, joint) => {
    const whole: Route = joint === undefined ? { view: 'cabin', ...rest } : { view: 'joint', joint, ...rest };
    expect(parseRoute(formatRoute(whole))).toEqual(whole);
  }), { seed: 20310301, numRuns: 500 });
});

/** Half of a surrogate pair cannot stand in an address. */
function encodable(text: string): boolean {
  try {
    encodeURIComponent(text);
    return true;
  } catch {
    return false;
  }
}

test('sections stand in the address by name, and stay in their place', () => {
  const folds = { terms: false, 'table-of-spectra': true, 'steps, of 50% run': true };
  const hash = formatRoute({ view: 'series', filter: {}, folds });
  expect(parseRoute(hash)).toMatchObject({ view: 'series', folds });
  expect(parseRoute('#/series?unfold=stock,rest&fold=terms').folds).toEqual({ stock: true, rest: true, terms: false });
  expect(parseRoute('#/series?unfold=&fold=,').folds).toBeUndefined();
  const here = parseRoute(hash);
  expect(changedRoute(here, { item: 'door' }).folds).toEqual(folds);
  expect(changedRoute(here, { view: 'parts' }).folds).toBeUndefined();
  expect(changedRoute(here, { view: 'parts', folds: { other: true } }).folds).toEqual({ other: true });
});
