import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { bookValues, describeBook } from '../../../src/rules/index.ts';
import type { BookValue } from '../../../src/rules/index.ts';
import '../../app/adjoin-action-fields.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import './adjoin-formula-field.ts';
import './adjoin-light-rows.ts';
import { editorStyles } from './editor.styles.ts';
import type { RulesContext } from './rules-context.ts';

const words: Readonly<Record<BookValue, string>> = {
  observer: 'observer', formula: 'formula', geometryOrder: 'order of geometries', standing: 'standing of the checks', kinds: 'factors of the kinds of joint', defaultIntents: 'what is wanted by default',
};

/** What holds for the whole book, whatever the pair: how it decides, under which lights, what is near a miss, what is assumed. */
export class AdjoinBookEditor extends LitElement {
  static override styles = [base, controls, fields, editorStyles];
  static override properties = { at: { attribute: false } };

  declare at: RulesContext;

  private set(keys: readonly string[], rest: Readonly<Record<string, string>> = {}): TemplateResult {
    const { open } = this.at;
    return html`<adjoin-action-fields .cabin=${open.cabin} .action=${'rule-book.set'} .of=${{}} .keys=${keys} .rest=${rest} .locked=${open.locked}></adjoin-action-fields>`;
  }

  private tried(key: string): TemplateResult {
    return html`<adjoin-formula-field .at=${this.at} .action=${'rule-book.set'} .of=${{}} .key=${key}></adjoin-formula-field>`;
  }

  private section(title: string, says: string, inside: TemplateResult, open = false): TemplateResult {
    return html`<details ?open=${open}><summary><b>${title}</b><span>${says}</span></summary><div class="inside">${inside}</div></details>`;
  }

  override render(): TemplateResult {
    const { at } = this;
    const { book, open } = at;
    const rows = describeBook(book);
    return html`<div class="editor">
      ${this.section('Name', book.name, this.set(['name', 'note']), true)}
      ${this.section('Decision', `${book.decision.rule}, confidence ${book.decision.confidence}`, html`${this.set(['decision'])}${this.tried('confidence')}${this.set(['decisionBasis'])}
        <p class="small quiet">Guarded: holds with at least the confidence, clashes with at most one less the confidence and a clear excess, else open (ISO 14253-1, JCGM 106). Simple: the value against the limit.</p>`, true)}
      ${this.section('Formula and observer', `${book.formula}, ${book.observer}°`, html`${this.set(['formula', 'observer', ...(book.formula === 'cmc' || book.cmc !== undefined ? ['cmcL', 'cmcC'] : [])])}
        <adjoin-action-fields .cabin=${open.cabin} .action=${'rule-book.set-geometry-order'} .of=${{}} .keys=${['geometryOrder']} .locked=${open.locked}></adjoin-action-fields>`)}
      ${this.section('Lights', book.lights.filter(({ standing }) => standing === 'required').map(({ light }) => light).join(', '), html`<adjoin-light-rows .at=${at} .lights=${book.lights} .action=${'rule-book.set-lights'} .of=${{}}></adjoin-light-rows>`)}
      ${this.section('Standing of the checks', `colour ${book.standing.colour}, gloss ${book.standing.gloss}, texture ${book.standing.texture}`,
        this.set(['colourStanding', 'metamerismStanding', 'glossStanding', 'textureStanding', 'nearMissStanding', 'conditionsStanding', 'masterStanding', 'capStanding']))}
      ${this.section('Unlike materials', `${book.combination.unlikeFamilyAllowance} more for unlike families`, html`<div class="three">${this.tried('unlikeFamilyAllowance')}${this.tried('lightnessCapBelowL')}</div>${this.set(['combinationBasis'])}`)}
      ${this.section('Near misses', `tone step |dL*| ${book.toneStep.minDL} to ${book.toneStep.maxDL}, contrast from ${book.contrast.minDifference}`, html`<div class="three">${this.tried('stepMinDL')}${this.tried('stepMaxDL')}${this.tried('stepMaxDH')}${this.tried('contrast')}</div>${this.set(['stepBasis', 'contrastBasis'])}`)}
      ${this.section('Texture', `ratios ${book.texture.ratio.join(' to ')}`, html`${this.set(['ratio', 'strDifference', 'vdiClass', 'textureBasis'])}${this.tried('visibleLimit')}${this.set(['illuminance', 'field', 'visibleBasis', 'lightnessFromTexture'])}${this.tried('lightnessFormula')}${this.set(['lightnessBasis'])}`)}
      ${this.section('Kinds of joint', `sightline times ${book.kinds.sightline}, visible gap ${book.gapFactor.enabled ? 'on' : 'off'}`, html`<div class="three">${this.tried('edge')}${this.tried('gap')}${this.tried('step')}${this.tried('seam')}${this.tried('sightline')}</div>${this.set(['gapFactor'])}${this.tried('gapFormula')}${this.set(['gapBasis'])}`)}
      ${this.section('Caps of zones', book.caps.map(({ id }) => id).join(', ') || 'none', html`<adjoin-action-fields .cabin=${open.cabin} .action=${'rule-book.set-caps'} .of=${{}} .keys=${['caps']} .locked=${open.locked}></adjoin-action-fields>
        <p class="small quiet">A design aid against veiling glare; legal visibility requirements and the responsible engineer decide. Zones of the cabin may set their own.</p>`)}
      ${this.section('Assumed spreads', `weight ${book.assumed.priorReadings} readings`, this.set(['priorReadings', 'agreementSd', 'agreementGlossSd', 'textureSd', 'textureAgreementSd', 'sameSession', 'sameInstrument', 'different', 'maximumSpots', 'assumedBasis']))}
      ${this.section('Bases of the values above', 'published sources, or common practice', html`${bookValues.map((value) => html`<div><p class="small">Basis of the ${words[value]}</p><adjoin-action-fields
        .cabin=${open.cabin} .action=${'rule-book.set-basis'} .of=${{ value }} .keys=${['basis']} .locked=${open.locked}></adjoin-action-fields></div>`)}`)}
      ${rows.length === 0 ? nothing : this.section('Every value with its basis', `${rows.length} values, as the report prints them`, html`<div class="scroll" tabindex="0" role="region" aria-label="Every value of the book"><table class="rows"><thead><tr><th scope="col">of</th><th scope="col">value</th><th scope="col">is</th><th scope="col">basis</th></tr></thead>
        <tbody>${rows.map((row) => html`<tr><td>${row.subject}</td><td>${row.name}</td><td>${row.value} ${row.unit}</td><td class="small quiet">${row.basis}</td></tr>`)}</tbody></table></div>`)}
    </div>`;
  }
}

customElements.define('adjoin-book-editor', AdjoinBookEditor);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-book-editor': AdjoinBookEditor;
  }
}
