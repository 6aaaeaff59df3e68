import { heightParameters } from './height-parameters.ts';
import { cellPattern } from './cell-pattern.ts';
import { correlatedFieldSteps } from './correlated-field.ts';
import { spatialParameterSteps } from './spatial-parameters.ts';
import type { SpatialParameters } from './spatial-parameters.ts';
import type { Steps } from './steps.ts';
import { partOfSteps } from './steps.ts';
import { weavePattern } from './weave-pattern.ts';

/**
 * What the heights are made to look like. Areal parameters do not tell: `cells` are the usual form of hides and grained mouldings,
 * `random` that of eroded tools and pile, `weave` that of plain woven textile.
 */
export const grainPatterns = ['random', 'cells', 'weave'] as const;
export type GrainPattern = (typeof grainPatterns)[number];

export interface GrainInput {
  readonly pattern: GrainPattern;
  /** Str of ISO 25178-2, 0..1; below {@link leastStr} that is taken. A weave has its own. */
  readonly str: number;
  readonly seed: number;
  /** Points of the field along x, the lay, and along y; products of small primes are quick. */
  readonly width: number;
  readonly height: number;
}

/** Heights that repeat at their edges, of Sa 1 about a mean of 0, with their lay along x. */
export interface UnitGrain {
  readonly width: number;
  readonly height: number;
  readonly values: Float64Array;
  /** Sal in points: the same along both axes. */
  readonly salPoints: number;
  readonly str: number;
}

/** Smallest Str that a field of this kind can hold. */
export const leastStr = 0.05;
/** Points in Sal: enough for slopes, few enough for a wide field. */
const pointsInSal = 6;
/** Pitch of cells and of threads in Sal, nearly; the field itself is measured. */
const cellPitch = 3.9;
const threadPitch = 3.5;
/** Str of stretched cells times their stretch: 1.02 to 1.09 for fields with a stretch of 1.15 to 5, measured on three each. */
const strOfCells = 1.035;

/**
 * Makes a grain of a pattern and a Str from a seed. Its Sa is 1 and its Sal is known in points, so that scaling heights and spacing
 * gives every Sa and Sal.
 *
 * Sal and Str are those of the field itself as `spatialParameterSteps` measures them. On a field of 1024 points a side the Str meets the asked
 * one within 0.06 for `cells` and within 0.01 for `random`.
 */
export function* synthesiseGrainSteps(input: GrainInput): Steps<UnitGrain> {
  const str = Math.min(1, Math.max(leastStr, input.str));
  const { width, height, seed } = input;
  if (input.pattern === 'weave') {
    const values = weavePattern(width, height, threadPitch * pointsInSal);
    yield 0.3;
    return unitGrain(width, height, values, yield* partOfSteps(measured(width, height, values), 0.3, 1));
  }
  if (input.pattern === 'random') {
    const values = yield* partOfSteps(correlatedFieldSteps({ width, height, fastest: pointsInSal, slowest: pointsInSal / str, seed }), 0, 0.6);
    return unitGrain(width, height, values, yield* partOfSteps(measured(width, height, values), 0.6, 1));
  }
  const values = cellPattern({ width, height, pitch: cellPitch * pointsInSal, stretch: Math.max(1, strOfCells / str), seed });
  yield 0.6;
  return unitGrain(width, height, values, yield* partOfSteps(measured(width, height, values), 0.6, 1));
}

function* measured(width: number, height: number, values: Float64Array): Steps<SpatialParameters> {
  return yield* spatialParameterSteps({ width, height, spacingMm: [1, 1], values });
}

function unitGrain(width: number, height: number, values: Float64Array, found: SpatialParameters): UnitGrain {
  const { saUm } = heightParameters(values) ?? { saUm: 1 };
  let sum = 0;
  for (let index = 0; index < values.length; index += 1) sum += values[index];
  const mean = sum / values.length;
  for (let index = 0; index < values.length; index += 1) values[index] = (values[index] - mean) / saUm;
  return { width, height, values, salPoints: found.salMm ?? pointsInSal, str: found.str ?? 1 };
}
