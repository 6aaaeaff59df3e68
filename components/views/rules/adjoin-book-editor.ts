import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { bookValues } from '../../../src/rules/index.ts';
import type { BookValue } from '../../../src/rules/index.ts';
import '../../app/adjoin-action-fields.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { unfolds } from '../../controllers/sections.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { doAction } from '../../controllers/edit-events.ts';
import './adjoin-cap-rows.ts';
import './adjoin-readings-rows.ts';
import './adjoin-formula-field.ts';
import './adjoin-light-rows.ts';
import { editorStyles } from './editor.styles.ts';
import type { RulesContext } from './rules-context.ts';

const words: Readonly<Record<BookValue, string>> = {
  observer: 'observer', formula: 'formula', geometryOrder: 'order of geometries', standing: 'standing of the checks', kinds: 'factors of the kinds of joint', defaultIntents: 'what is wanted by default',
};

/** What holds for the whole book, whatever the pair: how it decides, under which lights, what is near a miss, what is assumed. */
export class AdjoinBookEditor extends InTurnElement {
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
    return html`<details ${unfolds(`book-${title.toLowerCase().replaceAll(' ', '-')}`, open)}><summary><b>${title}</b><span>${says}</span></summary><div class="inside">${inside}</div></details>`;
  }

  private moveGeometry(index: number): void {
    const { book, open } = this.at;
    const geometry = book.geometryOrder[index];
    if (open.locked || index === 0 || geometry === undefined) return;
    doAction(this, 'rule-book.set-geometry-order', { geometryOrder: book.geometryOrder.toSpliced(index, 1).toSpliced(index - 1, 0, geometry) });
  }

  override render(): TemplateResult {
    const { at } = this;
    const { book, open } = at;
    return html`<div class="editor">
      ${this.section('Name', book.name, html`<adjoin-action-fields class="wide" .cabin=${open.cabin} .action=${'rule-book.set'} .of=${{}} .keys=${['name', 'note']} .locked=${open.locked}></adjoin-action-fields>`, true)}
      ${this.section('Decision', `${book.decision.rule}, confidence ${book.decision.confidence}`, html`${this.set(['decision'])}${this.tried('confidence')}${this.set(['decisionBasis'])}
        <p class="small quiet"><adjoin-term word="decision rule">Decision rule</adjoin-term>. Guarded: holds with at least the confidence, clashes with at most one less the confidence and a clear excess, else open (ISO 14253-1, JCGM 106). Simple: the value against the limit.</p>`, true)}
      ${this.section('Formula and observer', `${book.formula}, ${book.observer}°`, html`${this.set(['formula', 'observer', ...(book.formula === 'cmc' || book.cmc !== undefined ? ['cmcL', 'cmcC'] : [])])}
        <div><p class="small">Readings are compared in the first <adjoin-term word="geometry">geometry</adjoin-term> that both sides have</p><ol class="order">${book.geometryOrder.map((geometry, index) => html`<li><b>${geometry}</b>
          <button type="button" aria-label="${geometry} earlier" aria-disabled=${open.locked || index === 0} @click=${() => this.moveGeometry(index)}>↑</button></li>`)}</ol></div>`)}
      ${this.section('Lights', book.lights.filter(({ standing }) => standing === 'required').map(({ light }) => light).join(', '), html`<adjoin-light-rows .at=${at} .lights=${book.lights} .action=${'rule-book.set-lights'} .of=${{}}></adjoin-light-rows>`)}
      ${this.section('Standing of the checks', `colour ${book.standing.colour}, gloss ${book.standing.gloss}, texture ${book.standing.texture}`,
        html`<p class="small quiet"><adjoin-term word="standing">The standing</adjoin-term> says whether a <adjoin-term word="check">check</adjoin-term> decides the verdict, does so where there are readings, or is only shown.</p>${this.set(['colourStanding', 'metamerismStanding', 'glossStanding', 'textureStanding', 'nearMissStanding', 'conditionsStanding', 'masterStanding', 'capStanding'])}`)}
      ${this.section('Unlike materials', `${book.combination.unlikeFamilyAllowance} more for unlike families`, html`<div class="three">${this.tried('unlikeFamilyAllowance')}${this.tried('lightnessCapBelowL')}</div>${this.set(['combinationBasis'])}`)}
      ${this.section('Near misses', `tone step |dL*| ${book.toneStep.minDL} to ${book.toneStep.maxDL}, contrast from ${book.contrast.minDifference}`, html`<p class="small quiet">What lies between a match and a clear step is a <adjoin-term word="near miss">near miss</adjoin-term>: it reads as a match that failed.</p><div class="three">${this.tried('stepMinDL')}${this.tried('stepMaxDL')}${this.tried('stepMaxDH')}${this.tried('contrast')}</div>${this.set(['stepBasis', 'contrastBasis'])}`)}
      ${this.section('Texture', `ratios ${book.texture.ratio.join(' to ')}`, html`${this.set(['ratio', 'strDifference', 'vdiClass', 'textureBasis'])}${this.tried('visibleLimit')}${this.set(['illuminance', 'field', 'visibleBasis', 'lightnessFromTexture'])}${this.tried('lightnessFormula')}${this.set(['lightnessBasis'])}`)}
      ${this.section('Kinds of joint', `sightline times ${book.kinds.sightline}, visible gap ${book.gapFactor.enabled ? 'on' : 'off'}`, html`<div class="three">${this.tried('edge')}${this.tried('gap')}${this.tried('step')}${this.tried('seam')}${this.tried('sightline')}</div>${this.set(['gapFactor'])}${this.tried('gapFormula')}${this.set(['gapBasis'])}`)}
      ${this.section('Caps of zones', book.caps.map(({ id }) => id).join(', ') || 'none', html`<adjoin-cap-rows .at=${at}></adjoin-cap-rows>
        <p class="small quiet">A design aid against veiling glare; legal visibility requirements and the responsible engineer decide. Zones of the cabin may set their own.</p>`)}
      ${this.section('Assumed spreads', `weight ${book.assumed.priorReadings} readings`, html`<p class="small quiet"><adjoin-term word="assumed spread">An assumed spread</adjoin-term> is pooled with what the readings show.</p>${this.set(['priorReadings', 'agreementSd', 'agreementGlossSd', 'textureSd', 'textureAgreementSd', 'sameSession', 'sameInstrument', 'different', 'maximumSpots', 'assumedBasis'])}`)}
      ${this.section('Readings wanted', (book.readingsWanted ?? []).map(({ occasion }) => occasion).join(', ') || 'none', html`<adjoin-readings-rows .at=${at}></adjoin-readings-rows>`)}
      ${this.section('Bases of the values above', 'published sources, or common practice', html`${bookValues.map((value) => html`<div><p class="small">Basis of the ${words[value]}</p><adjoin-action-fields
        .cabin=${open.cabin} .action=${'rule-book.set-basis'} .of=${{ value }} .keys=${['basis']} .locked=${open.locked}></adjoin-action-fields></div>`)}`)}
    </div>`;
  }
}

customElements.define('adjoin-book-editor', AdjoinBookEditor);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-book-editor': AdjoinBookEditor;
  }
}
