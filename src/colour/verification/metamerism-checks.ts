import { difference } from '../difference.ts';
import { lightByName } from '../lights.ts';
import { additiveIndex, metamerism, multiplicativeIndex } from '../metamerism.ts';
import type { PublishedCheck } from '../published-check.ts';
import { printedTo, publishedCheck } from '../published-check.ts';
import {
  analyticIndices, analyticOrigin, analyticSpectra, analyticSums, analyticSumsOrigin, analyticTolerance, waveDifferences, workedAdditive, workedMultiplicative,
} from '../published/metamerism.ts';
import { spectrumToLab, spectrumToXyz, weightsOf } from '../tristimulus.ts';
import { tristimulusCheck } from './worst-check.ts';

const cie76 = { name: 'cie76' } as const;

function workedExamples(): PublishedCheck[] {
  const { standard, trial, testWhite, index, origin } = workedMultiplicative;
  return [
    publishedCheck('metamerism, multiplicative', origin, '10 deg, D65 to A', index,
      multiplicativeIndex(standard, trial, testWhite, cie76), printedTo(4)),
    publishedCheck('metamerism, additive', workedAdditive.origin, '10 deg, D65 to A', workedAdditive.index,
      additiveIndex(workedAdditive.standard, workedAdditive.trial, cie76), printedTo(4)),
  ];
}

function sums(): PublishedCheck[] {
  return analyticSums.map(({ spectrum, xyz }) => {
    const weights = weightsOf(analyticSpectra[spectrum], lightByName('D65')!, 10);
    return tristimulusCheck('E308 summation', analyticSumsOrigin,
      `analytic spectrum ${spectrum}, 400 nm to 700 nm at 10 nm, D65, 10 deg`, xyz,
      spectrumToXyz(analyticSpectra[spectrum].values, weights), 1.2e-5);
  });
}

function differences(): PublishedCheck[] {
  return waveDifferences.flatMap((row) => (['cie76', 'ciede2000'] as const).map((name) => {
    const lab = (spectrum: 'flat' | 'wave') => spectrumToLab(analyticSpectra[spectrum], lightByName(row.light)!, 10);
    return publishedCheck(`spectrum to ${name}`, analyticOrigin, `flat and wave, ${row.light}, 10 deg`, row[name],
      difference({ name }, lab('flat'), lab('wave')), analyticTolerance);
  }));
}

function indices(): PublishedCheck[] {
  return analyticIndices.flatMap((row) => {
    const got = metamerism(analyticSpectra.flat, analyticSpectra[row.trial],
      { reference: lightByName('D65')!, test: lightByName(row.test)!, observer: 10, formula: cie76 });
    return (['residual', 'multiplicative', 'additive', 'parametric'] as const).flatMap((index) => {
      const expected = row[index];
      return expected === undefined ? []
        : [publishedCheck(`metamerism, ${index}`, analyticOrigin, `flat and ${row.trial}, 10 deg, D65 to ${row.test}`,
          expected, got[index], analyticTolerance)];
    });
  });
}

/** Metamerism indices against worked examples. */
export const metamerismChecks = (): PublishedCheck[] => [...workedExamples(), ...sums(), ...differences(), ...indices()];
