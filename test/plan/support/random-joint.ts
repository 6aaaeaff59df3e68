import { localMetric } from '../../../src/colour/local-metric.ts';
import { ellipsoidOf } from '../../../src/plan/apportion/ellipsoid.ts';
import type { ScatteredJoint } from '../../../src/plan/apportion/limit-walls.ts';
import type { ToleranceTerm } from '../../../src/plan/apportion/tolerance-limits.ts';
import type { Lab, Matrix3 } from '../../../src/quantities.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';

/** A seeded joint: colours a little apart, three lights that parts answer to unlike, a formula and, in half of them, a cap on lightness, in a fifth one on chroma or hue. */
export function randomJoint(seed: number): ScatteredJoint & { readonly sds: readonly [number, number] } {
  const random = seededNumbers(seed);
  const spread = (by: number): number => by * (2 * random() - 1);
  const standard: Lab = [15 + 60 * random(), spread(10), spread(10)];
  const trial: Lab = seed % 3 === 0 ? standard : [standard[0] + spread(0.2), standard[1] + spread(0.1), standard[2] + spread(0.1)];
  const ordered = seed % 4 === 0;
  const formula = ordered ? { name: 'cmc', l: 2, c: 1 } as const : { name: 'ciede2000' } as const;
  const near = (): Matrix3 => [1 + spread(0.15), spread(0.08), spread(0.08), spread(0.08), 1 + spread(0.15), spread(0.08), spread(0.08), spread(0.08), 1 + spread(0.15)];
  const same: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];
  const terms = ([['D65', 1], ['A', 1.2], ['FL11', 1.4]] as const).flatMap(([light, factor]): ToleranceTerm[] => {
    const base = { joint: 0, light, standard, trial, parts: ['a', 'b'] as const, responses: light === 'D65' ? [same, same] as const : [near(), near()] as const };
    return [
      { ...base, criterion: { kind: 'difference', formula, atMost: 0.8 * factor, ...(ordered ? { stricterDirection: true } : {}) } },
      ...(seed % 2 === 1 ? [{ ...base, criterion: { kind: 'component' as const, component: 'dL' as const, min: -0.6, max: 0.6 } }] : []),
      ...(seed % 5 === 0 ? [{ ...base, criterion: { kind: 'component' as const, component: seed % 2 === 0 ? 'dC' as const : 'dH' as const, max: 0.45, absolute: true } }] : []),
    ];
  });
  return { terms, shapes: [ellipsoidOf(localMetric(formula, standard, standard)), ellipsoidOf(localMetric(formula, trial, trial))], sds: [0.09 + 0.12 * random(), 0.09 + 0.12 * random()] };
}
