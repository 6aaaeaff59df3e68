import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { announce } from '../controllers/announcer.ts';
import { roveFocus } from '../controllers/roving-focus.ts';
import { lightCurve } from '../figures/light-curve.ts';
import { scene } from '../figures/scene.ts';
import type { LightGroup, OfferedLight } from '../model/light-groups.ts';
import { base, controls } from '../styles/shared.ts';
import { styles } from './light-picker.styles.ts';

const sweepMs = 1800;

/**
 * The one light of the whole workbench: shows it, offers the list, steps and sweeps through the rules' lights.
 * @fires adjoin-light - the name of the light the user chose
 */
export class AdjoinLightPicker extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = {
    groups: { attribute: false }, light: {}, sweep: { attribute: false }, sweeping: { state: true }, shown: { state: true },
  };

  declare groups: readonly LightGroup[];
  declare light: string;
  /** Names of the lights that are stepped through. */
  declare sweep: readonly string[];
  declare sweeping: boolean;
  declare shown: boolean;
  private timer: ReturnType<typeof setInterval> | undefined;

  constructor() {
    super();
    this.groups = [];
    this.light = 'D65';
    this.sweep = [];
    this.sweeping = false;
    this.shown = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.endSweep();
  }

  private get current(): OfferedLight | undefined {
    return this.groups.flatMap((group) => group.lights).find((offer) => offer.name === this.light);
  }

  private choose(name: string, told = true): void {
    this.dispatchEvent(new CustomEvent('adjoin-light', { detail: name, bubbles: true, composed: true }));
    if (told) announce(this, `Light ${name}`);
  }

  private step(by: number, told = true): void {
    const way = this.sweep.length > 0 ? this.sweep : this.groups.flatMap((group) => group.lights.map((offer) => offer.name));
    const here = way.indexOf(this.light);
    const next = way[(here < 0 ? (by > 0 ? 0 : way.length - 1) : here + by + way.length) % way.length];
    if (next !== undefined) this.choose(next, told);
  }

  private stepByHand(by: number): void {
    this.endSweep();
    this.step(by);
  }

  private endSweep(): void {
    clearInterval(this.timer);
    this.sweeping = false;
  }

  private toggleSweep(): void {
    if (this.sweeping) {
      this.endSweep();
      announce(this, `Sweep ended at ${this.light}`);
      return;
    }
    this.sweeping = true;
    announce(this, `Sweeping through ${this.sweep.join(', ')}`);
    this.step(1, false);
    this.timer = setInterval(() => this.step(1, false), sweepMs);
  }

  private get panel(): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>('.panel');
  }

  private toggled(event: ToggleEvent): void {
    this.shown = event.newState === 'open';
    if (this.shown) this.renderRoot.querySelector<HTMLElement>('.light[aria-checked="true"]')?.focus();
  }

  private pick(name: string): void {
    this.endSweep();
    this.choose(name);
    this.panel?.hidePopover();
    this.renderRoot.querySelector<HTMLElement>('.now')?.focus();
  }

  override render(): TemplateResult {
    const now = this.current;
    const mark = now?.standing === 'required' ? ', judged' : now?.standing === 'shown' ? ', shown only' : '';
    const arrow = (d: string): TemplateResult =>
      html`<svg viewBox="0 0 10 10" aria-hidden="true"><path d=${d} fill="none" stroke="currentColor" stroke-width="1.75" /></svg>`;
    return html`
      <button class="step" type="button" aria-label="Previous light" @click=${() => this.stepByHand(-1)}>${arrow('M7 1 3 5l4 4')}</button>
      <button
        class="now" type="button" aria-haspopup="dialog" aria-expanded=${this.shown}
        @click=${() => this.panel?.togglePopover()}
      >
        ${now ? scene(lightCurve(now.light, 56, 26)) : nothing}
        <span>
          <span class="name"><span class="unseen">Light </span>${this.light}</span>
          <span class="about">${now ? `${now.about}${mark}` : 'not on the list'}</span>
        </span>
      </button>
      <button class="step" type="button" aria-label="Next light" @click=${() => this.stepByHand(1)}>${arrow('M3 1l4 4-4 4')}</button>
      <button
        class="sweep" type="button" aria-pressed=${this.sweeping} ?hidden=${this.sweep.length < 2}
        title="Step through the lights of the rules" @click=${this.toggleSweep}
      >${this.sweeping ? 'Stop' : 'Sweep'}</button>
      <div class="panel" popover="auto" role="dialog" aria-label="Choose the light" @toggle=${this.toggled}>
        <p>Everything is shown under one light. Sample colours are computed from the measured spectra; verdicts do not depend on this choice.</p>
        <div class="groups">${this.groups.map((group) => this.group(group))}</div>
      </div>
    `;
  }

  private group(group: LightGroup): TemplateResult {
    const keys = (event: KeyboardEvent): void => {
      roveFocus(event, [...this.renderRoot.querySelectorAll<HTMLElement>('.light')], 'both');
    };
    return html`
      <section>
        <h3 id=${`group-${group.name}`}>${group.name}</h3>
        <div role="radiogroup" aria-labelledby=${`group-${group.name}`} @keydown=${keys}>
          ${group.lights.map((offer) => html`
            <button
              class="light" type="button" role="radio" aria-checked=${offer.name === this.light}
              tabindex=${offer.name === this.light || (!group.lights.some((one) => one.name === this.light) && offer === group.lights[0]) ? 0 : -1}
              @click=${() => this.pick(offer.name)}
            >
              ${scene(lightCurve(offer.light, 32, 20))}
              <span>
                <span class="name">${offer.name}${offer.standing
                  ? html`<span class="mark ${offer.standing}">${offer.standing === 'required' ? 'judged' : 'shown'}</span>`
                  : nothing}</span>
                <span class="about">${offer.about}</span>
              </span>
            </button>`)}
        </div>
      </section>
    `;
  }
}

customElements.define('adjoin-light-picker', AdjoinLightPicker);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-light-picker': AdjoinLightPicker;
  }
}
