import { describe, expect, test } from 'vitest';
import type { Specimen, SpecimenKind } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { spectra, spectrumOf, startNm, stepNm, twoPartCabin } from '../support/two-part-cabin.ts';

/** Distances in L* alone under D65 and nothing else: one dimension, so that the probability has a closed form. */
const book: RuleBook = {
  ...defaultBook, formula: 'cie76', lights: defaultBook.lights.filter(({ light }) => light === 'D65'), combination: { ...defaultBook.combination, lightnessCapBelowL: 0.001 },
};
/** A neutral of L* 50 and `dL` more: R = ((L* + 16) / 116)^3, ISO/CIE 11664-4. */
const neutral = (dL: number): number[] => spectrumOf(() => ((66 + dL) / 116) ** 3);

const lotSpecimen = (lot: string, levels: readonly number[], more: Partial<Specimen> = {}): Specimen => ({
  id: `${lot}-${more.id ?? '1'}`, kind: 'tool part', lot: { id: lot }, producedOn: '2026-01-20',
  readings: levels.map((dL, spot) => ({ quantity: 'spectrum', spot: { name: `s${spot}` }, conditions: 'annular', startNm, stepNm, values: neutral(dL), measuredAt: '2026-02-01' })),
  ...Object.fromEntries(Object.entries(more).filter(([key]) => key !== 'id')),
});

const four = (dL: number): number[] => [dL, dL, dL, dL];
const probability = (a: readonly Specimen[], b: readonly Specimen[]): number | undefined =>
  judge(twoPartCabin({ specimens: a }, { specimens: b }, { intent: { colour: 'match', gloss: 'free' } }), book).joints[0].lotProbability;

/** P(|d| <= limit), d ~ N(mean, variance), by Simpson's rule. */
function within(mean: number, variance: number, limit: number): number {
  const steps = 20_000;
  const density = (x: number): number => Math.exp(-((x - mean) ** 2) / (2 * variance)) / Math.sqrt(2 * Math.PI * variance);
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * density(-limit + (2 * limit * i) / steps);
  return (sum * 2 * limit) / (3 * steps);
}

const limit = defaultBook.materials.find(({ material }) => material === 'moulded')?.colourLimit ?? NaN;
// Means of the lots' colours: the spots of a lot are alike, so that readings add nothing. Variance of -0.4, 0, 0.4: 0.16; of 0, 0.3, 0.6: 0.09.
const first = [lotSpecimen('p', four(-0.4)), lotSpecimen('q', four(0)), lotSpecimen('r', four(0.4))];
const second = [lotSpecimen('s', four(0)), lotSpecimen('t', four(0.3)), lotSpecimen('u', four(0.6))];

describe('the probability that a random pair of parts holds', () => {
  test('has the closed form of a normal difference with the lots\' own spread', () => {
    // Means 0 and 0.3; variances between lots and, for the uncertainty of the means, a third of them.
    const variance = (0.16 + 0.09) * (1 + 1 / 3);
    expect(Math.abs((probability(first, second) ?? 0) - within(0.3, variance, limit))).toBeLessThan(4e-3);
  });

  test('is given from three lots on, on either side', () => {
    expect(probability(first.slice(1), second.slice(1))).toBeUndefined();
    expect(probability(first, [second[0]])).toBeGreaterThan(0);
    expect(probability([first[0]], second)).toBeGreaterThan(0);
  });

  test('does not count the scatter of readings as one of lots', () => {
    // Spots +-1 about one and the same mean: the lots do not differ, and nothing is left that could part two parts.
    const noisy = ['p', 'q', 'r', 's'].map((lot) => lotSpecimen(lot, [-1, 1, -1, 1]));
    // The mean spectrum of 49 and 51 is lighter than 50 by less than 0.02, the same for all lots.
    expect(probability(noisy, noisy.map((one) => ({ ...one, id: `${one.id}b` })))).toBe(1);
  });

  test('takes off of the lots\' means what their readings scatter', () => {
    const spots = (mean: number): number[] => [mean - 0.3, mean + 0.3, mean - 0.3, mean + 0.3];
    const lots = (levels: readonly number[]) => levels.map((level, index) => lotSpecimen(`lot-${index}`, spots(level)));
    // Variance of a spot 4/3 x 0.09 = 0.12, in a mean of four 0.03; of the means 0.16; of lots 0.13. The mean of three is known to 0.16 / 3.
    const variance = 2 * (0.13 + 0.16 / 3);
    expect(Math.abs((probability(lots([-0.4, 0, 0.4]), lots([-0.4, 0, 0.4])) ?? 0) - within(0, variance, limit))).toBeLessThan(5e-3);
  });

  test('uses every specimen of a lot', () => {
    const pairs = (levels: readonly number[], apart: number) => levels.flatMap((level, index) =>
      [-apart, apart].map((shift, at) => lotSpecimen(`lot-${index}`, four(level + shift), { id: String(at) })));
    // Specimens 0.2 either side of the lot's mean: mean square 0.08 = the component of specimens; that of lots 0.16 - 0.08 / 2 = 0.12.
    const variance = 2 * (0.12 + 0.08 + 0.16 / 3);
    expect(Math.abs((probability(pairs([-0.4, 0, 0.4], 0.2), pairs([-0.4, 0, 0.4], 0.2)) ?? 0) - within(0, variance, limit))).toBeLessThan(5e-3);
  });

  test('counts specimens of the kind that stands only', () => {
    const plaque = (lot: string, dL: number, kind: SpecimenKind = 'plaque'): Specimen => ({ ...lotSpecimen(lot, four(dL)), kind, id: `${lot}-${kind}` });
    expect(probability([first[0], first[1], plaque('r', 0.4)], [second[0]])).toBeUndefined();
    expect(probability([...first, plaque('far', 9)], [second[0]])).toBe(probability(first, [second[0]]));
    expect(probability([...first, { ...plaque('old', 9), kind: 'tool part', exposure: { stage: 'light-exposed' } }], [second[0]])).toBe(probability(first, [second[0]]));
  });

  test('counts readings on the instrument that is judged on only', () => {
    const other = first.map((one, index) => (index === 0 ? { ...one, readings: spectra(neutral(-0.4), 4, 'annular-two') } : one));
    expect(probability(other, [second[0]])).toBeUndefined();
  });
});
