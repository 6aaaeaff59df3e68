import { printedTo, publishedCheck, type PublishedCheck } from '../colour/published-check.ts';
import { fresnelGloss } from './fresnel-gloss.ts';
import { fresnelReflectance } from './fresnel-reflectance.ts';
import { glossAngles } from './gloss-angle.ts';
import { fresnelTable, fresnelTableSource } from './published/fresnel-table.ts';

/** Every known value of reflectance and gloss of polished surfaces, set against ours. */
export function verifyGloss(): PublishedCheck[] {
  return fresnelTable.flatMap(({ n, reflectance, gloss }) => [
    ...reflectance.map(([angle, expected]) => publishedCheck(
      'Fresnel reflectance', fresnelTableSource, `n ${n}, ${angle} deg`, expected, fresnelReflectance(n, angle), printedTo(6))),
    ...glossAngles.map((angle) => publishedCheck(
      'gloss of a mirror', fresnelTableSource, `n ${n}, ${angle} deg`, gloss[angle], fresnelGloss(n, angle), printedTo(2))),
  ]);
}
