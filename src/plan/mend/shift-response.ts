import { labJacobian } from '../../colour/lab-jacobian.ts';
import { smoothestChange } from '../../colour/smoothest-change.ts';
import type { Spectrum } from '../../colour/spectrum.ts';
import { weightsFor } from '../../colour/weights.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';

/** How a part's colour under a light moves with a shift given under D65, to first order: row-major 3 x 3. */
export type ShiftResponse = (part: string, light: string) => Matrix3;

const units: readonly Lab[] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]];

const unmoved: Matrix3 = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** The spectrum that a part's basis is seen by first; undefined where it has none. */
export const spectrumOf = (context: JudgeContext, basis: PartBasis | undefined): Spectrum | undefined => {
  const group = basis?.colour?.groups.find((each) => context.sample(each, [])?.spectrum !== undefined);
  return group === undefined ? undefined : context.sample(group, [])?.spectrum;
};

/**
 * The response of each part to a smoothest change of the spectrum that it is reckoned from, seen from its present spectrum. A part without
 * spectra moves under every light as it does under D65. Computed once for each part and light.
 */
export function shiftResponse(context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, reckonedFrom: (part: string) => Spectrum | undefined): ShiftResponse {
  const known = new Map<string, Matrix3>();
  const changesOf = new Map<string, readonly Float64Array[]>();
  const compute = (part: string, name: string): Matrix3 => {
    const [spectrum, present] = [reckonedFrom(part), spectrumOf(context, bases.get(part))];
    const [reference, light] = [context.light('D65'), context.light(name)];
    if (spectrum === undefined || present === undefined || reference === undefined || light === undefined || present.values.length !== spectrum.values.length) return unmoved;
    const { observer } = context.book;
    const count = spectrum.values.length;
    const changes = changesOf.get(part) ?? units.map((unit) => smoothestChange(spectrum, reference, observer, unit));
    changesOf.set(part, changes);
    const jacobian = labJacobian(present.values, weightsFor(light, observer, present.startNm, present.stepNm, count));
    return [0, 1, 2].flatMap((row) => changes.map((change) => change.reduce((sum, value, index) => sum + value * jacobian[row * count + index], 0))) as unknown as Matrix3;
  };
  return (part, light) => {
    const key = JSON.stringify([part, light]);
    const made = known.get(key) ?? compute(part, light);
    known.set(key, made);
    return made;
  };
}
