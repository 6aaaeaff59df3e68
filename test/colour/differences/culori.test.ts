import { converter, differenceCie76, differenceCie94, differenceCiede2000, differenceCmc, type Lab65 } from 'culori';
import { expect, test } from 'vitest';
import { difference } from '../../../src/colour/difference.ts';
import type { DifferenceFormula } from '../../../src/colour/difference-formula.ts';
import { din99oConstants } from '../../../src/colour/differences/din99o.ts';
import type { Lab } from '../../../src/quantities.ts';
import { farPairs, nearPairs, type Pair } from './seeded-pairs.ts';

/** culori 4.0.2; its mode `lab65` takes CIELAB as it is, its `lab` would adapt the white first. */
const colour = ([l, a, b]: Lab): Lab65 => ({ mode: 'lab65', l, a, b });

const oracles: readonly (readonly [string, DifferenceFormula, (standard: Lab65, trial: Lab65) => number])[] = [
  ['CIE76', { name: 'cie76' }, differenceCie76()],
  ['CIE94', { name: 'cie94' }, differenceCie94()],
  ['CIE94 textile', { name: 'cie94Textile' }, differenceCie94(2, 0.048, 0.014)],
  ['CMC(2:1)', { name: 'cmc' }, differenceCmc(2, 1)],
  ['CMC(1:1)', { name: 'cmc', l: 1, c: 1 }, differenceCmc(1, 1)],
  ['CIEDE2000', { name: 'ciede2000' }, differenceCiede2000()],
  ['CIEDE2000 kL 2', { name: 'ciede2000', kL: 2 }, differenceCiede2000(2, 1, 1)],
  ['CIEDE2000 kL 1.5 kC 1.2 kH 0.8', { name: 'ciede2000', kL: 1.5, kC: 1.2, kH: 0.8 }, differenceCiede2000(1.5, 1.2, 0.8)],
];

const sets: readonly (readonly [string, readonly Pair[]])[] = [
  ['far', farPairs(1000, 20261)],
  ['near', nearPairs(1000, 20262, 1, 60)],
  ['near grey', nearPairs(1000, 20263, 0.5, 1.5)],
];

const cases = oracles.flatMap(([name, formula, oracle]) => sets.map(([kind, pairs]) => [name, kind, formula, oracle, pairs] as const));

test.each(cases)('%s agrees with culori on 1,000 %s pairs', (_, __, formula, oracle, pairs) => {
  let worst = 0;
  for (const [standard, trial] of pairs) {
    worst = Math.max(worst, Math.abs(difference(formula, standard, trial) - oracle(colour(standard), colour(trial))));
  }
  expect(worst).toBeLessThan(1e-6);
});

test.each(sets)('DIN99o agrees with culori on 1,000 %s pairs', (_, pairs) => {
  const toDin99o = converter('dlab');
  // culori scales L99o by 100 / ln 1.39, the standard prints 303.67: brought to the standard's before comparing.
  const scale = (din99oConstants.lightnessScale * Math.log(1.39)) / 100;
  expect(Math.abs(scale - 1)).toBeLessThan(1e-5);
  let worst = 0;
  for (const [standard, trial] of pairs) {
    const first = toDin99o(colour(standard));
    const second = toDin99o(colour(trial));
    const theirs = Math.hypot(scale * (second.l - first.l), second.a - first.a, second.b - first.b);
    worst = Math.max(worst, Math.abs(difference({ name: 'din99o' }, standard, trial) - theirs));
  }
  expect(worst).toBeLessThan(1e-6);
});
