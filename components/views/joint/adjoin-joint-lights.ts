import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Joint } from '../../../src/cabin/cabin.ts';
import type { CheckResult, LightResult } from '../../../src/harmony/judgement.ts';
import { jointStrip } from '../../../src/report/figures/joint-strip.ts';
import { limitScale } from '../../../src/report/figures/limit-scale.ts';
import { fixed, limitUseText, probability, signed } from '../../../src/report/number-text.ts';
import { drawing } from '../../../src/report/scene.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { uncertaintyUse } from '../../model/leading-check.ts';
import { findLight } from '../../model/light-groups.ts';
import { colourOfLab, whiteOf } from '../../model/part-colours.ts';
import type { Gamut } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './joint-lights.styles.ts';

const columns = ['Light', 'value', 'limit', 'use', 'u', 'p', 'dL*', 'da*', 'db*', 'dC*', 'dH*', 'the trial is'] as const;

const multiple = { width: 168, strip: 56, scale: 16 } as const;

/**
 * The colour check light by light: a small strip and scale for each, then the numbers.
 * @fires adjoin-light - the light the user chose to see everything under
 */
export class AdjoinJointLights extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = { cabin: { attribute: false }, joint: { attribute: false }, check: { attribute: false }, light: {}, gamut: {} };

  declare cabin: Cabin;
  declare joint: Joint;
  declare check: CheckResult | undefined;
  declare light: string;
  declare gamut: Gamut;

  constructor() {
    super();
    this.light = 'D65';
    this.gamut = 'srgb';
  }

  override render(): TemplateResult {
    const lights = this.check?.lights ?? [];
    if (lights.length === 0) return html`<p class="none">No light gives both sides a colour that may be compared.</p>`;
    return html`
      <div class="multiples">${lights.map((result) => this.multiple(result))}</div>
      <p class="about" id="about">
        Differences of <adjoin-term word="standard and trial">trial minus standard</adjoin-term> in ${this.check?.formula ?? 'the units of the rule'}, with the
        <adjoin-term word="standard uncertainty, u">standard uncertainty u</adjoin-term> and the <adjoin-term word="probability that it holds, p">probability p</adjoin-term> of being within the limit.
      </p>
      <div class="rows" tabindex="0" role="group" aria-label="Colour by light">
        <table aria-labelledby="about">
          <thead>
            <tr>
              ${columns.map((column) => html`<th scope="col">${column}</th>`)}
            </tr>
          </thead>
          <tbody>${lights.map((result) => this.row(result))}</tbody>
        </table>
      </div>
    `;
  }

  private multiple(result: LightResult): TemplateResult {
    const light = findLight(result.light, this.cabin.lights);
    const white = light === undefined ? undefined : whiteOf(light, result.observer);
    const fill = (lab: LightResult['standard']): string | undefined => (white === undefined ? undefined : colourOfLab(lab, white, this.gamut).css);
    const { joint } = this;
    const strip = jointStrip(
      { fills: [fill(result.standard), fill(result.trial)], kind: joint.kind, gapMm: joint.gapMm, stepMm: joint.stepMm, viewMm: joint.viewMm },
      { width: multiple.width, height: multiple.strip },
      paperInk,
    );
    const scale = limitScale(
      {
        verdict: result.limitUse > 1 ? 'clashes' : 'holds', limitUse: result.limitUse, uncertaintyUse: uncertaintyUse(result),
        indicative: result.standing === 'shown',
      },
      { width: multiple.width, height: multiple.scale },
      paperInk,
    );
    return html`
      <button
        type="button" aria-pressed=${result.light === this.light} title=${`See everything under ${result.light}`}
        @click=${() => this.dispatchEvent(new CustomEvent('adjoin-light', { detail: result.light, bubbles: true, composed: true }))}
      >
        <span class="swatch">${scene(drawing(multiple.width, multiple.strip, undefined, strip))}</span>
        ${scene(drawing(multiple.width, multiple.scale, undefined, scale))}
        <span class="title">
          <b>${result.light}</b>
          <span>${limitUseText(result.limitUse)}<span class="unseen"> of the limit</span>${result.standing === 'shown' ? ', shown' : nothing}</span>
        </span>
      </button>
    `;
  }

  private row(result: LightResult): TemplateResult {
    const { dL, da, db, dC, dH } = result.difference;
    return html`
      <tr class="${result.standing} ${result.light === this.light ? 'now' : ''}">
        <th scope="row">${result.light}${result.standing === 'shown' ? html` <span class="none">shown</span>` : nothing}</th>
        <td>${fixed(result.value, 2)}</td><td>${fixed(result.limit, 2)}</td>
        <td class=${result.limitUse > 1 && result.standing === 'required' ? 'over' : ''}>${limitUseText(result.limitUse)}</td>
        <td>${fixed(result.uncertainty, 2)}</td><td>${probability(result.withinProbability)}</td>
        <td>${signed(dL, 2)}</td><td>${signed(da, 2)}</td><td>${signed(db, 2)}</td><td>${signed(dC, 2)}</td><td>${signed(dH, 2)}</td>
        <td class="words">${result.words.join(', ')}</td>
      </tr>
    `;
  }
}

customElements.define('adjoin-joint-lights', AdjoinJointLights);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-joint-lights': AdjoinJointLights;
  }
}
