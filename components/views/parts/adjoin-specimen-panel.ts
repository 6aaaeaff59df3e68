import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Selection } from '../../../src/actions/index.ts';
import type { Cabin, Specimen } from '../../../src/cabin/cabin.ts';
import { valueText } from '../../../src/formats/reading-summary.ts';
import type { Reading } from '../../../src/readings/reading.ts';
import { counted } from '../../../src/report/number-text.ts';
import { askAction, doAction } from '../../controllers/edit-events.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields as fieldStyles } from '../../styles/fields.ts';
import './adjoin-inline-fields.ts';

const shownAtFirst = 40;

/** One specimen: its fields, its lot and stage, and its readings, of which some can be picked to mark, move or remove. */
export class AdjoinSpecimenPanel extends LitElement {
  static override styles = [base, controls, fieldStyles, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 12px; padding: 6px 8px 12px 24px; }
    h4 { margin-bottom: 6px; font-size: var(--small); color: var(--quiet); font-weight: 400; border-bottom: 1px solid var(--faint); }
    .wide { overflow-x: auto; position: relative; }
    table { border-collapse: collapse; width: 100%; min-width: 620px; font-size: var(--small); }
    th { text-align: left; font-weight: 400; color: var(--quiet); padding: 2px 10px 2px 0; white-space: nowrap; }
    td { border-top: 1px solid var(--faint); padding: 2px 10px 2px 0; }
    tr.out td { text-decoration: line-through; color: var(--quiet); }
    .does { display: flex; gap: 8px; flex-wrap: wrap; align-items: center; }
    .does button { font-size: var(--small); }
    button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
    .quiet { color: var(--quiet); font-size: var(--small); }
  `];

  static override properties = { cabin: { attribute: false }, specimen: { attribute: false }, within: { attribute: false }, locked: { type: Boolean }, picked: { state: true }, all: { state: true } };

  declare cabin: Cabin;
  declare specimen: Specimen;
  /** What the specimen belongs to. */
  declare within: Selection;
  declare locked: boolean;
  declare picked: ReadonlySet<number>;
  declare all: boolean;
  private of: string | undefined;

  constructor() {
    super();
    this.picked = new Set();
    this.all = false;
    this.locked = false;
    this.within = {};
  }

  protected override willUpdate(): void {
    const places = this.specimen.readings.length;
    if (this.of !== this.specimen.id || [...this.picked].some((place) => place >= places)) this.picked = new Set();
    this.of = this.specimen.id;
  }

  override render(): TemplateResult {
    const { specimen, cabin, locked } = this;
    const about = { specimen: specimen.id };
    const fields = (action: string): TemplateResult => html`<adjoin-inline-fields .cabin=${cabin} .action=${action} .about=${about} .locked=${locked}></adjoin-inline-fields>`;
    return html`
      ${fields('specimen.set')}
      <div><h4><adjoin-term word="lot">Lot</adjoin-term></h4>${fields('specimen.set-lot')}</div>
      <div><h4><adjoin-term word="stage">Stage</adjoin-term></h4>${fields('specimen.set-exposure')}</div>
      <div><h4>${counted(specimen.readings.length, 'reading')}</h4>${this.readings()}</div>
      <p class="does">
        <button type="button" ?disabled=${locked} @click=${() => askAction(this, 'readings.add', about)}>Add readings</button>
        <button type="button" ?disabled=${locked} @click=${() => askAction(this, specimen.kind === 'master' && cabin.masters?.some(({ id }) => id === specimen.id) === true ? 'master.remove' : 'specimen.remove', about)}>Remove specimen</button>
      </p>`;
  }

  private readings(): TemplateResult | typeof nothing {
    const { specimen, locked } = this;
    if (specimen.readings.length === 0) return html`<p class="quiet">Nothing was measured on it yet.</p>`;
    const shown = this.all ? specimen.readings : specimen.readings.slice(0, shownAtFirst);
    const about = { specimen: specimen.id, readings: [...this.picked].sort((a, b) => a - b) };
    const none = locked || this.picked.size === 0;
    const [first] = about.readings;
    return html`
      <div class="wide" tabindex="0" role="region" aria-label="Readings of ${specimen.id}"><table>
        <thead><tr><th scope="col"><span class="unseen">pick</span></th><th scope="col"><adjoin-term word="spot">spot</adjoin-term></th><th scope="col">what</th><th scope="col">value</th><th scope="col">conditions</th><th scope="col">from</th></tr></thead>
        <tbody>${shown.map((reading, place) => this.row(reading, place))}</tbody>
      </table></div>
      ${specimen.readings.length > shown.length ? html`<button type="button" @click=${() => { this.all = true; }}>Show all ${specimen.readings.length}</button>` : nothing}
      <p class="does">
        <span class="quiet">${this.picked.size === 0 ? 'Pick readings to' : `${this.picked.size} picked:`}</span>
        <button type="button" ?disabled=${none} @click=${() => this.mark(about)}>${first !== undefined && specimen.readings[first]?.outlier === true ? 'Unmark as outlier' : 'Mark as outlier'}</button>
        <button type="button" ?disabled=${none} @click=${() => askAction(this, 'readings.move', about)}>Move</button>
        <button type="button" ?disabled=${none} @click=${() => askAction(this, 'readings.set-conditions', about)}>Set conditions</button>
        <button type="button" ?disabled=${none || this.picked.size > 1} @click=${() => askAction(this, 'readings.replace', { specimen: specimen.id, place: first })}>Edit</button>
        <button type="button" ?disabled=${none} @click=${() => doAction(this, 'readings.remove', about)}>Remove</button>
      </p>`;
  }

  private mark(about: { readonly specimen: string; readonly readings: readonly number[] }): void {
    const marked = this.specimen.readings[about.readings[0] ?? 0]?.outlier === true;
    doAction(this, 'readings.set-outlier', { ...about, outlier: !marked });
  }

  private row(reading: Reading, place: number): TemplateResult {
    const pick = (event: Event): void => {
      const next = new Set(this.picked);
      if ((event.target as HTMLInputElement).checked) next.add(place);
      else next.delete(place);
      this.picked = next;
    };
    const conditions = this.cabin.conditions.find(({ id }) => id === reading.conditions);
    const instrument = this.cabin.instruments.find(({ id }) => id === conditions?.instrument)?.name;
    const file = this.cabin.files?.find(({ id }) => id === reading.file)?.name;
    const readings = this.picked.has(place) ? [...this.picked].sort((a, b) => a - b) : [place];
    return html`<tr class=${reading.outlier === true ? 'out' : ''} ${standsFor({ ...this.within, specimen: this.specimen.id, readings }, !this.locked)}>
      <td><input type="checkbox" aria-label="Pick reading ${place + 1} at spot ${reading.spot.name}" .checked=${this.picked.has(place)} @change=${pick} /></td>
      <td>${reading.spot.name}${reading.rotationDeg === undefined ? '' : ` at ${reading.rotationDeg}°`}</td><td>${reading.quantity}</td><td>${valueText(reading)}${reading.outlier === true ? ', outlier' : ''}</td>
      <td>${[instrument ?? conditions?.instrument, conditions?.geometry].filter(Boolean).join(', ')}</td><td>${file === undefined ? '–' : `${file}${reading.row === undefined ? '' : `, row ${reading.row}`}`}</td>
    </tr>`;
  }
}

customElements.define('adjoin-specimen-panel', AdjoinSpecimenPanel);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-specimen-panel': AdjoinSpecimenPanel;
  }
}
