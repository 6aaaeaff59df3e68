import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { cabinMap } from '../../../src/report/figures/cabin-map.ts';
import type { CabinMapInput } from '../../../src/report/figures/cabin-map.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { tableInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { base } from '../../styles/shared.ts';

/** The map of a cabin as a plan sees it, to look at: what it shows stands in the tables beside it. */
export class AdjoinPlanMap extends LitElement {
  static override styles = [base, css`
    :host { display: block; min-width: 0; }
    figure { display: grid; grid-template-rows: auto minmax(0, 1fr); height: 340px; background: var(--table); color: var(--table-ink); }
    figcaption { padding: 8px 14px 0; font-weight: 600; } figcaption span { font-weight: 400; }
    .map { position: relative; overflow: hidden; min-height: 0; } .map > svg { position: absolute; inset: 0; }
    .sample, .no-colour { forced-color-adjust: none; }
    @media (max-width: 760px) { figure { height: 260px; } }
  `];
  static override properties = { input: { attribute: false }, caption: {}, about: {} };

  declare input: CabinMapInput;
  declare caption: string;
  declare about: string;
  private readonly size = new ElementSize(this, '.map');

  override render(): TemplateResult {
    const { width, height } = this.size;
    const drawn = this.input.parts.length > 0 && width > 0 ? cabinMap(this.input, { width, height }, tableInk) : undefined;
    return html`<figure><figcaption>${this.caption}${this.about ? html` <span>${this.about}</span>` : nothing}</figcaption><div class="map">${drawn === undefined ? nothing : scene(drawn)}</div></figure>`;
  }
}

customElements.define('adjoin-plan-map', AdjoinPlanMap);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-plan-map': AdjoinPlanMap;
  }
}
