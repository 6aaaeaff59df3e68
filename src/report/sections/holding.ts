import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { bookFormulaLabel } from '../../rules/index.ts';
import { html } from '../markup.ts';
import { counted } from '../number-text.ts';
import { section } from '../pieces.ts';
import { jointRows } from './joint-rows.ts';

/** Joints that hold, one row each; folded on a screen, whole in print. */
export function holding(page: Page): Content {
  const entries = page.model.joints.filter(({ result }) => result.verdict === 'holds');
  if (entries.length === 0) return undefined;
  return section('holding', 'Joints that hold',
    html('p', { class: 'lead' }, `${counted(entries.length, 'joint holds', 'joints hold')} with the confidence asked for. Colour by ${bookFormulaLabel(page.model.ruleBook)} unless the rule of the joint says otherwise, by |ΔL*| where that decides, for the ${page.model.observer}° observer under the light beside it; of a wanted step or contrast the distance.`),
    html('details', {}, html('summary', {}, `Show the ${counted(entries.length, 'joint')}`), jointRows(page, 'Joints that hold, nearest to the limit first', entries)));
}
