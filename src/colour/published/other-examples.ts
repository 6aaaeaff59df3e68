import type { Lab } from '../../quantities.ts';
import type { GreyScaleGrade } from '../grey-scale.ts';
import { derived, publishedTable, workedExample, type ValueOrigin } from '../value-origin.ts';

/** Difference by the first DIN99: checks the transformation that DIN99o shares with it. */
export const din99Example = {
  origin: workedExample('colour-science 0.4.6 documentation (BSD-3-Clause)'),
  standard: [60.2574, -34.0099, 36.2677], trial: [60.4626, -34.1751, 39.4387], expected: 1.177216620, decimals: 9,
} as const;

/** DIN99o coordinates, 4 decimals. */
export const din99oExample = {
  origin: derived('computed independently from the equations of DIN 6176:2018-10'),
  lab: [60.2574, -34.0099, 36.2677], expected: [64.0969, -23.7152, 22.5784], decimals: 4,
} as const;

/** STRESS of three computed and three perceived differences, as a share of 1. */
export const stressExample = {
  origin: workedExample('colour-science 0.4.6 documentation (BSD-3-Clause)'),
  computed: [2.0425, 2.8615, 3.4412], perceived: [1.2644, 1.2630, 1.8731], expected: 0.121170939, decimals: 9,
} as const;

/** CIEDE2000 values brought to the visual scale. */
export const powerFunctionExample = {
  origin: workedExample('Huang et al., Optics Express 23, 597 (2015); values by way of colour-science 0.4.6'),
  values: [2.0425, 2.8615, 3.4412], expected: [2.357488, 2.985050, 3.396511], decimals: 6,
} as const;

export interface GreyScaleExample {
  readonly origin: ValueOrigin;
  readonly standard: Lab;
  readonly trial: Lab;
  readonly difference: number;
  readonly value: number;
  readonly grade: GreyScaleGrade;
  readonly decimals: readonly [difference: number, value: number];
}

/** Instrumental grades of two pairs. */
export const greyScaleExamples: readonly GreyScaleExample[] = [
  {
    origin: derived('computed independently from the equations of ISO 105-A05'),
    standard: [50, 0, 0], trial: [52, 0, 0], difference: 2.0, value: 3.82, grade: '4', decimals: [6, 2],
  },
  {
    origin: derived('computed independently from the equations of ISO 105-A05'),
    standard: [30, 4, -12], trial: [31, 6, -9], difference: 3.727101, value: 2.867, grade: '3', decimals: [6, 3],
  },
];

/** Pairs of ISO 105-A02 for the continuous grade of ISO 105-A05: nominal grade as a number, and dE*ab. */
export const greyScaleAnchors = {
  origin: publishedTable('ISO 105-A02:1993, pairs of the grey scale'),
  /** Half grades are printed with differences rounded to 0.1, which is up to 0.04 of a grade. */
  tolerance: 0.04,
  rows: [[5, 0], [4.5, 0.8], [4, 1.7], [3.5, 2.5], [3, 3.4], [2.5, 4.8], [2, 6.8], [1.5, 9.6], [1, 13.6]],
} as const;
