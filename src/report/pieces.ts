import type { CheckResult, JointResult } from '../harmony/judgement.ts';
import type { Content, Markup, MarkupNode } from './markup.ts';
import type { ReportJoint } from './model/report-model.ts';
import { figure, html, named } from './markup.ts';
import { element } from './scene.ts';

/** A numbered part of the report. */
export const section = (id: string, title: string, ...content: readonly Content[]): Markup =>
  html('section', { id, 'aria-labelledby': `${id}-title` }, html('h2', { id: `${id}-title` }, title), ...content);

export interface Column<Row> {
  /** A name out of a file as `named()`, so that it is broken where it is long. */
  readonly title: string | Markup;
  /** Unit or further word, set quieter under the title. */
  readonly unit?: string;
  readonly number?: boolean;
  readonly wide?: boolean;
  /** Wide enough for a usual word, so that only very long ones are broken. */
  readonly word?: boolean;
  /** Never broken into lines: dates and the like. */
  readonly steady?: boolean;
  readonly cell: (row: Row) => Content;
}

/** Columns that a narrow screen has room for; a table of more stands there as a list, each cell after the name of its column. */
const mostBeside = 2;

/** A table with a caption and headers that name their scope; the first column heads its row. */
export function table<Row>(caption: Content, columns: readonly Column<Row>[], rows: readonly Row[], className?: string): Markup {
  const kind = (column: Column<Row>): string | undefined => (column.number ? 'number' : column.wide ? 'wide' : column.steady ? 'steady' : column.word ? 'word' : undefined);
  const listed = columns.length > mostBeside && className !== 'sign';
  const name = ({ title, unit }: Column<Row>): string | undefined => (listed ? [typeof title === 'string' ? title : textOf(title), unit].filter(Boolean).join(' ') : undefined);
  return html('table', { class: [className, listed && 'listed'].filter(Boolean).join(' ') || undefined },
    html('caption', {}, caption),
    html('thead', {}, html('tr', {}, columns.map((column) =>
      html('th', { scope: 'col', class: kind(column) }, column.title, column.unit !== undefined && html('span', { class: 'unit' }, ` ${column.unit}`))))),
    html('tbody', {}, rows.map((row) => html('tr', {}, columns.map((column, index) =>
      (index === 0 ? html('th', { scope: 'row', class: kind(column) }, column.cell(row)) : html('td', { class: kind(column), 'data-name': name(column) }, column.cell(row))))))));
}

const textOf = (node: MarkupNode): string => (typeof node === 'string' ? node : 'scene' in node ? '' : node.children.map(textOf).join(''));

/** Rows of a table that a reader takes in at once. */
const rowsOfPage = 100;

/** A table; a long one in pages that a screen keeps folded but for the first, whole in print. */
export function pagedTable<Row>(caption: Content, columns: readonly Column<Row>[], rows: readonly Row[], className?: string): Content {
  if (rows.length <= rowsOfPage) return table(caption, columns, rows, className);
  const pages = Array.from({ length: Math.ceil(rows.length / rowsOfPage) }, (_, page) => rows.slice(page * rowsOfPage, (page + 1) * rowsOfPage));
  return pages.map((page, index) => {
    const range = `${index * rowsOfPage + 1} to ${index * rowsOfPage + page.length} of ${rows.length}`;
    return html('details', { open: index === 0 }, html('summary', {}, range), table([caption, `, ${range}`], columns, page, className));
  });
}

/** Pairs of a term and what it says. */
export const terms = (pairs: readonly (readonly [term: Content, ...says: Content[]] | undefined)[], className = 'terms'): Markup =>
  html('dl', { class: className }, pairs.map((pair) => pair && html('div', {}, html('dt', {}, pair[0]), html('dd', {}, ...pair.slice(1)))));

const markNames = { holds: 'mark-holds', open: 'mark-open', clashes: 'mark-clashes' } as const;

/** A verdict as its line and its word; a clash with a decision in force says so. */
export function verdictWord(result: Pick<CheckResult | JointResult, 'verdict' | 'accepted'>): Markup {
  const { verdict } = result;
  const accepted = verdict === 'clashes' && result.accepted === true;
  const mark = verdict in markNames ? (accepted ? 'mark-accepted' : markNames[verdict as keyof typeof markNames]) : undefined;
  return html('span', { class: `verdict ${verdict.replace(' ', '-')}` },
    mark !== undefined && figure(element('svg', { class: 'mark', viewBox: '0 0 30 10', width: 30, height: 10, 'aria-hidden': 'true' }, element('use', { href: `#${mark}` }))),
    accepted ? 'clashes, accepted' : verdict);
}

/** The anchor of a joint's block; by its place in the report, since ids of a file may be anything. */
export const jointAnchor = (index: number): string => `joint-${index + 1}`;

/** Both sides of a joint by name, the standard first. */
export const jointNames = (entry: ReportJoint | undefined): Content => entry && [named(entry.names[0]), ' and ', named(entry.names[1])];
