import type { Issue } from '../issue.ts';
import type { RuleVariables } from './rule-book.ts';
import { expressionIssue } from './expression-tokens.ts';
import { orderedVariables, ruleVariables } from './variables.ts';

type Mutable = { -readonly [name in keyof RuleVariables]: number };

const insidePoints = 256;

/** Values a joint is likely to have; every variable is known. */
export const typicalVariables: RuleVariables = {
  gapMm: 0.5, viewMm: 700, gapArcmin: 2.5, fieldDeg: 10, lengthMm: 300, tiltDeg: 0, meanL: 28, meanC: 1.5, meanGloss: 2,
  minSa: 8, maxSa: 8, minSal: 0.3, maxSal: 0.3, minVisibleContrast: 15, maxVisibleContrast: 15, visibility: 1,
};

const possible = (point: RuleVariables): boolean => orderedVariables.every(([low, high]) => point[low] <= point[high]);

/** Radical inverse of an index in a base, the Halton sequence: even cover of 0..1 without a random number. */
function radicalInverse(index: number, base: number): number {
  let [rest, share, sum] = [index, 1 / base, 0];
  while (rest > 0) {
    sum += share * (rest % base);
    rest = Math.floor(rest / base);
    share /= base;
  }
  return sum;
}

const primes = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53];

/** Corners of the documented ranges of the named variables, then 256 points inside; the other variables stay typical. */
function* testPoints(names: readonly (keyof RuleVariables)[]): Generator<RuleVariables> {
  const used = ruleVariables.filter((entry) => names.includes(entry.name));
  const place = (share: (index: number) => number): Mutable => {
    const point: Mutable = { ...typicalVariables };
    used.forEach(({ name, range: [low, high] }, index) => {
      point[name] = low + (high - low) * share(index);
    });
    return point;
  };
  for (let corner = 0; corner < 2 ** used.length; corner += 1) {
    const point = place((index) => (corner >> index) & 1);
    if (possible(point)) yield point;
  }
  for (let index = 1; used.length > 0 && index <= insidePoints; index += 1) {
    const point = place((dimension) => radicalInverse(index, primes[dimension]!));
    if (possible(point)) yield point;
  }
}

/**
 * Looks for values of the variables, inside their documented ranges, that give no usable number: not finite, or not above 0 where
 * `positive` is asked. Tries every corner and 256 points inside, so a fault at a single inner point can be missed; the
 * result is tested again whenever a joint is judged.
 */
export function rangeIssue(
  evaluate: (variables: RuleVariables) => number, names: readonly (keyof RuleVariables)[], positive: boolean,
): Issue | undefined {
  for (const point of testPoints(names)) {
    const result = evaluate(point);
    if (Number.isFinite(result) && (!positive || result > 0)) continue;
    const place = names.map((name) => `${name} = ${Number(point[name].toPrecision(4))}`).join(', ');
    return expressionIssue(
      'expression-out-of-range', 1, `${Number(result.toPrecision(4))}${place === '' ? '' : ` at ${place}`}`,
      `a finite number${positive ? ' above 0' : ''} over the documented ranges`, 'Hold it with max, min or clamp',
    );
  }
  return undefined;
}
