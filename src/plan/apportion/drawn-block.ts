import { differenceBatch, labColumns } from '../../colour/batch/index.ts';
import type { LabColumns } from '../../colour/batch/index.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { criterionRange, criterionValue } from '../../readings/criterion-test.ts';
import type { Criterion } from '../../readings/stacked-event.ts';
import { shiftIn } from './drawn-parts.ts';
import type { Draws } from './drawn-parts.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import type { StatisticalLaw } from './statistical-law.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

/** Tolerances that parts are drawn in. */
export interface DrawnTolerances {
  /** How parts scatter by squares; even over their tolerances where absent. */
  readonly law: StatisticalLaw | undefined;
  readonly shapes: readonly (Ellipsoid | undefined)[];
  readonly radii: readonly number[];
  readonly bands: readonly number[];
}

/** Beyond this a part without a limit is not drawn: no joint is judged at it. */
const unlimited = 0;

/** Several cabins drawn together, part by part, so that a joint is asked in all of them at once. */
export class DrawnBlock {
  readonly gloss: readonly Float64Array[];
  private readonly shifts: readonly LabColumns[];
  private readonly tolerances: DrawnTolerances;
  private readonly sides: readonly [LabColumns, LabColumns];
  private readonly values: Float64Array;
  private readonly turned: Float64Array;
  private moved: Pick<ToleranceTerm, 'joint' | 'light'> | undefined;

  constructor(tolerances: DrawnTolerances, size: number) {
    this.tolerances = tolerances;
    this.shifts = tolerances.shapes.map(() => labColumns(size));
    this.gloss = tolerances.bands.map(() => new Float64Array(size));
    this.sides = [labColumns(size), labColumns(size)];
    this.values = new Float64Array(size);
    this.turned = new Float64Array(size);
  }

  /** Draws the first `count` cabins of the block anew, one after the other. */
  draw(draws: Draws, count: number): void {
    const { law, shapes, radii, bands } = this.tolerances;
    this.moved = undefined;
    for (let at = 0; at < count; at++) {
      shapes.forEach((shape, part) => {
        if (shape === undefined) return;
        const ball: Lab = law === undefined ? draws.inBall() : [draws.normal() / law.radiusSds, draws.normal() / law.radiusSds, draws.normal() / law.radiusSds];
        const shift = shiftIn(shape, Number.isFinite(radii[part]) ? radii[part] : unlimited, ball);
        const { L, a, b } = this.shifts[part];
        [L[at], a[at], b[at]] = shift;
      });
      bands.forEach((band, part) => { this.gloss[part][at] = (Number.isFinite(band) ? band : unlimited) * (law === undefined ? draws.inBall()[0] : draws.normal() / law.bandSds); });
    }
  }

  /** Marks the cabins in which a term is outside its limits by more than `slack`, `items` being the places of its parts. */
  markOutside(term: ToleranceTerm, items: readonly [number, number], slack: number, out: Uint8Array): void {
    const { criterion } = term;
    const [low, high] = criterionRange(criterion);
    this.moveSides(term, items, out.length);
    const values = this.valuesOf(criterion, out.length);
    for (let at = 0; at < out.length; at++) if (values[at] - high > slack || low - values[at] > slack) out[at] = 1;
  }

  private moveSides(term: ToleranceTerm, items: readonly [number, number], count: number): void {
    if (this.moved?.joint === term.joint && this.moved.light === term.light) return;
    this.moved = term;
    moveInto(this.sides[0], term.standard, term.responses[0], this.shifts[items[0]], count);
    moveInto(this.sides[1], term.trial, term.responses[1], this.shifts[items[1]], count);
  }

  private valuesOf(criterion: Criterion, count: number): Float64Array {
    const { sides: [standard, trial] } = this;
    const values = this.values.subarray(0, count);
    if (criterion.kind === 'component') {
      const axis = straightAxis[criterion.component];
      if (axis !== undefined) {
        const [one, two] = [standard[axis], trial[axis]];
        for (let at = 0; at < count; at++) values[at] = two[at] - one[at];
        if (criterion.absolute === true) for (let at = 0; at < count; at++) values[at] = Math.abs(values[at]);
        return values;
      }
      for (let at = 0; at < count; at++) values[at] = criterionValue(criterion, [standard.L[at], standard.a[at], standard.b[at]], [trial.L[at], trial.a[at], trial.b[at]]);
      return values;
    }
    differenceBatch(criterion.formula, standard, trial, values);
    if (criterion.stricterDirection !== true) return values;
    const turned = differenceBatch(criterion.formula, trial, standard, this.turned.subarray(0, count));
    for (let at = 0; at < count; at++) values[at] = Math.max(values[at], turned[at]);
    return values;
  }
}

const straightAxis = { dL: 'L', da: 'a', db: 'b', dC: undefined, dH: undefined } as const;

function moveInto(into: LabColumns, lab: Lab, response: Matrix3, { L, a, b }: LabColumns, count: number): void {
  for (let at = 0; at < count; at++) {
    into.L[at] = lab[0] + response[0] * L[at] + response[1] * a[at] + response[2] * b[at];
    into.a[at] = lab[1] + response[3] * L[at] + response[4] * a[at] + response[5] * b[at];
    into.b[at] = lab[2] + response[6] * L[at] + response[7] * a[at] + response[8] * b[at];
  }
}
