import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Part, Source } from '../../../src/cabin/cabin.ts';
import { sourceOf } from '../../../src/cabin/source-of.ts';
import { partNames } from '../../../src/harmony/names.ts';
import type { ChoicePlan, ChosenSet, CostTerms } from '../../../src/plan/index.ts';
import { costLines } from '../../../src/plan/model/cost-lines.ts';
import { counted, fixed, signed } from '../../../src/report/number-text.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { jointNames } from '../../model/joint-names.ts';
import { moneyText } from '../../model/money-text.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { colourChip } from '../plan/colour-chip.ts';
import { planStyles } from '../plan/plan.styles.ts';

/** Two sets side by side: the parts that stand by other sources, what each costs and when it delivers, and the joints that clash in one of them alone. */
export class AdjoinSetComparison extends InTurnElement {
  static override styles = [base, controls, planStyles, stacked, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 16px; background: none; min-height: 0; }
    .source { display: grid; grid-template-columns: 28px minmax(0, 1fr); gap: 2px 10px; } .source .chip { margin-top: 2px; }
    .source .quiet { grid-column: 2; } tbody th { min-width: 140px; } td.source-cell { min-width: 190px; }
    .two { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 8px 32px; } .two h3 { margin-bottom: 4px; }
    tfoot th, tfoot td { border-bottom: 0; border-top: 1px solid var(--line); font-weight: 600; color: var(--ink); }
    @media (max-width: 760px) { .two { grid-template-columns: minmax(0, 1fr); } }
  `];
  static override properties = {
    cabin: { attribute: false }, plan: { attribute: false }, from: { attribute: false }, to: { attribute: false }, names: { attribute: false }, terms: { attribute: false },
    colourOf: { attribute: false }, linkTo: { attribute: false }, toPart: { attribute: false }, locked: { type: Boolean },
  };

  declare cabin: Cabin;
  declare plan: ChoicePlan;
  declare from: ChosenSet;
  declare to: ChosenSet;
  /** What the two are called. */
  declare names: readonly [string, string];
  declare terms: CostTerms;
  declare colourOf: (part: Part, source: Source) => PartColour;
  declare linkTo: (joint: string) => string;
  declare toPart: (part: string) => string;
  /** Looked at and not changed. */
  declare locked: boolean;

  override render(): TemplateResult {
    const { cabin, from, to, plan } = this;
    const differing = cabin.parts.filter(({ id }) => from.picks[id] !== to.picks[id]);
    if (differing.length === 0) return html`<p>Every part stands by the same source in both.</p>`;
    const names = partNames(cabin.parts);
    const cost = (part: Part, set: ChosenSet): number => costLines(cabin, sourceOf(part, set.picks[part.id]), plan.volume, this.terms).total;
    const change = differing.reduce((sum, part) => sum + cost(part, to) - cost(part, from), 0);
    const setups = to.cost - from.cost - change;
    return html`
      <div class="scroll" tabindex="0" role="group" aria-label="Parts that differ"><table class="stacked">
        <caption class="unseen">Parts that stand by other sources in the two sets</caption>
        <thead><tr><th scope="col">${counted(differing.length, 'part')}</th><th scope="col">${this.names[0]}</th><th scope="col">${this.names[1]}</th><th scope="col" class="n">cost of a year${plan.currency === '' ? '' : `, ${plan.currency}`}</th><th scope="col" class="n">weeks</th></tr></thead>
        <tbody>${differing.map((part) => {
          const [before, after] = [sourceOf(part, from.picks[part.id]), sourceOf(part, to.picks[part.id])];
          const weeks = before.leadWeeks === undefined || after.leadWeeks === undefined ? '–' : signed(after.leadWeeks - before.leadWeeks, 0);
          return html`<tr ${standsFor({ parts: [part.id] }, !this.locked)}><th scope="row"><a href=${this.toPart(part.id)}>${names.get(part.id) ?? part.id}</a></th><td class="source-cell whole" data-name=${this.names[0]}>${this.source(part, before)}</td><td class="source-cell whole" data-name=${this.names[1]}>${this.source(part, after)}</td><td class="n" data-name="cost of a year">${money(cost(part, to) - cost(part, from))}</td><td class="n" data-name="weeks">${weeks}</td></tr>`;
        })}</tbody>
        <tfoot>${Math.abs(setups) < 0.5 ? nothing : html`<tr><th scope="row" colspan="3">Set-ups that suppliers ask once</th><td class="n" data-name="cost">${money(setups)}</td><td></td></tr>`}
          <tr><th scope="row" colspan="3">In all</th><td class="n" data-name="cost">${money(to.cost - from.cost)}</td><td class="n" data-name="weeks">${signed(to.leadWeeks - from.leadWeeks, 0)}</td></tr></tfoot></table></div>
      <div class="two">${this.joints(`Clash only in ${this.names[0]}`, from, to)}${this.joints(`Clash only in ${this.names[1]}`, to, from)}</div>
    `;
  }

  private source(part: Part, source: Source): TemplateResult {
    const supplier = this.cabin.suppliers.find(({ id }) => id === source.supplier)?.name ?? source.supplier;
    const { landedPiece } = costLines(this.cabin, source, this.plan.volume, this.terms);
    return html`<div class="source">${colourChip(this.colourOf(part, source))}<span>${supplier}</span>
      <span class="small quiet">${[source.material, `${fixed(landedPiece, 2)}${this.plan.currency === '' ? '' : `\u00a0${this.plan.currency}`} landed`, source.leadWeeks === undefined ? undefined : counted(source.leadWeeks, 'week'), source.status].filter(Boolean).join(' · ')}</span></div>`;
  }

  private joints(title: string, own: ChosenSet, other: ChosenSet): TemplateResult {
    const only = own.clashing.filter((id) => !other.clashing.includes(id));
    const name = (id: string): string => jointNames(this.cabin).get(id) ?? id;
    return html`<div><h3>${title}</h3>${only.length === 0 ? html`<p class="small quiet">No joint.</p>` : html`<p class="joints small">${only.map((id) => html`<a ${standsFor({ joint: id }, !this.locked)} href=${this.linkTo(id)}>${name(id)}</a>`)}</p>`}</div>`;
  }
}

const money = (value: number): string => (Math.abs(value) < 0.5 ? '–' : `${value > 0 ? '+' : ''}${moneyText(value, '')}`);

customElements.define('adjoin-set-comparison', AdjoinSetComparison);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-set-comparison': AdjoinSetComparison;
  }
}
