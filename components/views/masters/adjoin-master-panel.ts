import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { CheckResult, Judgement } from '../../../src/harmony/judgement.ts';
import { driftSentence } from '../../../src/harmony/master-drift.ts';
import type { MasterDrift } from '../../../src/harmony/master-drift.ts';
import type { MasterEntry, MasterPart } from '../../../src/harmony/master-overview.ts';
import { limitScale } from '../../../src/report/figures/limit-scale.ts';
import { spectraPlot } from '../../../src/report/figures/spectra-plot.ts';
import { counted, fixed, limitUseText, percent, signed } from '../../../src/report/number-text.ts';
import { drawing } from '../../../src/report/scene.ts';
import type { Desk } from '../../controllers/desk.ts';
import { askAction } from '../../controllers/edit-events.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Route } from '../../controllers/route.ts';
import { paperInk } from '../../figures/inks.ts';
import '../../figures/adjoin-figure-table.ts';
import { scene } from '../../figures/scene.ts';
import { spectraTable } from '../../figures/spectra-table.ts';
import { swatch } from '../../figures/swatch.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { labText } from '../../model/lab-text.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import '../parts/adjoin-inline-fields.ts';
import { styles } from './master-panel.styles.ts';
import { stateWord } from './master-state.ts';

const types = { html: 'text/html;charset=utf-8', cxf: 'application/xml', csv: 'text/csv;charset=utf-8' } as const;

/**
 * One master: what it is, how it drifted, its parts against it and against their neighbours, and its files for suppliers.
 * @fires adjoin-supplier - the supplier that the files are to be for, empty for all
 */
export class AdjoinMasterPanel extends InTurnElement {
  static override styles = [base, controls, stacked, styles];
  static override properties = {
    cabin: { attribute: false }, entry: { attribute: false }, judgement: { attribute: false }, colour: { attribute: false }, light: {}, desk: { attribute: false }, locked: { type: Boolean }, linkTo: { attribute: false }, wanted: {}, failed: { state: true },
  };

  declare cabin: Cabin;
  declare entry: MasterEntry;
  declare judgement: Judgement;
  declare colour: PartColour | undefined;
  declare light: string;
  declare desk: Desk;
  declare locked: boolean;
  declare linkTo: (change: Partial<Route>) => string;
  /** The supplier that the files are for, where the master has parts of it; all where absent. */
  declare wanted: string | undefined;
  declare failed: string;
  private readonly size = new ElementSize(this, '.plot');

  constructor() {
    super();
    this.failed = '';
  }

  private get suppliers(): readonly string[] {
    return [...new Set(this.entry.parts.map(({ supplier }) => supplier))];
  }

  private get supplier(): string {
    return this.suppliers.find((supplier) => supplier === this.wanted) ?? '';
  }

  private async save(ending: keyof typeof types): Promise<void> {
    const { master } = this.entry;
    const text = await this.desk.look({ what: 'master file', ending, master, ...(this.supplier === '' ? {} : { supplier: this.supplier }) }).catch(() => undefined);
    this.failed = text === undefined ? 'There is nothing of this master that such a file could hold.' : '';
    if (text !== undefined) downloadText(`${fileName(master, this.supplier)}.${ending}`, text, types[ending]);
  }

  override render(): TemplateResult {
    const { entry, cabin, locked, suppliers } = this;
    const { word, mark } = stateWord(entry);
    const about = { specimen: entry.master };
    return html`
      <header>
        <a class="button back" href=${this.linkTo({ view: 'masters', item: undefined })}>All masters</a>
        ${swatch(this.colour, 56)}
        <div><h2>${entry.name}</h2><p class="quiet">${[entry.master, entry.issue === undefined ? undefined : `issue ${entry.issue}`, entry.producedOn === undefined ? undefined : `made ${entry.producedOn}`, entry.lastMeasured === undefined ? undefined : `last measured ${entry.lastMeasured}`].filter(Boolean).join(', ')}</p>
          <p class="word ${mark}">${word}</p></div>
      </header>
      <section>
        <h3>Its parts, against it and against their neighbours</h3>
        ${entry.parts.length === 0 ? html`<p class="quiet">No part is held to it. Set it as the target of a part among the <a href=${this.linkTo({ view: 'parts', item: undefined })}>parts</a>.</p>` : html`
          <div class="wide" tabindex="0" role="region" aria-label="Parts of the master"><table class="stacked">
            <thead><tr><th scope="col">part</th><th scope="col" colspan="2">colour against the master, <adjoin-term word="limit use">limit use</adjoin-term></th><th scope="col" colspan="2">gloss against the master, <adjoin-term word="limit use">limit use</adjoin-term></th><th scope="col">against its neighbours</th></tr></thead>
            <tbody>${entry.parts.map((part) => this.held(part))}</tbody></table></div>`}
      </section>
      <section class="two">
        <div class="plot">
          <h3>What it is</h3>
          <p>${entry.lab === undefined ? 'No colour readings.' : `${labText(entry.lab.lab, 2)} under ${entry.lab.light}, ${entry.lab.observer}°`}${entry.spots === 0 ? '' : `, ${counted(entry.spots, 'spot')}${entry.geometry === undefined ? '' : `, ${entry.geometry}`}`}</p>
          <p>${[...entry.gloss.map(({ angle, mean }) => `${fixed(mean, 1)} GU at ${angle}°`), ...(entry.texture?.saUm === undefined ? [] : [`Sa ${fixed(entry.texture.saUm, 1)} µm`]), ...(entry.texture?.salMm === undefined ? [] : [`Sal ${fixed(entry.texture.salMm, 2)} mm`])].join(', ')}</p>
          ${entry.spectrum === undefined ? nothing : html`${scene(spectraPlot({ standard: { name: entry.name, ...entry.spectrum, ...(this.colour?.css === undefined ? {} : { fill: this.colour.css }) }, trial: undefined, alone: true }, { width: Math.max(260, Math.min(560, this.size.width || 460)), height: 240 }, paperInk))}
            <adjoin-figure-table of="Spectrum of the master" .table=${() => spectraTable(entry.spectrum === undefined ? undefined : { name: entry.name, ...entry.spectrum })}></adjoin-figure-table>`}
        </div>
        <div>
          <h3><adjoin-term word="drift">Drift</adjoin-term></h3>
          ${entry.drifts.length === 0 ? html`<p class="quiet">Nothing earlier to compare it with: no parent master, and colour readings of one day only.</p>` : entry.drifts.map((drift) => this.drift(drift))}
          <h3>Files for a supplier</h3>
          <p class="does">
            <span class="pick"><select aria-label="Supplier that the files are for" @change=${(event: Event) => this.dispatchEvent(new CustomEvent('adjoin-supplier', { detail: (event.target as HTMLSelectElement).value }))}>
              <option value="" ?selected=${this.supplier === ''}>for all suppliers</option>${suppliers.map((id) => html`<option value=${id} ?selected=${id === this.supplier}>for ${cabin.suppliers.find((one) => one.id === id)?.name ?? id}</option>`)}</select></span>
            <button type="button" @click=${() => void this.save('html')}>One page (.html)</button><button type="button" @click=${() => void this.save('cxf')}>ISO 17972-1 (.cxf)</button><button type="button" @click=${() => void this.save('csv')}>Table (.csv)</button>
          </p>
          ${this.failed === '' ? nothing : html`<p role="alert">${this.failed}</p>`}
          <p class="quiet">Screens and paper are no proof of colour: the physical master decides.</p>
        </div>
      </section>
      <section>
        <h3>Record</h3>
        <adjoin-inline-fields .cabin=${cabin} .action=${'specimen.set'} .about=${about} .only=${['issue', 'producedOn', 'expires', 'remeasureOn', 'parentMaster', 'note']} .locked=${locked}></adjoin-inline-fields>
        <p class="does"><button type="button" ?disabled=${locked} @click=${() => askAction(this, 'readings.add', about)}>Add readings</button>
          <button type="button" ?disabled=${locked || cabin.masters?.some(({ id }) => id === entry.master) !== true} @click=${() => askAction(this, 'master.remove', about)}>Remove master</button></p>
      </section>`;
  }

  private held(part: MasterPart): TemplateResult {
    const supplier = this.cabin.suppliers.find(({ id }) => id === part.supplier)?.name ?? part.supplier;
    const worst = part.neighbours.toSorted((a, b) => Math.max(b.colour?.limitUse ?? 0, b.gloss?.limitUse ?? 0) - Math.max(a.colour?.limitUse ?? 0, a.gloss?.limitUse ?? 0));
    const clashing = worst.filter(({ verdict }) => verdict === 'clashes');
    const shown = clashing.length > 0 ? clashing : worst.slice(0, 1);
    return html`
      <tr class=${part.withinYetClashing ? 'within' : ''}>
        <th scope="row"><a href=${this.linkTo({ view: 'parts', item: part.part })}>${part.name}</a><br /><span class="quiet">${supplier}</span>${part.withinYetClashing ? html`<br /><span class="word clashes">in tolerance, yet clashing</span>` : nothing}</th>
        ${this.check('colour', part.colour)}${this.check('gloss', part.gloss)}
        <td class="whole">${part.neighbours.length === 0 ? html`<span class="quiet">meets no other part</span>` : html`<ul>${shown.map((neighbour) => html`<li>${scene(verdictSample(neighbour, 36, 12, paperInk))}<span><span class="word ${neighbour.verdict}">${neighbour.verdict}${neighbour.accepted ? ', accepted' : ''}</span>
          with <a href=${this.linkTo({ view: 'joint', joint: neighbour.joint, item: undefined })}>${this.cabin.parts.find(({ id }) => id === neighbour.part)?.name ?? neighbour.part}</a>
          <span class="quiet">${[neighbour.colour?.limitUse === undefined ? undefined : `colour ${limitUseText(neighbour.colour.limitUse)}`, neighbour.gloss?.limitUse === undefined ? undefined : `gloss ${limitUseText(neighbour.gloss.limitUse)}`, ...this.others(neighbour.joint)].filter(Boolean).join(', ')}</span></span></li>`)}</ul>
          ${part.neighbours.length > shown.length ? html`<span class="quiet">${clashing.length > 0 ? 'and' : 'the nearest to its limit of'} ${clashing.length > 0 ? `${part.neighbours.length - shown.length} more that ${part.neighbours.length - shown.length === 1 ? 'does' : 'do'} not clash` : counted(part.neighbours.length, 'neighbour')}</span>` : nothing}`}</td>
      </tr>`;
  }

  /** Checks beside colour and gloss that a joint clashes in. */
  private others(joint: string): readonly string[] {
    return (this.judgement.joints.find(({ id }) => id === joint)?.checks ?? [])
      .filter(({ check, verdict }) => verdict === 'clashes' && check !== 'colour' && check !== 'gloss')
      .map(({ check, limitUse }) => (limitUse === undefined ? check : `${check} ${limitUseText(limitUse)}`));
  }

  private check(name: string, check: CheckResult | undefined): TemplateResult {
    if (check === undefined || check.verdict === 'no data' || check.verdict === 'not applicable' || check.limitUse === undefined) return html`<td colspan="2" class="quiet" data-name=${name}>${check?.verdict ?? 'not held'}</td>`;
    const { verdict, limitUse, uncertainty, limit } = check;
    const size = { width: 170, height: 18 };
    const use = uncertainty !== undefined && limit ? { uncertaintyUse: uncertainty / limit } : {};
    return html`<td class="scale" data-name=${name}>${scene(drawing(size.width, size.height, undefined, limitScale({ verdict, limitUse, ...use }, size, paperInk)))}</td><td class="number"><span class="word ${verdict}">${verdict}</span> ${limitUseText(limitUse)}</td>`;
  }

  private drift(drift: MasterDrift): TemplateResult {
    return html`
      <p>${driftSentence(drift)}</p>
      ${drift.lights.length === 0 ? nothing : html`<div class="wide" tabindex="0" role="region" aria-label="Drift by light"><table class="stacked"><thead><tr><th scope="col">light</th><th scope="col" class="number">${drift.formula}</th><th scope="col" class="number"><adjoin-term word="dL*, da*, db*">dL*</adjoin-term></th><th scope="col" class="number">da*</th><th scope="col" class="number">db*</th></tr></thead>
        <tbody>${drift.lights.map(({ light, value, difference }) => html`<tr><th scope="row">${light}</th><td class="number" data-name=${drift.formula}>${fixed(value, 2)}</td><td class="number" data-name="dL*">${signed(difference.dL, 2)}</td><td class="number" data-name="da*">${signed(difference.da, 2)}</td><td class="number" data-name="db*">${signed(difference.db, 2)}</td></tr>`)}</tbody></table></div>`}
      ${drift.worst?.limitShare === undefined ? nothing : html`<p class="quiet">${percent(drift.worst.limitShare)} of the strictest limit that a part is held to it by.</p>`}
      ${drift.gloss.length === 0 ? nothing : html`<p class="quiet">Gloss: ${drift.gloss.map(({ angle, change }) => `${signed(change, 1)} GU at ${angle}°`).join(', ')}.</p>`}`;
  }
}

customElements.define('adjoin-master-panel', AdjoinMasterPanel);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-master-panel': AdjoinMasterPanel;
  }
}
