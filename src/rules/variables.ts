import type { RuleVariables } from './rule-book.ts';

/** One variable that expressions of a rule book may use. */
export interface RuleVariable {
  readonly name: keyof RuleVariables;
  /** As printed; `1` for a pure number. */
  readonly unit: string;
  readonly meaning: string;
  /** Range that every expression is checked over when a book is read. */
  readonly range: readonly [low: number, high: number];
}

/**
 * The documented variables. None depends on which part of a joint is named first, so that swapping the parts cannot
 * change a limit. The ranges are those an expression must give a usable result over; they are not limits on the cabin.
 */
export const ruleVariables: readonly RuleVariable[] = [
  { name: 'gapMm', unit: 'mm', meaning: 'width of the gap between the two parts; 0 where they touch', range: [0, 30] },
  { name: 'viewMm', unit: 'mm', meaning: 'distance from the eye to the joint', range: [200, 3000] },
  { name: 'gapArcmin', unit: 'arcmin', meaning: 'visual angle of the gap at the viewing distance', range: [0, 600] },
  { name: 'fieldDeg', unit: '°', meaning: 'visual angle of the smaller part at the viewing distance', range: [0, 180] },
  { name: 'lengthMm', unit: 'mm', meaning: 'length of the joint', range: [0, 5000] },
  { name: 'tiltDeg', unit: '°', meaning: 'angle between the two faces; 0 where they lie in one plane', range: [0, 90] },
  { name: 'meanL', unit: 'L*', meaning: 'mean CIELAB L* of the two parts under the first required light', range: [0, 100] },
  { name: 'meanC', unit: 'C*', meaning: 'mean CIELAB C*ab of the two parts under the first required light', range: [0, 150] },
  { name: 'meanGloss', unit: 'GU', meaning: 'mean gloss of the two parts at 60 degrees', range: [0, 200] },
  { name: 'minSa', unit: 'µm', meaning: 'smaller Sa of the two parts (ISO 25178-2)', range: [0.05, 100] },
  { name: 'maxSa', unit: 'µm', meaning: 'larger Sa of the two parts (ISO 25178-2)', range: [0.05, 100] },
  { name: 'minSal', unit: 'mm', meaning: 'smaller autocorrelation length Sal of the two parts (ISO 25178-2)', range: [0.01, 10] },
  { name: 'maxSal', unit: 'mm', meaning: 'larger autocorrelation length Sal of the two parts (ISO 25178-2)', range: [0.01, 10] },
  { name: 'minVisibleContrast', unit: 'thresholds',
    meaning: 'visible contrast of the less textured of the two parts at the viewing distance, in units of its threshold; of parts with a measured visible texture', range: [0, 500] },
  { name: 'maxVisibleContrast', unit: 'thresholds', meaning: 'visible contrast of the more textured of the two parts, as above', range: [0, 500] },
  { name: 'visibility', unit: '1', meaning: 'weight of what a customer sees, the larger of the two parts', range: [0, 1] },
];

/** Pairs of which the first can never exceed the second. */
export const orderedVariables: readonly (readonly [keyof RuleVariables, keyof RuleVariables])[] = [
  ['minSa', 'maxSa'],
  ['minSal', 'maxSal'],
  ['minVisibleContrast', 'maxVisibleContrast'],
];

/** One function that expressions may call. */
export interface RuleFunction {
  readonly name: string;
  readonly minArguments: number;
  readonly maxArguments: number;
  readonly meaning: string;
  readonly evaluate: (...values: readonly number[]) => number;
}

export const ruleFunctions: readonly RuleFunction[] = [
  { name: 'min', minArguments: 2, maxArguments: 8, meaning: 'smallest of its arguments', evaluate: (...values) => Math.min(...values) },
  { name: 'max', minArguments: 2, maxArguments: 8, meaning: 'largest of its arguments', evaluate: (...values) => Math.max(...values) },
  { name: 'clamp', minArguments: 3, maxArguments: 3, meaning: 'clamp(x, low, high): x held between low and high',
    evaluate: (x, low, high) => Math.min(Math.max(x, low), high) },
  { name: 'abs', minArguments: 1, maxArguments: 1, meaning: 'absolute value', evaluate: Math.abs },
  { name: 'sqrt', minArguments: 1, maxArguments: 1, meaning: 'square root', evaluate: Math.sqrt },
  { name: 'exp', minArguments: 1, maxArguments: 1, meaning: 'e to the power of x', evaluate: Math.exp },
  { name: 'log', minArguments: 1, maxArguments: 1, meaning: 'natural logarithm', evaluate: Math.log },
  { name: 'pow', minArguments: 2, maxArguments: 2, meaning: 'pow(x, y): x to the power of y', evaluate: Math.pow },
];

export const ruleConstants: readonly { readonly name: string; readonly value: number; readonly meaning: string }[] = [
  { name: 'pi', value: Math.PI, meaning: 'ratio of a circle\'s circumference to its diameter' },
  { name: 'e', value: Math.E, meaning: 'base of the natural logarithm' },
];

/** Operators that expressions may use, as a reader of the rule editor sees them. */
export const ruleOperators: readonly { readonly sign: string; readonly meaning: string }[] = [
  { sign: '+ - * / ^', meaning: 'arithmetic; no power inside an exponent, and the multiplication sign is always written' },
  { sign: '< <= > >= == !=', meaning: 'comparison of two numbers, for use in a condition' },
  { sign: 'and or not', meaning: 'joining of comparisons' },
  { sign: 'a ? b : c', meaning: 'b where the condition a is met, else c' },
];
