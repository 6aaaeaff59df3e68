import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Part } from '../../../src/cabin/cabin.ts';
import { counted } from '../../../src/report/number-text.ts';
import { askAction, askSelection } from '../../controllers/edit-events.ts';
import { roveFocus } from '../../controllers/roving-focus.ts';
import type { Route } from '../../controllers/route.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { swatch } from '../../figures/swatch.ts';
import { standingSource } from '../../model/joint-filter.ts';
import { base, controls } from '../../styles/shared.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-part-panel.ts';
import './adjoin-registers.ts';
import { styles } from './parts-view.styles.ts';

const shownAtFirst = 400;
/** What makes a part; its outline is drawn on the map. */
const askedOfPart = ['name', 'zone', 'supplier', 'material', 'surface', 'hand'] as const;

/** Every part in a table; the chosen one beside it with all that belongs to it, edited in place. Registers of the cabin on a page of their own. */
export class AdjoinPartsView extends ViewElement {
  static override styles = [base, controls, styles];
  static override properties = { all: { state: true } };

  declare all: boolean;
  private told: string | undefined;

  constructor() {
    super();
    this.all = false;
  }

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

  private passing(): readonly Part[] {
    const { search, zone, supplier } = this.route.filter;
    const words = (search ?? '').toLowerCase().split(/\s+/).filter(Boolean);
    return this.cabin.parts.filter((part) => {
      if (zone !== undefined && part.zone !== zone) return false;
      if (supplier !== undefined && !part.sources.some((source) => source.supplier === supplier)) return false;
      const text = [part.id, part.name, part.partNumber, part.zone, ...part.sources.flatMap((source) => [source.material, source.supplier, source.grain?.id])].join(' ').toLowerCase();
      return words.every((word) => text.includes(word));
    });
  }

  override render(): TemplateResult {
    const { cabin } = this;
    const chosen = cabin.parts.find(({ id }) => id === this.route.item);
    return html`
      ${this.head(cabin)}
      ${this.registers ? html`<adjoin-registers .cabin=${cabin} .locked=${this.open.locked} .linkTo=${this.linkTo} .show=${this.route.item}></adjoin-registers>`
        : cabin.parts.length === 0 ? this.empty(cabin)
        : html`<div class="desk ${chosen === undefined ? '' : 'chosen'}">
            ${this.table(chosen)}
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

  private readonly key = (event: KeyboardEvent): void => {
    const links = [...this.renderRoot.querySelectorAll<HTMLElement>('tbody a')];
    roveFocus(event, links);
  };

  private table(chosen: Part | undefined): TemplateResult {
    const passing = this.passing();
    const shown = this.all ? passing : passing.slice(0, shownAtFirst);
    const joints = new Map<string, { joints: number; clashes: number }>();
    for (const { parts, verdict } of this.open.judgement.joints) {
      for (const id of parts) {
        const tally = joints.get(id) ?? { joints: 0, clashes: 0 };
        joints.set(id, { joints: tally.joints + 1, clashes: tally.clashes + (verdict === 'clashes' ? 1 : 0) });
      }
    }
    const first = chosen !== undefined && shown.includes(chosen) ? chosen : shown[0];
    return html`
      <div class="list" tabindex="-1">
        <table @keydown=${this.key}>
          <caption class="unseen">Parts of the cabin; arrow keys go from row to row, Enter opens one</caption>
          <thead><tr><th scope="col" colspan="2"><adjoin-term word="part">part</adjoin-term></th><th scope="col" class="more">number</th><th scope="col">zone</th><th scope="col"><adjoin-term word="material">material</adjoin-term></th><th scope="col" class="more">supplier</th>
            <th scope="col" class="number more"><adjoin-term word="source">sources</adjoin-term></th><th scope="col" class="number less"><adjoin-term word="specimen">specimens</adjoin-term></th><th scope="col" class="number"><adjoin-term word="reading">readings</adjoin-term></th><th scope="col" class="number more">joints</th></tr></thead>
          <tbody>${shown.map((part) => this.row(part, part === chosen, part === first, joints.get(part.id)))}</tbody>
        </table>
        ${passing.length === 0 ? html`<p class="none">No part passes the filter.</p>` : nothing}
        ${passing.length > shown.length ? html`<button type="button" @click=${() => { this.all = true; }}>Show all ${passing.length}</button>` : nothing}
      </div>`;
  }

  private row(part: Part, here: boolean, stop: boolean, tally: { readonly joints: number; readonly clashes: number } | undefined): TemplateResult {
    const source = standingSource(part);
    const colour = this.colours.get(part.id);
    const specimens = part.sources.flatMap((one) => one.specimens);
    const readings = specimens.reduce((sum, one) => sum + one.readings.length, 0);
    const mirrored = readings === 0 && this.open.judgement.joints.some(({ judgedOn }) => judgedOn.some((on) => on.part === part.id && on.borrowedFrom !== undefined));
    const suppliers = [...new Set(part.sources.map(({ supplier }) => this.cabin.suppliers.find(({ id }) => id === supplier)?.name ?? supplier))];
    return html`
      <tr class=${here ? 'here' : ''} ${standsFor({ parts: [part.id] }, !this.open.locked)}>
        <td class="swatch">${swatch(colour)}</td>
        <th scope="row"><a href=${this.linkTo({ view: 'parts', item: part.id })} tabindex=${stop ? 0 : -1} aria-current=${here ? 'true' : nothing}>${part.name}</a>${part.hand === undefined || part.hand === 'none' || part.name.toLowerCase().includes(part.hand) ? nothing : html` <span class="quiet">${part.hand}</span>`}</th>
        <td class="more quiet">${part.partNumber ?? '–'}</td>
        <td>${this.cabin.zones.find(({ id }) => id === part.zone)?.name ?? part.zone}</td>
        <td>${source?.material ?? '–'}</td>
        <td class="more">${suppliers.join(', ')}</td>
        <td class="number more">${part.sources.length}</td>
        <td class="number less">${specimens.length}</td>
        <td class="number ${readings === 0 ? mirrored ? 'quiet' : 'lacking' : ''}">${readings === 0 ? mirrored ? 'mirrored' : 'none' : readings}</td>
        <td class="number more">${tally?.joints ?? 0}${tally !== undefined && tally.clashes > 0 ? html`, <span class="word clashes">${counted(tally.clashes, 'clash', 'clashes')}</span>` : nothing}</td>
      </tr>`;
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
