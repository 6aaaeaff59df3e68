import { correctBandpass } from '../bandpass.ts';
import { interpolant, interpolate } from '../interpolation.ts';
import type { PublishedCheck } from '../published-check.ts';
import { printedTo, publishedCheck } from '../published-check.ts';
import { workedBandpass, workedInterpolation } from '../published/interpolation.ts';
import { worstCheck } from './worst-check.ts';

/** Sprague interpolation and bandpass correction against worked examples. */
export function interpolationChecks(): PublishedCheck[] {
  const { values, at, origin } = workedInterpolation;
  return [
    ...at.map(({ position, value }) => publishedCheck('Sprague interpolation', origin, `position ${position} of seven values`, value,
      interpolate(values, interpolant(0, 1, values.length, position)), 5e-7)),
    worstCheck('bandpass correction', workedBandpass.origin, workedBandpass.measured.join(' '),
      workedBandpass.measured.map((_, i) => `value ${i + 1}`), workedBandpass.corrected,
      correctBandpass(workedBandpass.measured), printedTo(5)),
  ];
}
