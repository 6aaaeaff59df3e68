import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { partNames } from '../../../src/harmony/names.ts';
import type { DropOut, Share } from '../../../src/plan/index.ts';
import { planCurrency } from '../../../src/plan/model/source-cost.ts';
import { counted } from '../../../src/report/number-text.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { unfolds } from '../../controllers/sections.ts';
import { locksOf, sharesOf, toggledLock, toggledShare, toggledSupplier, withoutOf } from '../../model/source-terms.ts';
import type { Options } from '../../model/source-terms.ts';
import '../../app/adjoin-choice.ts';
import type { AdjoinChoice } from '../../app/adjoin-choice.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields } from '../../styles/fields.ts';
import { planStyles } from '../plan/plan.styles.ts';

/**
 * What a choice of sources must keep to.
 * @fires adjoin-terms - the options as they are wanted
 */
export class AdjoinSourceTerms extends LitElement {
  static override styles = [base, controls, fields, planStyles, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 20px; background: none; min-height: 0; align-content: start; }
    .numbers { display: grid; grid-template-columns: 1fr 1fr; gap: 10px 12px; }
    .tying { display: grid; gap: 8px; padding: 6px 0; } .tying .pick, .tying select { width: 100%; }
    .rate { display: grid; grid-template-columns: minmax(0, 1fr) 84px auto; gap: 8px; align-items: center; font-size: var(--small); padding: 4px 0; } .rate input { min-height: 26px; padding: 2px 6px; text-align: right; }
    .would { display: block; color: var(--quiet); padding-top: 0; padding-bottom: 4px; text-wrap: pretty; }
    .locks li { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 8px; align-items: center; font-size: var(--small); padding: 2px 0; }
    @media (min-width: 761px) and (max-width: 1080px) { :host { grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 20px 40px; } }
  `];
  static override properties = { cabin: { attribute: false }, dropOuts: { attribute: false }, options: { attribute: false }, currency: {}, locked: { type: Boolean } };

  declare cabin: Cabin;
  declare options: Options;
  declare currency: string;
  /** Another tab owns the cabin. */
  declare locked: boolean;
  /** What each supplier's dropping out would do to the best set, where that is known. */
  declare dropOuts: readonly DropOut[];

  private change(options: Options): void {
    this.dispatchEvent(new CustomEvent('adjoin-terms', { detail: options, bubbles: true, composed: true }));
  }

  private number(name: string, label: string | TemplateResult, unit: string, least: number, none: string): TemplateResult {
    return html`<label class="field"><span class="label">${label}${unit === '' ? nothing : html` <span class="unit">${unit}</span>`}</span>
      <input type="number" name=${name} min=${least} step="any" placeholder=${none} .value=${this.options[name] ?? ''}
        @change=${(event: Event) => this.change({ ...this.options, [name]: (event.target as HTMLInputElement).value })} /></label>`;
  }

  private flag(name: string, value: string, label: TemplateResult): TemplateResult {
    return html`<label class="check"><input type="checkbox" name=${name} .checked=${this.options[name] === value}
      @change=${(event: Event) => this.change({ ...this.options, [name]: (event.target as HTMLInputElement).checked ? value : '' })} /><span>${label}</span></label>`;
  }

  /** Parts that one supplier must serve, or that must stand by the source of one id. */
  private ties(): TemplateResult {
    const { cabin, options } = this;
    const names = partNames(cabin.parts);
    const name = (part: string): string => names.get(part) ?? part;
    const said = ({ parts, what }: Share): string => `${parts.map(name).join(' and ')}: one ${what}`;
    const choice = (field: string, label: string, choices: readonly (readonly [string, string])[]): TemplateResult => html`<span class="pick"><select name=${field} aria-label=${label}>
      ${choices.map(([value, text]) => html`<option value=${value}>${text}</option>`)}</select></span>`;
    const part = (field: string, label: string): TemplateResult => html`<adjoin-choice .name=${field} .label=${label} keeps .count=${cabin.parts.length} .choices=${() => cabin.parts.map(({ id }) => ({ id, name: name(id) }))}></adjoin-choice>`;
    const tied = sharesOf(options);
    return html`<fieldset><legend>Parts that go together</legend>
      ${tied.length === 0 ? nothing : html`<ul class="locks">${tied.map((share) => html`<li><span>${said(share)}</span><button type="button" aria-label=${`Let ${said(share)} go`} @click=${() => this.change(toggledShare(options, share))}>Let go</button></li>`)}</ul>`}
      <details class="tie" ${unfolds('tie')}><summary>Tie two parts</summary><div class="tying">${part('first', 'First part…')}${part('second', 'Second part…')}${choice('what', 'What they share', [['supplier', 'one supplier serves both'], ['source', 'the source of one id for both']])}
        <button type="button" @click=${() => this.tie()}>Tie</button></div></details>
      <p class="small quiet">Parts of a module go together as it is.</p></fieldset>`;
  }

  private tie(): void {
    const value = (name: string): string => this.renderRoot.querySelector<HTMLSelectElement | AdjoinChoice>(`select[name=${name}], adjoin-choice[name=${name}]`)?.value ?? '';
    const [first, second] = [value('first'), value('second')];
    if (first === '' || second === '' || first === second) return;
    const share: Share = { parts: [first, second], what: value('what') === 'source' ? 'source' : 'supplier' };
    if (sharesOf(this.options).some(({ parts, what }) => what === share.what && parts.join() === share.parts.join())) return;
    this.change(toggledShare(this.options, share));
  }

  /** Where prices are in several monies: the one to reckon in, and what the others are worth in it. */
  private money(): TemplateResult | typeof nothing {
    const { cabin } = this;
    const used = [...new Set(cabin.parts.flatMap(({ sources }) => sources.flatMap(({ currency }) => (currency === undefined ? [] : [currency]))))].sort();
    const own = planCurrency(cabin);
    const others = used.filter((code) => code !== own);
    if (used.length < 2 && others.length === 0) return nothing;
    const choices = [...new Set([...used, ...(own === undefined ? [] : [own])])];
    return html`<fieldset><legend>Money</legend>
      <label class="field"><span class="label">Reckon in</span><span class="pick"><select name="currency" ?disabled=${this.locked} @change=${(event: Event) => doAction(this, 'planning.set-currency', { currency: (event.target as HTMLSelectElement).value || null })}>
        <option value="" .selected=${own === undefined}>choose…</option>${choices.map((code) => html`<option value=${code} .selected=${code === own}>${code}</option>`)}</select></span></label>
      ${own === undefined ? nothing : others.map((code) => html`<label class="rate"><span>one ${code} is worth</span><input type="number" name="rate" data-currency=${code} min="0" step="any" ?disabled=${this.locked} .value=${String(cabin.planning?.rates?.[code] ?? '')}
        @change=${(event: Event) => { const value = Number((event.target as HTMLInputElement).value); doAction(this, 'planning.set-rate', { currency: code, rate: value > 0 ? value : null }); }} /><span>${own}</span></label>`)}
      <p class="small quiet">Kept in the cabin. Rates are what the parties agree on.</p></fieldset>`;
  }

  override render(): TemplateResult {
    const { cabin, options } = this;
    const served = new Map<string, Set<string>>();
    for (const part of cabin.parts) for (const { supplier } of part.sources) served.set(supplier, (served.get(supplier) ?? new Set()).add(part.id));
    const out = withoutOf(options);
    const names = partNames(cabin.parts);
    const supplierName = (id: string): string => cabin.suppliers.find((one) => one.id === id)?.name ?? id;
    const locks = Object.entries(locksOf(options));
    const dropping = new Map(this.dropOuts.map(({ supplier, short }) => [supplier, short]));
    return html`
      <fieldset><legend>Keep to</legend>
        <div class="numbers">
          ${this.number('budget', 'Budget', this.currency || 'a year', 0, 'no limit')}
          ${this.number('lead', 'Lead time', 'weeks', 0, 'no limit')}
          ${this.number('most', 'Suppliers', 'at most', 1, 'no limit')}
          ${this.number('volume', 'Volume', 'a year', 0, cabin.volume === undefined ? 'one' : String(cabin.volume))}
          <label class="field"><span class="label">Time <span class="unit">s in all</span></span><input type="number" name="time" min="0.1" step="any" placeholder="60" ?disabled=${this.locked} .value=${options['time'] || String(cabin.planning?.timeLimitS ?? '')}
            @change=${(event: Event) => { const value = Number((event.target as HTMLInputElement).value); if (options['time']) this.change({ ...options, time: '' }); doAction(this, 'planning.set-time', { timeLimitS: value > 0 ? value : null }); }} /></label>
        </div>
      </fieldset>
      <fieldset><legend>What if a supplier drops out</legend>
        ${[...served].sort(([a], [b]) => supplierName(a).localeCompare(supplierName(b), 'en')).map(([id, parts]) => html`<label class="check">
          <input type="checkbox" name="without" value=${id} .checked=${out.includes(id)} @change=${() => this.change(toggledSupplier(options, id))} />
          <span>${supplierName(id)} <span class="count">${counted(parts.size, 'part')}</span>${dropping.has(id) && !out.includes(id) ? html`<span class="would">${dropping.get(id)}</span>` : nothing}</span></label>`)}
        ${dropping.size === 0 ? nothing : html`<p class="small quiet">Under each, what the best set without it comes to. Ticked ones are left out of the plan.</p>`}
      </fieldset>
      <fieldset><legend>Parts kept on a <adjoin-term word="source">source</adjoin-term></legend>
        ${locks.length === 0 ? html`<p class="small quiet">None. Keep one in the table of the parts.</p>` : html`<ul class="locks">${locks.map(([part, source]) => html`<li>
          <span>${names.get(part) ?? part}: ${supplierName(cabin.parts.find((one) => one.id === part)?.sources.find((one) => one.id === source)?.supplier ?? source)}</span>
          <button type="button" aria-label=${`Let ${names.get(part) ?? part} go`} @click=${() => this.change(toggledLock(options, part, source))}>Let go</button></li>`)}</ul>`}
      </fieldset>
      ${this.ties()}
      ${this.money()}
      <fieldset><legend>Reckoning</legend>
        ${this.flag('paid', 'yes', html`<adjoin-term word="tool and set-up">Tools and set-ups</adjoin-term> of series sources are paid`)}
        ${this.flag('frozen', 'free', html`<adjoin-term word="carry-over">Carry-over</adjoin-term> parts may change as well`)}
      </fieldset>
    `;
  }
}

customElements.define('adjoin-source-terms', AdjoinSourceTerms);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-source-terms': AdjoinSourceTerms;
  }
}
