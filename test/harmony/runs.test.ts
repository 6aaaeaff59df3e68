import { differenceCiede2000, differenceCmc } from 'culori';
import { describe, expect, test } from 'vitest';
import type { Cabin, Joint } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import type { RunResult } from '../../src/harmony/judgement.ts';
import { cmcBook } from '../../src/rules/cmc-book.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { independentLab } from '../support/independent-colorimetry.ts';
import type { SideOptions } from '../support/two-part-cabin.ts';
import { nanometres, partOf, spectrumOf, startNm, stepNm, twoPartCabin } from '../support/two-part-cabin.ts';

/** Parts a, b, c ... in a row, each with a match joint to the next, and one drawn run from the first to the last. */
function chain(sides: readonly SideOptions[], drawn: 'forward' | 'backward' | 'none' = 'forward'): Cabin {
  const ids = sides.map((_, index) => String.fromCodePoint(97 + index));
  const joints = ids.slice(1).map((id, index): Joint => ({ id: `${ids[index]}-${id}`, parts: [ids[index], id], kind: 'gap', intent: { colour: 'match', gloss: 'free', texture: 'free' } }));
  return {
    ...twoPartCabin({}, {}), joints,
    parts: sides.map((side, index) => partOf(ids[index], `Panel ${ids[index].toUpperCase()}`, side)),
    ...(drawn === 'none' ? {} : { runs: [{ id: 'drawn', parts: drawn === 'forward' ? ids : [...ids].reverse() }] }),
  };
}

const only = (cabin: Cabin, book: RuleBook = defaultBook): RunResult => {
  const { runs } = judge(cabin, book);
  expect(runs).toHaveLength(1);
  return runs[0];
};

/** A neutral of the lightness of R = 0.06 and `dL` more: L* = 116 R^(1/3) - 16, ISO/CIE 11664-4. */
const level = (dL: number): number[] => spectrumOf(() => ((116 * Math.cbrt(0.06) + dL) / 116) ** 3);
const simple: RuleBook = { ...defaultBook, decision: { ...defaultBook.decision, rule: 'simple' } };
const cielab = (L: number) => Array.from({ length: 5 }, (_, spot) => ({
  quantity: 'cielab' as const, spot: { name: `s${spot}` }, conditions: 'annular', lab: [L, 0, 0] as const, light: 'D65', observer: 10 as const, measuredAt: '2026-02-01',
}));
const greyL = 116 * Math.cbrt(0.06) - 16;

describe('drift', () => {
  // Steps of 0.45 L* under a cap of 0.7; a sight line has a cap of 0.7 x 1.3 = 0.91, and the ends are 1.35 apart (limits of the book).
  const stairs = [0, 0.45, 0.9, 1.35].map((dL) => ({ curve: level(dL), spots: 20 }));

  test.each(['forward', 'none'] as const)('shows where every step holds and the ends clash: run drawn %s', (drawn) => {
    const judgement = judge(chain(stairs, drawn), defaultBook);
    expect(judgement.joints.map(({ verdict }) => verdict)).toEqual(['holds', 'holds', 'holds']);
    const [run] = judgement.runs;
    expect(run).toMatchObject({ verdict: 'clashes', simple: 'clashes', criterion: 'dL*', parts: ['a', 'b', 'c', 'd'] });
    expect(run.id).toBe(drawn === 'none' ? undefined : 'drawn');
    expect(run.value).toBeCloseTo(1.35, 2);
    expect(run.limit).toBeCloseTo(0.91, 10);
    expect(run.limitUse).toBeCloseTo(1.35 / 0.91, 2);
    for (const [index, step] of [0, 0.45, 0.9, 1.35].entries()) expect(run.steps[index]).toBeCloseTo(step, 2);
    expect(run.sentence).toContain('Along 4 parts');
  });

  test('holds where the ends are close, whatever lies between', () => {
    const run = only(chain([{ curve: level(0) }, { curve: level(3) }, { curve: level(0.2) }]));
    expect(run.verdict).toBe('holds');
    expect(run.steps[1]).toBeGreaterThan(run.limit ?? Infinity);
  });
});

describe('a drawn run is never dropped', () => {
  test('where an end has no reading: open, and the end is named', () => {
    const run = only(chain([{ curve: level(0) }, { curve: level(0) }, { specimens: [] }]));
    expect(run).toMatchObject({ id: 'drawn', verdict: 'open', simple: 'open', cause: 'missing data' });
    expect(run.sentence).toContain('no colour reading of Panel C');
    expect([run.value, run.limitUse]).toEqual([undefined, undefined]);
  });

  test('where the book does not know a material', () => {
    const run = only(chain([{ curve: level(0) }, { curve: level(0) }, { curve: level(0), material: 'cork' }]));
    expect(run).toMatchObject({ verdict: 'open', cause: 'missing data' });
    expect(run.sentence).toContain('"cork"');
  });

  test('where an end is a print that is judged by eye', () => {
    const run = only(chain([{ curve: level(0), material: 'decor-film' }, { curve: level(0) }, { curve: level(0), material: 'decor-film', surface: 'patterned' }]));
    expect(run).toMatchObject({ verdict: 'open', cause: 'judged by eye' });
  });

  test('where the ends were measured under unlike conditions: the value is indicative and decides nothing, near or far', () => {
    for (const dL of [0, 6]) {
      for (const book of [defaultBook, simple]) {
        const run = only(chain([{ curve: level(0) }, { curve: level(0) }, { curve: level(dL), conditions: 'sphere' }]), book);
        expect(run).toMatchObject({ verdict: 'open', simple: 'open', cause: 'conditions', indicative: true });
        expect(run.value).toBeCloseTo(dL, 0);
        expect(run.limitUse).toBeUndefined();
        expect(run.sentence).toContain('indicative only');
      }
    }
  });
});

describe('a run with data under one light only', () => {
  test('is open for want of the others, by either rule', () => {
    for (const book of [defaultBook, simple]) {
      const run = only(chain([{ curve: level(0) }, { curve: level(0) }, { readings: cielab(greyL) }]), book);
      expect(run).toMatchObject({ verdict: 'open', simple: 'open', cause: 'missing data', missingLights: ['A', 'FL11', 'LED-B3'] });
      expect(run.sentence).toContain('no data under A, FL11 and LED-B3');
    }
  });

  test('still clashes where it clashes', () => {
    expect(only(chain([{ curve: level(0) }, { curve: level(0) }, { readings: cielab(greyL + 4) }])).verdict).toBe('clashes');
  });
});

describe('an open run states its cause', () => {
  // dL* of 0.78 against the cap of 0.91 of a sight line.
  const ends = (spots: number, conditions = 'annular') => chain([{ curve: level(0), spots }, { curve: level(0) }, { curve: level(0.78), spots, conditions }]);

  test('too few spots, with the number that decides, which then does', () => {
    const run = only(ends(1));
    expect(run).toMatchObject({ verdict: 'open', cause: 'too few spots', simple: 'holds' });
    const needed = run.spotsNeeded ?? 0;
    expect(needed).toBeGreaterThan(1);
    expect(needed).toBeLessThanOrEqual(50);
    expect(run.sentence).toContain(`${needed} spots a side would decide`);
    expect(only(ends(needed + 1)).verdict).toBe('holds');
  });

  test('two instruments, where no number of spots helps', () => {
    const book = { ...defaultBook, assumed: { ...defaultBook.assumed, agreementSd: [0.3, 0.1, 0.1] as const } };
    expect(only(ends(20, 'annular-two'), book)).toMatchObject({ verdict: 'open', cause: 'instruments disagree' });
    expect(only(ends(20), book).verdict).toBe('holds');
  });

  test('a value on the limit', () => {
    expect(only(chain([{ curve: level(0), spots: 40 }, { curve: level(0) }, { curve: level(0.91), spots: 40 }]))).toMatchObject({ verdict: 'open', cause: 'on the limit' });
  });

  test('a part that scatters', () => {
    const scattered = Array.from({ length: 50 }, (_, spot) => ({
      quantity: 'spectrum' as const, spot: { name: `s${spot}` }, conditions: 'annular', startNm, stepNm, values: level(0.3 + (spot % 2 === 0 ? 3 : -3)), measuredAt: '2026-02-01',
    }));
    expect(only(chain([{ curve: level(0), spots: 50 }, { curve: level(0) }, { readings: scattered }]))).toMatchObject({ verdict: 'open', cause: 'spread of the part' });
  });

  test('the simple rule decides by the value', () => {
    expect(only(ends(1), simple)).toMatchObject({ verdict: 'holds', simple: 'holds' });
    expect(only(chain([{ curve: level(0), spots: 1 }, {}, { curve: level(1.05), spots: 1 }]), simple).verdict).toBe('clashes');
  });
});

describe('a run under an ordered formula', () => {
  const [dull, vivid] = [spectrumOf((nm) => 0.2 + 0.1 * ((nm - 400) / 300)), spectrumOf((nm) => 0.19 + 0.13 * ((nm - 400) / 300))];
  const lab = (values: readonly number[]) => {
    const [l, a, b] = independentLab(values, { startNm, stepNm, count: nanometres.length }, 'D65', 10);
    return { mode: 'lab65' as const, l, a, b };
  };
  const sides = [{ curve: dull }, { curve: level(0) }, { curve: vivid }];

  test.each([['CMC(2:1)', cmcBook, differenceCmc(2, 1)], ['CIE94', { ...defaultBook, formula: 'cie94' } as RuleBook, undefined]] as const)('takes the stricter direction, however it was drawn: %s', (_, book, byCulori) => {
    const [forward, backward] = [only(chain(sides), book), only(chain(sides, 'backward'), book)];
    const told = ({ value, limit, verdict, withinProbability, light, sentence }: RunResult) => ({ value, limit, verdict, withinProbability, light, sentence });
    expect(told(backward)).toEqual(told(forward));
    expect(forward.light).toBe('D65');
    if (byCulori !== undefined) {
      const both = [byCulori(lab(dull), lab(vivid)), byCulori(lab(vivid), lab(dull))];
      expect(Math.abs(both[0] - both[1])).toBeGreaterThan(0.05);
      expect(Math.abs((forward.value ?? 0) - Math.max(...both))).toBeLessThan(3e-3);
    }
  });

  test('is by CIEDE2000 what an outside computation says', () => {
    const book: RuleBook = { ...defaultBook, lights: defaultBook.lights.filter(({ light }) => light === 'D65') };
    const run = only(chain(sides), book);
    expect(Math.abs((run.value ?? 0) - differenceCiede2000()(lab(dull), lab(vivid)))).toBeLessThan(2e-3);
  });
});
