import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Part } from '../../../src/cabin/cabin.ts';
import { counted } from '../../../src/report/number-text.ts';
import { askAction, askSelection } from '../../controllers/edit-events.ts';
import type { Route } from '../../controllers/route.ts';
import { base, controls } from '../../styles/shared.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-part-panel.ts';
import './adjoin-part-table.ts';
import './adjoin-registers.ts';
import { styles } from './parts-view.styles.ts';

/** What makes a part; its outline is drawn on the map. */
const askedOfPart = ['name', 'zone', 'supplier', 'material', 'surface', 'hand'] as const;

/** Every part in a table; the chosen one beside it with all that belongs to it, edited in place. Registers of the cabin on a page of their own. */
export class AdjoinPartsView extends ViewElement {
  static override styles = [base, controls, styles];

  private told: string | undefined;
  private shown: { readonly of: readonly Part[]; readonly by: string; readonly parts: readonly Part[] } | undefined;

  private get cabin(): Cabin {
    return this.desk?.present ?? this.open.cabin;
  }

  /** What is shown is what keys and menus act on. */
  protected override updated(): void {
    const { item } = this.route;
    if (item === this.told || this.registers) return;
    this.told = item;
    if (item !== undefined && this.cabin.parts.some(({ id }) => id === item)) askSelection(this, { parts: [item] });
  }

  private get registers(): boolean {
    return this.route.options?.['show'] === 'registers';
  }

  /** The parts that pass the filter; the same list as long as parts and filter are. */
  private passing(): readonly Part[] {
    const { search, zone, supplier } = this.route.filter;
    const of = this.cabin.parts;
    const by = JSON.stringify([search, zone, supplier]);
    if (this.shown?.of === of && this.shown.by === by) return this.shown.parts;
    const words = (search ?? '').toLowerCase().split(/\s+/).filter(Boolean);
    const parts = words.length === 0 && zone === undefined && supplier === undefined ? of : of.filter((part) => {
      if (zone !== undefined && part.zone !== zone) return false;
      if (supplier !== undefined && !part.sources.some((source) => source.supplier === supplier)) return false;
      const text = [part.id, part.name, part.partNumber, part.zone, ...part.sources.flatMap((source) => [source.material, source.supplier, source.grain?.id])].join(' ').toLowerCase();
      return words.every((word) => text.includes(word));
    });
    this.shown = { of, by, parts };
    return parts;
  }

  /** Brings the row of a part into being, however far down. */
  override reveal({ view, item }: Route): void {
    if (view === 'parts' && item !== undefined) this.renderRoot.querySelector('adjoin-part-table')?.bring(item);
  }

  override render(): TemplateResult {
    const { cabin } = this;
    const chosen = cabin.parts.find(({ id }) => id === this.route.item);
    return html`
      ${this.head(cabin)}
      ${this.registers ? html`<adjoin-registers .cabin=${cabin} .locked=${this.open.locked} .linkTo=${this.linkTo} .show=${this.route.item}></adjoin-registers>`
        : cabin.parts.length === 0 ? this.empty(cabin)
        : html`<div class="desk ${chosen === undefined ? '' : 'chosen'}">
            <adjoin-part-table class=${chosen === undefined ? '' : 'beside'} .cabin=${cabin} .parts=${this.passing()} .chosen=${chosen?.id} .judgement=${this.open.judgement} .colours=${this.colours} .locked=${this.open.locked} .linkTo=${this.linkTo}></adjoin-part-table>
            ${chosen === undefined ? nothing : html`<adjoin-part-panel .cabin=${cabin} .of=${chosen} .judgement=${this.open.judgement} .colour=${this.colours.get(chosen.id)} .light=${this.light}
              .locked=${this.open.locked} .linkTo=${this.linkTo}></adjoin-part-panel>`}
            ${this.route.item !== undefined && chosen === undefined ? html`<p class="gone">There is no part “${this.route.item}” any more.</p>` : nothing}
          </div>`}
    `;
  }

  private head(cabin: Cabin): TemplateResult {
    const tab = (show: string | undefined, words: string): TemplateResult => html`<a class="button ${this.registers === (show !== undefined) ? 'strong' : ''}" aria-current=${this.registers === (show !== undefined) ? 'page' : nothing}
      href=${this.linkTo({ view: 'parts', item: undefined, options: show === undefined ? {} : { show } })}>${words}</a>`;
    return html`
      <header>
        <h1>Parts</h1>
        <nav aria-label="Parts or registers">${tab(undefined, counted(cabin.parts.length, 'part'))}${tab('registers', 'Zones, suppliers, instruments and more')}</nav>
        ${this.registers || cabin.parts.length === 0 ? nothing : html`
          <input type="search" placeholder="Search parts" aria-label="Search parts" .value=${this.route.filter.search ?? ''}
            @input=${(event: Event) => this.go({ filter: { ...this.route.filter, search: (event.target as HTMLInputElement).value || undefined } as Route['filter'] }, true)} />
          ${this.pick('Zone', 'zone', cabin.zones)}${this.pick('Supplier', 'supplier', cabin.suppliers)}
          <button type="button" ?disabled=${this.open.locked} @click=${() => this.add()}>Add a part</button>`}
      </header>`;
  }

  private pick(words: string, field: 'zone' | 'supplier', items: readonly { readonly id: string; readonly name: string }[]): TemplateResult {
    const value = this.route.filter[field] ?? '';
    return html`<span class="pick ${value === '' ? '' : 'on'}"><select aria-label=${words} @change=${(event: Event) => this.go({ filter: { ...this.route.filter, [field]: (event.target as HTMLSelectElement).value || undefined } as Route['filter'] }, true)}>
      <option value="" ?selected=${value === ''}>${words}: all</option>
      ${items.map(({ id, name }) => html`<option value=${id} ?selected=${id === value}>${name}</option>`)}
    </select></span>`;
  }

  private add(): void {
    if (this.cabin.suppliers.length === 0) {
      askAction(this, 'supplier.add', {}, { done: (result) => { if (result.done) askAction(this, 'part.add', this.usual(), { asks: askedOfPart }); } });
      return;
    }
    askAction(this, 'part.add', this.usual(), {
      asks: askedOfPart,
      done: (result) => {
        const made = result.editor.selection.parts?.at(-1);
        if (made !== undefined) this.go({ view: 'parts', item: made });
      },
    });
  }

  private usual(): Readonly<Record<string, unknown>> {
    // A preset of a needed reference is not asked, so only what leaves no choice is preset.
    const [zone] = this.cabin.zones.length === 1 ? this.cabin.zones : [];
    return zone === undefined ? {} : { zone: zone.id };
  }

  private empty(cabin: Cabin): TemplateResult {
    const step = (done: boolean, title: string, about: string, button: TemplateResult | typeof nothing): TemplateResult =>
      html`<li class=${done ? 'done' : ''}><div><b>${title}</b><p>${about}</p></div>${done ? html`<span class="tick">done</span>` : button}</li>`;
    const { locked } = this.open;
    return html`
      <div class="teach">
        <h2>A cabin is parts, what was measured on them, and where they meet.</h2>
        <ol>
          ${step(cabin.suppliers.length > 0, 'Name a supplier', 'Who makes a part; more can follow at any time.', html`<button type="button" ?disabled=${locked} @click=${() => askAction(this, 'supplier.add')}>Add a supplier</button>`)}
          ${step(false, 'Make the parts', 'One for every visible face: a name, its zone, a material. Outlines can be drawn later on the cabin map.', html`<button class="strong" type="button" ?disabled=${locked} @click=${() => this.add()}>Add a part</button>`)}
          ${step(false, 'Import readings', 'Spectra, CIELAB, gloss, texture, from the files of suppliers. A part that a file names can be made while importing.', html`<a class="button" href=${this.linkTo({ view: 'import', item: undefined, options: {} })}>Import files</a>`)}
          ${step(false, 'Join the parts', 'Two parts that meet, with their gap and the distance they are seen from. Then every joint is judged.', html`<a class="button" href=${this.linkTo({ view: 'cabin', item: undefined, options: {} })}>To the map</a>`)}
        </ol>
      </div>`;
  }
}

customElements.define('adjoin-parts-view', AdjoinPartsView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-parts-view': AdjoinPartsView;
  }
}
