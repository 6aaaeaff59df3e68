import type { Xyz } from '../../quantities.ts';
import { derived, workedExample, type ValueOrigin } from '../value-origin.ts';

/** Viewing conditions and correlates of one published example; average surround, Yb = 20. */
export interface AppearanceExample {
  readonly model: 'CIECAM02' | 'CAM16';
  readonly origin: ValueOrigin;
  readonly xyz: Xyz;
  readonly white: Xyz;
  readonly adaptingLuminance: number;
  readonly lightness: number;
  readonly chroma: number;
  readonly colourfulness: number;
  readonly hue: number;
  /** Decimals of J, C and M, and of h. */
  readonly decimals: readonly [correlates: number, hue: number];
}

const daylight: Xyz = [95.05, 100, 108.88];
const tungsten: Xyz = [109.85, 100, 35.58];
const cases: readonly (readonly [xyz: Xyz, white: Xyz, adaptingLuminance: number])[] = [
  [[19.01, 20.00, 21.78], daylight, 318.31],
  [[57.06, 43.06, 31.96], daylight, 31.83],
  [[3.53, 6.56, 2.14], tungsten, 318.31],
  [[19.01, 20.00, 21.78], tungsten, 31.83],
];

const examples = (
  model: AppearanceExample['model'], origin: ValueOrigin, decimals: readonly [number, number],
  rows: readonly (readonly [lightness: number, chroma: number, colourfulness: number, hue: number])[],
): AppearanceExample[] => rows.map(([lightness, chroma, colourfulness, hue], index) => {
  const [xyz, white, adaptingLuminance] = cases[index]!;
  return { model, origin, xyz, white, adaptingLuminance, lightness, chroma, colourfulness, hue, decimals };
});

export const appearanceExamples: readonly AppearanceExample[] = [
  ...examples('CIECAM02', workedExample('Fairchild, Color Appearance Models, worked examples of CIECAM02, by way of colour-science 0.4.6'), [2, 1], [
    [41.73, 0.10, 0.11, 219.0], [65.96, 48.57, 41.67, 19.6], [21.79, 46.94, 48.80, 177.1], [42.53, 51.92, 44.54, 248.9],
  ]),
  ...examples('CAM16', workedExample('CIE 248:2022; colour-science 0.4.6 test data (BSD-3-Clause)'), [8, 8], [
    [41.73120791, 0.10335574, 0.10743677, 217.06795977],
    [65.42828069, 49.67956420, 42.62473321, 17.48659243],
    [21.36052893, 50.99381895, 53.00732582, 178.86724266],
    [41.06561786, 49.08599408, 42.11545403, 259.03370342],
  ]),
];

/** J', a', b' of the first case above, 5 decimals. */
export const uniformSpaceExamples = [
  { model: 'CIECAM02', origin: workedExample('colour-science 0.4.6 documentation (BSD-3-Clause)'), expected: [54.90433, -0.08442, -0.06848] },
  { model: 'CAM16', origin: derived('CIE 248:2022, computed independently from the published equations'), expected: [54.90445, -0.08562, -0.06468] },
] as const;
