import { printedTo, publishedCheck, type PublishedCheck } from '../colour/published-check.ts';
import { fresnelGloss } from './fresnel-gloss.ts';
import { fresnelReflectance } from './fresnel-reflectance.ts';
import { glossAngles } from './gloss-angle.ts';
import { fresnelTable, fresnelTableOrigin } from './published/fresnel-table.ts';
import { simulatedGloss, simulatedGlossAgreement, simulatedGlossIndex, simulatedGlossOrigin } from './published/simulated-gloss.ts';
import { simulateGloss } from './simulate-gloss.ts';

/** Every known value of reflectance and gloss of polished and of rough surfaces, set against ours. */
export function verifyGloss(): PublishedCheck[] {
  const polished = fresnelTable.flatMap(({ n, reflectance, gloss }) => [
    ...reflectance.map(([angle, expected]) => publishedCheck(
      'Fresnel reflectance', fresnelTableOrigin, `n ${n}, ${angle} deg`, expected, fresnelReflectance(n, angle), printedTo(6))),
    ...glossAngles.map((angle) => publishedCheck(
      'gloss of a mirror', fresnelTableOrigin, `n ${n}, ${angle} deg`, gloss[angle], fresnelGloss(n, angle), printedTo(2))),
  ]);
  const rough = simulatedGloss.flatMap(({ alpha, gloss }) => glossAngles.map((angle) => publishedCheck(
    'simulated glossmeter', simulatedGlossOrigin, `n ${simulatedGlossIndex}, alpha ${alpha}, ${angle} deg`, gloss[angle],
    simulateGloss(simulatedGlossIndex, alpha, angle), printedTo(gloss[angle] < 1 ? 3 : 2) + simulatedGlossAgreement * gloss[angle])));
  return [...polished, ...rough];
}
