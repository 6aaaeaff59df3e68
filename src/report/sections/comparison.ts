import type { ComparisonSummary, PartChange, PartStand, StateName } from '../../harmony/compare/index.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { counted, fixed, signed } from '../number-text.ts';
import { pagedTable, section, terms } from '../pieces.ts';
import { beforeAndNow } from './before-and-now.ts';
import { changeTable } from './change-table.ts';

/** This cabin against another one, or against another stage of it: joints that changed, and the parts behind that. */
export function comparison(page: Page): Content {
  const { comparison: compared } = page.model;
  if (compared === undefined) return undefined;
  const changed = compared.joints.filter(({ kind }) => kind !== 'same');
  return section('compared', 'Compared with',
    terms([['Before', state(compared.before)], ['Now', state(compared.after)]], 'terms short-terms'),
    html('p', { class: 'sentence' }, summaryText(compared.summary)),
    compared.notes.length > 0 && html('ul', { class: 'caution' }, compared.notes.map((note) => html('li', {}, note))),
    beforeAndNow(page, compared),
    changed.length > 0 && changeTable(page, 'Joints that changed, what became worse first', changed),
    html('p', { class: 'lead' }, counted(compared.summary.same, 'joint is', 'joints are'), ' as before: the same verdict, and less than 5 % of the limit more or less used (assumption, no source).'),
    compared.parts.length > 0 && partsTable(compared.parts));
}

const state = (name: StateName): Content => [
  named(name.name), [name.colourway, name.phase, name.revision === undefined ? undefined : `revision ${name.revision}`].map((word) => word !== undefined && [', ', named(word)]),
  html('span', { class: 'quiet' }, `. Stage “${name.stage}”, as of ${name.asOf}, ${name.observer}° observer, rule book `, named(name.ruleBook), '.'),
];

/** The counts in one or two sentences. */
export function summaryText(summary: ComparisonSummary): string {
  const parts = [
    summary.worseVerdict > 0 && `${counted(summary.worseVerdict, 'has', 'have')} a worse verdict`, summary.betterVerdict > 0 && `${counted(summary.betterVerdict, 'has', 'have')} a better one`,
    summary.worse > 0 && `${counted(summary.worse, 'uses', 'use')} more of the limit`, summary.better > 0 && `${counted(summary.better, 'uses', 'use')} less of it`,
    summary.same > 0 && `${counted(summary.same, 'is', 'are')} as before`,
  ].filter((part) => part !== false);
  const rest = [summary.new > 0 && `${counted(summary.new, 'joint is', 'joints are')} new`, summary.gone > 0 && `${counted(summary.gone, 'is', 'are')} gone`].filter((part) => part !== false);
  return [
    `Of ${counted(summary.both, 'joint')} in both, ${parts.length === 0 ? 'none changed' : parts.join(', ')}.`,
    rest.length > 0 && ` ${rest.join(' and ')}.`,
    ` ${summary.nowClashing.length === 0 ? 'No joint begins to clash' : `${counted(summary.nowClashing.length, 'joint begins', 'joints begin')} to clash without a decision`}, ${summary.noLongerClashing.length === 0 ? 'none ceases to' : `${counted(summary.noLongerClashing.length, 'ceases', 'cease')} to`}.`,
  ].filter((part) => part !== false).join('');
}

const partsTable = (parts: readonly PartChange[]): Content => pagedTable<PartChange>('Parts that stand by something else or look different; colour under D65, now minus before', [
  { title: 'Part', cell: (part) => named(part.name) },
  { title: 'Stood by', cell: ({ before }) => stand(before) },
  { title: 'Stands by', cell: (part) => (sameStand(part) ? html('span', { class: 'quiet' }, 'the same') : stand(part.after)) },
  ...(['dL', 'da', 'db'] as const).map((axis) => ({
    title: { dL: 'ΔL*', da: 'Δa*', db: 'Δb*' }[axis], number: true, cell: ({ colour }: PartChange): Content => data(colour?.[axis], signed(colour?.[axis], 2)),
  })),
  { title: 'ΔE00', number: true, cell: ({ colour, notCompared }) => (colour === undefined ? html('span', { class: 'quiet' }, notCompared ?? '–') : data(colour.ciede2000, fixed(colour.ciede2000, 2))) },
  { title: 'Gloss', unit: 'GU', number: true, cell: ({ gloss }) => (gloss.length === 0 ? '–' : gloss.map(({ angle, change }, index) => [index > 0 && ', ', data(change, signed(change, 2)), html('span', { class: 'quiet' }, ` ${angle}°`)])) },
  { title: 'Texture', unit: 'Sa, µm', number: true, cell: ({ texture }) => data(texture?.change, signed(texture?.change, 2)) },
], parts, 'compact');

const sameStand = ({ before, after }: PartChange): boolean => before !== undefined && JSON.stringify(before) === JSON.stringify(after);

const stand = (side: PartStand | undefined): Content => (side === undefined
  ? html('span', { class: 'quiet' }, 'not there')
  : [named(side.supplier), html('span', { class: 'quiet' }, ' ', side.specimen === undefined ? 'no specimen' : named(side.specimen), side.geometry !== undefined && `, ${side.geometry}`)]);
