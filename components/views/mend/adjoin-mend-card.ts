import { css, html, LitElement, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { sourceOf } from '../../../src/cabin/source-of.ts';
import { partNames } from '../../../src/harmony/names.ts';
import type { MaterialReach, MendCard } from '../../../src/plan/index.ts';
import { reachBasis, reachOf } from '../../../src/plan/mend/material-reach.ts';
import { mendCardText, mendCaution } from '../../../src/report/mend-card-text.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { announce } from '../../controllers/announcer.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { jointNames } from '../../model/joint-names.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import { base, controls } from '../../styles/shared.ts';
import { reachScale } from './reach-scale.ts';

/** What one supplier is asked for: the colour now against the target, how much of the material's reach it takes, and in plain words. */
export class AdjoinMendCard extends LitElement {
  static override styles = [base, controls, css`
    :host { display: block; border: 1px solid var(--line); border-radius: var(--radius); background: var(--raised); break-inside: avoid; }
    header { padding: 12px 16px 8px; display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 0 16px; align-items: start; }
    header button { grid-column: 2; grid-row: 1 / 3; min-height: 26px; font-size: var(--small); } @media print { header button { display: none; } }
    h3 { font-size: var(--large); } .supplier { color: var(--quiet); }
    .pair { display: grid; grid-template-columns: 1fr 1fr; position: relative; }
    .pair svg { width: 100%; height: 88px; forced-color-adjust: none; }
    .pair span { font-size: var(--small); padding: 3px 16px; color: var(--quiet); } .pair span + span { text-align: right; }
    .pair svg { grid-column: 1 / 3; grid-row: 1; border-block: 1px solid var(--line); }
    .reach { padding: 8px 16px 0; } .reach .note { font-size: var(--small); color: var(--quiet); padding-top: 4px; }
    .words { padding: 10px 16px 14px; display: grid; gap: 6px; } .words p { text-wrap: pretty; } .words p:not(:first-child) { font-size: var(--small); }
    .tool { font-weight: 600; } .words .basis { color: var(--quiet); } .printed { display: none; } @media print { .words .printed { display: block; } }
    .joints { display: flex; flex-wrap: wrap; gap: 2px 14px; font-size: var(--small); } .joints a { overflow-wrap: anywhere; min-width: 0; display: inline-block; min-height: 24px; padding: 3px 0; }
  `];
  static override properties = { cabin: { attribute: false }, reaches: { attribute: false }, partReaches: { attribute: false }, card: { attribute: false }, now: { attribute: false }, target: { attribute: false }, linkTo: { attribute: false }, toPart: { attribute: false }, locked: { type: Boolean } };

  declare cabin: Cabin;
  /** Reach by material, where another than the assumed one was planned with. */
  declare reaches: Readonly<Record<string, MaterialReach>>;
  /** Reach of single parts, which goes before that of their material. */
  declare partReaches: Readonly<Record<string, MaterialReach>>;
  declare card: MendCard;
  declare now: PartColour | undefined;
  declare target: PartColour | undefined;
  declare linkTo: (joint: string) => string;
  declare toPart: (part: string) => string;
  /** Looked at and not changed. */
  declare locked: boolean;
  private readonly size = new ElementSize(this, '.reach');

  private save(supplier: string): void {
    downloadText(`${fileName(this.cabin.id, 'mend', ...this.card.parts)}.txt`, mendCardText(this.cabin, this.card), 'text/plain');
    announce(this, `The card for ${supplier} went to your downloads.`);
  }

  override render(): TemplateResult {
    const { card, cabin, now, target } = this;
    const names = partNames(cabin.parts);
    const between = jointNames(cabin);
    const part = cabin.parts.find(({ id }) => id === card.parts[0]);
    const supplier = cabin.suppliers.find(({ id }) => id === card.supplier)?.name ?? card.supplier;
    const source = part === undefined ? undefined : sourceOf(part, card.source);
    const own = part === undefined || !Object.hasOwn(this.partReaches, part.id) ? undefined : this.partReaches[part.id];
    const reach = source === undefined ? undefined : own ?? reachOf(source, this.reaches);
    const isSet = own !== undefined || (source !== undefined && Object.hasOwn(this.reaches, source.material));
    const { dL, da, db, dGloss } = card.shift;
    const lab = (value: MendCard['from']): string => (value === undefined ? '' : `L*\u00a0${fixed(value[0], 2)}, a*\u00a0${fixed(value[1], 2)}, b*\u00a0${fixed(value[2], 2)}`);
    const [words = '', ...others] = card.sentences;
    return html`
      <header><h3>${card.parts.map((id, index) => html`${index === 0 ? '' : ' and '}<a ${standsFor({ parts: [id] }, !this.locked)} href=${this.toPart(id)}>${names.get(id) ?? id}</a>`)}</h3><span class="supplier">${supplier}</span>
        <button type="button" aria-label=${`Save the card of ${card.parts.map((id) => names.get(id) ?? id).join(' and ')}`} @click=${() => this.save(supplier)}>Save</button></header>
      <div class="pair">
        <svg class="sample" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">${now?.css === undefined ? nothing : svg`<rect width="50" height="10" fill=${now.css} />`}${target?.css === undefined ? nothing : svg`<rect x="50" width="50" height="10" fill=${target.css} />`}</svg>
        <span>now ${lab(card.from)}</span><span>target ${lab(card.to)}</span>
      </div>
      ${reach === undefined ? nothing : html`<div class="reach">${this.size.width === 0 ? nothing : scene(reachScale([
        { name: 'dL*', shift: dL, reach: reach.L }, { name: 'da*', shift: da, reach: reach.a }, { name: 'db*', shift: db, reach: reach.b }, { name: 'dGloss', shift: dGloss, reach: reach.gloss },
      ], this.size.width, paperInk))}<p class="note">Scale: reach of ${own === undefined ? source?.material : 'this part'}, ±${fixed(reach.L, 1)} L*, ±${fixed(reach.a, 1)} a*, ±${fixed(reach.b, 1)} b*, ±${fixed(reach.gloss, 1)} GU (${isSet ? 'as set for this plan' : reachBasis}).</p></div>`}
      <div class="words">
        <p>${words.replaceAll(/-(?=\d)/g, '−')}</p>
        ${others.filter((sentence) => !sentence.startsWith('It mends')).map((sentence) => html`<p class=${card.toolChange && sentence.includes('tool') ? 'tool' : ''}>${sentence}</p>`)}
        <p class="basis">${card.basis}.</p>
        ${card.joints.length === 0 ? html`<p>It mends no joint by itself; others hold once all cards are met.</p>` : html`<p>Once all cards are met, it mends</p><div class="joints">${card.joints.map((id) => html`<a ${standsFor({ joint: id }, !this.locked)} href=${this.linkTo(id)}>${between.get(id) ?? id}</a>`)}</div>`}
        <p class="printed">${mendCaution}</p>
      </div>
    `;
  }
}

customElements.define('adjoin-mend-card', AdjoinMendCard);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-mend-card': AdjoinMendCard;
  }
}
