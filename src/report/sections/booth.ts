import type { Content } from '../markup.ts';
import type { BoothRow } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { html, named } from '../markup.ts';
import { counted } from '../number-text.ts';
import { jointAnchor, jointNames, section, table, verdictWord } from '../pieces.ts';

/** What the light booth said beside what the numbers say. */
export function booth(page: Page): Content {
  const { booth: rows, summary } = page.model;
  if (rows.length === 0) return undefined;
  const sorted = [...rows].sort((first, second) => Number(first.agrees) - Number(second.agrees));
  return section('booth', 'Booth against numbers',
    html('p', { class: 'lead' }, `Numbers and booth agree on ${summary.visual.agree} of ${counted(summary.visual.joints, 'joint')} that both have judged. Joints that are open count on neither side.`),
    table<BoothRow>('Latest visual record of each joint', [
      { title: 'Joint', cell: (row) => html('a', { href: `#${jointAnchor(page.place(row.joint))}` }, jointNames(page.joint(row.joint))) },
      { title: 'Numbers', cell: (row) => verdictWord({ verdict: row.verdict, accepted: false }) },
      { title: 'Booth', steady: true, cell: (row) => [row.record.result, row.record.rating && html('span', { class: 'quiet' }, html('br', {}), `${row.record.rating.scale} grade ${row.record.rating.grade}`)] },
      { title: 'Agree', cell: (row) => (row.verdict === 'open' ? 'open' : row.agrees ? 'yes' : html('strong', {}, 'no')) },
      { title: 'Seen', cell: (row) => [`${row.record.date}, `, named(row.record.light), row.record.illuminanceLx !== undefined && `, ${row.record.illuminanceLx} lx`] },
      { title: 'Observers', wide: true, cell: (row) => [counted(row.record.observers.count, 'observer'), row.record.observers.roles.length > 0 && [': ', named(row.record.observers.roles.join(', '))]] },
      { title: 'Note', cell: (row) => named(row.record.note ?? '') },
    ], sorted));
}
