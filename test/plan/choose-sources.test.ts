import { describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judge, judgeCabin } from '../../src/harmony/judge.ts';
import { pairVerdict } from '../../src/harmony/pair-verdict.ts';
import { chooseSources } from '../../src/plan/choose/choose-sources.ts';
import type { ChooseOptions } from '../../src/plan/choose/choose-sources.ts';
import { spread } from '../../src/plan/choose/cost-front.ts';
import { freeMix } from '../../src/plan/mix/free-mix.ts';
import { runningSources } from '../../src/plan/mix/mix-model.ts';
import { piecePriceAt, sourceCost } from '../../src/plan/model/source-cost.ts';
import { withPicks } from '../../src/plan/model/with-picks.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { plannedCabin } from './support/planned-cabin.ts';

const book = builtInRuleBooks[0];

/** Every set of sources, judged whole by the ordinary check and priced by hand: the definition that the plan is held to. */
function everySet(cabin: Cabin): { picks: Record<string, string>; clashes: number; overUse: number; cost: number; lead: number; suppliers: number }[] {
  const sets = cabin.parts.reduce<Record<string, string>[]>((all, part) => all.flatMap((picks) => part.sources.map((source) => ({ ...picks, [part.id]: source.id }))), [{}]);
  return sets.map((picks) => {
    const judgement = judge(withPicks(cabin, picks), book);
    const sources = cabin.parts.map((part) => part.sources.find((source) => source.id === picks[part.id])!);
    const suppliers = new Set(sources.map((source) => source.supplier));
    let [clashes, overUse] = [0, 0];
    judgement.joints.forEach((joint, index) => {
      clashes += joint.verdict === 'clashes' ? 1 : joint.verdict === 'open' ? 1 - joint.totalProbability : 0;
      const visibility = Math.max(...joint.parts.map((id) => cabin.parts.find((part) => part.id === id)?.visibility ?? 1));
      overUse += Math.max(0, Math.min(10, joint.limitUse ?? 0) - 1) * visibility * (cabin.joints[index].lengthMm ?? NaN) / 1000;
    });
    const cost = sources.reduce((sum, source) => sum + 1000 * (source.piecePrice ?? 0) + (source.toolCost ?? 0) + (source.setupCost ?? 0), 0)
      + cabin.suppliers.reduce((sum, supplier) => sum + (suppliers.has(supplier.id) ? supplier.setupCost ?? 0 : 0), 0);
    return { picks, clashes, overUse, cost, lead: Math.max(...sources.map((source) => source.leadWeeks ?? 0)), suppliers: suppliers.size };
  });
}

describe('small cabins against every set of sources, each judged whole', () => {
  const ring = [[0, 1], [1, 2], [2, 3], [3, 0]] as const;
  const asks: readonly ChooseOptions[] = [{}, { maxSuppliers: 2 }, { maxLeadWeeks: 15 }, { budget: 75_000 }, { locked: { p1: 'p1-s1' } }, { without: ['quill'] }];
  test.each([1, 2, 3])('cabin %i', async (seed) => {
    const cabin = plannedCabin(seed, { parts: 4, sources: 2, joints: ring });
    const all = everySet(cabin);
    for (const ask of asks) {
      const allowed = all.filter((set) => set.suppliers <= (ask.maxSuppliers ?? 99) && set.lead <= (ask.maxLeadWeeks ?? 99) && set.cost <= (ask.budget ?? Infinity)
        && Object.entries(ask.locked ?? {}).every(([part, source]) => set.picks[part] === source)
        && cabin.parts.every((part) => !(ask.without ?? []).includes(part.sources.find((source) => source.id === set.picks[part.id])!.supplier)));
      // A plan tells clashes apart to one ten-thousandth and over-use to the same.
      const rank = (set: { clashes: number; overUse: number; cost: number }): number[] => [Math.round(set.clashes * 2000), Math.round(set.overUse * 1000), set.cost];
      allowed.sort((a, b) => a.clashes - b.clashes || a.overUse - b.overUse || a.cost - b.cost);
      const plan = await chooseSources(cabin, book, { ...ask, withoutReasons: true });
      expect(plan.feasible, JSON.stringify(ask)).toBe(allowed.length > 0);
      if (allowed.length === 0) {
        expect(plan.words.length).toBeGreaterThan(0);
        continue;
      }
      expect(rank(plan.sets[0]), JSON.stringify(ask)).toEqual(rank(allowed[0]));
      expect(plan.proved).toBe(true);
      expect(plan.after?.kept).toBe(true);
    }
  });

  test('the front and the free mix', async () => {
    const cabin = plannedCabin(4, { parts: 4, sources: 2, joints: ring });
    const all = everySet(cabin);
    const plan = await chooseSources(cabin, book, { front: 50 });
    for (const point of plan.front!.sets) {
      const beaten = all.filter((set) => set.cost <= point.cost && (set.clashes < point.clashes - 1e-3 || (Math.abs(set.clashes - point.clashes) < 1e-3 && set.overUse < point.overUse - 1e-3)));
      expect(beaten).toEqual([]);
      expect(point.proved).toBe(true);
    }
    const mix = await freeMix([cabin], book);
    const none = all.reduce((sum, { picks }) => {
      const joints = judge(withPicks(cabin, picks), book).joints;
      return sum + joints.reduce((product, joint) => product * (joint.verdict === 'clashes' ? 0 : joint.verdict === 'open' ? joint.totalProbability : 1), 1) / all.length;
    }, 0);
    expect(mix.cabins[0].share).toBeCloseTo(1 - none, 9);
  });

  test('the lean verdict of a joint is that of the ordinary check', () => {
    for (const cabin of [smallCabin(), plannedCabin(5, { parts: 6, sources: 1, scatter: 0.12, glossScatter: 0.5 })]) {
      const { context, bases, joints } = judgeCabin(cabin, book);
      for (const { result } of joints) {
        const lean = pairVerdict(context, cabin.joints.find((joint) => joint.id === result.id)!, bases);
        expect(lean).toEqual({ verdict: result.verdict, accepted: result.accepted, limitUse: result.limitUse, totalProbability: result.totalProbability });
      }
    }
  });
});

describe('answers in words', () => {
  test('an empty cabin, one part, parts that no joint ties', async () => {
    const empty = await chooseSources(plannedCabin(1, { parts: 0 }), book);
    expect(empty.words[0]).toBe('The cabin has no parts: there is nothing to choose.');
    const one = await chooseSources(plannedCabin(1, { parts: 1, sources: 3 }), book);
    expect(one.sets[0].clashes).toBe(0);
    const cheapest = Math.min(...everySet(plannedCabin(1, { parts: 1, sources: 3 })).map(({ cost }) => cost));
    expect(one.sets[0].cost).toBe(cheapest);
    const apart = await chooseSources(plannedCabin(1, { parts: 3, joints: [] }), book);
    expect(apart.feasible).toBe(true);
    expect(apart.sets[0].cost).toBe(Math.min(...everySet(plannedCabin(1, { parts: 3, joints: [] })).map(({ cost }) => cost)));
  });

  test('all parts locked or carried over', async () => {
    const cabin = plannedCabin(2, { parts: 3, part: () => ({ frozen: true }) });
    const plan = await chooseSources(cabin, book);
    expect(plan.words[0]).toBe('Every part has only one source that may be picked: there is nothing to choose.');
    expect(plan.sets[0].changed).toEqual([]);
    expect(plan.notPicked.map(({ because }) => because)).toEqual(['frozen', 'frozen', 'frozen']);
  });

  test('nothing allowed: the reason, with the figure that would do', async () => {
    const cabin = plannedCabin(3, { parts: 3 });
    const cheapest = Math.min(...everySet(cabin).map(({ cost }) => cost));
    const poor = await chooseSources(cabin, book, { budget: 10 });
    expect(poor.feasible).toBe(false);
    expect(poor.proved).toBe(true);
    expect(poor.words[0].replaceAll('\u00a0', '')).toBe(`The cheapest set that is otherwise allowed costs ${cheapest}EUR; 10EUR are allowed.`);
    const late = await chooseSources(cabin, book, { maxLeadWeeks: 1 });
    expect(late.words[0]).toContain('Nothing is left for Part 0');
    expect(late.words[0]).toContain('lead time');
  });

  test('a module that no one supplier serves', async () => {
    const cabin = plannedCabin(3, { parts: 2, sources: 1, part: () => ({ module: 'set' }) });
    const [first, second] = cabin.parts;
    const split: Cabin = { ...cabin, parts: [{ ...first, sources: [{ ...first.sources[0], supplier: 'ferrow' }] }, { ...second, sources: [{ ...second.sources[0], supplier: 'quill' }] }] };
    const plan = await chooseSources(split, book);
    expect(plan.words).toEqual(['Part 0, Part 1 go together (module set), and no one supplier can serve them all.']);
  });

  test('faults of what is asked are issues', async () => {
    const plan = await chooseSources(plannedCabin(3, { parts: 2 }), book, { locked: { px: 'a', p0: 'nope' }, without: ['nobody'], maxSuppliers: 0 });
    expect(plan.issues.filter(({ severity }) => severity === 'error').map(({ code }) => code)).toEqual(['unknown-part', 'unknown-source', 'unknown-supplier', 'bad-number']);
    expect(plan.feasible).toBe(false);
  });

  test('prices in two currencies are refused', async () => {
    const cabin = plannedCabin(3, { parts: 2 });
    const [first, ...rest] = cabin.parts;
    const mixed: Cabin = { ...cabin, parts: [{ ...first, sources: first.sources.map((source) => ({ ...source, currency: 'XTS' })) }, ...rest] };
    expect((await chooseSources(mixed, book)).issues.map(({ code }) => code)).toContain('mixed-currencies');
  });
});

describe('money and shares, worked by hand', () => {
  const [source] = plannedCabin(1, { parts: 1, sources: 1 }).parts[0].sources;
  test('the step of the volume prices that the volume reaches', () => {
    const priced = { ...source, piecePrice: 9, volumePrices: [{ fromVolume: 500, piecePrice: 8 }, { fromVolume: 2000, piecePrice: 7 }] };
    expect([100, 500, 1999, 2000].map((volume) => piecePriceAt(priced, volume))).toEqual([9, 8, 8, 7]);
    expect(sourceCost({ ...priced, toolCost: 100, setupCost: 10 }, 1000)).toBe(8110);
    expect(sourceCost({ ...priced, toolCost: 100, setupCost: 10, status: 'series' }, 1000, { seriesPaid: true })).toBe(8000);
  });

  test('shares of the volume: stated ones, the rest spread evenly, candidates left out', () => {
    const part = { ...plannedCabin(1, { parts: 1 }).parts[0], sources: [{ ...source, id: 'a', share: 0.5 }, { ...source, id: 'b' }, { ...source, id: 'c' }, { ...source, id: 'd', status: 'candidate' as const }] };
    expect(runningSources(part).map(({ source: { id }, share }) => [id, share])).toEqual([['a', 0.5], ['b', 0.25], ['c', 0.25]]);
  });

  test('points of a front spread over the money, both ends kept', () => {
    const points = [100, 90, 50, 49, 48, 10, 0].map((money) => ({ money }));
    expect(spread(points, 3).map(({ money }) => money)).toEqual([100, 50, 0]);
    expect(spread(points, 10)).toHaveLength(7);
  });
});
