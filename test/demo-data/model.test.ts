import { describe, expect, it } from 'vitest';
import type { Surface } from '../../demo-data/generator/physics/layer.ts';
import { caughtShare, mirrorGloss, reflectance, surfaceReflection } from '../../demo-data/generator/physics/layer.ts';
import { randomOf, centredNormals } from '../../demo-data/generator/random.ts';

describe('the surface of a layer', () => {
  it('reflects ((n - 1) / (n + 1))² straight on (Fresnel, textbook)', () => {
    for (const index of [1.46, 1.5, 1.567, 1.6]) expect(surfaceReflection(index, 0)).toBeCloseTo(((index - 1) / (index + 1)) ** 2, 12);
  });

  it('reflects only the across polarisation at the angle of Brewster, tan = n', () => {
    const index = 1.5;
    const angle = (Math.atan(index) * 180) / Math.PI;
    expect(surfaceReflection(index, angle)).toBeCloseTo(((index ** 2 - 1) / (index ** 2 + 1)) ** 2 / 2, 12);
  });

  it('has 100 GU for the black glass of ISO 2813', () => {
    expect(mirrorGloss(1.567)).toBeCloseTo(100, 12);
  });

  it('is caught whole by a sphere with the specular part, and less by 45:0 the glossier it is', () => {
    const at = (gloss60: number): Surface => ({ index: 1.5, gloss60, openness: 1 });
    expect(caughtShare(at(2), 'di:8')).toBe(1);
    const shares = [1, 2, 8, 30, 89].map((gloss) => caughtShare(at(gloss), '45c:0'));
    expect(shares).toEqual(shares.toSorted((first, second) => second - first));
    expect(caughtShare(at(mirrorGloss(1.5)), '45c:0')).toBeCloseTo(0, 12);
  });
});

describe('the body of a layer', () => {
  const matt: Surface = { index: 1.5, gloss60: 2, openness: 1 };

  it('is darker with more black and lighter with the surface reflection of a matt face', () => {
    const black = (amount: number, surface = matt) => reflectance({ titania: 1, carbonBlack: amount }, surface, '45c:0', 550);
    expect(black(0.1)).toBeLessThan(black(0.01));
    expect(black(0.1, { ...matt, gloss60: 85 })).toBeLessThan(black(0.1));
  });

  it('approaches the bare surface reflection where it absorbs all light', () => {
    const bare = caughtShare(matt, '45c:0') * surfaceReflection(1.5, 45);
    const black = reflectance({ carbonBlack: 100 }, matt, '45c:0', 550);
    // Carbon black scatters a little: the body keeps less than a thousandth.
    expect(black - bare).toBeGreaterThan(0);
    expect(black - bare).toBeLessThan(0.001);
  });
});

describe('the random streams', () => {
  it('give a name the same numbers every time and other names others', () => {
    const take = (name: string): number[] => {
      const random = randomOf(name);
      return Array.from({ length: 5 }, () => random.uniform());
    };
    expect(take('a')).toEqual(take('a'));
    expect(take('a')).not.toEqual(take('b'));
  });

  it('are normal in mean and spread, and centred ones have the mean zero', () => {
    const random = randomOf('spread');
    const draws = Array.from({ length: 20_000 }, () => random.normal());
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
    const sd = Math.sqrt(draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / draws.length);
    // Four standard errors: 4 / √20000 for the mean, 4 / √40000 for the spread.
    expect(Math.abs(mean)).toBeLessThan(0.029);
    expect(Math.abs(sd - 1)).toBeLessThan(0.02);
    expect(centredNormals(random, 7).reduce((sum, draw) => sum + draw, 0)).toBeCloseTo(0, 12);
  });
});
