import { adaptXyz } from './adaptation.ts';
import { xyzToLab } from './cielab.ts';
import type { AdaptationTransform } from './cone-response.ts';
import type { DifferenceFormula } from './difference-formula.ts';
import { difference } from './difference.ts';
import type { Light } from './lights.ts';
import type { Observer } from './observers.ts';
import type { Spectrum } from './spectrum.ts';
import { spectrumToXyz, weightsOf } from './tristimulus.ts';

export interface InconstancyConditions {
  /** Usually D65. */
  readonly reference: Light;
  readonly test: Light;
  readonly observer: Observer;
  readonly transform: AdaptationTransform;
  readonly formula: DifferenceFormula;
  /** Degree of adaptation 0..1; complete unless given. */
  readonly degree?: number;
}

/**
 * How much one part changes its colour from the reference light to a test light for an adapted eye.
 *
 * The colour under the test light is adapted to the reference white and differenced with the colour under the reference light, which is the
 * standard of the formula. `cmccat2000` with CMC(1:1) is the way of CMCCON02, `cat02` that of the CIE index.
 * Source: ISO 105-J05:2007 (CMCCON02; complete adaptation from memory); CIE 159:2004.
 */
export function colourInconstancy(spectrum: Spectrum, conditions: InconstancyConditions): number {
  const { reference, test, observer, transform, formula, degree = 1 } = conditions;
  const underReference = weightsOf(spectrum, reference, observer);
  const underTest = weightsOf(spectrum, test, observer);
  const adapted = adaptXyz(spectrumToXyz(spectrum.values, underTest), underTest.white, underReference.white, transform, degree);
  return difference(
    formula,
    xyzToLab(spectrumToXyz(spectrum.values, underReference), underReference.white),
    xyzToLab(adapted, underReference.white),
  );
}
