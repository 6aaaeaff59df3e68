import { describe, expect, test } from 'vitest';
import { deadline, shareOf, withinTime } from '../../src/plan/deadline.ts';
import { chooseSources, mendCabin } from '../../src/plan/index.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { plannedCabin } from './support/planned-cabin.ts';

const book = builtInRuleBooks[0];
/** A clock that stands still and then jumps, once it has been looked at so often: the moment when time runs out is the same on every machine. */
const jumps = (looks: number, to: number): (() => number) => {
  let looked = 0;
  return () => (looked++ < looks ? 0 : to);
};

describe('a deadline', () => {
  test('counts from when it is set, by the caller\'s clock; a share of it ends sooner', () => {
    let now = 100;
    const watch = { clock: () => now };
    const whole = deadline(10, watch);
    now = 104;
    expect([whole.left(), whole.passed()]).toEqual([6, false]);
    const half = shareOf(whole, 0.5, watch);
    now = 107.5;
    expect([half.left(), half.passed(), whole.left()]).toEqual([0, true, 2.5]);
    expect(withinTime(whole)).toEqual({ timeLimitS: 2.5 });
    now = 1000;
    expect([whole.left(), whole.passed()]).toEqual([0, true]);
    expect([deadline(undefined, watch).left(), deadline(3, undefined).left()]).toEqual([undefined, 3]);
  });
});

describe('a mend whose time runs out', () => {
  const cabin = plannedCabin(11, { parts: 5, sources: 1, scatter: 0.16 });

  test('gives what it has with a bound that the whole search confirms, and never calls it proved', async () => {
    const whole = await mendCabin(cabin, book);
    expect(whole.proved && whole.cost >= 2).toBe(true);
    const met = { some: 0, none: 0 };
    // Past all of the time, and past the share of it that the least plan may have: then any plan is looked for in what is left.
    for (const [looks, to] of [1, 2, 4, 8, 16, 32].flatMap((each) => [[each, 2], [each, 0.8]] as const)) {
      const short = await mendCabin(cabin, book, { timeLimitS: 1 }, { clock: jumps(looks, to) });
      expect(short.bound).toBeLessThanOrEqual(whole.cost);
      if (!short.outOfTime) continue;
      met[short.feasible ? 'some' : 'none']++;
      if (!short.feasible) {
        expect(short.words[0]).toContain('No plan was found in the time allowed. That there is none is not proved');
        expect(short.blockers).toEqual([]);
        continue;
      }
      expect(short.kept).toBe(true);
      expect(short.cost).toBeGreaterThanOrEqual(whole.cost);
      expect(short.gap).toBeCloseTo(short.cost - short.bound, 9);
      if (!short.proved) expect(short.words.join(' ')).toMatch(/is not proved in the time allowed(: at least (one part|\d+ parts) must change, with this plan \d+ do)?\./);
    }
    // The times are such that both ends are met: no plan at all, and a plan without its proof or with it.
    expect(met.none).toBeGreaterThan(0);
    expect(met.some).toBeGreaterThan(0);
  });
});

describe('a choice whose time runs out', () => {
  test('still gives the best set where that was found, and names what was left out', async () => {
    const cabin = plannedCabin(2, { parts: 4, sources: 3, scatter: 0.1 });
    const whole = await chooseSources(cabin, book, { best: 3, front: 5 });
    const short = await chooseSources(cabin, book, { best: 3, front: 5, timeLimitS: 1 }, { clock: jumps(6, 2) });
    expect(short.sets[0].picks).toEqual(whole.sets[0].picks);
    expect([short.sets.length, short.front, short.dropOuts.length]).toEqual([1, undefined, 0]);
    expect(short.words.join(' ')).toContain('The time allowed was over before the next best sets, the front of cost and harmony, why the other sources were not picked and what becomes of it if a supplier drops out could be found.');
  });
});
