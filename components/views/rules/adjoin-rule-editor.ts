import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { combineClasses, glossRuleText } from '../../../src/rules/index.ts';
import { plainNumber } from '../../../src/rules/plain-number.ts';
import type { Expression, MaterialClass, PairRule } from '../../../src/rules/index.ts';
import '../../app/adjoin-action-fields.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { unfolds } from '../../controllers/sections.ts';
import { limitText } from '../../model/rule-cells.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import './adjoin-component-rows.ts';
import './adjoin-formula-field.ts';
import './adjoin-light-rows.ts';
import { editorStyles } from './editor.styles.ts';
import { glossFields } from './gloss-fields.ts';
import type { RulesContext } from './rules-context.ts';

const written = (value: Expression | undefined): string | undefined => (value === undefined ? undefined : typeof value === 'number' ? plainNumber(value) : value);

/** Everything that a rule for a pair holds, each value an edit of its own; what it leaves open comes from the classes and the book. */
export class AdjoinRuleEditor extends InTurnElement {
  static override styles = [base, controls, fields, editorStyles];
  static override properties = { at: { attribute: false }, rule: { attribute: false } };

  declare at: RulesContext;
  declare rule: PairRule;

  private get rows(): readonly [MaterialClass, MaterialClass] | undefined {
    const { look, book } = this.at;
    const materials = this.rule.pair.map((material, side) => (material === '*' ? look?.sides[side]?.material : material));
    const [a, b] = materials.map((material) => book.materials.find((row) => row.material === material));
    return a === undefined || b === undefined ? undefined : [a, b];
  }

  private set(keys: readonly string[], rest: Readonly<Record<string, string>> = {}): TemplateResult {
    const { open } = this.at;
    return html`<adjoin-action-fields .cabin=${open.cabin} .action=${'rule.set'} .of=${{ rule: this.rule.id }} .keys=${keys} .rest=${rest} .locked=${open.locked}></adjoin-action-fields>`;
  }

  private formula(key: string, rest: string, says = ''): TemplateResult {
    return html`<adjoin-formula-field .at=${this.at} .action=${'rule.set'} .of=${{ rule: this.rule.id }} .key=${key} .rest=${rest} .says=${says}></adjoin-formula-field>`;
  }

  private section(title: string, says: string, inside: TemplateResult, open = false): TemplateResult {
    return html`<details ${unfolds(`rule-${title.toLowerCase().replaceAll(' ', '-')}`, open)}><summary><b>${title}</b><span>${says}</span></summary><div class="inside">${inside}</div></details>`;
  }

  override render(): TemplateResult {
    const { rule, at } = this;
    const { book, open } = at;
    const { colour = {}, standing = {}, defaultIntent = {} } = rule;
    const { rows } = this;
    const combined = rows === undefined ? undefined : combineClasses(rows[0], rows[1], book.combination);
    const fromClasses = combined === undefined ? 'the classes’' : `${plainNumber(combined.limit)}, the classes’`;
    const bookStanding = Object.fromEntries(([['colourStanding', 'colour'], ['metamerismStanding', 'metamerism'], ['glossStanding', 'gloss'], ['textureStanding', 'texture'], ['nearMissStanding', 'near-miss'], ['conditionsStanding', 'conditions']] as const)
      .map(([key, check]) => [key, `as the book: ${book.standing[check]}`]));
    const k = (['kL', 'kC', 'kH'] as const).flatMap((key) => (colour[key] === undefined ? [] : [`${key} ${written(colour[key])}`]));
    return html`<div class="editor">
      ${this.section('Colour', [colour.limit === undefined ? `limit ${limitText(book, [rows?.[0].material ?? '', rows?.[1].material ?? ''], undefined)} from the classes` : `limit ${written(colour.limit)}`, ...k, ...(colour.formula === undefined ? [] : [colour.formula])].join(', '), html`
        ${this.formula('limit', fromClasses, 'before the factors of kind and light')}
        <div class="three">${this.formula('kL', combined === undefined ? '1' : `${plainNumber(combined.kL)}, the classes’`)}${this.formula('kC', '1')}${this.formula('kH', '1')}</div>
        ${this.set(['formula'], { formula: `as the book: ${book.formula}` })}`, true)}
      ${this.section('Lights', colour.lights === undefined ? 'those of the book' : colour.lights.map(({ light }) => light).join(', '), colour.lights === undefined
        ? html`<div class="bar"><button type="button" aria-disabled=${open.locked} @click=${() => { if (!open.locked) doAction(this, 'rule.set-lights', { rule: rule.id, lights: book.lights }); }}>Give the rule its own lights</button></div>`
        : html`<adjoin-light-rows .at=${at} .lights=${colour.lights} .action=${'rule.set-lights'} .of=${{ rule: rule.id }}></adjoin-light-rows>
          <div class="bar"><button type="button" aria-disabled=${open.locked} @click=${() => { if (!open.locked) doAction(this, 'rule.set-lights', { rule: rule.id, lights: null }); }}>Back to the lights of the book</button></div>`)}
      ${this.section('Components', colour.components === undefined ? 'the classes’ cap on |dL*|' : colour.components.map(({ component }) => `${component}*`).join(', '),
        html`<adjoin-component-rows .at=${at} .components=${colour.components ?? []} .rule=${rule.id}></adjoin-component-rows>`)}
      ${this.section('Gloss', rule.gloss === undefined ? 'from the classes' : glossRuleText(rule.gloss), glossFields(at, 'rule.set-gloss', { rule: rule.id }, rule.gloss, 'from the classes'))}
      ${this.section('Metamerism', rule.metamerismLimit === undefined ? 'no limit of its own' : `limit ${written(rule.metamerismLimit)}`, this.formula('metamerismLimit', 'none: named as the cause of a clash only'))}
      ${this.section('What is wanted', Object.entries(defaultIntent).map(([of, intent]) => `${of} ${intent}`).join(', ') || 'as joints and book say', html`${this.set(['colourIntent', 'glossIntent', 'textureIntent'], { colourIntent: 'as the book', glossIntent: 'as the book', textureIntent: 'as the book' })}
        <p class="small quiet">Near misses: a tone step needs |dL*| from ${plainNumber(book.toneStep.minDL)} to ${plainNumber(book.toneStep.maxDL)} and |dH*| to ${plainNumber(book.toneStep.maxDH)}; a contrast a difference from ${plainNumber(book.contrast.minDifference)}. Texture: Sa and Sal within ${plainNumber(book.texture.ratio[0])} to ${plainNumber(book.texture.ratio[1])}. These hold for the whole book, under <a href=${at.linkTo({ options: { see: 'book' } })}>Whole book</a>.</p>`)}
      ${this.section('Standing of the checks', Object.entries(standing).map(([check, value]) => `${check} ${value}`).join(', ') || 'as the book', this.set(Object.keys(bookStanding), bookStanding))}
      ${this.section('What it speaks of', 'materials, intent, kind, zone', html`${this.set(['one', 'other', 'intent', 'kind', 'zone'], { intent: 'any', kind: 'any', zone: 'any' })}
        <adjoin-action-fields .cabin=${open.cabin} .action=${'rule.set-id'} .of=${{ rule: rule.id }} .keys=${['id']} .locked=${open.locked}></adjoin-action-fields>`)}
      ${this.section('Basis', rule.basis, this.set(['basis']))}
    </div>`;
  }
}

customElements.define('adjoin-rule-editor', AdjoinRuleEditor);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-rule-editor': AdjoinRuleEditor;
  }
}
