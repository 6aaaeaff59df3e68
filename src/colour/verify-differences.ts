import type { Lab } from '../quantities.ts';
import { cam16 } from './appearance/cam16.ts';
import { ciecam02 } from './appearance/ciecam02.ts';
import { uniformColour } from './appearance/uniform-space.ts';
import { averageSurround } from './appearance/viewing-conditions.ts';
import { difference } from './difference.ts';
import { din99Constants, din99oDifference, labToDin99o } from './differences/din99o.ts';
import { formulaLabel } from './formula-label.ts';
import { continuousGrade, greyScaleGrade } from './grey-scale.ts';
import { visualDifference } from './power-function.ts';
import { printedTo, publishedCheck, type PublishedCheck } from './published-check.ts';
import { appearanceExamples, uniformSpaceExamples, type AppearanceExample } from './published/appearance-examples.ts';
import { cie94AndCmcExamples } from './published/cie94-cmc-examples.ts';
import { ciede2000Pairs } from './published/ciede2000-pairs.ts';
import type { DifferenceExample } from './published/difference-example.ts';
import { formulaComparison } from './published/formula-comparison.ts';
import {
  din99Example, din99oExample, greyScaleAnchors, greyScaleExamples, powerFunctionExample, stressExample,
} from './published/other-examples.ts';
import { stress } from './stress.ts';

const colour = (coordinates: readonly number[]): string => `(${coordinates.join(', ')})`;
const pair = (standard: Lab, trial: Lab): string => `L*a*b* ${colour(standard)} to ${colour(trial)}`;

const differenceRow = ({ formula, origin, standard, trial, expected, decimals }: DifferenceExample): PublishedCheck => publishedCheck(
  formulaLabel(formula), origin, pair(standard, trial), expected, difference(formula, standard, trial), printedTo(decimals));

const models = { CIECAM02: ciecam02, CAM16: cam16 } as const;

function appearanceRows(example: AppearanceExample): PublishedCheck[] {
  const { model, origin, xyz, white, adaptingLuminance, decimals } = example;
  const got = models[model]({ white, adaptingLuminance, background: 20, surround: averageSurround })(xyz);
  const input = `XYZ ${colour(xyz)}, white ${colour(white)}, LA ${adaptingLuminance}`;
  const row = (symbol: string, key: 'lightness' | 'chroma' | 'colourfulness' | 'hue', digits: number): PublishedCheck =>
    publishedCheck(`${model} ${symbol}`, origin, input, example[key], got[key], printedTo(digits));
  return [
    row('J', 'lightness', decimals[0]), row('C', 'chroma', decimals[0]), row('M', 'colourfulness', decimals[0]),
    row('h', 'hue', decimals[1]),
  ];
}

function uniformSpaceRows(): PublishedCheck[] {
  const { xyz, white, adaptingLuminance } = appearanceExamples[0]!;
  return uniformSpaceExamples.flatMap(({ model, origin, expected }) => {
    const got = uniformColour(models[model]({ white, adaptingLuminance, background: 20, surround: averageSurround })(xyz));
    return ["J'", "a'", "b'"].map((symbol, index) =>
      publishedCheck(`${model} UCS ${symbol}`, origin, `XYZ ${colour(xyz)}`, expected[index]!, got[index]!, printedTo(5)));
  });
}

function din99Rows(): PublishedCheck[] {
  const got = labToDin99o(din99oExample.lab);
  return [
    ...['L99o', 'a99o', 'b99o'].map((symbol, index) => publishedCheck(
      symbol, din99oExample.origin, `L*a*b* ${colour(din99oExample.lab)}`, din99oExample.expected[index]!, got[index]!, printedTo(4))),
    publishedCheck('DIN99', din99Example.origin, pair(din99Example.standard, din99Example.trial), din99Example.expected,
      din99oDifference(din99Example.standard, din99Example.trial, 1, 1, din99Constants), printedTo(din99Example.decimals)),
  ];
}

function greyScaleRows(): PublishedCheck[] {
  return [
    ...greyScaleAnchors.rows.map(([grade, dE]) => publishedCheck(
      'grey scale GSc', greyScaleAnchors.origin, `dE*ab ${dE}`, grade, continuousGrade(dE), greyScaleAnchors.tolerance)),
    ...greyScaleExamples.flatMap(({ origin, standard, trial, difference: expected, value, decimals }) => {
      const got = greyScaleGrade(standard, trial);
      const input = pair(standard, trial);
      return [
        publishedCheck('grey scale dEF', origin, input, expected, got.difference, printedTo(decimals[0])),
        publishedCheck('grey scale GSc', origin, input, value, got.value, printedTo(decimals[1])),
      ];
    }),
  ];
}

function scaleRows(): PublishedCheck[] {
  return [
    publishedCheck('STRESS', stressExample.origin, `${colour(stressExample.computed)} and ${colour(stressExample.perceived)}`,
      stressExample.expected, stress(stressExample.computed, stressExample.perceived), printedTo(stressExample.decimals)),
    ...powerFunctionExample.values.map((value, index) => publishedCheck(
      'power function of CIEDE2000', powerFunctionExample.origin, `dE00 ${value}`, powerFunctionExample.expected[index]!,
      visualDifference({ name: 'ciede2000' }, value) ?? NaN, printedTo(powerFunctionExample.decimals))),
  ];
}

/** Every published value of colour differences, appearance correlates and the grey scale, set against ours. */
export function verifyDifferences(): PublishedCheck[] {
  return [
    ...[...ciede2000Pairs, ...cie94AndCmcExamples, ...formulaComparison].map(differenceRow),
    ...appearanceExamples.flatMap(appearanceRows),
    ...uniformSpaceRows(),
    ...din99Rows(),
    ...greyScaleRows(),
    ...scaleRows(),
  ];
}
