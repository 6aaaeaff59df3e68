import type { Degrees } from '../quantities.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';

/** A rectangular aperture seen from the sample: full angles in the plane of incidence and across it. */
export interface Aperture {
  readonly inPlaneDeg: Degrees;
  readonly acrossDeg: Degrees;
}

/** Image of the source in the plane of the receptor, the same at every angle. Source: ISO 2813:2014; ASTM D523 (from memory). */
export const sourceAperture: Aperture = { inPlaneDeg: 0.75, acrossDeg: 2.5 };

/** Apertures of the receptor. Source: ISO 2813:2014; ASTM D523 (from memory). */
export const receptorApertures: Readonly<Record<GlossMeterAngle, Aperture>> = {
  20: { inPlaneDeg: 1.8, acrossDeg: 3.6 },
  60: { inPlaneDeg: 4.4, acrossDeg: 11.7 },
  85: { inPlaneDeg: 4, acrossDeg: 6 },
};
