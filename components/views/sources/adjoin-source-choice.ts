import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Part, Source } from '../../../src/cabin/cabin.ts';
import { sourceOf } from '../../../src/cabin/source-of.ts';
import { partNames } from '../../../src/harmony/names.ts';
import type { ChoicePlan, CostTerms, Picks, Swap } from '../../../src/plan/index.ts';
import { costLines } from '../../../src/plan/model/cost-lines.ts';
import { piecePriceAt } from '../../../src/plan/model/source-cost.ts';
import { counted, fixed } from '../../../src/report/number-text.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { unfolds } from '../../controllers/sections.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { bareRows } from '../../controllers/windowed-rows.ts';
import { moneyText } from '../../model/money-text.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { remembered } from '../../model/remembered.ts';
import '../../app/adjoin-long-list.ts';
import { base, controls } from '../../styles/shared.ts';
import { colourChip } from '../plan/colour-chip.ts';
import { planStyles } from '../plan/plan.styles.ts';

/**
 * The parts with the sources that may serve them: which is picked, what each other one would do alone, and why it was not picked.
 * @fires adjoin-lock - part and source that are to be kept together, or let go
 */
export class AdjoinSourceChoice extends InTurnElement {
  static override styles = [base, controls, planStyles, bareRows, css`
    :host { display: block; background: none; min-height: 0; }
    .part { display: grid; grid-template-columns: minmax(160px, 220px) minmax(0, 1fr); gap: 4px 20px; padding: 10px 0; border-bottom: 1px solid var(--faint); }
    .part > h3 { padding-top: 8px; font-weight: 600; }
    .part > h3 span { display: block; font-weight: 400; font-size: var(--small); color: var(--quiet); }
    .sources { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(260px, 100%), 1fr)); gap: 8px; }
    .source { border: 1px solid var(--faint); border-radius: var(--radius); padding: 8px 10px; display: grid; grid-template-columns: 40px minmax(0, 1fr) auto; gap: 2px 10px; align-content: start; }
    .source.picked { border: 2px solid var(--ink); padding: 7px 9px; background: var(--raised); }
    .source .chip { width: 40px; height: 40px; grid-row: 1 / 3; }
    .source .name { font-weight: 600; line-height: 1.2; } .source .about { font-size: var(--small); color: var(--quiet); grid-column: 2; }
    .source .does { grid-column: 1 / 4; font-size: var(--small); padding-top: 4px; }
    .source .does dt { color: var(--quiet); float: left; margin-right: 6px; }
    .source .does dd { text-wrap: pretty; }
    .tag { font-size: var(--tiny); font-weight: 600; border: 1px solid var(--ink); border-radius: 2px; padding: 0 5px; white-space: nowrap; align-self: start; line-height: 1.5; }
    .tag.now { border-style: dashed; }
    .tags { display: flex; gap: 4px; }
    .source button { font-size: var(--small); min-height: 24px; padding: 0 8px; grid-column: 3; grid-row: 2; align-self: start; justify-self: end; }
    @media (max-width: 760px) { .part { grid-template-columns: minmax(0, 1fr); } }
  `];
  static override properties = {
    cabin: { attribute: false }, plan: { attribute: false }, picks: { attribute: false }, swaps: { attribute: false }, locks: { attribute: false }, terms: { attribute: false }, colourOf: { attribute: false }, locked: { type: Boolean },
  };

  declare cabin: Cabin;
  declare plan: ChoicePlan;
  declare picks: Picks;
  /** What single swaps do to the picks; undefined while that is reckoned. */
  declare swaps: readonly Swap[] | undefined;
  declare locks: Readonly<Record<string, string>>;
  declare terms: CostTerms;
  declare colourOf: (part: Part, source: Source) => PartColour;
  /** Looked at and not changed. */
  declare locked: boolean;

  override render(): TemplateResult {
    const { cabin } = this;
    const open = cabin.parts.filter((part) => part.sources.length > 1);
    const changed = open.filter((part) => sourceOf(part).id !== this.picks[part.id]);
    const changes = new Set(changed);
    const same = open.filter((part) => !changes.has(part));
    const single = cabin.parts.length - open.length;
    const rows = (parts: readonly Part[]): TemplateResult => html`<adjoin-long-list .usual=${130} .ids=${parts.map(({ id }) => id)} .row=${(place: number) => this.row(parts[place]!, place)}></adjoin-long-list>`;
    return html`
      ${changed.length === 0 ? html`<p>No part changes its source in this set.</p>` : rows(changed)}
      ${same.length === 0 ? nothing : html`<details ${unfolds('same-source', changed.length === 0)}><summary>${counted(same.length, 'part')} with a choice that ${same.length === 1 ? 'stays' : 'stay'} on ${same.length === 1 ? 'its' : 'their'} source</summary>${rows(same)}</details>`}
      ${single === 0 ? nothing : html`<p class="small quiet">${single === 1 ? 'One more part has' : `${single} more parts have`} one source only.</p>`}
    `;
  }

  private row(part: Part, place: number): TemplateResult {
    const name = partNames(this.cabin.parts).get(part.id) ?? part.id;
    const zone = this.cabin.zones.find(({ id }) => id === part.zone)?.name ?? part.zone;
    const tied = [part.frozen === true ? 'carry-over' : undefined, part.module === undefined ? undefined : `module ${part.module}`].filter(Boolean).join(', ');
    return html`<section class="part" data-place=${place} aria-label=${name}><h3>${name}<span>${zone}${tied === '' ? nothing : ` · ${tied}`}</span></h3>
      <div class="sources">${part.sources.map((source) => this.source(part, source, name))}</div></section>`;
  }

  private source(part: Part, source: Source, name: string): TemplateResult {
    const picked = this.picks[part.id] === source.id;
    const present = sourceOf(part).id === source.id;
    const colour = this.colourOf(part, source);
    const supplier = this.cabin.suppliers.find(({ id }) => id === source.supplier)?.name ?? source.supplier;
    const kept = this.locks[part.id] === source.id;
    const stated = piecePriceAt(source, this.plan.volume);
    const landed = costLines(this.cabin, source, this.plan.volume, this.terms).landedPiece;
    const inMoney = (value: number, currency: string | undefined): string => `${fixed(value, 2)}${currency === undefined || currency === '' ? '' : `\u00a0${currency}`}`;
    const price = stated === undefined ? 'no price' : `${inMoney(stated, source.currency)}${Math.abs(landed - stated) < 0.005 ? '' : `, landed ${inMoney(landed, this.plan.currency)}`}`;
    const lead = source.leadWeeks === undefined ? undefined : `${counted(source.leadWeeks, 'week')}`;
    return html`<div class=${picked ? 'source picked' : 'source'} ${standsFor({ parts: [part.id], source: source.id }, !this.locked)}>
      ${colourChip(colour)}
      <span class="name">${supplier}</span>
      <span class="tags">${picked ? html`<span class="tag">picked</span>` : nothing}${present ? html`<span class="tag now">now</span>` : nothing}</span>
      <span class="about">${[source.material, price, lead, source.status].filter(Boolean).join(' · ')}</span>
      <button type="button" aria-pressed=${kept} aria-label=${`Keep ${name} on ${supplier}`} @click=${() => this.dispatchEvent(new CustomEvent('adjoin-lock', { detail: { part: part.id, source: source.id }, bubbles: true, composed: true }))}>Keep</button>
      ${picked ? nothing : this.effect(part, source)}
    </div>`;
  }

  private effect(part: Part, source: Source): TemplateResult {
    const swap = this.swaps === undefined ? undefined : swapsByPick(this.swaps).get(pickOf(part.id, source.id));
    const best = this.plan.sets[0]?.picks;
    const reason = best?.[part.id] === source.id ? undefined : reasons(this.plan.notPicked).get(pickOf(part.id, source.id));
    const after = (sentence: string): string => {
      const said = sentence.slice(sentence.indexOf(':') + 1).trim();
      return said === '' ? sentence : said[0]!.toUpperCase() + said.slice(1);
    };
    const alone = swap === undefined ? undefined : swapWords(swap, this.plan.currency);
    // Where the best set that has it is the same swap, one sentence says both.
    const again = swap !== undefined && reason?.bestWithIt !== undefined && best !== undefined && samePicks(this.picks, best) && sameChange(swap.change, reason.bestWithIt);
    return html`<dl class="does">
      ${this.swaps === undefined ? html`<dt>Instead:</dt><dd class="quiet">reckoning</dd>` : alone === undefined ? nothing : html`<dt>Instead:</dt><dd>${alone}</dd>`}
      ${reason === undefined || again ? nothing : html`<dt>Why not:</dt><dd>${after(reason.sentence)}</dd>`}
      ${best?.[part.id] === source.id ? html`<dt>Why not:</dt><dd>It is in the most harmonious set, not in this one.</dd>` : nothing}
    </dl>`;
  }
}

const pickOf = (part: string, source: string): string => `${part} ${source}`;
const swapsByPick = remembered((swaps: readonly Swap[]): ReadonlyMap<string, Swap> => {
  const found = new Map<string, Swap>();
  // Of several the first counts.
  for (const swap of swaps.toReversed()) for (const part of swap.parts) if (swap.to[part] !== undefined) found.set(pickOf(part, swap.to[part]), swap);
  return found;
});
const reasons = remembered((notPicked: ChoicePlan['notPicked']) => new Map(notPicked.toReversed().map((one) => [pickOf(one.part, one.source), one])));

const samePicks = (a: Picks, b: Picks): boolean => Object.keys({ ...a, ...b }).every((part) => a[part] === b[part]);

const sameChange = (a: Swap['change'], b: Swap['change']): boolean =>
  Math.abs(a.clashes - b.clashes) < 0.005 && Math.abs(a.overUse - b.overUse) < 0.005 && Math.abs(a.cost - b.cost) < 0.5 && a.leadWeeks === b.leadWeeks;

function swapWords({ change, nowClashing, parts }: Swap, currency: string): string {
  const said: string[] = [];
  if (Math.abs(change.clashes) >= 0.005) said.push(`${fixed(Math.abs(change.clashes), 2)} ${change.clashes > 0 ? 'more' : 'fewer'} clashes`);
  if (Math.abs(change.overUse) >= 0.005) said.push(`${fixed(Math.abs(change.overUse), 2)} ${change.overUse > 0 ? 'more' : 'less'} over-use`);
  if (Math.abs(change.cost) >= 0.5) said.push(`${moneyText(Math.abs(change.cost), currency)} ${change.cost > 0 ? 'more' : 'less'}`);
  if (change.leadWeeks !== 0) said.push(`${counted(Math.abs(change.leadWeeks), 'week')} ${change.leadWeeks > 0 ? 'longer' : 'sooner'}`);
  const what = said.length === 0 ? 'no difference' : said.join(', ');
  const clash = nowClashing.length === 0 ? '' : `; ${counted(nowClashing.length, 'joint')} then ${nowClashing.length === 1 ? 'clashes' : 'clash'}`;
  return `${what}${clash}${parts.length > 1 ? `, with its ${counted(parts.length - 1, 'other part')}` : ''}.`;
}

customElements.define('adjoin-source-choice', AdjoinSourceChoice);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-source-choice': AdjoinSourceChoice;
  }
}
