import { html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import { base, controls } from '../../styles/shared.ts';
import { lampDirection } from './lamp-drag.ts';
import { lampRange, usualLamp } from './lamp.ts';
import type { LampSetting } from './lamp.ts';
import { styles } from './lamp.styles.ts';

const settled = 250;

/**
 * The lamp and the tilt of the sample by three sliders, the keyboard's way to what the pointer does on the picture.
 * @fires adjoin-lamp - the new setting, and whether more is coming
 */
export class AdjoinLamp extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { setting: { attribute: false } };

  declare setting: LampSetting;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.setting = usualLamp;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.timer);
  }

  private tell(setting: LampSetting, moving: boolean): void {
    clearTimeout(this.timer);
    this.setting = setting;
    if (moving) this.timer = setTimeout(() => this.tell(this.setting, false), settled);
    this.dispatchEvent(new CustomEvent('adjoin-lamp', { detail: { setting, moving }, bubbles: true, composed: true }));
  }

  override render(): TemplateResult {
    const { fromDeg, elevationDeg, tiltDeg } = this.setting;
    const tilt = tiltDeg === 0 ? 'flat' : `${Math.abs(Math.round(tiltDeg))}° ${tiltDeg > 0 ? 'up' : 'down'}`;
    const usual = (Object.keys(usualLamp) as (keyof LampSetting)[]).every((key) => usualLamp[key] === this.setting[key]);
    return html`
      ${this.slider('fromDeg', 'Lamp', fromDeg, lampDirection(fromDeg), 5)}
      ${this.slider('elevationDeg', 'Height', elevationDeg, `${Math.round(elevationDeg)}° up`, 1)}
      ${this.slider('tiltDeg', 'Tilt', tiltDeg, tilt, 1)}
      <button type="button" aria-disabled=${usual} @click=${() => this.tell(usualLamp, false)}>Lamp as for 45:0</button>
    `;
  }

  private slider(key: keyof LampSetting, name: string, value: number, words: string, step: number): TemplateResult {
    const [low, high] = lampRange[key];
    const moved = (event: Event): void => this.tell({ ...this.setting, [key]: Number((event.target as HTMLInputElement).value) }, true);
    return html`
      <label>
        <span>${name}</span>
        <input type="range" min=${low} max=${high} step=${step} .value=${String(Math.round(value))} aria-valuetext=${words} @input=${moved} />
        <span class="words" aria-hidden="true">${words}</span>
      </label>`;
  }
}

customElements.define('adjoin-lamp', AdjoinLamp);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-lamp': AdjoinLamp;
  }
}
