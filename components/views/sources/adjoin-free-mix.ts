import { css, html, LitElement, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { partNames } from '../../../src/harmony/names.ts';
import type { FreeMix } from '../../../src/plan/index.ts';
import { counted, fixed } from '../../../src/report/number-text.ts';
import { base, controls } from '../../styles/shared.ts';
import { planStyles } from '../plan/plan.styles.ts';

const shareText = (share: number): string =>
  (share > 0 && share < 0.001 ? '<\u00a00.1\u00a0%' : share < 1 && share > 0.999 ? '>\u00a099.9\u00a0%' : `${fixed(100 * share, 1)}\u00a0%`);
/** Sources of the harm that are listed at first. */
const mostHarm = 10;

/** What comes of running all approved sources at once. */
export class AdjoinFreeMix extends LitElement {
  static override styles = [base, controls, planStyles, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 24px; background: none; min-height: 0; }
    .big { display: flex; flex-wrap: wrap; gap: 8px 40px; }
    .big dt { font-size: var(--small); color: var(--quiet); } .big dd { font-size: var(--huge); font-weight: 600; letter-spacing: -0.01em; line-height: 1.1; }
    .big dd span { font-size: var(--small); font-weight: 400; color: var(--quiet); letter-spacing: 0; }
    .two { display: grid; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); gap: 32px; }
    .two li { padding: 3px 0; border-bottom: 1px solid var(--faint); }
    td svg { width: 120px; height: 12px; }
    @media (max-width: 900px) { .two { grid-template-columns: minmax(0, 1fr); } td svg { width: 60px; } }
  `];
  static override properties = { cabin: { attribute: false }, mix: { attribute: false }, linkTo: { attribute: false } };

  declare cabin: Cabin;
  declare mix: FreeMix;
  declare linkTo: (joint: string) => string;

  override render(): TemplateResult {
    const { mix, cabin } = this;
    const names = partNames(cabin.parts);
    const [result] = mix.cabins;
    if (result === undefined || cabin.parts.length === 0) return html`<p>There are no parts: nothing is mixed.</p>`;
    const supplier = (part: string, source: string): string => {
      const id = cabin.parts.find((one) => one.id === part)?.sources.find((one) => one.id === source)?.supplier ?? source;
      return cabin.suppliers.find((one) => one.id === id)?.name ?? id;
    };
    const joint = (id: string): string => cabin.joints.find((one) => one.id === id)?.parts.map((part) => names.get(part) ?? part).join(' / ') ?? id;
    const harm = mix.harm.filter((one) => one.harm > 0).slice(0, mostHarm);
    const most = Math.max(...harm.map((one) => one.harm), 1e-9);
    const { dropped, unavoidable, proved } = mix.largest;
    return html`
      <dl class="big">
        <div><dt>cabins with at least one clash</dt><dd>${shareText(result.share)}<span> ${result.draws === 0 ? 'exact, over all combinations' : `± ${shareText(result.error)}, of ${result.draws} drawn`}</span></dd></div>
        <div><dt>with one that clashes for certain</dt><dd>${shareText(result.certainShare)}</dd></div>
        <div><dt>clashes of a cabin, on average</dt><dd>${fixed(result.expectedClashes, 2)}</dd></div>
      </dl>
      <div class="two">
        <div class="scroll"><table><caption>Sources that do most harm</caption>
          <thead><tr><th scope="col">part</th><th scope="col">source</th><th scope="col" class="n">volume</th><th scope="col" class="n">share without it</th><th scope="col">harm</th></tr></thead>
          <tbody>${harm.length === 0 ? html`<tr><td colspan="5">No source does harm that dropping it would save.</td></tr>` : harm.map((one) => html`<tr>
            <th scope="row">${names.get(one.part) ?? one.part}</th><td>${supplier(one.part, one.source)}</td><td class="n">${shareText(one.share)}</td><td class="n">${shareText(one.without)}</td>
            <td><svg viewBox="0 0 120 12" preserveAspectRatio="none" role="img" aria-label=${shareText(one.harm)}>${svg`<rect x="0" y="2" width=${(120 * one.harm) / most} height="8" fill="currentColor" />`}</svg></td></tr>`)}</tbody></table></div>
        <div>
          <h3>The largest set that may be mixed freely</h3>
          ${dropped.length === 0 ? html`<p>All approved sources.</p>` : html`<p>All approved sources but ${dropped.length === 1 ? 'this one' : `these ${dropped.length}`}${proved ? '' : ' (that it is the largest is not proved)'}:</p>
            <ul>${dropped.map(({ part, source }) => html`<li>${names.get(part) ?? part}: ${supplier(part, source)}</li>`)}</ul>`}
          ${unavoidable.length === 0 ? nothing : html`<p class="small quiet">${counted(unavoidable.length, 'joint')} ${unavoidable.length === 1 ? 'does' : 'do'} not hold for certain whatever runs:</p>
            <p class="joints small">${unavoidable.map((id) => html`<a href=${this.linkTo(id)}>${joint(id)}</a>`)}</p>`}
        </div>
      </div>
      <p class="small quiet">Sources of different parts are drawn independently by their share of the volume, parts of a module together. Open joints clash by their probability.</p>
    `;
  }
}

customElements.define('adjoin-free-mix', AdjoinFreeMix);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-free-mix': AdjoinFreeMix;
  }
}
