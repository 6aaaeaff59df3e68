import type { CheckResult } from '../../harmony/judgement.ts';
import type { Content } from '../markup.ts';
import type { ReportPart } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { bookFormulaLabel } from '../../rules/index.ts';
import { data, html, named } from '../markup.ts';
import { decimalsOf, fixed, limitUseText, probability } from '../number-text.ts';
import { pagedTable, section, verdictWord } from '../pieces.ts';
import { usePicture } from '../pictures.ts';

interface Row {
  readonly part: ReportPart;
  readonly check: CheckResult;
}

const order = ['clashes', 'open', 'no data', 'holds', 'not applicable'];

/** Parts against their own masters and against the caps of their zones. */
export function partChecks(page: Page): Content {
  const rows = page.model.parts.flatMap((part) => part.checks.map((check): Row => ({ part, check })))
    .filter(({ check }) => check.verdict !== 'not applicable')
    .sort((first, second) => order.indexOf(first.check.verdict) - order.indexOf(second.check.verdict) || (second.check.limitUse ?? -1) - (first.check.limitUse ?? -1));
  if (rows.length === 0) return undefined;
  const masters = rows.filter(({ check }) => check.check === 'master');
  const caps = rows.filter(({ check }) => check.check === 'cap');
  const cautions = [...new Set(rows.flatMap(({ check }) => check.cautions))];
  return section('parts', 'Parts against their masters and caps',
    html('p', { class: 'lead' }, 'Every part may be inside the tolerance to its master and still clash with its neighbour: two tolerances can point apart.'),
    masters.length > 0 && partTable(`Against the master; colour by ${bookFormulaLabel(page.model.ruleBook)}, ${page.model.observer}° observer`, masters),
    caps.length > 0 && partTable(`Caps of a zone; lightness for the ${page.model.observer}° observer`, caps),
    cautions.length > 0 && html('ul', { class: 'caution' }, cautions.map((caution) => html('li', {}, caution))));
}

const partTable = (caption: string, rows: readonly Row[]): Content => pagedTable<Row>(caption, [
  { title: 'Part', cell: ({ part }) => named(part.name) },
  { title: 'Check', cell: ({ check }) => (check.subject === undefined ? check.formula ?? check.unit : named(check.subject)) },
  { title: 'Verdict', cell: ({ check }) => verdictWord(check) },
  { title: 'Value', number: true, cell: ({ check }) => [data(check.value, fixed(check.value, decimalsOf(check.unit))), html('span', { class: 'quiet' }, ` ${check.unit}`)] },
  { title: 'Limit', number: true, cell: ({ check }) => data(check.limit, fixed(check.limit, decimalsOf(check.unit))) },
  { title: 'Limit use', number: true, cell: ({ check }) => [usePicture(check), data(check.limitUse, limitUseText(check.limitUse))] },
  { title: 'Within', number: true, cell: ({ check }) => data(check.withinProbability, probability(check.withinProbability)) },
  { title: 'Light', cell: ({ check }) => check.light ?? '' },
], rows, 'compact');
