import { decimal, plainNumber } from './plain-number.ts';
import type { MaterialClass, MaterialValue, RuleBook } from './rule-book.ts';

/** What the classes of two materials give together. */
export interface CombinedClass {
  readonly limit: number;
  readonly kL: number;
  readonly lightnessCap?: number;
  readonly advisory: boolean;
  readonly sameGeometryOnly: boolean;
  readonly limitBasis: string;
  readonly capBasis: string;
  /** How the limit came about, to follow a colon. */
  readonly why: string;
}

export const basisOf = (row: MaterialClass, value: MaterialValue): string => row.bases?.[value] ?? row.basis;

/** Two bases in one text, each once, in an order that does not depend on which side is named first. */
export const joinedBasis = (...bases: readonly string[]): string => [...new Set(bases)].sort().join('; ');

/**
 * Joins the rows of two materials: the larger colour limit, with the allowance where the families differ, since unlike
 * materials are expected to differ a little more; the smaller kL and the smaller cap on dL*, since the smoother side decides.
 * The order of the two never matters.
 */
export function combineClasses(a: MaterialClass, b: MaterialClass, combination: RuleBook['combination']): CombinedClass {
  const larger = Math.max(a.colourLimit, b.colourLimit);
  const unlike = a.family !== b.family;
  const limit = unlike ? decimal(larger + combination.unlikeFamilyAllowance) : larger;
  const caps = [a, b].filter((row) => row.lightnessCap !== undefined);
  const lightnessCap = caps.length === 0 ? undefined : Math.min(...caps.map((row) => row.lightnessCap!));
  const [first, second] = [a, b].sort((x, y) => (x.material < y.material ? -1 : 1)) as [MaterialClass, MaterialClass];
  const names = a.material === b.material ? `both are ${a.material}`
    : unlike ? `${first.material} is ${first.family} and ${second.material} is ${second.family}`
      : `${first.material} and ${second.material} are both ${a.family}`;
  const sum = a.material === b.material ? `its limit is ${plainNumber(limit)}`
    : `the larger of ${plainNumber(first.colourLimit)} and ${plainNumber(second.colourLimit)}${unlike && combination.unlikeFamilyAllowance > 0
      ? ` plus ${plainNumber(combination.unlikeFamilyAllowance)} for unlike families` : ''} is ${plainNumber(limit)}`;
  return {
    limit,
    kL: Math.min(a.kL, b.kL),
    ...(lightnessCap === undefined ? {} : { lightnessCap }),
    advisory: a.advisory === true || b.advisory === true,
    sameGeometryOnly: a.sameGeometryOnly === true || b.sameGeometryOnly === true,
    limitBasis: joinedBasis(basisOf(a, 'colourLimit'), basisOf(b, 'colourLimit'), ...(unlike ? [combination.basis] : [])),
    capBasis: joinedBasis(...caps.map((row) => basisOf(row, 'lightnessCap'))),
    why: `${names}; ${sum}`,
  };
}
