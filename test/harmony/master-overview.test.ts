import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Cabin, Specimen } from '../../src/cabin/cabin.ts';
import { judgeCabin } from '../../src/harmony/judge.ts';
import { driftSentence, masterOverview } from '../../src/harmony/index.ts';
import type { Lab } from '../../src/quantities.ts';
import type { Reading } from '../../src/readings/reading.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { glosses, twoPartCabin } from '../support/two-part-cabin.ts';

const [book] = builtInRuleBooks;
/** CIELAB under every required light, so that colours are written down and not computed. */
const colour = (lab: Lab, day = '2026-02-01', conditions = 'annular'): Reading[] => ['D65', 'A', 'FL11', 'LED-B3'].flatMap((light) =>
  [0, 1, 2, 3, 4].map((spot): Reading => ({ quantity: 'cielab', spot: { name: `s${spot}` }, conditions, lab, light, observer: 10, measuredAt: day })));
const master = (id: string, readings: Reading[], more: Partial<Specimen> = {}): Specimen => ({ id, kind: 'master', readings, ...more });
const ciede2000 = (first: Lab, second: Lab): number => {
  const point = ([l, a, b]: Lab) => ({ mode: 'lab65' as const, l, a, b });
  return differenceCiede2000()(point(first), point(second));
};

const middle: Lab = [30, 0, -1];
const [dark, light]: Lab[] = [[29.3, 0, -1], [30.7, 0, -1]];

function cabinOf(masters: readonly Specimen[], more: Partial<Cabin> = {}): Cabin {
  const target = { master: 'm', colourLimit: 0.9, glossLimit: 0.6 };
  return {
    ...twoPartCabin({ readings: [...colour(dark)], gloss60: 2, target }, { readings: [...colour(light)], gloss60: 2, target }),
    masters: [...masters], ...more,
  };
}

const overview = (masters: readonly Specimen[], more?: Partial<Cabin>) => masterOverview(judgeCabin(cabinOf(masters, more), book));

describe('masters of a cabin', () => {
  const whole = overview([master('m', [...colour(middle), ...glosses(2)], { issue: '2', producedOn: '2025-06-01', expires: '2026-03-31', remeasureOn: '2026-02-15' })]);
  const [entry] = whole.masters;

  it('are told with their dates on the day of the judgement', () => {
    // As of 1 March 2026: 30 days to the end of March, 14 since 15 February.
    expect(entry).toMatchObject({ master: 'm', issue: '2', expires: { on: '2026-03-31', days: 30 }, remeasure: { on: '2026-02-15', days: -14 }, state: 'remeasure due', lastMeasured: '2026-02-01' });
    expect(entry.lab?.lab).toEqual(middle);
    expect(entry.gloss).toEqual([{ angle: 60, mean: 2, spots: 5 }]);
    const state = (more: Partial<Specimen>) => overview([master('m', colour(middle), more)]).masters[0].state;
    expect(state({})).toBe('in force');
    expect(state({ expires: '2026-03-01' })).toBe('in force');
    expect(state({ expires: '2026-02-28' })).toBe('expired');
  });

  it('show each part against the master and against its neighbours', () => {
    expect(entry.parts.map(({ part, name, supplier }) => [part, name, supplier])).toEqual([['a', 'Panel A', 'maker'], ['b', 'Panel B', 'maker']]);
    const [first, second] = entry.parts;
    expect(first.colour?.value).toBeCloseTo(ciede2000(middle, dark), 8);
    expect(second.colour?.value).toBeCloseTo(ciede2000(middle, light), 8);
    expect(first.neighbours).toMatchObject([{ joint: 'a-b', part: 'b', verdict: 'clashes' }]);
  });

  it('find what is within its master and clashes all the same', () => {
    expect(entry.parts.map(({ withinYetClashing }) => withinYetClashing)).toEqual([true, true]);
    const [pair] = whole.withinYetClashing;
    expect(pair).toMatchObject({ joint: 'a-b', parts: ['a', 'b'], masters: ['m', 'm'], check: 'colour', accepted: false });
    // Both below 0.9 of the master, the pair above 0.7 of two moulded parts; with culori.
    expect(pair.masterUses[0]).toBeCloseTo(ciede2000(middle, dark) / 0.9, 8);
    expect(pair.masterUses[1]).toBeCloseTo(ciede2000(middle, light) / 0.9, 8);
    expect(Math.max(...pair.masterUses)).toBeLessThan(1);
    expect(pair.jointUse).toBeGreaterThan(1);
    expect(pair.sentence).toMatch(/^Panel A uses \d\d % and Panel B \d\d % of what their master allows, and together they use \d{3} % of the colour limit of their joint under /u);
  });

  it('do not count a part that is outside its master', () => {
    const strict = { master: 'm', colourLimit: 0.3 };
    const tight = cabinOf([master('m', colour(middle))]);
    const outside = masterOverview(judgeCabin({ ...tight, parts: tight.parts.map((part) => ({ ...part, target: strict })) }, book));
    expect(outside.withinYetClashing).toEqual([]);
    expect(outside.masters[0].parts.every(({ withinYetClashing }) => !withinYetClashing)).toBe(true);
  });

  it('name measured parts that are held to none', () => {
    expect(whole.partsWithoutMaster).toEqual([]);
    const free = cabinOf([master('m', colour(middle))]);
    expect(masterOverview(judgeCabin({ ...free, parts: free.parts.map((part) => ({ ...part, target: undefined })) }, book)).partsWithoutMaster).toEqual(['a', 'b']);
  });
});

describe('the drift of a master', () => {
  const before: Lab = [30.4, 0.1, -1.2];

  it('is told against its parent, with culori', () => {
    const [old, now] = overview([
      master('m-old', [...colour(before), ...glosses(2.4)], { issue: '1' }), master('m', [...colour(middle), ...glosses(2)], { issue: '2', parentMaster: 'm-old' }),
    ]).masters;
    expect(old).toMatchObject({ state: 'replaced', children: ['m'], drifts: [] });
    const [drift] = now.drifts;
    expect(drift.since).toEqual({ kind: 'parent', master: 'm-old', issue: '1' });
    expect(drift.worst?.value).toBeCloseTo(ciede2000(before, middle), 8);
    expect(drift.worst?.limitShare).toBeCloseTo(ciede2000(before, middle) / 0.9, 8);
    expect(drift.lights[0].difference.dL).toBeCloseTo(-0.4, 10);
    expect(drift.gloss).toEqual([{ angle: 60, change: expect.closeTo(-0.4, 10) as number }]);
    expect(driftSentence(drift)).toMatch(/^Against its parent m-old, issue 1 it is darker.* by 0\.\d\d CIEDE2000 under .*, \d+ % of the strictest limit held to it\.$/u);
  });

  it('is told against its own first readings', () => {
    const [{ drifts }] = overview([master('m', [...colour(before, '2025-06-01'), ...colour(middle, '2026-02-01')])]).masters;
    expect(drifts.map(({ since }) => since)).toEqual([{ kind: 'first readings', from: '2025-06-01', to: '2026-02-01' }]);
    expect(drifts[0].worst?.value).toBeCloseTo(ciede2000(before, middle), 8);
  });

  it('is not told between unlike geometries', () => {
    const [, now] = overview([master('m-old', colour(before, '2025-06-01', 'sphere')), master('m', colour(middle), { parentMaster: 'm-old' })]).masters;
    expect(now.drifts[0]).toMatchObject({ lights: [], notCompared: 'one side was measured at di:8, the other at 45:0' });
    expect(now.drifts[0].worst).toBeUndefined();
    expect(overview([master('m', [...colour(before, '2025-06-01', 'sphere'), ...colour(middle)])]).masters[0].drifts).toEqual([]);
  });
});
