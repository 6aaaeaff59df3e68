import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { unfolds } from '../controllers/sections.ts';
import { base } from '../styles/shared.ts';

/** What a figure shows, in numbers. */
export interface FigureTable {
  /** Head of every column; the first is that of the rows. */
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** The table twin of a figure, folded below it; its numbers are made only once it is opened. */
export class AdjoinFigureTable extends LitElement {
  static override styles = [base, css`
    :host { display: block; margin-top: 6px; }
    summary { min-height: 28px; padding: 4px 0; color: var(--quiet); font-size: var(--small); width: fit-content; }
    summary:hover { color: var(--ink); }
    .wide { overflow: auto; max-height: 340px; border-bottom: 1px solid var(--line); }
    table { border-collapse: collapse; font-size: var(--small); }
    th, td { padding: 3px 16px 3px 0; border-bottom: 1px solid var(--faint); text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
    th { font-weight: 400; color: var(--quiet); } thead th { position: sticky; top: 0; background: var(--paper); border-bottom-color: var(--line); }
    th:first-child { text-align: left; } tbody th { color: var(--ink); }
    @media print { :host { display: none; } }
  `];
  static override properties = { of: {}, table: { attribute: false }, shown: { state: true } };

  /** What the figure is of, as its region is called. */
  declare of: string;
  declare table: () => FigureTable;
  declare shown: boolean;

  constructor() {
    super();
    this.of = '';
    this.shown = false;
  }

  override render(): TemplateResult {
    return html`<details ${unfolds(`table-of-${this.of.toLowerCase().replaceAll(' ', '-')}`)} @toggle=${(event: Event) => { this.shown = (event.target as HTMLDetailsElement).open; }}>
      <summary>The same as a table</summary>
      ${this.shown ? this.numbers(this.table()) : nothing}
    </details>`;
  }

  private numbers({ head, rows }: FigureTable): TemplateResult {
    return html`<div class="wide" tabindex="0" role="region" aria-label=${`${this.of}, as a table`}><table>
      <thead><tr>${head.map((title) => html`<th scope="col">${title}</th>`)}</tr></thead>
      <tbody>${rows.map(([name, ...cells]) => html`<tr><th scope="row">${name}</th>${cells.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody>
    </table></div>`;
  }
}

customElements.define('adjoin-figure-table', AdjoinFigureTable);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-figure-table': AdjoinFigureTable;
  }
}
