import { css, html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { DirectiveResult } from 'lit/directive.js';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { partNames } from '../../../src/harmony/names.ts';
import type { FreeMix, SourceHarm } from '../../../src/plan/index.ts';
import { counted, fixed } from '../../../src/report/number-text.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { unfolds } from '../../controllers/sections.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { planStyles } from '../plan/plan.styles.ts';

const shareText = (share: number): string =>
  (share > 0 && share < 0.001 ? '<\u00a00.1\u00a0%' : share < 1 && share > 0.999 ? '>\u00a099.9\u00a0%' : `${fixed(100 * share, 1)}\u00a0%`);
/** Sources of the harm that are listed at first. */
const mostHarm = 10;

/** What comes of running all approved sources at once. */
export class AdjoinFreeMix extends InTurnElement {
  static override styles = [base, controls, planStyles, stacked, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 24px; background: none; min-height: 0; }
    .big { display: flex; flex-wrap: wrap; gap: 8px 40px; }
    .big dt { font-size: var(--small); color: var(--quiet); } .big dd { font-size: var(--huge); font-weight: 600; letter-spacing: -0.01em; line-height: 1.1; }
    .big dd span { font-size: var(--small); font-weight: 400; color: var(--quiet); letter-spacing: 0; }
    .two { display: grid; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); gap: 32px; }
    .two li { padding: 3px 0; border-bottom: 1px solid var(--faint); }
    .big + .big { margin-top: 8px; } h3 + .big { margin-top: 4px; } .below { margin-top: 12px; } .joints > span { padding: 3px 0; }
    td svg { width: 120px; height: 12px; }
    @media (max-width: 900px) { .two { grid-template-columns: minmax(0, 1fr); } td svg { width: 60px; } }
  `];
  static override properties = { cabins: { attribute: false }, mix: { attribute: false }, linkTo: { attribute: false }, toPart: { attribute: false }, locked: { type: Boolean } };

  /** The open cabin first, then the colourways that are mixed with it. */
  declare cabins: readonly Cabin[];
  declare mix: FreeMix;
  declare linkTo: (joint: string) => string;
  declare toPart: (part: string) => string;
  /** Looked at and not changed. */
  declare locked: boolean;

  /** A source of another colourway cannot be changed here. */
  private stands({ id }: Cabin, { part, source, cabins }: SourceHarm | FreeMix['largest']['dropped'][number]): DirectiveResult {
    const here = cabins.includes(id);
    return standsFor(here ? { parts: [part], source } : {}, here && !this.locked, here);
  }

  private partLink({ id }: Cabin, { part, cabins }: Placed, name: string): TemplateResult {
    return cabins.includes(id) ? html`<a href=${this.toPart(part)}>${name}</a>` : html`${name}`;
  }

  override render(): TemplateResult {
    const { mix, cabins } = this;
    const [open] = cabins;
    if (open === undefined || mix.cabins.length === 0 || open.parts.length === 0) return html`<p>There are no parts: nothing is mixed.</p>`;
    const names = cabins.map((cabin) => partNames(cabin.parts));
    const several = cabins.length > 1;
    const place = (id: string): number => Math.max(0, cabins.findIndex((cabin) => cabin.id === id));
    const partName = ({ part, cabins: [id = ''] }: Placed): string => names[place(id)]?.get(part) ?? part;
    const supplier = ({ part, cabins: [id = ''] }: Placed, source: string): string => {
      const cabin = cabins[place(id)];
      const own = cabin?.parts.find((one) => one.id === part)?.sources.find((one) => one.id === source)?.supplier ?? source;
      return cabin?.suppliers.find((one) => one.id === own)?.name ?? own;
    };
    const where = ({ cabins: own }: Placed): string => (own.length === cabins.length ? 'all' : own.map((id) => colourway(cabins[place(id)] ?? open)).join(', '));
    const joint = (index: number, id: string): string => cabins[index]?.joints.find((one) => one.id === id)?.parts.map((part) => names[index]?.get(part) ?? part).join(' / ') ?? id;
    const harm = mix.harm.filter((one) => one.harm > 0).slice(0, mostHarm);
    const most = Math.max(...harm.map((one) => one.harm), 1e-9);
    const { dropped, unavoidable, proved } = mix.largest;
    return html`
      ${mix.cabins.map((result, index) => html`<div>${several ? html`<h3>${cabins[index]?.name}${cabins[index]?.colourway === undefined ? nothing : ` · ${cabins[index]?.colourway}`}</h3>` : nothing}<dl class="big">
        <div><dt>cabins with at least one clash</dt><dd>${shareText(result.share)}<span> ${result.draws === 0 ? 'exact, over all combinations' : `± ${shareText(result.error)}, of ${result.draws} drawn`}</span></dd></div>
        <div><dt>with one that clashes for certain</dt><dd>${shareText(result.certainShare)}</dd></div>
        <div><dt>clashes of a cabin, on average</dt><dd>${fixed(result.expectedClashes, 2)}</dd></div>
      </dl></div>`)}
      ${several ? html`<p>Over all ${cabins.length} colourways, by their volumes, <b>${shareText(mix.share)}</b> of the cabins have a clash. ${mix.carried.length === 0 ? 'No part is carried over between them with the same sources: each is mixed by itself.'
        : `${counted(mix.carried.length, 'part')} ${mix.carried.length === 1 ? 'is' : 'are'} carried over: what may be mixed there holds in every colourway that has it.`}</p>` : nothing}
      ${mix.issues.length === 0 ? nothing : html`<details ${unfolds('carried-over')}><summary>${counted(mix.issues.length, 'carry-over part')} differ${mix.issues.length === 1 ? 's' : ''} between the colourways and ${mix.issues.length === 1 ? 'is' : 'are'} mixed in each by itself</summary><ul class="small">${mix.issues.map((issue) => html`<li>${issue.path}: found ${issue.found}</li>`)}</ul></details>`}
      <div class="two">
        <div class="scroll"><table class="stacked"><caption>Sources that do most harm</caption>
          <thead><tr><th scope="col">part</th><th scope="col">source</th>${several ? html`<th scope="col">in</th>` : nothing}<th scope="col" class="n">volume</th><th scope="col" class="n">clash with it</th><th scope="col" class="n">without it</th><th scope="col" colspan="2">dropping it saves, % points</th></tr></thead>
          <tbody>${harm.length === 0 ? html`<tr><td colspan="8">No source does harm that dropping it would save.</td></tr>` : harm.map((one) => html`<tr ${this.stands(open, one)}>
            <th scope="row">${this.partLink(open, one, partName(one))}</th><td>${supplier(one, one.source)}</td>${several ? html`<td data-name="in">${where(one)}</td>` : nothing}<td class="n" data-name="volume">${shareText(one.share)}</td><td class="n" data-name="clash with it">${shareText(one.with)}</td><td class="n" data-name="without it">${shareText(one.without)}</td>
            <td class="n" data-name="saves, % points">${pointsText(one.harm)}</td><td><svg viewBox="0 0 120 12" preserveAspectRatio="none" aria-hidden="true">${svg`<rect x="0" y="2" width=${(120 * one.harm) / most} height="8" fill="currentColor" />`}</svg></td></tr>`)}</tbody></table></div>
        <div>
          <h3>The largest set that may be <adjoin-term word="free mix">mixed freely</adjoin-term></h3>
          ${dropped.length === 0 ? html`<p>All approved sources.</p>` : html`<p>All approved sources but ${dropped.length === 1 ? 'this one' : `these ${dropped.length}`}${proved ? '' : ' (that it is the largest is not proved)'}:</p>
            <ul>${dropped.map((one) => html`<li ${this.stands(open, one)}>${this.partLink(open, one, partName(one))}: ${supplier(one, one.source)}${several ? html` <span class="quiet small">in ${where(one)}</span>` : nothing}</li>`)}</ul>`}
          ${unavoidable.length === 0 ? nothing : html`<p class="small quiet below">${counted(unavoidable.length, 'joint')} ${unavoidable.length === 1 ? 'does' : 'do'} not hold for certain whatever runs:</p>
            <p class="joints small">${unavoidable.map(({ cabin, joint: id }) => (place(cabin) === 0 ? html`<a ${standsFor({ joint: id }, !this.locked)} href=${this.linkTo(id)}>${joint(0, id)}</a>` : html`<span>${joint(place(cabin), id)} (${colourway(cabins[place(cabin)] ?? open)})</span>`))}</p>`}
        </div>
      </div>
      <p class="small quiet">Sources of different parts are drawn independently by their share of the volume, parts of a module together. Open joints clash by their probability.</p>
    `;
  }
}

type Placed = Pick<SourceHarm, 'part' | 'cabins'>;

const colourway = (cabin: Cabin): string => cabin.colourway ?? cabin.name;

/** A change of a share, in points of per cent. */
const pointsText = (change: number): string => (change < 0.001 ? '<\u00a00.1' : fixed(100 * change, 1));

customElements.define('adjoin-free-mix', AdjoinFreeMix);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-free-mix': AdjoinFreeMix;
  }
}
