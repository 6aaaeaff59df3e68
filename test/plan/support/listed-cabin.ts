import type { Cabin, Joint, Part, Source } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { PairVerdict } from '../../../src/harmony/pair-verdict.ts';
import type { PairJudge } from '../../../src/plan/model/pair-judge.ts';
import type { ModelTerms } from '../../../src/plan/model/plan-model.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';
import { smallCabin } from '../../support/small-cabin.ts';

/** Invented cabins so small that every set of their sources can be listed, with verdicts drawn by chance in place of readings. */
export interface ListedCabin {
  readonly cabin: Cabin;
  readonly judge: PairJudge;
  readonly terms: ModelTerms;
}

/** One set of sources with what it comes to, reckoned from the cabin and the terms as they are written. */
export interface ListedSet {
  readonly picks: Readonly<Record<string, string>>;
  readonly clashes: number;
  readonly overUse: number;
  readonly cost: number;
  readonly lead: number;
}

const suppliers = ['ferrow', 'quill', 'tarn', 'usk'] as const;

export function listedCabin(seed: number): ListedCabin {
  const random = seededNumbers(seed);
  const whole = (below: number): number => Math.floor(random() * below);
  const maybe = <T>(chance: number, value: T): T | undefined => (random() < chance ? value : undefined);
  const count = 1 + whole(6);
  const source = (part: number, index: number): Source => ({
    id: `s${index}`, supplier: suppliers[whole(4)], material: 'moulded', surface: 'solid', status: (['candidate', 'approved', 'series'] as const)[whole(3)], currency: 'XTS',
    piecePrice: 1 + whole(20), ...(random() < 0.5 ? { toolCost: 100 * whole(30) } : {}), ...(random() < 0.5 ? { setupCost: 50 * whole(9) } : {}),
    ...(random() < 0.85 ? { leadWeeks: 2 + whole(12) } : {}), ...(random() < 0.2 ? { volumePrices: [{ fromVolume: 500, piecePrice: 1 + whole(20) }] } : {}),
    specimens: [{ id: `x${part}-${index}`, kind: 'plaque', lot: { id: 'a' }, readings: [] }],
  });
  const parts = Array.from({ length: count }, (_, index): Part => {
    const sources = Array.from({ length: 1 + whole(4) }, (__, at) => source(index, at));
    const module = maybe(0.2, 'set');
    return {
      id: `p${index}`, name: `Part ${index}`, zone: 'dash', visibility: random() < 0.5 ? 1 : 0.5, sources, source: `s${whole(sources.length)}`,
      ...(module === undefined ? {} : { module }), ...(random() < 0.15 ? { frozen: true } : {}),
    };
  });
  const pairs = Array.from({ length: count < 2 ? 0 : whole(2 * count) }, () => [whole(count), whole(count)] as const).filter(([a, b]) => a !== b);
  const joints = pairs.map(([a, b], index): Joint => ({
    id: `j${index}`, parts: [`p${a}`, `p${b}`], kind: 'edge', lengthMm: 200 * (1 + whole(5)), viewMm: 700, intent: { colour: 'match', gloss: 'match', texture: 'free' },
  }));
  const cabin = smallCabin({
    id: `listed-${seed}`, name: 'Cabin to list (invented)', parts, joints, runs: [], masters: [], zones: [{ id: 'dash', name: 'Dash' }], volume: 100 + 100 * whole(9),
    suppliers: suppliers.map((id) => ({ id, name: id, ...(random() < 0.5 ? { setupCost: 100 * whole(40) } : {}) })),
  });
  const known = new Map<string, PairVerdict>();
  const drawn = (): PairVerdict => {
    const draw = random();
    if (draw < 0.45) return { verdict: 'holds', accepted: false, limitUse: whole(11) / 10, totalProbability: 1 };
    if (draw < 0.7) return { verdict: 'open', accepted: false, limitUse: 0.8 + whole(7) / 10, totalProbability: whole(10001) / 1e4 };
    return { verdict: 'clashes', accepted: random() < 0.15, limitUse: 1.1 + whole(120) / 10, totalProbability: 0 };
  };
  // Drawn in one order beforehand, so that a judge asked in another order says the same.
  for (const joint of joints) for (const a of partOf(cabin, joint.parts[0]).sources) for (const b of partOf(cabin, joint.parts[1]).sources) known.set(`${joint.id} ${a.id} ${b.id}`, drawn());
  const judge = {
    context: { index: cabinIndex(cabin) }, at: (joint: Joint, first: string, second: string) => known.get(`${joint.id} ${first} ${second}`)!,
  } as unknown as PairJudge;
  const anyPart = parts[whole(count)];
  const two = [whole(count), whole(count)] as const;
  const volume = maybe(0.2, 600);
  const budget = maybe(0.35, whole(count * 14_000));
  const maxSuppliers = maybe(0.35, 1 + whole(3));
  const maxLeadWeeks = maybe(0.25, 5 + whole(10));
  const without = maybe(0.2, suppliers[whole(4)]);
  const what = random() < 0.5 ? 'supplier' as const : 'source' as const;
  return {
    cabin, judge,
    terms: {
      ...(volume === undefined ? {} : { volume }), ...(budget === undefined ? {} : { budget }), ...(maxSuppliers === undefined ? {} : { maxSuppliers }),
      ...(maxLeadWeeks === undefined ? {} : { maxLeadWeeks }), ...(without === undefined || !parts.some((part) => part.sources.some(({ supplier }) => supplier === without)) ? {} : { without: [without] }),
      ...(random() < 0.2 ? { locked: { [anyPart.id]: anyPart.sources[whole(anyPart.sources.length)].id } } : {}),
      ...(random() < 0.25 && two[0] !== two[1] ? { shares: [{ parts: two.map((index) => `p${index}`), what }] } : {}),
      ...(random() < 0.3 ? { seriesPaid: true } : {}), ...(random() < 0.3 ? { releaseFrozen: true } : {}),
    },
  };
}

const partOf = (cabin: Cabin, id: string): Part => cabin.parts.find((part) => part.id === id)!;

/** Every set that the terms allow, the best first. */
export function everyListedSet({ cabin, judge, terms }: ListedCabin): ListedSet[] {
  const volume = terms.volume ?? cabin.volume ?? 1;
  const paid = (source: Source): boolean => terms.seriesPaid === true && source.status === 'series';
  const stays = (part: Part): boolean => part.frozen === true && terms.releaseFrozen !== true;
  // A carry-over part is not waited for as long as it stays by the source it has.
  const runs = (part: Part, source: Source): boolean => stays(part) && source.id === part.source;
  const mayServe = (part: Part, source: Source): boolean => {
    const lock = terms.locked?.[part.id];
    if (lock === undefined ? stays(part) && source.id !== part.source : source.id !== lock) return false;
    if (terms.without?.includes(source.supplier)) return false;
    if (terms.maxLeadWeeks === undefined || runs(part, source)) return true;
    const lead = paid(source) ? 0 : source.leadWeeks;
    return lead !== undefined && lead <= terms.maxLeadWeeks;
  };
  const sets: ListedSet[] = [];
  const visit = (taken: readonly Source[]): void => {
    if (taken.length < cabin.parts.length) {
      const part = cabin.parts[taken.length];
      for (const source of part.sources) if (mayServe(part, source)) visit([...taken, source]);
      return;
    }
    const of = (id: string): Source => taken[cabin.parts.findIndex((part) => part.id === id)];
    const modules = new Set(cabin.parts.flatMap(({ module }) => module ?? []));
    for (const module of modules) if (new Set(cabin.parts.filter((part) => part.module === module).map((part) => of(part.id).supplier)).size > 1) return;
    for (const { parts, what } of terms.shares ?? []) if (new Set(parts.map((id) => (what === 'supplier' ? of(id).supplier : of(id).id))).size > 1) return;
    const used = new Set(taken.map(({ supplier }) => supplier));
    if (used.size > (terms.maxSuppliers ?? Infinity)) return;
    let cost = cabin.suppliers.reduce((sum, supplier) => sum + (used.has(supplier.id) ? supplier.setupCost ?? 0 : 0), 0);
    for (const source of taken) {
      const step = (source.volumePrices ?? []).find(({ fromVolume }) => fromVolume <= volume);
      cost += volume * (step?.piecePrice ?? source.piecePrice ?? 0) + (paid(source) ? 0 : (source.toolCost ?? 0) + (source.setupCost ?? 0));
    }
    if (cost > (terms.budget ?? Infinity)) return;
    let [clashes, overUse] = [0, 0];
    for (const joint of cabin.joints) {
      const { verdict, accepted, limitUse, totalProbability } = judge.at(joint, of(joint.parts[0]).id, of(joint.parts[1]).id);
      if (verdict === 'clashes' && !accepted) clashes += 1;
      if (verdict === 'open') clashes += 1 - totalProbability;
      const seen = Math.max(...joint.parts.map((id) => partOf(cabin, id).visibility ?? 1));
      overUse += Math.max(0, Math.min(10, limitUse!) - 1) * seen * (joint.lengthMm! / 1000);
    }
    sets.push({
      clashes, overUse, cost, picks: Object.fromEntries(cabin.parts.map((part, index) => [part.id, taken[index].id])),
      lead: Math.max(0, ...taken.map((source, index) => (paid(source) || runs(cabin.parts[index], source) ? 0 : source.leadWeeks ?? 0))),
    });
  };
  visit([]);
  return sets.sort(compareListed);
}

const nearly = (a: number, b: number): number => (Math.abs(a - b) < 1e-7 ? 0 : a - b);
export const compareListed = (a: Omit<ListedSet, 'picks' | 'lead'>, b: Omit<ListedSet, 'picks' | 'lead'>): number => nearly(a.clashes, b.clashes) || nearly(a.overUse, b.overUse) || nearly(a.cost, b.cost);
