import type { Content } from '../markup.ts';
import type { ReportJoint } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { decimalsOf, fixed } from '../number-text.ts';
import { jointAnchor, section, table, verdictWord } from '../pieces.ts';

/** Tone steps and contrasts: what is neither alike nor clearly apart reads as a failed match. */
export function nearMisses(page: Page): Content {
  const rows = page.model.joints.flatMap((entry) => entry.result.checks.filter((check) => check.check === 'near-miss').map((check) => ({ entry, check })));
  if (rows.length === 0) return undefined;
  return section('near-misses', 'Tone steps and contrasts',
    html('p', { class: 'lead' }, 'Where the intent is a clear step, a pair that is neither alike nor clearly apart reads as a failed match. This is a design heuristic, not a measured threshold of acceptance.'),
    table<{ entry: ReportJoint; check: typeof rows[number]['check'] }>('Joints meant to differ', [
      { title: 'Joint', cell: ({ entry }) => html('a', { href: `#${jointAnchor(page.place(entry.id))}` }, named(entry.names[0]), ' and ', named(entry.names[1])) },
      { title: 'Intent', cell: ({ entry }) => entry.result.intent.colour },
      { title: 'Verdict', cell: ({ check }) => verdictWord(check) },
      { title: 'Value', number: true, cell: ({ check }) => [data(check.value, fixed(check.value, decimalsOf(check.unit))), html('span', { class: 'quiet' }, ` ${check.unit}`)] },
      { title: 'Limit', number: true, cell: ({ check }) => data(check.limit, fixed(check.limit, decimalsOf(check.unit))) },
      { title: 'In words', wide: true, cell: ({ check }) => check.sentence },
    ], rows));
}
