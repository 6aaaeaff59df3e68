import { describe, expect, test } from 'vitest';
import { glossSamples } from '../../src/readings/gloss-sample.ts';
import type { GlossReading, TextureReading } from '../../src/readings/reading.ts';
import { textureSample } from '../../src/readings/texture-sample.ts';

const gloss = (spot: string, value: number, more: Partial<GlossReading> = {}): GlossReading =>
  ({ quantity: 'gloss', angle: 60, gloss: value, conditions: 'g', spot: { name: spot }, ...more });
const texture = (spot: string, parameters: TextureReading['parameters'], more: Partial<TextureReading> = {}): TextureReading =>
  ({ quantity: 'texture', parameters, conditions: 't', spot: { name: spot }, ...more });

describe('glossSamples', () => {
  test('spots by angle, directions weigh the same, outliers counted apart', () => {
    const found = glossSamples([
      gloss('a', 2, { direction: 'along' }), gloss('a', 2, { direction: 'along' }), gloss('a', 3, { direction: 'across' }), gloss('b', 3.5),
      gloss('c', 90, { outlier: true }), gloss('a', 80, { angle: 20, haze: 12 }),
    ]);
    // Spot a: (2 + 3) / 2 = 2.5, spot b 3.5: mean 3, sd sqrt(0.5).
    expect(found.map(({ angle, mean, spots, outliers, haze }) => [angle, mean, spots, outliers, haze])).toEqual([[20, 80, 1, 0, 12], [60, 3, 2, 1, undefined]]);
    expect(found[1].sd).toBeCloseTo(Math.SQRT1_2, 12);
    expect(found[0].sd).toBe(0);
  });
  test('two instruments at one angle are not averaged', () => {
    expect(glossSamples([gloss('a', 2), gloss('b', 2), gloss('a', 4, { conditions: 'other' })])).toMatchObject([{ mean: 2, spots: 2, instruments: ['g'] }]);
  });
  test('no readings, no samples', () => expect(glossSamples([])).toEqual([]));
});

describe('textureSample', () => {
  test('sizes by the geometric mean, shapes by the arithmetic one, the lay around the half circle', () => {
    const found = textureSample([texture('a', { saUm: 10, str: 0.4, stdDeg: 175 }), texture('b', { saUm: 40, str: 0.6, stdDeg: 5 })]);
    expect(found?.parameters.saUm).toBeCloseTo(20, 12);
    expect(found?.sd.saUm).toBeCloseTo(Math.log(4) / Math.SQRT2, 12);
    expect(found?.parameters.str).toBeCloseTo(0.5, 12);
    expect(Math.sin(((found?.parameters.stdDeg ?? NaN) * Math.PI) / 180)).toBeCloseTo(0, 9);
    expect(found).toMatchObject({ spots: 2, outliers: 0, instrument: 't' });
  });
  test('a parameter counts the spots that have it; outliers stay out', () => {
    const found = textureSample([texture('a', { saUm: 10, raUm: 8 }), texture('b', { saUm: 10 }), texture('c', { saUm: 99 }, { outlier: true })]);
    expect(found?.parameters.raUm).toBeCloseTo(8, 12);
    expect(found).toMatchObject({ spots: 2, outliers: 1 });
    expect(textureSample([texture('c', { saUm: 99 }, { outlier: true })])).toBeUndefined();
  });
});
