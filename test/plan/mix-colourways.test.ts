import { describe, expect, test } from 'vitest';
import type { Cabin, Joint, Part, Source } from '../../src/cabin/cabin.ts';
import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import type { PairVerdict } from '../../src/harmony/pair-verdict.ts';
import { clashShare } from '../../src/plan/mix/clash-share.ts';
import { freeMix } from '../../src/plan/mix/free-mix.ts';
import { labelHarm } from '../../src/plan/mix/label-harm.ts';
import { largestMix } from '../../src/plan/mix/largest-mix.ts';
import { mixModel } from '../../src/plan/mix/mix-model.ts';
import type { PairJudge } from '../../src/plan/model/pair-judge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { plannedCabin } from './support/planned-cabin.ts';

/**
 * Two colourways by chance: `c` parts are carried over and have the same sources in both, `own` parts have the same id and not the mark.
 * Expected values: every cabin of each colourway that may be built, and every set of sources that might be kept, listed one by one.
 */
interface Pair {
  readonly cabins: readonly Cabin[];
  readonly judges: readonly PairJudge[];
}

function colourways(seed: number): Pair {
  const random = seededNumbers(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const sourcesOf = (count: number): Source[] => Array.from({ length: count }, (_, index) => ({
    id: `s${index}`, supplier: ['ferrow', 'quill', 'tarn'][index], material: 'moulded', surface: 'solid', status: 'approved',
    specimens: [{ id: `x-${seed}-${index}`, kind: 'plaque', lot: { id: 'a' }, readings: [] }],
  }));
  const carried = Array.from({ length: 1 + whole(2) }, (_, index) => ({ id: `c${index}`, count: 1 + whole(3) }));
  const cabins = [0, 1].map((which): Cabin => {
    const part = (id: string, count: number, frozen: boolean): Part => {
      const shares = Array.from({ length: count }, () => 1 + whole(4));
      const sum = shares.reduce((total, share) => total + share, 0);
      const sources = sourcesOf(count).map((source, index) => ({ ...source, share: shares[index] / sum }));
      // The second document lists its sources the other way round.
      return { id, name: id, zone: 'dash', sources: which === 1 ? sources.reverse() : sources, ...(frozen && which === 1 ? { frozen } : {}) };
    };
    const parts = [...carried.map(({ id, count }) => part(id, count, true)), ...Array.from({ length: whole(3) }, (_, index) => part(`own${index}`, 1 + whole(2), false))];
    const pairs = Array.from({ length: parts.length < 2 ? 0 : 1 + whole(4) }, () => [whole(parts.length), whole(parts.length)] as const).filter(([a, b]) => a !== b);
    return smallCabin({
      id: `colourway-${which}`, name: `Colourway ${which} (invented)`, parts, runs: [], masters: [], zones: [{ id: 'dash', name: 'Dash' }], volume: 1000 * (1 + whole(3)),
      joints: pairs.map(([a, b], index): Joint => ({ id: `j${index}`, parts: [parts[a].id, parts[b].id], kind: 'edge', intent: { colour: 'match', gloss: 'match', texture: 'free' } })),
    });
  });
  const judges = cabins.map((cabin) => {
    const known = new Map<string, PairVerdict>();
    for (const joint of cabin.joints) for (const a of sourcesOf(3)) for (const b of sourcesOf(3)) {
      const draw = random();
      known.set(`${joint.id} ${a.id} ${b.id}`, draw < 0.65 ? { verdict: 'holds', accepted: false, limitUse: 0.5, totalProbability: 1 }
        : draw < 0.8 ? { verdict: 'open', accepted: false, limitUse: 1, totalProbability: random() } : { verdict: 'clashes', accepted: random() < 0.2, limitUse: 2, totalProbability: 0 });
    }
    return { context: { index: cabinIndex(cabin) }, at: (joint: Joint, a: string, b: string) => known.get(`${joint.id} ${a} ${b}`)! } as unknown as PairJudge;
  });
  return { cabins, judges };
}

const everyChoice = <T>(lists: readonly (readonly T[])[]): T[][] => lists.reduce<T[][]>((all, list) => all.flatMap((head) => list.map((each) => [...head, each])), [[]]);
const everySome = <T>(list: readonly T[]): T[][] => Array.from({ length: 2 ** list.length - 1 }, (_, mask) => list.filter((__, index) => ((mask + 1) >> index) & 1));

/** Share of the cabins of one colourway with a clash, over every cabin that may be built; with `only`, of the part's sources these alone. */
function listedShare({ cabins, judges }: Pair, which: number, part?: string, only?: (source: string) => boolean): number {
  const { parts, joints } = cabins[which];
  const running = parts.map((own) => own.sources.filter(({ id }) => own.id !== part || only?.(id) !== false));
  const sums = running.map((sources) => sources.reduce((sum, { share }) => sum + share!, 0));
  return everyChoice(running).reduce((total, taken) => {
    const weight = taken.reduce((product, { share }, index) => (product * share!) / sums[index], 1);
    const of = (id: string): string => taken[parts.findIndex((own) => own.id === id)].id;
    const none = joints.reduce((product, joint) => {
      const { verdict, accepted, totalProbability } = judges[which].at(joint, of(joint.parts[0]), of(joint.parts[1]));
      return product * (verdict === 'clashes' ? (accepted ? 1 : 0) : verdict === 'open' ? totalProbability : 1);
    }, 1);
    return total + weight * (1 - none);
  }, 0);
}

describe('500 seeded pairs of colourways that share carry-over parts', () => {
  const pairs = Array.from({ length: 500 }, (_, index) => colourways(index + 1));

  test('share of the cabins with a clash in each, by the shares of each', async () => {
    for (const [index, pair] of pairs.entries()) {
      const { problem } = await mixModel(pair.cabins, pair.judges, undefined);
      for (const which of [0, 1]) expect(clashShare(problem, which).share, `pair ${index}`).toBeCloseTo(listedShare(pair, which), 9);
    }
  });

  test('what dropping a source saves: a carried-over one is dropped in both', async () => {
    for (const [index, pair] of pairs.entries()) {
      const { problem, variables } = await mixModel(pair.cabins, pair.judges, undefined);
      const volumes = pair.cabins.map(({ volume }) => volume!);
      const weights = volumes.map((volume) => volume / (volumes[0] + volumes[1]));
      const over = (share: (which: number) => number): number => weights[0] * share(0) + weights[1] * share(1);
      const whole = over((which) => listedShare(pair, which));
      for (const [at, { parts: [part], cabins, alternatives }] of variables.entries()) {
        expect(cabins.length, `pair ${index}`).toBe(part.startsWith('c') ? 2 : 1);
        for (const [label, { harm }] of labelHarm(problem, weights, at).entries()) {
          const source = alternatives[label][0].id;
          const without = over((which) => (cabins.includes(which) ? listedShare(pair, which, part, (id) => id !== source) : listedShare(pair, which)));
          expect(harm, `pair ${index}`).toBeCloseTo(whole - without, 9);
        }
      }
    }
  });

  test('the largest set that may be mixed freely holds in both', async () => {
    let shared = 0;
    for (const [index, pair] of pairs.entries()) {
      const { problem } = await mixModel(pair.cabins, pair.judges, undefined);
      const found = await largestMix(problem);
      // Sets of sources: one for each carried-over part, one for each other part of each cabin.
      const names = [...new Set(pair.cabins.flatMap(({ parts }, which) => parts.map(({ id }) => (id.startsWith('c') ? id : `${which} ${id}`))))];
      const sourcesOf = (name: string): string[] => pair.cabins.flatMap(({ parts }, which) => parts.filter(({ id }) => id === name || `${which} ${id}` === name))[0].sources.map(({ id }) => id);
      let best = [Infinity, 0];
      for (const kept of everyChoice(names.map((name) => everySome(sourcesOf(name))))) {
        const of = (which: number, id: string): string[] => kept[names.indexOf(id.startsWith('c') ? id : `${which} ${id}`)];
        const unclear = pair.cabins.reduce((sum, { joints }, which) => sum + joints.filter((joint) => of(which, joint.parts[0]).some((a) => of(which, joint.parts[1]).some((b) => {
          const { verdict, accepted } = pair.judges[which].at(joint, a, b);
          return verdict !== 'holds' && !accepted;
        }))).length, 0);
        const size = kept.flat().length;
        if (unclear < best[0] || (unclear === best[0] && size > best[1])) best = [unclear, size];
      }
      expect([found.unavoidable.length, found.kept.flat().length, found.proved], `pair ${index}`).toEqual([...best, true]);
      if (names.some((name) => name.startsWith('c') && sourcesOf(name).length > 1)) shared++;
    }
    expect(shared).toBeGreaterThan(200);
  });
});

describe('in words', () => {
  const book = builtInRuleBooks[0];
  const slate = { ...plannedCabin(4, { parts: 3, sources: 2, scatter: 0.2 }), id: 'slate', colourway: 'Slate' };
  const chalk: Cabin = { ...plannedCabin(4, { parts: 3, sources: 2, scatter: 0.2, part: (index) => (index === 1 ? { frozen: true } : {}) }), id: 'chalk', colourway: 'Chalk' };

  test('what is carried over is said, and every harm says where it is', async () => {
    const mix = await freeMix([slate, chalk], book);
    expect(mix.carried).toEqual(['p1']);
    expect(mix.words.join(' ')).toContain('One part is carried over between them');
    expect(mix.harm.filter(({ part }) => part === 'p1').map(({ cabins }) => cabins)).toEqual([['slate', 'chalk'], ['slate', 'chalk']]);
    expect(mix.harm.filter(({ part }) => part === 'p0').every(({ cabins }) => cabins.length === 1)).toBe(true);
    // Two colourways with the same readings have the same share, alone and together.
    const alone = await freeMix([slate], book);
    expect(mix.cabins.map(({ share }) => share)).toEqual([alone.share, alone.share]);
    expect(mix.share).toBeCloseTo(alone.share, 12);
  });

  test('one id for two is refused; a carry-over part with other sources is told and mixed apart', async () => {
    expect((await freeMix([slate, { ...chalk, id: 'slate' }], book)).issues.map(({ code, severity }) => [code, severity])).toContainEqual(['duplicate-id', 'error']);
    const other = { ...chalk, parts: chalk.parts.map((part) => (part.id === 'p1' ? { ...part, sources: part.sources.slice(0, 1) } : part)) };
    const mix = await freeMix([slate, other], book);
    expect(mix.carried).toEqual([]);
    expect(mix.issues.map(({ code, path }) => [code, path])).toEqual([['carry-over-differs', 'part p1']]);
  });
});
