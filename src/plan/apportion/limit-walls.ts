import { localMetric } from '../../colour/local-metric.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { allFinite, componentValue, criterionRange } from '../../readings/criterion-test.ts';
import { multiplyMatrix3 } from '../../readings/matrix3.ts';
import type { Criterion } from '../../readings/stacked-event.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

/** A joint whose colour is judged, with all that is asked of it under all its lights. */
export interface ScatteredJoint {
  readonly terms: readonly ToleranceTerm[];
  readonly shapes: readonly [Ellipsoid, Ellipsoid];
}

/** A joint under one light: its targets, and how the colours of its parts move with a step of one radius in each direction of their own. */
export interface LightOfJoint {
  readonly standard: Lab;
  readonly trial: Lab;
  readonly moves: readonly [Matrix3, Matrix3];
}

/** A difference that is to stay on one side of a limit, with the quadratic form that its square is about the targets. */
export interface CurvedWall {
  readonly light: LightOfJoint;
  readonly criterion: Extract<Criterion, { readonly kind: 'difference' }>;
  readonly square: Matrix3;
  readonly limit: number;
  /** The difference is to stay below the limit; else above. */
  readonly outwards: boolean;
}

/** A component that is straight in CIELAB: its signed value on target and what it has to stay between. */
export interface StraightWall {
  readonly light: LightOfJoint;
  readonly axis: 0 | 1 | 2;
  readonly here: number;
  readonly low: number;
  readonly high: number;
}

/** The limits of a joint by the way they are met: by a form that is close, exactly, or step by step. */
export interface JointWalls {
  readonly lights: readonly LightOfJoint[];
  readonly curved: readonly CurvedWall[];
  readonly straight: readonly StraightWall[];
  /** Chroma and hue, and differences without a form. */
  readonly others: readonly ToleranceTerm[];
}

const axes = { dL: 0, da: 1, db: 2, dC: undefined, dH: undefined } as const;
const known = new WeakMap<ScatteredJoint, JointWalls>();

/** Made once for each joint. */
export function wallsOf(joint: ScatteredJoint): JointWalls {
  const made = known.get(joint) ?? laidOut(joint);
  known.set(joint, made);
  return made;
}

function laidOut({ terms, shapes }: ScatteredJoint): JointWalls {
  const lights = new Map<string, LightOfJoint>();
  const walls: { readonly curved: CurvedWall[]; readonly straight: StraightWall[]; readonly others: ToleranceTerm[] } = { curved: [], straight: [], others: [] };
  for (const term of terms) {
    const { criterion, standard, trial, responses } = term;
    const light = lights.get(term.light) ?? { standard, trial, moves: [multiplyMatrix3(responses[0], shapes[0].fromBall), multiplyMatrix3(responses[1], shapes[1].fromBall)] as const };
    lights.set(term.light, light);
    if (criterion.kind === 'difference') {
      const square = localMetric(criterion.formula, standard, trial);
      if (!allFinite(square)) walls.others.push(term);
      else walls.curved.push(...sidesOf(criterion).map(([limit, outwards]) => ({ light, criterion, square, limit, outwards })));
      continue;
    }
    const axis = axes[criterion.component];
    if (axis === undefined) walls.others.push(term);
    else walls.straight.push({ light, axis, ...signedRange(criterion, componentValue(criterion.component, standard, trial)) });
  }
  return { lights: [...lights.values()], ...walls };
}

/** The limits of a difference that are set, those from above first. */
function sidesOf(criterion: Criterion): readonly (readonly [limit: number, outwards: boolean])[] {
  const [low, high] = criterionRange(criterion);
  return [...(Number.isFinite(high) ? [[high, true] as const] : []), ...(Number.isFinite(low) ? [[low, false] as const] : [])];
}

/** What the signed value of a component is to stay between: where its size is to stay above a limit, on the side of nought that it is on. */
function signedRange(criterion: Extract<Criterion, { readonly kind: 'component' }>, here: number): Pick<StraightWall, 'here' | 'low' | 'high'> {
  const [low, high] = criterionRange(criterion);
  if (criterion.absolute !== true) return { here, low, high };
  const least = Math.max(0, low);
  if (low <= 0) return { here, low: -high, high };
  return here >= 0 ? { here, low: least, high } : { here, low: -high, high: -least };
}
