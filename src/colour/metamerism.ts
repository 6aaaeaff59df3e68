import type { Lab, Xyz } from '../quantities.ts';
import { xyzToLab } from './cielab.ts';
import type { DifferenceFormula } from './difference-formula.ts';
import { difference } from './difference.ts';
import { resampleSpectrum } from './interpolation.ts';
import type { Light } from './lights.ts';
import { parametricMatch } from './metameric-black.ts';
import type { Observer } from './observers.ts';
import type { Spectrum } from './spectrum.ts';
import { sameGrid, visibleCount, visibleStartNm } from './spectrum.ts';
import { spectrumToXyz, weightsOf } from './tristimulus.ts';

export interface MetamerismConditions {
  /** The light under which the pair is meant to match, usually D65. */
  readonly reference: Light;
  readonly test: Light;
  readonly observer: Observer;
  readonly formula: DifferenceFormula;
}

/** Indices of metamerism for a change of light; all in units of the difference formula. */
export interface Metamerism {
  /** Difference of the pair under the reference light. A large one means a mismatch, and the indices then disagree. */
  readonly residual: number;
  /** Residual removed as a factor on X, Y and Z. */
  readonly multiplicative: number;
  /** Residual removed as a shift in CIELAB. */
  readonly additive: number;
  /** Residual removed from the spectrum by matrix R; NaN for fewer than three bands. */
  readonly parametric: number;
}

/** The trial as the test light would show it, had its reference value been the standard's; a shift where a factor of zero cannot serve. */
function corrected(trialTest: number, standardReference: number, trialReference: number): number {
  if (trialReference === 0) return trialTest + standardReference;
  return (trialTest * standardReference) / trialReference;
}

/**
 * The multiplicative index from tristimulus values of both colours under both lights.
 *
 * Source: ISO 18314-4:2024, multiplicative correction.
 */
export function multiplicativeIndex(
  standard: { reference: Xyz; test: Xyz }, trial: { reference: Xyz; test: Xyz }, testWhite: Xyz, formula: DifferenceFormula,
): number {
  const shown = (i: 0 | 1 | 2): number => corrected(trial.test[i], standard.reference[i], trial.reference[i]);
  return difference(formula, xyzToLab(standard.test, testWhite), xyzToLab([shown(0), shown(1), shown(2)], testWhite));
}

/**
 * The additive index from CIELAB of both colours under both lights.
 *
 * Source: ISO 18314-4:2024, additive correction (in CIELAB).
 */
export function additiveIndex(
  standard: { reference: Lab; test: Lab }, trial: { reference: Lab; test: Lab }, formula: DifferenceFormula,
): number {
  const shown = (i: 0 | 1 | 2): number => trial.test[i] - (trial.reference[i] - standard.reference[i]);
  return difference(formula, standard.test, [shown(0), shown(1), shown(2)]);
}

const atNanometres = (spectrum: Spectrum): Spectrum => resampleSpectrum(spectrum, visibleStartNm, 1, visibleCount);

/**
 * How far a pair that matches under the reference light comes apart under a test light.
 *
 * Both spectra are summed on their own grid if they share it, else both are brought to 1 nm (CIE 167).
 * The indices take the residual out in three ways; report the residual beside them.
 * Source: ISO 18314-4:2024; spectral correction 8.3.3 after Fairman 1987.
 */
export const metamerism = (standard: Spectrum, trial: Spectrum, { test, ...conditions }: MetamerismConditions): Metamerism =>
  metamerismUnder(standard, trial, [test], conditions)[0];

/** The same for several test lights; all that belongs to the reference light is computed once. */
export function metamerismUnder(
  standard: Spectrum, trial: Spectrum, tests: readonly Light[], conditions: Omit<MetamerismConditions, 'test'>,
): readonly Metamerism[] {
  if (!sameGrid(standard, trial)) return metamerismUnder(atNanometres(standard), atNanometres(trial), tests, conditions);
  const { reference, observer, formula } = conditions;
  const seen = (light: Light) => {
    const weights = weightsOf(standard, light, observer);
    const [standardXyz, trialXyz] = [spectrumToXyz(standard.values, weights), spectrumToXyz(trial.values, weights)];
    return { weights, standardXyz, trialXyz, standardLab: xyzToLab(standardXyz, weights.white), trialLab: xyzToLab(trialXyz, weights.white) };
  };
  const first = seen(reference);
  const residual = difference(formula, first.standardLab, first.trialLab);
  const matched = parametricMatch(standard.values, trial.values, first.weights);
  return tests.map((light) => {
    const { weights, standardXyz, trialXyz, standardLab, trialLab } = seen(light);
    return {
      residual,
      multiplicative: multiplicativeIndex({ reference: first.standardXyz, test: standardXyz }, { reference: first.trialXyz, test: trialXyz }, weights.white, formula),
      additive: additiveIndex({ reference: first.standardLab, test: standardLab }, { reference: first.trialLab, test: trialLab }, formula),
      parametric: difference(formula, standardLab, xyzToLab(spectrumToXyz(matched, weights), weights.white)),
    };
  });
}
