import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { instrumentsWithAgreement } from '../../../src/cabin/tile-set-agreement.ts';
import type { InstrumentQuality } from '../../../src/harmony/quality/index.ts';
import type { ColourAgreement, ScalarAgreement } from '../../../src/readings/agreement/index.ts';
import { counted, fixed, percent, signed } from '../../../src/report/number-text.ts';
import type { QualityLook } from '../../../src/workers/session-look.ts';
import { announce } from '../../controllers/announcer.ts';
import type { Desk } from '../../controllers/desk.ts';
import { askAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Route } from '../../controllers/route.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { shareBar } from '../../figures/share-bar.ts';
import { tileDeviations } from '../../figures/tile-deviations.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { pageStyles } from './readings-view.styles.ts';

const axes = ['dL*', 'da*', 'db*'] as const;

type Study = QualityLook['studies'][number];

/** Every instrument with its calibration and agreement, and what the sets of shared tiles say. */
export class AdjoinInstruments extends InTurnElement {
  static override styles = [base, controls, pageStyles, stacked, css`
    .two { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 24px 40px; align-items: start; }
    .list { min-width: 860px; } .two > div { min-width: 0; } .two table { min-width: 640px; } .wide + .wide table, .two + .wide table { min-width: 0; } tbody th { overflow-wrap: normal; } .two svg { height: auto; }
    @media (max-width: 760px) { .wide table, .two table { min-width: 0; } .stacked tbody th { flex-basis: calc(100% - 80px); flex-shrink: 1; } .stacked td.edit { order: -1; } .stacked tbody th { order: -2; } }
    @media (max-width: 1100px) { .two { grid-template-columns: minmax(0, 1fr); } }
  `];

  static override properties = { cabin: { attribute: false }, look: { attribute: false }, desk: { attribute: false }, locked: { type: Boolean }, linkTo: { attribute: false } };
  declare cabin: Cabin;
  declare look: QualityLook;
  declare desk: Desk;
  declare locked: boolean;
  declare linkTo: (change: Partial<Route>) => string;

  private nameOf(id: string): string {
    return this.cabin.instruments.find((one) => one.id === id)?.name ?? id;
  }

  private takeOver({ id, name, date }: Study): void {
    const present = this.desk.present;
    const set = present?.tileSets?.find((one) => one.id === id);
    if (present === undefined || set === undefined) return;
    const result = this.desk.commit({ ...present, instruments: instrumentsWithAgreement(present, set, date) }, `Take over the agreement of ${name}`);
    announce(this, result.label === undefined ? 'The verdicts rest on this agreement already.' : 'The agreement enters every verdict now.');
  }

  override render(): TemplateResult {
    const { instruments } = this.look.quality;
    if (instruments.length === 0) return html`<p class="lead">No instrument is recorded yet. One is made for every instrument that an imported file names. <a href=${this.linkTo({ view: 'import', item: undefined, options: {} })}>Import files</a></p>`;
    const warned = instruments.filter(({ exceeds }) => exceeds);
    return html`
      <p class="lead">${warned.length === 0 ? 'No instrument takes more than a quarter of a limit that it was used for.'
        : html`<b>${warned.map(({ name }) => name).join(', ')}</b>: the agreement with the other instruments takes more than a quarter of a limit. Measure both sides of such a joint on one instrument.`}</p>
      <section>
        <h2>Instruments</h2>
        <div class="wide" tabindex="0" role="region" aria-label="Instruments"><table class="list stacked">
          <thead><tr><th scope="col">instrument</th><th scope="col">calibration</th><th scope="col">agreement</th><th scope="col" class="number">specimens</th><th scope="col">most of a limit</th><th scope="col" class="number">share</th><th scope="col">where</th><th scope="col"><span class="unseen">edit</span></th></tr></thead>
          <tbody>${instruments.map((one) => this.instrument(one))}</tbody>
        </table></div>
        <p class="quiet">The tick stands at a quarter of the limit (an assumption, no source). An agreement that was not measured is the rule book's assumption.</p>
      </section>
      ${this.look.studies.length === 0 ? html`<section><h2>Shared tiles</h2><p class="lead">The cabin has no set of tiles that several instruments read. Such a set tells how far instruments differ, and that enters every verdict.</p></section>` : this.look.studies.map((study) => this.study(study))}`;
  }

  private instrument({ instrument, name, kind, calibration, agreement, specimens, worst, exceeds }: InstrumentQuality): TemplateResult {
    const due = calibration.state === 'due';
    const part = this.cabin.parts.find(({ id }) => id === worst?.part)?.name;
    return html`<tr>
      <th scope="row"><b>${name}</b><br /><span class="quiet">${kind}</span></th>
      <td class=${due ? 'lacking whole' : 'whole'} data-name="calibration">${calibration.state}${calibration.on === undefined ? '' : html`<br /><span class="quiet">${calibration.on}${calibration.ageDays === undefined ? '' : `, ${counted(calibration.ageDays, 'day')} ago`}${calibration.intervalDays === undefined ? '' : `, holds ${calibration.intervalDays}`}</span>`}</td>
      <td class=${agreement.state === 'measured before the last calibration' ? 'lacking whole' : 'whole'} data-name="agreement">${agreement.state}${agreement.on === undefined ? '' : html`<br /><span class="quiet">${agreement.on}${agreement.ageDays === undefined ? '' : `, ${counted(agreement.ageDays, 'day')} ago`}${agreement.tiles === undefined ? '' : `, ${counted(agreement.tiles, 'tile')}`}</span>`}</td>
      <td class="number" data-name="specimens">${specimens}</td>
      <td class=${worst === undefined ? 'none' : 'whole'} data-name="most of a limit">${worst === undefined ? '–' : scene(shareBar({ share: worst.gauge.instrumentShare, goal: 0.25 }, { width: 140, height: 18 }, paperInk))}</td>
      <td class="number ${exceeds ? 'lacking' : worst === undefined ? 'none' : ''}" data-name="share">${percent(worst?.gauge.instrumentShare)}${exceeds ? ', more than a quarter' : ''}</td>
      <td class=${worst === undefined ? 'none' : ''} data-name="where">${worst === undefined ? '–' : html`${worst.quantity} of ${part ?? worst.specimen}`}</td>
      <td class="edit"><button type="button" ?disabled=${this.locked} aria-label="Edit ${name}" @click=${() => askAction(this, 'instrument.set', { instrument })}>Edit</button></td>
    </tr>`;
  }

  private study(found: Study): TemplateResult {
    const { name, date, study } = found;
    return html`
      <section>
        <h2>${name} <span class="quiet">${date}</span><button type="button" ?disabled=${this.locked} @click=${() => this.takeOver(found)}>Let it enter the verdicts</button></h2>
        ${study.colour.map((colour) => this.colour(colour))}
        ${study.gloss.map((gloss) => this.scalar(`Gloss at ${gloss.angle}°, GU`, gloss))}
        ${study.texture === undefined ? nothing : this.scalar('Texture, share of Sa', study.texture)}
      </section>`;
  }

  private colour({ geometryClass, instruments, pairs, tiles, tilesLeftOut, instrumentsLeftOut }: ColourAgreement): TemplateResult {
    if (instruments.length === 0) return html`<h3>Colour, ${geometryClass}</h3><p class="quiet">Nothing to compare: ${instrumentsLeftOut.map((id) => this.nameOf(id)).join(', ') || 'no instrument'} with ${counted(tiles.length, 'tile')} in common; at least two instruments and three tiles are needed.</p>`;
    const names = instruments.map(({ instrument }) => this.nameOf(instrument));
    return html`
      <h3>Colour, ${geometryClass}: each instrument against the mean of all, CIEDE2000, D65, 10°</h3>
      <div class="two">
        <div>${scene(tileDeviations(tiles.map((tile, at) => ({ tile, values: instruments.map((one) => one.tiles[at]?.size ?? 0) })), names, { width: 560, height: 34 + 22 * tiles.length }, paperInk))}</div>
        <div>
          <div class="wide" tabindex="0" role="region" aria-label="Agreement in colour, ${geometryClass}"><table class="stacked">
            <thead><tr><th scope="col">instrument</th><th scope="col" class="number">mean</th><th scope="col" class="number">largest</th><th scope="col" class="number">dL*</th><th scope="col" class="number">da*</th><th scope="col" class="number">db*</th><th scope="col">standard deviations, with correlations</th></tr></thead>
            <tbody>${instruments.map((one) => html`<tr><th scope="row">${this.nameOf(one.instrument)}</th><td class="number" data-name="mean">${fixed(one.meanSize, 2)}</td><td class="number" data-name="largest">${fixed(one.largestSize, 2)}</td>
              ${one.mean.map((value, axis) => html`<td class="number" data-name=${axes[axis] ?? nothing}>${signed(value, 2)}</td>`)}<td class="quiet whole">${covarianceText(one.covariance)}${one.raised ? '; too few tiles for one direction, raised to its standard error' : ''}</td></tr>`)}</tbody>
          </table></div>
          <h3>Two by two</h3>
          <div class="wide" tabindex="0" role="region" aria-label="Instruments two by two, ${geometryClass}"><table class="stacked">
            <thead><tr><th scope="col">pair, second less first</th><th scope="col" class="number">mean</th><th scope="col" class="number">largest</th><th scope="col" class="number">dL*</th><th scope="col" class="number">da*</th><th scope="col" class="number">db*</th></tr></thead>
            <tbody>${pairs.map((pair) => html`<tr><th scope="row">${this.nameOf(pair.first)} and ${this.nameOf(pair.second)}</th><td class="number" data-name="mean">${fixed(pair.meanSize, 2)}</td><td class="number" data-name="largest">${fixed(pair.largestSize, 2)}</td>${pair.mean.map((value, axis) => html`<td class="number" data-name=${axes[axis] ?? nothing}>${signed(value, 2)}</td>`)}</tr>`)}</tbody>
          </table></div>
        </div>
      </div>
      <div class="wide" tabindex="0" role="region" aria-label="Differences by tile, ${geometryClass}"><table class="stacked">
        <thead><tr><th scope="col">tile</th>${names.map((name) => html`<th scope="col" class="number">${name}</th>`)}</tr></thead>
        <tbody>${tiles.map((tile, at) => html`<tr><th scope="row">${tile}</th>${instruments.map((one, of) => html`<td class="number" data-name=${names[of] ?? nothing}>${fixed(one.tiles[at]?.size, 2)}</td>`)}</tr>`)}</tbody>
      </table></div>
      ${tilesLeftOut.length + instrumentsLeftOut.length === 0 ? nothing : html`<p class="quiet">Left out: ${[...tilesLeftOut, ...instrumentsLeftOut.map((id) => this.nameOf(id))].join(', ')}, which were not read by all.</p>`}`;
  }

  private scalar(title: string, { instruments, tiles, instrumentsLeftOut }: ScalarAgreement): TemplateResult {
    if (instruments.length === 0) return html`<h3>${title}</h3><p class="quiet">Nothing to compare: one instrument only${instrumentsLeftOut.length === 0 ? '' : `, ${instrumentsLeftOut.map((id) => this.nameOf(id)).join(', ')} left out`}, ${counted(tiles.length, 'tile')}.</p>`;
    return html`
      <h3>${title}</h3>
      <div class="wide" tabindex="0" role="region" aria-label=${title}><table class="stacked"><thead><tr><th scope="col">instrument</th><th scope="col" class="number">mean</th><th scope="col" class="number">standard deviation</th>${tiles.map((tile) => html`<th scope="col" class="number">${tile}</th>`)}</tr></thead>
        <tbody>${instruments.map((one) => html`<tr><th scope="row">${this.nameOf(one.instrument)}</th><td class="number" data-name="mean">${signed(one.mean, 3)}</td><td class="number" data-name="standard deviation">${fixed(one.sd, 3)}</td>${one.tiles.map(({ tile, deviation }) => html`<td class="number" data-name=${tile}>${signed(deviation, 2)}</td>`)}</tr>`)}</tbody></table></div>`;
  }
}

/** `L* 0.05, a* 0.02, b* 0.03; L*a* +0.1, L*b* −0.3, a*b* 0.0`. */
function covarianceText(covariance: readonly number[]): string {
  const sd = [0, 4, 8].map((at) => Math.sqrt(covariance[at] ?? 0));
  const correlation = (i: number, j: number): string => signed((covariance[3 * i + j] ?? 0) / ((sd[i] ?? 0) * (sd[j] ?? 0) || 1), 1);
  return `L* ${fixed(sd[0], 2)}, a* ${fixed(sd[1], 2)}, b* ${fixed(sd[2], 2)}; L*a* ${correlation(0, 1)}, L*b* ${correlation(0, 2)}, a*b* ${correlation(1, 2)}`;
}

customElements.define('adjoin-instruments', AdjoinInstruments);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-instruments': AdjoinInstruments;
  }
}
