import type { Lab, Matrix3 } from '../../quantities.ts';
import { applyMatrix3 } from '../../readings/matrix3.ts';
import { criterionRange, criterionValue } from '../../readings/criterion-test.ts';
import { seededBits } from '../../readings/seeded-random.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

/** Colours of two sides with their parts shifted within the tolerance. */
const movedLab = (lab: Lab, response: Matrix3, shift: Lab): Lab => {
  const by = applyMatrix3(response, shift);
  return [lab[0] + by[0], lab[1] + by[1], lab[2] + by[2]];
};

/** How far a criterion is outside its range with the parts shifted; negative inside. */
export function excessOf({ criterion, standard, trial, responses }: ToleranceTerm, first: Lab, second: Lab): number {
  const [low, high] = criterionRange(criterion);
  const value = criterionValue(criterion, movedLab(standard, responses[0], first), movedLab(trial, responses[1], second));
  return Math.max(value - high, low - value);
}

/** Seeded directions and points. */
export class Draws {
  private readonly bits: () => number;
  constructor(seed: number) {
    this.bits = seededBits(seed);
  }

  private uniform(): number {
    return (this.bits() + 0.5) / 2 ** 32;
  }

  normal(): number {
    return Math.sqrt(-2 * Math.log(this.uniform())) * Math.cos(2 * Math.PI * this.uniform());
  }

  direction(): Lab {
    const v: Lab = [this.normal(), this.normal(), this.normal()];
    const length = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]) || 1;
    return [v[0] / length, v[1] / length, v[2] / length];
  }

  /** Even over the unit ball. */
  inBall(): Lab {
    const [x, y, z] = this.direction();
    const radius = Math.cbrt(this.uniform());
    return [x * radius, y * radius, z * radius];
  }
}

/** A point of the unit ball as a shift of a part. */
export const shiftIn = (shape: Ellipsoid, radius: number, ball: Lab): Lab => {
  const [x, y, z] = applyMatrix3(shape.fromBall, ball);
  return [x * radius, y * radius, z * radius];
};

/**
 * The largest excess met on the boundary of both tolerances: seeded starts, each improved by turning the two directions a little, less and
 * less far. A search, not a proof.
 */
export function worstOnBoundary(term: ToleranceTerm, shapes: readonly [Ellipsoid, Ellipsoid], radii: readonly [number, number], starts = 12, turns = 60): number {
  const draws = new Draws(7 + term.joint);
  const at = (a: Lab, b: Lab): number => excessOf(term, shiftIn(shapes[0], radii[0], a), shiftIn(shapes[1], radii[1], b));
  const turned = (v: Lab, by: number): Lab => {
    const d = draws.direction();
    const w: Lab = [v[0] + by * d[0], v[1] + by * d[1], v[2] + by * d[2]];
    const length = Math.sqrt(w[0] * w[0] + w[1] * w[1] + w[2] * w[2]) || 1;
    return [w[0] / length, w[1] / length, w[2] / length];
  };
  let worst = -Infinity;
  for (let start = 0; start < starts; start++) {
    let [a, b] = [draws.direction(), draws.direction()];
    let here = at(a, b);
    for (let turn = 0; turn < turns; turn++) {
      const by = 1.2 * 0.94 ** turn;
      const [c, d] = [turned(a, by), turned(b, by)];
      const there = at(c, d);
      if (there > here) [a, b, here] = [c, d, there];
    }
    worst = Math.max(worst, here);
  }
  return worst;
}
