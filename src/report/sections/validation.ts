import type { PublishedCheck } from '../../colour/index.ts';
import type { Markup } from '../markup.ts';
import type { Page } from '../page.ts';
import { data, html } from '../markup.ts';
import { section, table } from '../pieces.ts';

interface Group {
  readonly formula: string;
  readonly source: string;
  readonly values: number;
  readonly ok: number;
  readonly worst: PublishedCheck;
}

/** Statement of validation: published values recomputed by this very program, by formula and source, with the worst deviation. */
export function validation(page: Page): Markup {
  const { validation: record, software } = page.model;
  const failed = record.checked - record.ok;
  return section('validation', 'Validation',
    html('p', { class: 'lead' }, `${software.name} ${software.version} recomputed `, data(record.checked, String(record.checked)), ' published values; ',
      failed === 0 ? 'all lie within their tolerance.' : html('strong', {}, `${failed} lie outside their tolerance.`), ' Tolerances are half a unit of the last digit printed in the source, unless the source states one.'),
    table<Group>('Published values recomputed', [
      { title: 'Formula', cell: (group) => group.formula },
      { title: 'Source', wide: true, cell: (group) => group.source },
      { title: 'Values', number: true, cell: (group) => data(group.values, String(group.values)) },
      { title: 'Within', number: true, cell: (group) => (group.ok === group.values ? 'all' : html('strong', {}, String(group.ok))) },
      { title: 'Worst deviation', number: true, cell: (group) => data(group.worst.deviation, group.worst.deviation.toExponential(1)) },
      { title: 'Its tolerance', number: true, cell: (group) => data(group.worst.tolerance, group.worst.tolerance.toExponential(1)) },
    ], grouped(record.results), 'compact'));
}

function grouped(rows: readonly PublishedCheck[]): Group[] {
  const groups = new Map<string, PublishedCheck[]>();
  for (const row of rows) {
    const key = JSON.stringify([row.formula, row.source]);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].map((members) => ({
    formula: members[0].formula, source: members[0].source, values: members.length, ok: members.filter((row) => row.ok).length,
    worst: members.reduce((worst, row) => (row.deviation / row.tolerance > worst.deviation / worst.tolerance ? row : worst)),
  }));
}
