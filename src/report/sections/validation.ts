import type { PublishedCheck } from '../../colour/index.ts';
import type { Markup } from '../markup.ts';
import type { Page } from '../page.ts';
import { data, html } from '../markup.ts';
import { percent } from '../number-text.ts';
import { section, table } from '../pieces.ts';

interface Group {
  readonly source: string;
  readonly kind: string;
  readonly formulas: readonly string[];
  readonly values: number;
  readonly ok: number;
  /** Largest share of its tolerance that a deviation takes. */
  readonly worst: number;
}

/** Statement of validation: check values recomputed by this very program, by source, with the worst deviation. */
export function validation(page: Page): Markup {
  const { validation: record, software } = page.model;
  const failed = record.checked - record.ok;
  return section('validation', 'Validation',
    html('p', { class: 'lead' }, `${software.name} ${software.version} recomputed `, data(record.checked, String(record.checked)), ' check values; ',
      failed === 0 ? 'all lie within their tolerance.' : html('strong', {}, `${failed} lie outside their tolerance.`), ' Tolerances are half a unit of the last digit printed in the source, unless the source states one.'),
    table<Group>('Check values recomputed, by source', [
      { title: 'Source', wide: true, cell: (group) => group.source },
      { title: 'Kind', word: true, cell: (group) => group.kind },
      { title: 'Formulas', wide: true, cell: (group) => group.formulas.join(', ') },
      { title: 'Values', number: true, cell: (group) => data(group.values, String(group.values)) },
      { title: 'Within', number: true, cell: (group) => (group.ok === group.values ? 'all' : html('strong', {}, String(group.ok))) },
      { title: 'Worst deviation', unit: 'of its tolerance', number: true, cell: (group) => data(group.worst, percent(group.worst)) },
    ], grouped(record.results), 'compact'));
}

function grouped(rows: readonly PublishedCheck[]): Group[] {
  const groups = new Map<string, PublishedCheck[]>();
  for (const row of rows) {
    const key = `${row.kind}\n${row.source}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].map((members) => ({
    source: members[0]!.source, kind: members[0]!.kind, formulas: [...new Set(members.map((row) => row.formula))], values: members.length, ok: members.filter((row) => row.ok).length,
    worst: Math.max(...members.map((row) => (row.deviation === 0 ? 0 : row.deviation / row.tolerance))),
  }));
}
