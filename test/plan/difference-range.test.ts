import { describe, expect, test } from 'vitest';
import type { DifferenceFormula } from '../../src/colour/difference-formula.ts';
import { difference } from '../../src/colour/difference.ts';
import { criterionRangeIn } from '../../src/plan/mend/difference-range.ts';
import type { LabBox } from '../../src/plan/mend/difference-range.ts';
import type { Lab } from '../../src/quantities.ts';
import type { Criterion } from '../../src/readings/stacked-event.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

/** Boxes at all hues, from grey to chromatic, from points to several units wide; about every third pair is near. */
function randomBoxes(random: () => number): readonly [LabBox, LabBox] {
  const width = random() < 0.3 ? 0.01 : 6 * random() ** 2;
  const chroma = 60 * random() ** 3;
  const hue = 2 * Math.PI * random();
  const middle = [5 + 90 * random(), chroma * Math.cos(hue), chroma * Math.sin(hue)];
  const apart = random() < 0.3 ? 1 : 30 * random();
  const box = (by: number): LabBox => middle.map((value) => { const low = value + by * (2 * random() - 1); return [low, low + width * random()] as const; }) as unknown as LabBox;
  return [box(0), box(apart)];
}

const within = (random: () => number, box: LabBox): Lab => box.map(([low, high]) => low + (high - low) * (random() < 0.3 ? Math.round(random()) : random())) as unknown as Lab;

/** CIE 15: chroma is the distance from grey; dH^2 is what of da^2 + db^2 is not dC^2, its sign that of the turn. */
function component(name: string, a: Lab, b: Lab): number {
  const chroma = Math.hypot(b[1], b[2]) - Math.hypot(a[1], a[2]);
  if (name === 'dC') return chroma;
  return Math.sign(a[1] * b[2] - a[2] * b[1]) * Math.sqrt(Math.max(0, (b[1] - a[1]) ** 2 + (b[2] - a[2]) ** 2 - chroma ** 2));
}

const formulas: readonly DifferenceFormula[] = [
  { name: 'cie76' }, { name: 'cie94' }, { name: 'cie94Textile' }, { name: 'cmc', l: 2, c: 1 }, { name: 'cmc', l: 1, c: 1 }, { name: 'ciede2000' }, { name: 'ciede2000', kL: 2, kC: 1.2, kH: 0.9 },
];

describe('500 seeded pairs of boxes of colours, 40 pairs of colours in each', () => {
  test.each(formulas)('no difference is larger than told: $name', (formula) => {
    const random = seededNumbers(11);
    let close = 0;
    for (let seed = 0; seed < 500; seed++) {
      const [standard, trial] = randomBoxes(random);
      for (const stricterDirection of [false, true]) {
        const most = criterionRangeIn({ kind: 'difference', formula, atLeast: 1, stricterDirection }, standard, trial)![1];
        let met = 0;
        for (let draw = 0; draw < 20; draw++) {
          const [a, b] = [within(random, standard), within(random, trial)];
          met = Math.max(met, difference(formula, a, b), stricterDirection ? difference(formula, b, a) : 0);
        }
        expect(met).toBeLessThanOrEqual(most + 1e-9);
        if (met > 0.8 * most) close++;
      }
    }
    // Not so far above that it says nothing.
    expect(close).toBeGreaterThan(250);
  });

  test.each(['dC', 'dH'] as const)('%s lies between what is told, signed and in size', (name) => {
    const random = seededNumbers(12);
    let close = 0;
    for (let seed = 0; seed < 500; seed++) {
      const [standard, trial] = randomBoxes(random);
      for (const absolute of [false, true]) {
        const criterion: Criterion = { kind: 'component', component: name, absolute, max: 1 };
        const [low, high] = criterionRangeIn(criterion, standard, trial)!;
        let [least, most] = [Infinity, -Infinity];
        for (let draw = 0; draw < 40; draw++) {
          const signed = component(name, within(random, standard), within(random, trial));
          const value = absolute ? Math.abs(signed) : signed;
          expect(value).toBeGreaterThanOrEqual(low - 1e-6);
          expect(value).toBeLessThanOrEqual(high + 1e-6);
          [least, most] = [Math.min(least, value), Math.max(most, value)];
        }
        if (high - low < 2 * (most - least) + 0.2) close++;
      }
    }
    expect(close).toBeGreaterThan(500);
  });

  test.each(formulas.filter(({ name }) => name === 'cmc' || name === 'ciede2000'))('of strong colours no difference is larger than told, and the largest not much smaller: %j', (formula) => {
    const random = seededNumbers(13);
    let close = 0;
    for (let seed = 0; seed < 400; seed++) {
      const [chroma, width] = [20 + 80 * random(), 0.2 + 1.8 * random()];
      // Every third about a hue at which a weight jumps, turns round or where angles begin anew.
      const hue = (seed % 3 === 0 ? [0, 164, 180, 275, 345][seed % 5]! + 2 * random() - 1 : 360 * random()) * (Math.PI / 180);
      const middle = [10 + 80 * random(), chroma * Math.cos(hue), chroma * Math.sin(hue)];
      const box = (by: number): LabBox => middle.map((value) => { const low = value - width / 2 + by * (2 * random() - 1); return [low, low + width] as const; }) as unknown as LabBox;
      const [standard, trial] = [box(0), box(4)];
      const most = criterionRangeIn({ kind: 'difference', formula, atLeast: 1 }, standard, trial)![1];
      let met = 0;
      const meet = (a: Lab, b: Lab): void => { met = Math.max(met, difference(formula, a, b)); };
      const corner = (own: LabBox, which: number): Lab => own.map((ends, axis) => ends[(which >> axis) & 1]) as unknown as Lab;
      for (let which = 0; which < 64; which++) meet(corner(standard, which), corner(trial, which >> 3));
      for (let draw = 0; draw < 100; draw++) meet(within(random, standard), within(random, trial));
      expect(met).toBeLessThanOrEqual(most + 1e-9);
      if (met > 0.85 * most) close++;
    }
    expect(close).toBeGreaterThan(320);
  });

  test('nothing is told of formulas whose weights are not bounded here', () => {
    const box: LabBox = [[30, 31], [1, 2], [1, 2]];
    for (const name of ['din99o', 'cam02ucs', 'cam16ucs'] as const) expect(criterionRangeIn({ kind: 'difference', formula: { name }, atLeast: 1 }, box, box)).toBeUndefined();
  });
});
