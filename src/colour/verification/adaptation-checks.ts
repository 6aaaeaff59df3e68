import { cmccat2000 } from '../adaptation.ts';
import { colourInconstancy } from '../colour-inconstancy.ts';
import type { DifferenceFormula } from '../difference-formula.ts';
import { lightByName } from '../lights.ts';
import type { PublishedCheck } from '../published-check.ts';
import { publishedCheck } from '../published-check.ts';
import { inconstancies, inconstancyOrigin, workedCmccat2000 } from '../published/adaptation.ts';
import { analyticSpectra } from '../published/metamerism.ts';
import { tristimulusCheck } from './worst-check.ts';

const formulas: Record<'cie76' | 'cmc11' | 'ciede2000', DifferenceFormula> = {
  cie76: { name: 'cie76' },
  cmc11: { name: 'cmc', l: 1, c: 1 },
  ciede2000: { name: 'ciede2000' },
};

/** Chromatic adaptation and colour inconstancy against worked examples. */
export function adaptationChecks(): PublishedCheck[] {
  const { origin, xyz, white, referenceWhite, fields, corresponding } = workedCmccat2000;
  const inconstancyRows = inconstancies.flatMap((row) => (['cie76', 'cmc11', 'ciede2000'] as const).map((name) =>
    publishedCheck(`colour inconstancy, ${row.transform}, ${name}`, inconstancyOrigin, `wave, 10 deg, ${row.test} to D65`, row[name],
      colourInconstancy(analyticSpectra.wave, {
        reference: lightByName('D65')!, test: lightByName(row.test)!, observer: 10, transform: row.transform, formula: formulas[name],
      }), 5e-5)));
  return [
    tristimulusCheck('CMCCAT2000', origin, `XYZ ${xyz.join(' ')}, A to D65, 10 deg`, corresponding,
      cmccat2000(xyz, white, referenceWhite, fields), 5e-7),
    ...inconstancyRows,
  ];
}
