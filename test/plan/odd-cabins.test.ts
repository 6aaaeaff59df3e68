import { describe, expect, test } from 'vitest';
import type { Cabin, Source } from '../../src/cabin/cabin.ts';
import { apportionCabin, chooseSources, mendCabin } from '../../src/plan/index.ts';
import { named } from '../../src/plan/named.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { plannedCabin } from './support/planned-cabin.ts';

const book = builtInRuleBooks[0];
const withSources = (cabin: Cabin, change: (source: Source, part: number) => Source): Cabin =>
  ({ ...cabin, parts: cabin.parts.map((part, index) => ({ ...part, sources: part.sources.map((source) => change(source, index)) })) });
/** A clock that has jumped far ahead once it has been looked at so often. */
const jumps = (looks: number): (() => number) => {
  let looked = 0;
  return () => (looked++ < looks ? 0 : 1e6);
};

describe('a choice within a lead time', () => {
  const slow = withSources(plannedCabin(5, { parts: 3, sources: 2, part: (index) => (index === 0 ? { frozen: true } : {}) }), (source, part) => ({ ...source, leadWeeks: part === 0 ? 30 : 5 + part }));

  test('does not count the weeks of a part that is carried over, which it does not wait for either', async () => {
    const plan = await chooseSources(slow, book, { maxLeadWeeks: 8 });
    expect(plan.feasible).toBe(true);
    expect(plan.sets[0].leadWeeks).toBe(7);
  });

  test('waits for it where it is put on another source by hand', async () => {
    const other = slow.parts[0].sources[1].id;
    expect((await chooseSources(slow, book, { locked: { p0: other } })).sets[0].leadWeeks).toBe(30);
    expect((await chooseSources(slow, book, { locked: { p0: other }, maxLeadWeeks: 8 })).feasible).toBe(false);
  });

  test('counts them where it may be changed', async () => {
    expect((await chooseSources(slow, book, { releaseFrozen: true })).sets[0].leadWeeks).toBe(30);
    expect((await chooseSources(slow, book, { releaseFrozen: true, maxLeadWeeks: 8 })).feasible).toBe(false);
  });
});

describe('money', () => {
  const inTwo = (change: (source: Source) => Source): Cabin => withSources(plannedCabin(5, { parts: 2, sources: 2 }), (source, part) => (part === 0 ? { ...change(source), currency: 'USD' } : source));
  test('of a source that states none needs no rate', async () => {
    const plan = await chooseSources(inTwo(({ piecePrice: _, toolCost: __, setupCost: ___, ...source }) => source), book);
    expect([plan.feasible, plan.currency]).toEqual([true, 'EUR']);
    expect(plan.issues.map(({ code }) => code)).not.toContain('mixed-currencies');
  });

  test.each(['piecePrice', 'toolCost', 'setupCost', 'freightPerPiece'] as const)('of a source that states its %s alone does', async (field) => {
    const plan = await chooseSources(inTwo(({ piecePrice: _, toolCost: __, setupCost: ___, ...source }) => ({ ...source, [field]: 3 })), book);
    expect(plan.issues.map(({ code }) => code)).toContain('mixed-currencies');
  });
});

describe('time that is over', () => {
  test('is not spoken of where there is nothing to choose', async () => {
    const single = plannedCabin(4, { parts: 4, sources: 1 });
    const { words } = await chooseSources(single, book, { best: 3, timeLimitS: 1 }, { clock: jumps(1) });
    expect(words[0]).toBe('Every part has only one source that may be picked: there is nothing to choose.');
    expect(words.join(' ')).not.toContain('time allowed');
  });

  test('takes nothing from a proof that there is no mend: what is told of it is one thing', async () => {
    // Nothing may change, and a joint is broken: there is no plan whatever the time.
    const still = plannedCabin(11, { parts: 5, sources: 1, scatter: 0.16, part: () => ({ mend: { reach: { L: 0, a: 0, b: 0, gloss: 0 } } }) });
    let proved = 0;
    for (const looks of [0, 1, 2, 4, 8, 1000]) {
      const plan = await mendCabin(still, book, { timeLimitS: 1 }, { clock: jumps(looks) });
      const words = plan.words.join(' ');
      expect([plan.feasible, words.includes('There is no plan within reach')]).toEqual([false, plan.proved]);
      expect(words.includes('is not proved')).toBe(!plan.proved);
      if (plan.proved) {
        proved++;
        expect(plan.blockers.length).toBeGreaterThan(0);
      }
    }
    expect(proved).toBeGreaterThan(0);
  });
});

describe('sentences of large cabins', () => {
  const names = (count: number): string[] => Array.from({ length: count }, (_, index) => `n${index}`);
  test('name the first and count the others', () => {
    expect([named([]), named(['a']), named(['a', 'b']), named(['a', 'b', 'c'])]).toEqual(['', 'a', 'a and b', 'a, b and c']);
    expect(named(names(9))).toBe('n0, n1, n2, n3, n4, n5, n6, n7 and n8');
    expect(named(names(1000))).toBe('n0, n1, n2, n3, n4, n5, n6, n7 and 992 others');
  });

  test('stay sentences where very many targets clash; the list itself is whole', async () => {
    const plan = await apportionCabin(plannedCabin(11, { parts: 60, sources: 1, scatter: 0.5 }), book, { draws: 1 });
    expect(plan.targetsClash.length).toBeGreaterThan(20);
    for (const sentence of plan.words) expect(sentence.length).toBeLessThan(500);
    expect(plan.words.join(' ')).toContain(`and ${plan.targetsClash.length - 8} others`);
  });
});
