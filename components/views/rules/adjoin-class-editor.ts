import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { glossRuleText } from '../../../src/rules/index.ts';
import { materialValues } from '../../../src/rules/index.ts';
import { plainNumber } from '../../../src/rules/plain-number.ts';
import type { MaterialClass, MaterialValue } from '../../../src/rules/index.ts';
import '../../app/adjoin-action-fields.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { unfolds } from '../../controllers/sections.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import './adjoin-formula-field.ts';
import { editorStyles } from './editor.styles.ts';
import { glossFields } from './gloss-fields.ts';
import type { RulesContext } from './rules-context.ts';

const words: Readonly<Record<MaterialValue, string>> = {
  family: 'family', colourLimit: 'colour limit', kL: 'kL', lightnessCap: 'cap on |dL*|', readingSd: 'sd of one reading', glossSd: 'sd of one gloss reading', wanted: 'readings wanted',
  masterColourLimit: 'colour limit to the master', masterGlossLimit: 'gloss limit to the master', advisory: 'advisory', sameGeometryOnly: 'same geometry only',
};

/** The values of one class of material, from which those of every pair are combined. */
export class AdjoinClassEditor extends InTurnElement {
  static override styles = [base, controls, fields, editorStyles];
  static override properties = { at: { attribute: false }, row: { attribute: false } };

  declare at: RulesContext;
  declare row: MaterialClass;

  private set(keys: readonly string[], rest: Readonly<Record<string, string>> = {}): TemplateResult {
    const { open } = this.at;
    return html`<adjoin-action-fields .cabin=${open.cabin} .action=${'material.set'} .of=${{ material: this.row.material }} .keys=${keys} .rest=${rest} .locked=${open.locked}></adjoin-action-fields>`;
  }

  private tried(key: string, rest?: string): TemplateResult {
    return html`<adjoin-formula-field .at=${this.at} .action=${'material.set'} .of=${{ material: this.row.material }} .key=${key} .rest=${rest}></adjoin-formula-field>`;
  }

  private section(title: string, says: string, inside: TemplateResult, open = false): TemplateResult {
    return html`<details ${unfolds(`class-${title.toLowerCase().replaceAll(' ', '-')}`, open)}><summary><b>${title}</b><span>${says}</span></summary><div class="inside">${inside}</div></details>`;
  }

  override render(): TemplateResult {
    const { row, at } = this;
    const { readingSd, wanted } = row;
    return html`<div class="editor">
      ${this.section('Colour', `limit ${plainNumber(row.colourLimit)}, kL ${plainNumber(row.kL)}, family ${row.family}`, html`<div class="three">${this.tried('colourLimit')}${this.tried('kL')}${this.tried('lightnessCap', 'none')}</div>${this.set(['family', 'advisory', 'sameGeometryOnly'], { advisory: 'no', sameGeometryOnly: 'no' })}`, true)}
      ${this.section('Gloss', glossRuleText(row.gloss), glossFields(at, 'material.set-gloss', { material: row.material }, row.gloss, ''))}
      ${this.section('Readings', `${wanted.spots} spots${wanted.rotations === undefined ? '' : ` at ${wanted.rotations} rotations`}, sd ${readingSd.map(plainNumber).join(' ')}`, this.set(['spots', 'rotations', 'specimens', 'readingSd', 'glossSd'], { rotations: 'not asked', specimens: 'not asked' }))}
      ${this.section('Against the master', `colour ${plainNumber(row.masterColourLimit)}${row.masterGlossLimit === undefined ? '' : `, gloss ${plainNumber(row.masterGlossLimit)} GU`}`, this.set(['masterColourLimit', 'masterGlossLimit'], { masterGlossLimit: 'none' }))}
      ${this.section('Basis', row.basis, html`${this.set(['basis'])}${materialValues.map((value) => html`<div><p class="small">Basis of ${words[value]}</p><adjoin-action-fields
        .cabin=${at.open.cabin} .action=${'material.set-basis'} .of=${{ material: row.material, value }} .keys=${['basis']} .locked=${at.open.locked}></adjoin-action-fields></div>`)}`)}
    </div>`;
  }
}

customElements.define('adjoin-class-editor', AdjoinClassEditor);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-class-editor': AdjoinClassEditor;
  }
}
