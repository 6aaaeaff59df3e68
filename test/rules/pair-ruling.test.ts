import { expect, test } from 'vitest';
import { compileRuleBook, pairRuling, ruleBookById, typicalVariables } from '../../src/rules/index.ts';
import type { PairRule, RuleBook } from '../../src/rules/index.ts';

/** The order is that of the description of rule books: materials before qualifiers, the most specific wins, the later among equals. */
const rule = (id: string, pair: PairRule['pair'], more: Partial<PairRule> = {}): PairRule => ({ id, pair, colour: { limit: 0.5 }, basis: 'x', ...more });
const book: RuleBook = {
  ...ruleBookById('ciede2000')!,
  rules: [
    rule('all', ['*', '*']), rule('any-skin', ['*', 'soft-skin'], { kind: 'gap' }), rule('pair', ['moulded', 'soft-skin']), rule('pair-later', ['soft-skin', 'moulded']),
    rule('pair-gap', ['moulded', 'soft-skin'], { kind: 'gap' }), rule('pair-gap-dash', ['moulded', 'soft-skin'], { kind: 'gap', zone: 'dash' }), rule('other', ['leather', 'leather']),
  ],
};
const told = (facts: Parameters<typeof pairRuling>[2], pair: readonly [string, string] = ['moulded', 'soft-skin']): string[] =>
  pairRuling(book, pair, facts).map(({ rule: of, place }) => `${of?.id ?? 'classes'} ${place}`);

test('every rule that names the pair stands in order, and what wins follows from the joint', () => {
  expect(told({ intent: 'match', kind: 'gap', zones: ['dash', 'doors'] })).toEqual([
    'pair-gap-dash wins', 'pair-gap yields', 'pair-later yields', 'pair yields', 'any-skin yields', 'all yields', 'classes yields',
  ]);
  expect(told({ intent: 'match', kind: 'gap', zones: ['doors', 'doors'] }).slice(0, 2)).toEqual(['pair-gap-dash elsewhere', 'pair-gap wins']);
  expect(told({ kind: 'edge' })).toEqual([
    'pair-gap-dash elsewhere', 'pair-gap elsewhere', 'pair-later wins', 'pair yields', 'any-skin elsewhere', 'all yields', 'classes yields',
  ]);
  expect(told({}, ['soft-skin', 'moulded'])).toEqual(told({ kind: 'edge' }));
});

test('it says why', () => {
  const why = (facts: Parameters<typeof pairRuling>[2]): Record<string, string> => Object.fromEntries(pairRuling(book, ['moulded', 'soft-skin'], facts).map((entry) => [entry.rule?.id ?? 'classes', entry.why]));
  const gap = why({ kind: 'gap', zones: ['doors'] });
  expect(gap['pair-gap-dash']).toBe('only for the zone dash, neither part lies in it');
  expect(gap['pair-gap']).toBe('it names the kind gap, "pair-later" no intent, kind or zone');
  expect(gap['pair']).toBe('"pair-gap" goes before: it names the kind gap, "pair" no intent, kind or zone');
  expect(gap['any-skin']).toBe('"pair-gap" goes before: it names both materials, "any-skin" one material');
  expect(why({ kind: 'gap', zones: ['dash'] })['pair-gap-dash']).toBe('it names the kind gap and the zone dash, "pair-gap" only the kind gap');
  expect(why({ kind: 'edge' })['pair-later']).toBe('it is as specific as "pair" and stands later in the book');
  // The larger of 0.7 and 0.8 with 0.2 more, moulded being hard and soft-skin a skin.
  expect(why({})['classes']).toBe('they give what "pair-later" leaves open: moulded is hard and soft-skin is skin; the larger of 0.7 and 0.8 plus 0.2 for unlike families is 1');
  expect(pairRuling(ruleBookById('ciede2000')!, ['moulded', 'moulded'], {})).toEqual([
    { rule: undefined, reach: 'the classes of the two materials', place: 'wins', why: 'no rule speaks of this joint: both are moulded; its limit is 0.7' },
  ]);
});

test('the one that wins is the one that judges', () => {
  const compiled = compileRuleBook(book).value!;
  for (const kind of ['edge', 'gap', 'seam', 'sightline'] as const) for (const zone of ['dash', 'doors']) for (const pair of [['moulded', 'soft-skin'], ['leather', 'leather'], ['soft-skin', 'carpet'], ['carpet', 'thread']] as const) {
    const resolved = compiled.resolve([{ material: pair[0], surface: 'solid', zone }, { material: pair[1], surface: 'solid', zone: 'doors' }], { kind }, typicalVariables);
    const winner = pairRuling(book, pair, { intent: resolved.intent.colour, kind, zones: [zone, 'doors'] }).find(({ place }) => place === 'wins');
    expect(winner?.rule?.id ?? [...pair].sort().join(' + ')).toBe(resolved.id);
  }
});
