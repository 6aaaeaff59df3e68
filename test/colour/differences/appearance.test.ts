import { expect, test } from 'vitest';
import { cam16 } from '../../../src/colour/appearance/cam16.ts';
import { ciecam02 } from '../../../src/colour/appearance/ciecam02.ts';
import { averageSurround, daylightConditions } from '../../../src/colour/appearance/viewing-conditions.ts';
import { difference } from '../../../src/colour/difference.ts';
import { appearanceExamples } from '../../../src/colour/published/appearance-examples.ts';
import { correlates, uniformDifference } from './independent-appearance.ts';
import { farPairs, nearPairs } from './seeded-pairs.ts';

// The second implementation is itself held to the published examples before it may judge the first.
test.each(appearanceExamples)('the independent $model meets the published example $xyz', (example) => {
  const got = correlates(example.model, example.xyz, example.white, example.adaptingLuminance, 20);
  const half = 0.5 * 10 ** -example.decimals[0] * 1.0001;
  expect(Math.abs(got.J - example.lightness)).toBeLessThanOrEqual(half);
  expect(Math.abs(got.C - example.chroma)).toBeLessThanOrEqual(half);
  expect(Math.abs(got.M - example.colourfulness)).toBeLessThanOrEqual(half);
  const hue = ((Math.atan2(got.hueVector[1], got.hueVector[0]) * 180) / Math.PI + 360) % 360;
  expect(Math.abs(hue - example.hue)).toBeLessThanOrEqual(0.5 * 10 ** -example.decimals[1] * 1.0001);
});

const sets = [
  ['far', farPairs(1000, 20264)], ['near', nearPairs(1000, 20265, 1, 40)], ['near grey', nearPairs(1000, 20266, 0.5, 1.5)],
] as const;
const cases = (['CIECAM02', 'CAM16'] as const).flatMap((model) => sets.map(([kind, pairs]) => [model, kind, pairs] as const));

test.each(cases)('the UCS difference of %s agrees with the independent one on 1,000 %s pairs', (model, _, pairs) => {
  const name = model === 'CAM16' ? 'cam16ucs' : 'cam02ucs';
  const { white } = daylightConditions;
  let worst = 0;
  for (const pair of pairs) {
    worst = Math.max(worst, Math.abs(difference({ name }, pair[0], pair[1]) - uniformDifference(model, pair, white, 64, 20)));
  }
  expect(worst).toBeLessThan(1e-6);
});

test.each([['CIECAM02', ciecam02], ['CAM16', cam16]] as const)('%s puts its white at lightness 100 and black at 0', (_, model) => {
  for (const white of [[94.8109, 100, 107.3048], [109.85, 100, 35.58]] as const) {
    const appearance = model({ white, adaptingLuminance: 64, background: 20, surround: averageSurround });
    expect(appearance(white).lightness).toBeCloseTo(100, 10);
    expect(appearance([0, 0, 0])).toMatchObject({ lightness: 0, chroma: 0, colourfulness: 0 });
  }
});
