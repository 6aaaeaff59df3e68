import type { CheckResult } from '../../harmony/judgement.ts';
import type { Content } from '../markup.ts';
import type { ReportJoint } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { data, html } from '../markup.ts';
import { decimalsOf, fixed, probability } from '../number-text.ts';
import { jointAnchor, jointNames, pagedTable, section, verdictWord } from '../pieces.ts';
import { quantityOf } from './joint-block.ts';

interface Row {
  readonly entry: ReportJoint;
  readonly check: CheckResult;
}

/** Tone steps and contrasts: what is neither alike nor clearly apart reads as a failed match. */
export function nearMisses(page: Page): Content {
  const rows = page.model.joints.flatMap((entry) => entry.result.checks.filter((check) => check.check === 'near-miss').map((check): Row => ({ entry, check })));
  if (rows.length === 0) return undefined;
  const missed = rows.filter(({ check }) => check.verdict !== 'holds');
  const apart = rows.filter(({ check }) => check.verdict === 'holds');
  return section('near-misses', 'Tone steps and contrasts',
    html('p', { class: 'lead' }, 'Where the intent is a clear step, a pair that is neither alike nor clearly apart reads as a failed match. This is a design heuristic, not a measured threshold of acceptance.'),
    missed.length > 0 && apartTable(page, 'Near misses', missed, true),
    apart.length > 0 && apartTable(page, 'Clearly apart', apart, false));
}

const apartTable = (page: Page, caption: string, rows: readonly Row[], sentences: boolean): Content => pagedTable<Row>(caption, [
  { title: 'Joint', cell: ({ entry }) => html('a', { href: `#${jointAnchor(page.place(entry.id))}` }, jointNames(entry)) },
  { title: 'Intent', steady: true, cell: ({ entry }) => entry.result.intent.colour },
  { title: 'Verdict', cell: ({ check }) => verdictWord(check) },
  { title: 'Light', steady: true, cell: ({ check }) => check.light ?? '' },
  { title: 'Value of', cell: ({ check }) => quantityOf(check) },
  { title: 'Value', number: true, cell: ({ check }) => [data(check.value, fixed(check.value, decimalsOf(check.unit))), check.unit !== '' && html('span', { class: 'quiet' }, ` ${check.unit}`)] },
  { title: 'At least', number: true, cell: ({ check }) => data(check.limit, fixed(check.limit, decimalsOf(check.unit))) },
  ...(sentences ? [{ title: 'In words', wide: true, cell: ({ check }: Row) => check.sentence }] : [{ title: 'Holds', number: true, cell: ({ check }: Row) => data(check.withinProbability, probability(check.withinProbability)) }]),
], rows, sentences ? undefined : 'compact');
