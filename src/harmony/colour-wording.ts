import type { DifferenceFormula } from '../colour/difference-formula.ts';
import { formulaLabel } from '../colour/formula-label.ts';
import { labToLch } from '../colour/cielab.ts';
import type { CriterionResult, LightResult } from './judgement.ts';
import type { SideNames } from './names.ts';
import { figure, listed, percentOfLimit } from './wording.ts';

/** From this mean C*ab on, hue words stand for dH*; the difference words change over at the same chroma. */
const chromaticFrom = 20;

/** "0.41 darker and 0.35 bluer": every word with the size of the component it stands for. */
export function differencePhrase(light: LightResult): string {
  const { dL, da, db, dC, dH } = light.difference;
  const chromatic = (labToLch(light.standard)[1] + labToLch(light.trial)[1]) / 2 >= chromaticFrom;
  const size = (word: string): number => {
    if (word === 'lighter' || word === 'darker') return dL;
    if (word.endsWith('chromatic')) return dC;
    if (chromatic) return dH;
    return word === 'redder' || word === 'greener' ? da : db;
  };
  return listed(light.words.map((word) => `${figure(Math.abs(size(word)))} ${word}`));
}

/** "Door insert is 0.41 darker than Dash panel under FL11: CIEDE2000 1.12 of 0.98 allowed (114 %)". */
export function comparisonPhrase(names: SideNames, light: LightResult, criterion: CriterionResult | undefined, formula: DifferenceFormula): string {
  const words = differencePhrase(light);
  const opening = words === ''
    ? `${names.trial} and ${names.standard} are within 0.1 CIELAB units of each other under ${light.light}`
    : `${names.trial} is ${words} than ${names.standard} under ${light.light}`;
  return `${opening}: ${formulaLabel(formula)} ${figure(light.value)}${criterionPhrase(criterion)}`;
}

function criterionPhrase(criterion: CriterionResult | undefined): string {
  if (criterion === undefined) return '';
  const use = `(${percentOfLimit(criterion.limitUse)} of the limit)`;
  const bound = criterion.limitUse > 0 && criterion.min !== undefined && (criterion.max === undefined || criterion.value < criterion.min)
    ? `at least ${figure(criterion.min)} asked`
    : criterion.max === undefined ? `at least ${figure(criterion.min ?? 0)} asked` : `${figure(criterion.max)} allowed`;
  return criterion.name === 'ΔE' ? `, ${bound} ${use}` : `; abs ${criterion.name} ${figure(Math.abs(criterion.value))}, ${bound} ${use}`;
}
