import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { RequestLine, RequestSheet } from '../../../src/report/requests/index.ts';
import { counted, fixed, probability } from '../../../src/report/number-text.ts';
import type { Desk } from '../../controllers/desk.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Route } from '../../controllers/route.ts';
import { bareRows } from '../../controllers/windowed-rows.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import '../../app/adjoin-long-list.ts';
import '../../app/adjoin-ways.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { pageStyles } from './readings-view.styles.ts';

/**
 * What each supplier is asked to measure so that open joints are decided, the most telling first; to print and to be filled in.
 * @fires adjoin-supplier - the one supplier that is shown, or all
 */
export class AdjoinRequests extends InTurnElement {
  static override styles = [base, controls, pageStyles, bareRows, stacked, css`
    table { min-width: 900px; table-layout: fixed; } .id { width: 116px; } .of { width: 22%; } .what { width: 15%; } .spots { width: 92px; } .with { width: 16%; } td, tbody th { vertical-align: top !important; }
    .chance { display: inline-block; min-width: 56px; font-weight: 600; }
    .decides li { padding: 1px 0; display: grid; grid-template-columns: 64px minmax(0, 1fr); } tbody th { white-space: nowrap; }
    .does { display: flex; gap: 8px; flex-wrap: wrap; }
    h2 .who { flex: 1; }
    @media (max-width: 760px) { adjoin-long-list > table { min-width: 0; } h2 .does { flex: 1 1 100%; } tbody th { white-space: normal; } }
    @media print { .does, .filters, .lead { display: none; } }
  `];

  static override properties = { cabin: { attribute: false }, sheets: { attribute: false }, desk: { attribute: false }, supplier: {}, linkTo: { attribute: false } };
  declare cabin: Cabin;
  declare sheets: readonly RequestSheet[];
  declare desk: Desk;
  declare supplier: string | undefined;
  declare linkTo: (change: Partial<Route>) => string;

  private async save(ending: 'html' | 'csv', supplier?: string): Promise<void> {
    const text = await this.desk.look({ what: 'requests file', ending, ...(supplier === undefined ? {} : { supplier }) });
    if (text === undefined) return;
    downloadText(`${fileName('requests', this.cabin.id, supplier ?? 'all')}.${ending}`, text, ending === 'csv' ? 'text/csv;charset=utf-8' : 'text/html;charset=utf-8');
  }

  override render(): TemplateResult {
    const { sheets } = this;
    const lines = sheets.flatMap((sheet) => sheet.lines);
    if (lines.length === 0) {
      return html`<p class="lead">No reading is asked for: no joint is open that readings could decide.</p>
        ${this.cabin.joints.length > 0 ? nothing : html`<adjoin-ways .cabin=${this.cabin} .linkTo=${this.linkTo}></adjoin-ways>`}`;
    }
    const shown = sheets.filter(({ supplier }) => this.supplier === undefined || supplier.id === this.supplier);
    const expected = lines.reduce((sum, line) => sum + line.expected, 0);
    return html`
      <p class="lead"><adjoin-term word="request sheet">Request sheets</adjoin-term>: ${counted(lines.length, 'line')} for ${counted(sheets.length, 'supplier')} would decide ${fixed(expected, 1)} open checks on average. The table goes to the supplier to be filled in; sent back and <a href=${this.linkTo({ view: 'import', item: undefined, options: {} })}>imported</a>, its ids bring every row to its place.</p>
      <div class="does filters">
        <span class="pick ${this.supplier === undefined ? '' : 'on'}"><select aria-label="Supplier" @change=${(event: Event) => this.dispatchEvent(new CustomEvent('adjoin-supplier', { detail: (event.target as HTMLSelectElement).value || undefined }))}>
          <option value="" ?selected=${this.supplier === undefined}>Supplier: all</option>${sheets.map(({ supplier }) => html`<option value=${supplier.id} ?selected=${supplier.id === this.supplier}>${supplier.name}</option>`)}</select></span>
        <button type="button" @click=${() => void this.save('csv')}>Save all as one table (.csv)</button>
      </div>
      ${shown.length === 0 ? html`<p>Nothing is asked of this supplier.</p>` : shown.map((sheet) => this.sheet(sheet))}`;
  }

  private sheet({ supplier, lines }: RequestSheet): TemplateResult {
    return html`
      <section>
        <h2><span class="who">${supplier.name} <span class="quiet">${counted(lines.length, 'line')}</span></span>
          <span class="does"><button type="button" aria-label="Sheet to print (.html) for ${supplier.name}" @click=${() => void this.save('html', supplier.id)}>Sheet to print (.html)</button>
          <button type="button" aria-label="Table to fill in (.csv) for ${supplier.name}" @click=${() => void this.save('csv', supplier.id)}>Table to fill in (.csv)</button></span></h2>
        <adjoin-long-list class="wide stacked" tabindex="0" role="region" aria-label="Readings asked of ${supplier.name}" .usual=${64} .ids=${lines.map(({ id }) => id)}
          .head=${html`<thead><tr aria-rowindex="1"><th scope="col" class="id">request</th><th scope="col" class="of">part, specimen</th><th scope="col" class="what">reading</th><th scope="col" class="number spots">new spots</th><th scope="col" class="with">instrument</th><th scope="col">decides, with what chance</th></tr></thead>`}
          .row=${(place: number) => this.line(lines[place]!, place)}></adjoin-long-list>
      </section>`;
  }

  private line(line: RequestLine, place: number): TemplateResult {
    return html`<tr data-place=${place} aria-rowindex=${place + 2}>
      <th scope="row">${line.id}</th><td class="whole"><b>${line.partName}</b><br /><span class="quiet">${line.specimen || 'a first specimen'}${line.lot === undefined ? '' : `, lot ${line.lot}`}</span></td>
      <td data-name="reading">${line.quantity === 'gloss' ? `gloss at ${line.angle ?? line.geometry}°` : line.quantity === 'texture' ? 'areal texture' : `spectrum, ${line.geometry}`}${line.rotations > 1 ? html`<br /><span class="quiet">${line.rotations} rotations</span>` : nothing}</td>
      <td class="number" data-name="new spots">${line.newSpots.length} <span class="quiet">${line.have > 0 ? `has ${line.have}` : ''}</span></td><td data-name="instrument">${line.instrument}</td>
      <td class="whole"><ul class="decides">${line.decides.map(({ joint, neighbour, check, chance, reason }) => html`<li><span class="chance">${chance === undefined ? '–' : probability(chance)}</span><span>${check} against ${joint === undefined ? neighbour : html`<a href=${this.linkTo({ view: 'joint', joint, item: undefined, options: {} })}>${neighbour}</a>`} <span class="quiet">${reason}</span></span></li>`)}</ul></td>
    </tr>`;
  }
}

customElements.define('adjoin-requests', AdjoinRequests);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-requests': AdjoinRequests;
  }
}
