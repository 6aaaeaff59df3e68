import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { mapLayers, placeOfMap } from '../../../src/report/figures/cabin-map.ts';
import type { CabinMapInput } from '../../../src/report/figures/cabin-map.ts';
import { MapMemory } from '../../../src/report/figures/map-memory.ts';
import { drawing } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { DrawnLayers } from '../../figures/drawn-layers.ts';
import { tableInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { base } from '../../styles/shared.ts';

/** Faces that are drawn in one frame; a plan has two maps, which share it. */
const mostInFrame = 256;

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

  private readonly memory = new MapMemory();
  private readonly drawn = new DrawnLayers();
  private frame = 0;

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    cancelAnimationFrame(this.frame);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.requestUpdate();
  }

  /** The map as far as it is drawn by now; what is left comes in the next frames. */
  private map(): SceneElement | undefined {
    const { input, memory, size: { width, height } } = this;
    if (input.parts.length === 0 || width === 0) return undefined;
    // Joints of one verdict lie in few paths there.
    const size = { width, height, memory, interactive: true };
    const place = placeOfMap(input, size);
    if (place === undefined) return undefined;
    const { layers, finished } = this.drawn.draw(mapLayers(input, size, tableInk), place, mostInFrame);
    cancelAnimationFrame(this.frame);
    if (!finished) this.frame = requestAnimationFrame(() => this.requestUpdate());
    return drawing(width, height, input.title, ...layers.map(({ made }) => made));
  }

  override render(): TemplateResult {
    const drawn = this.map();
    return html`<figure><figcaption>${this.caption}${this.about ? html` <span>${this.about}</span>` : nothing}</figcaption><div class="map">${drawn === undefined ? nothing : scene(drawn)}</div></figure>`;
  }
}

customElements.define('adjoin-plan-map', AdjoinPlanMap);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-plan-map': AdjoinPlanMap;
  }
}
