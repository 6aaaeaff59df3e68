import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Part } from '../../../src/cabin/cabin.ts';
import type { Judgement } from '../../../src/harmony/judgement.ts';
import { fixed, limitUseText } from '../../../src/report/number-text.ts';
import { askAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Route } from '../../controllers/route.ts';
import { standFor, standsFor } from '../../controllers/stands-for.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { swatch } from '../../figures/swatch.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { labText } from '../../model/lab-text.ts';
import { verdictWord } from '../../model/leading-check.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import './adjoin-inline-fields.ts';
import './adjoin-source-panel.ts';
import { styles } from './part-panel.styles.ts';

/** One part with everything that belongs to it. */
export class AdjoinPartPanel extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = {
    cabin: { attribute: false }, of: { attribute: false }, judgement: { attribute: false }, colour: { attribute: false }, light: {}, locked: { type: Boolean }, linkTo: { attribute: false },
  };

  declare cabin: Cabin;
  declare of: Part;
  declare judgement: Judgement;
  declare colour: PartColour | undefined;
  declare light: string;
  declare locked: boolean;
  declare linkTo: (change: Partial<Route>) => string;

  protected override willUpdate(): void {
    standFor(this, { selection: { parts: [this.of.id] }, editable: false, byFocus: true });
  }

  override render(): TemplateResult {
    const { of: part, cabin, locked } = this;
    const about = { part: part.id };
    const fields = (action: string, only?: readonly string[]): TemplateResult => html`<adjoin-inline-fields .cabin=${cabin} .action=${action} .about=${about} .only=${only} .locked=${locked}></adjoin-inline-fields>`;
    const zone = cabin.zones.find(({ id }) => id === part.zone);
    return html`
      <header>
        <a class="button back" href=${this.linkTo({ view: 'parts', item: undefined })}>All parts</a>
        ${swatch(this.colour, 44)}
        <div>
          <h2>${part.name}</h2>
          <p class="quiet">${this.colour === undefined ? 'no colour readings' : this.colour.css === undefined ? this.colour.why : `${labText(this.colour.lab, 2)} under ${this.light}`}${this.gloss()}</p>
        </div>
        <span class="does">
          <button type="button" ?disabled=${locked} @click=${() => askAction(this, 'part.remove', about)}>Remove part</button>
        </span>
      </header>
      <section><h3>Part</h3>${fields('part.set')}</section>
      <section class="pair">
        <div><h3>Hand</h3>${fields('part.set-hand')}</div>
        <div><h3><adjoin-term word="target">Target</adjoin-term></h3>${fields('part.set-target')}</div>
      </section>
      <section>
        <h3><adjoin-term word="source">Sources</adjoin-term> <button type="button" ?disabled=${locked} @click=${() => askAction(this, 'source.add', about)}>Add a source</button></h3>
        ${part.sources.map((source) => html`<adjoin-source-panel .cabin=${cabin} .of=${part} .source=${source} .locked=${locked}></adjoin-source-panel>`)}
      </section>
      <section>
        <h3><adjoin-term word="joint">Joints</adjoin-term> <button type="button" ?disabled=${locked || cabin.parts.length < 2} @click=${() => askAction(this, 'joint.add', { first: part.id })}>Join with another part</button></h3>
        ${this.joints()}
      </section>
      <section>
        <h3>Outline on the map</h3>
        <p class="quiet">Points in mm of the unfolded cabin, a point a line: right, down. <a href=${this.linkTo({ view: 'cabin', item: undefined })}>Draw it on the map</a></p>
        ${fields('part.set-outline')}
      </section>
      ${zone?.caps?.length ? html`<section>
        <h3><adjoin-term word="cap">Caps</adjoin-term> of the zone ${zone.name}</h3>
        <ul class="caps">${zone.caps.map((cap) => html`<li ${standsFor({ zone: zone.id, cap: cap.id }, !locked)}>${cap.quantity} at most ${cap.max}${cap.quantity === 'gloss' ? ` GU at ${cap.angle ?? 60}°` : ''} <span class="quiet">${cap.basis}</span></li>`)}</ul>
        <a href=${this.linkTo({ view: 'parts', item: 'zones', options: { show: 'registers' } })}>Edit zones and caps</a>
      </section>` : nothing}
    `;
  }

  private gloss(): string {
    const gloss = this.judgement.parts.find(({ id }) => id === this.of.id)?.appearance.gloss ?? [];
    return gloss.map(({ mean, angle }) => `, ${fixed(mean, 1)} GU at ${angle}°`).join('');
  }

  private joints(): TemplateResult {
    const joints = this.cabin.joints.filter(({ parts }) => parts.includes(this.of.id));
    if (joints.length === 0) return html`<p class="quiet">It meets no other part yet.</p>`;
    return html`<table><thead><tr><th scope="col">with</th><th scope="col">kind</th><th scope="col">verdict</th><th scope="col" class="number">limit use</th></tr></thead><tbody>${joints.map((joint) => {
      const other = joint.parts[0] === this.of.id ? joint.parts[1] : joint.parts[0];
      const result = this.judgement.joints.find(({ id }) => id === joint.id);
      return html`<tr ${standsFor({ joint: joint.id }, !this.locked)}>
        <th scope="row"><a href=${this.linkTo({ view: 'joint', joint: joint.id, item: undefined })}>${this.cabin.parts.find(({ id }) => id === other)?.name ?? other}</a></th>
        <td>${joint.kind}${joint.gapMm === undefined ? '' : ` ${joint.gapMm} mm`}</td>
        <td>${result === undefined ? 'being judged' : html`<span class="verdict">${scene(verdictSample(result, 36, 12, paperInk))}<span class="word ${result.verdict}">${verdictWord(result)}</span></span>`}</td>
        <td class="number">${limitUseText(result?.limitUse)}</td>
      </tr>`;
    })}</tbody></table>`;
  }
}

customElements.define('adjoin-part-panel', AdjoinPartPanel);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-part-panel': AdjoinPartPanel;
  }
}
