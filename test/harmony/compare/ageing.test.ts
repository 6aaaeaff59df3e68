import { describe, expect, it } from 'vitest';
import type { Cabin, Exposure, Specimen } from '../../../src/cabin/cabin.ts';
import type { Ageing } from '../../../src/harmony/compare/index.ts';
import { agedStages, ageingOf } from '../../../src/harmony/compare/index.ts';
import { judgeCabin } from '../../../src/harmony/judge.ts';
import type { Lab } from '../../../src/quantities.ts';
import type { Reading } from '../../../src/readings/reading.ts';
import { builtInRuleBooks } from '../../../src/rules/index.ts';
import { recordsOf, referenceTable } from '../../support/reference-table.ts';
import { glosses, twoPartCabin } from '../../support/two-part-cabin.ts';
import { coloured } from './coloured.ts';

const [book] = builtInRuleBooks;
const exposure: Exposure = { stage: 'light-exposed', method: 'invented lamp', hours: 300 };
const specimen = (id: string, readings: Reading[], more: Partial<Specimen> = {}): Specimen => ({ id, kind: 'plaque', lot: { id: 'lot-1' }, readings, ...more });
const exposed = (id: string, readings: Reading[], more: Partial<Specimen> = {}): Specimen => specimen(id, readings, { exposure, ...more });
const grey: Lab = [30, 0, 0];
const bleached = (by: number): Lab => [30 + by, 0, 0];

const cabinOf = (first: readonly Specimen[], second: readonly Specimen[]): Cabin => twoPartCabin({ specimens: first, gloss60: null }, { specimens: second, gloss60: null });
const aged = (cabin: Cabin): Ageing => ageingOf(judgeCabin(cabin, book), judgeCabin(cabin, book, { stage: 'light-exposed' }));

describe('grades of a change', () => {
  // The neutral pairs of the grey scale differ in lightness alone, so the grade of such a change is the one the standard gives its pair.
  const pairs = recordsOf(referenceTable('iso-105/grey-scale-pairs.csv'));
  it.each(pairs)('a part $difference lighter is of grade $grade (ISO 105-A02)', ({ grade, difference }) => {
    const by = Number(difference);
    const { parts } = aged(cabinOf([specimen('a-new', coloured(grey)), exposed('a-old', coloured(bleached(by)))], [specimen('b-new', coloured(grey))]));
    expect(parts).toHaveLength(1);
    expect(parts[0].greyScale.grade).toBe(grade);
    expect(parts[0].cie76).toBeCloseTo(by, 9);
    // Wanted: grade 4, which is the third of the nine.
    expect(parts[0].fast).toBe(['5', '4-5', '4'].includes(grade));
  });

  it('compares the exposed specimen with an unexposed one of its own lot, and names both', () => {
    const { parts: [part] } = aged(cabinOf([
      specimen('a-other', coloured(bleached(-2)), { lot: { id: 'lot-2' } }), specimen('a-new', coloured(grey)), exposed('a-old', coloured(bleached(1))),
    ], [specimen('b-new', coloured(grey))]));
    expect(part).toMatchObject({ unexposed: 'a-new', exposed: 'a-old', words: ['lighter'], exposure });
    expect(part.difference.dL).toBeCloseTo(1, 9);
  });

  it('measures on a sphere where both have such readings (SAE J1767)', () => {
    const { parts: [part] } = aged(cabinOf([
      specimen('a-new', [...coloured(grey), ...coloured(bleached(5), 'sphere')]), exposed('a-old', [...coloured(bleached(1)), ...coloured(bleached(7), 'sphere')]),
    ], [specimen('b-new', coloured(grey))]));
    expect(part.geometry).toBe('di:8');
    expect(part.cie76).toBeCloseTo(2, 9);
  });

  it('gives no grade where geometries differ, and says why', () => {
    const { parts, notGraded, notExposed } = aged(cabinOf([specimen('a-new', coloured(grey)), exposed('a-old', coloured(bleached(1), 'sphere'))], [specimen('b-new', coloured(grey))]));
    expect(parts).toEqual([]);
    expect(notGraded).toEqual([{ part: 'a', name: 'Panel A', why: 'no unexposed specimen was measured under the conditions of the exposed one' }]);
    expect(notExposed).toEqual(['b']);
  });

  it('gives the change of gloss at the angles that both were read at', () => {
    const { parts: [part] } = aged(cabinOf([
      specimen('a-new', [...coloured(grey), ...glosses(2), ...glosses(9, 3, 85)]), exposed('a-old', [...coloured(bleached(1)), ...glosses(2.75)]),
    ], [specimen('b-new', coloured(grey))]));
    expect(part.gloss).toEqual([{ angle: 60, from: 2, to: 2.75, change: 0.75 }]);
    expect(part.sentence).toContain('Its gloss at 60° changed by 0.75 GU.');
  });
});

describe('joints new and aged', () => {
  it('that hold when new and clash when aged are named', () => {
    const shiny = (lab: Lab): Reading[] => [...coloured(lab), ...glosses(2)];
    const cabin = cabinOf([specimen('a-new', shiny(grey)), exposed('a-old', shiny(bleached(3)))], [specimen('b-new', shiny(grey)), exposed('b-old', shiny(grey))]);
    expect(agedStages(cabin)).toEqual(['light-exposed']);
    const ageing = aged(cabin);
    expect(ageing).toMatchObject({ from: 'new', to: 'light-exposed', exposures: [exposure], holdThenClash: ['a-b'], notJudged: [] });
    expect(ageing.comparison.joints[0]).toMatchObject({ before: { verdict: 'holds' }, after: { verdict: 'clashes' } });
  });

  it('that age alike hold on', () => {
    const both = (id: string): Specimen[] => [specimen(`${id}-new`, coloured(grey)), exposed(`${id}-old`, coloured(bleached(3)))];
    const ageing = aged(cabinOf(both('a'), both('b')));
    expect(ageing.holdThenClash).toEqual([]);
    // Each of the two is of grade 3 to 4 by itself: 3.0 lies between the pairs 2.5 (3-4) and 3.4 (3).
    expect(ageing.parts.map(({ fast }) => fast)).toEqual([false, false]);
  });

  it('are not judged where a side was not exposed', () => {
    const ageing = aged(cabinOf([specimen('a-new', coloured(grey)), exposed('a-old', coloured(bleached(3)))], [specimen('b-new', coloured(grey))]));
    expect(ageing).toMatchObject({ notJudged: ['a-b'], holdThenClash: [] });
    expect(ageing.comparison.joints).toEqual([]);
  });
});
