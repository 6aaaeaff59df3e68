import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { SceneElement } from '../../../src/report/scene.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { scene } from '../../figures/scene.ts';
import { base } from '../../styles/shared.ts';

/** A drawing made for the width there is. What it shows stands in a table beside it. */
export class AdjoinDrawn extends LitElement {
  static override styles = [base, css`
    :host { display: block; min-width: 0; }
    .box { min-height: 24px; overflow: hidden; }
    .sample { forced-color-adjust: none; }
  `];
  static override properties = { draw: { attribute: false } };

  declare draw: (width: number) => SceneElement;
  private readonly size = new ElementSize(this);

  override render(): TemplateResult {
    return html`<div class="box">${this.size.width > 0 ? scene(this.draw(this.size.width)) : nothing}</div>`;
  }
}

customElements.define('adjoin-drawn', AdjoinDrawn);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-drawn': AdjoinDrawn;
  }
}
