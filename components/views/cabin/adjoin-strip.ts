import { html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import type { Joint } from '../../../src/cabin/cabin.ts';
import type { JointResult } from '../../../src/harmony/judgement.ts';
import { limitScale } from '../../../src/report/figures/limit-scale.ts';
import { drawing } from '../../../src/report/scene.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import type { LastSize } from '../../controllers/element-size.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import '../../figures/surface/adjoin-surface-strip.ts';
import type { SurfaceSide } from '../../figures/surface/surface-side.ts';
import type { Gamut } from '../../model/part-colours.ts';
import { judgedSides, leadingCheck, uncertaintyUse, underLight, verdictWord } from '../../model/leading-check.ts';
import { limitUseText } from '../../../src/report/number-text.ts';
import { base } from '../../styles/shared.ts';
import { styles } from './strip.styles.ts';

const scaleHeight = 18;
/** A pair that is put together at every drawing is another one only where one of the two is. */
const pair = { attribute: false, hasChanged: (now?: readonly unknown[], before?: readonly unknown[]) => now?.[0] !== before?.[0] || now?.[1] !== before?.[1] } as const;

/** The figures of all strips are of one size. */
const figureSize: LastSize = { width: 0, height: 0 };

/**
 * One joint of the wall: the two materials across their gap, the use of the limit under them, the verdict and its sentence.
 * A link to the joint.
 */
export class AdjoinStrip extends LitElement {
  static override shadowRootOptions: ShadowRootInit = { ...LitElement.shadowRootOptions, delegatesFocus: true };
  static override styles = [base, styles];
  static override properties = {
    joint: { attribute: false }, result: { attribute: false }, names: pair, fills: pair, sides: pair,
    light: {}, gamut: {}, href: {}, lit: { type: Boolean, reflect: true }, current: { type: Boolean },
  };

  declare joint: Joint;
  declare result: JointResult;
  declare names: readonly [string, string];
  declare fills: readonly [string | undefined, string | undefined];
  /** What is drawn of either side beside its colour. */
  declare sides: readonly [SurfaceSide, SurfaceSide];
  declare light: string;
  declare gamut: Gamut;
  declare href: string;
  /** Pointed at here or on the map. */
  declare lit: boolean;
  /** The one strip of the wall that Tab stops at. */
  declare current: boolean;
  private readonly size = new ElementSize(this, '.figure', figureSize);

  constructor() {
    super();
    this.names = ['', ''];
    this.fills = [undefined, undefined];
    this.light = 'D65';
    this.gamut = 'srgb';
    this.href = '#/';
    this.lit = false;
    this.current = false;
  }

  override render(): TemplateResult {
    const { joint, result } = this;
    const check = leadingCheck(result);
    const width = this.size.width || 320;
    const scale = limitScale(
      {
        verdict: result.verdict,
        accepted: result.accepted,
        limitUse: result.limitUse ?? check?.limitUse,
        uncertaintyUse: uncertaintyUse(check),
        indicative: check?.indicative,
        marker: check?.check === 'colour' && check.light === this.light ? undefined : underLight(result, this.light)?.limitUse,
      },
      { width, height: scaleHeight },
      paperInk,
    );
    const use = result.limitUse ?? check?.limitUse;
    return html`
      <a href=${this.href} tabindex=${this.current ? 0 : -1}>
        <span class="names"><span title=${this.names[0]}>${this.names[0]}</span><span title=${this.names[1]}>${this.names[1]}</span></span>
        <span class="figure">
          <adjoin-surface-strip
            .joint=${joint} .sides=${this.sides} .fills=${this.fills}
            .ink=${paperInk} .gamut=${this.gamut}
          ></adjoin-surface-strip>
          ${scene(drawing(width, scaleHeight, undefined, scale))}
        </span>
        <span class="result">
          <span class="use">
            ${use === undefined ? '–' : html`${limitUseText(use).replace(/\s*%$/, '')}<small> %</small>`}<span class="unseen"> of the limit, </span>
          </span>
          <span class="word ${result.verdict}">${verdictWord(result)}</span>
        </span>
        <span class="each">${judgedSides(result).map(({ check, verdict, limitUse, indicative }) => html`
          <span class=${verdict === 'holds' ? '' : verdict}>${check} <b>${limitUse === undefined || indicative === true ? verdict : limitUseText(limitUse)}</b></span>`)}</span>
        <span class="sentence" title=${result.sentence}>${result.sentence}</span>
      </a>
    `;
  }
}

customElements.define('adjoin-strip', AdjoinStrip);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-strip': AdjoinStrip;
  }
}
