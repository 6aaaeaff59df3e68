import type { Content } from '../markup.ts';
import type { ReportDecision } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { counted, fixed } from '../number-text.ts';
import { jointAnchor, jointNames, section, table } from '../pieces.ts';

/** Agreed deviations: in force, voided, expired, not needed any more. */
export function decisions(page: Page): Content {
  const rows = page.model.decisions;
  if (rows.length === 0) return undefined;
  const ending = rows.filter(({ expiring }) => expiring).length;
  const [inForce, fallen] = [rows.filter(({ status }) => status === 'in force').length, rows.filter(({ status }) => status === 'expired' || status === 'void').length];
  return section('decisions', 'Decisions on record',
    html('p', { class: 'lead' }, `${counted(inForce, 'decision')} in force, ${ending === 0 ? 'none ending' : ending === inForce ? 'all ending' : `${ending} ending`} within 90 days; ${fallen} expired or void. A worse value, another worst light or the end of its term voids a decision.`),
    table<ReportDecision>(`Agreed deviations as of ${page.model.asOf}`, [
      { title: 'Joint', cell: (row) => html('a', { href: `#${jointAnchor(page.place(row.joint))}` }, jointNames(page.joint(row.joint))) },
      { title: 'Check', cell: (row) => [row.decision.check, row.decision.light !== undefined && html('span', { class: 'quiet' }, ` under ${row.decision.light}`), row.decision.criterion !== undefined && html('span', { class: 'quiet' }, ' by ', named(row.decision.criterion))] },
      { title: 'Status', cell: (row) => [html('strong', {}, row.expiring ? 'expiring' : row.status), row.status !== 'in force' && html('span', { class: 'quiet' }, row.status === 'expired' ? row.why.replace(/^expired/, '') : `: ${row.why}`)] },
      { title: 'Agreed at', number: true, cell: (row) => data(row.decision.value, fixed(row.decision.value, 2)) },
      { title: 'By', cell: (row) => [named(row.decision.role), html('span', { class: 'steady' }, ` ${row.decision.date}`)] },
      { title: 'Until', steady: true, cell: (row) => row.decision.expires },
      { title: 'Reason', wide: true, cell: (row) => named(row.decision.reason) },
    ], rows));
}
