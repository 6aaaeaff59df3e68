import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { WindowedList } from './windowed-list.ts';

/** For what holds a long table: its bare rows look like nothing. */
export const bareRows = css`adjoin-long-list { display: block; } adjoin-long-list > .rows { display: flow-root; } .bare-rows td { height: 0 !important; padding: 0 !important; border: 0 !important; } .bare-rows, .bare-rows:hover { background: none !important; }`;

/**
 * The rows of a long table that its `WindowedList` renders, each made by `row` with its place; bare rows between them keep the room of the
 * others. A row carries `data-place`, and `aria-rowindex`, which counts the head as the first; the table `aria-rowcount`.
 */
export function windowedRows(list: WindowedList, keyOf: (place: number) => unknown, row: (place: number) => TemplateResult): TemplateResult {
  const bare = (px: number): TemplateResult | typeof nothing => (px <= 0 ? nothing : html`<tr class="bare-rows" role="presentation" aria-hidden="true" data-room=${px}><td></td></tr>`);
  return html`${repeat(list.items, ({ place }) => keyOf(place), ({ place, before }) => html`${bare(before)}${row(place)}`)}${bare(list.after)}`;
}
