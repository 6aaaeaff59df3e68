import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Joint } from '../../../src/cabin/cabin.ts';
import type { Light } from '../../../src/colour/index.ts';
import type { PartAppearance } from '../../../src/harmony/judgement.ts';
import { jointStrip } from '../../../src/report/figures/joint-strip.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { drawing } from '../../../src/report/scene.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { roveFocus } from '../../controllers/roving-focus.ts';
import { tableInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { labText } from '../../model/lab-text.ts';
import { colourOfLab, exaggerated, partColour, whiteOf } from '../../model/part-colours.ts';
import type { Gamut, PartColour } from '../../model/part-colours.ts';
import { screenStep } from '../../model/screen-step.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './joint-stage.styles.ts';

export interface StageSide {
  readonly name: string;
  readonly about: string;
  readonly appearance: PartAppearance | undefined;
}

const factors = [1, 3, 10] as const;

/** The joint at large under the light of the workbench, its difference as it is or exaggerated, its gap as built or closed. */
export class AdjoinJointStage extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = {
    joint: { attribute: false }, sides: { attribute: false }, light: { attribute: false }, observer: { type: Number }, gamut: {},
    factor: { state: true }, closed: { state: true },
  };

  declare joint: Joint;
  /** Standard above, trial below. */
  declare sides: readonly [StageSide, StageSide];
  declare light: Light;
  declare observer: 2 | 10;
  declare gamut: Gamut;
  declare factor: number;
  declare closed: boolean;
  private readonly size = new ElementSize(this, '.figure');

  constructor() {
    super();
    this.factor = 1;
    this.closed = false;
    this.gamut = 'srgb';
  }

  private shown(true_: readonly [PartColour, PartColour]): readonly [PartColour, PartColour] {
    const [first, second] = true_;
    if (this.factor === 1 || first.css === undefined || second.css === undefined) return true_;
    const white = whiteOf(this.light, this.observer);
    const [standard, trial] = exaggerated(first.lab, second.lab, this.factor);
    return [colourOfLab(standard, white, this.gamut), colourOfLab(trial, white, this.gamut)];
  }

  override render(): TemplateResult {
    const colourOf = (side: StageSide): PartColour => partColour(side.appearance, this.light, this.observer, this.gamut);
    const colours = [colourOf(this.sides[0]), colourOf(this.sides[1])] as const;
    const amounts = factors.map((factor) => [factor, factor === 1 ? 'as it is' : `×${factor}`] as const);
    const shown = this.shown(colours);
    const width = this.size.width || 800;
    const height = this.size.height || 280;
    const { joint } = this;
    const strip = jointStrip(
      { fills: [shown[0].css, shown[1].css], kind: joint.kind, gapMm: joint.gapMm, stepMm: joint.stepMm, viewMm: joint.viewMm },
      { width, height, closed: this.closed },
      tableInk,
    );
    const label = `${this.sides[0].name} above, ${this.sides[1].name} below, under ${this.light.name}`;
    return html`
      <div class="stage">
        <div class="names">${this.side(0, colours[0])}${this.side(1, colours[1])}</div>
        <div class="figure">${scene(drawing(width, height, label, strip))}</div>
        <div class="under">
          ${this.choice('Difference', amounts, this.factor, (value) => { this.factor = Number(value); })}
          ${joint.kind === 'gap' || joint.kind === 'sightline'
            ? this.choice('Gap', [[false, 'as built'], [true, 'closed']], this.closed, (value) => { this.closed = value === true; })
            : nothing}
          <span class="set">${this.measures()}</span>
        </div>
        <p class="notes">${this.notes(colours, shown)}</p>
      </div>
    `;
  }

  private side(index: 0 | 1, colour: PartColour): TemplateResult {
    const side = this.sides[index];
    return html`
      <p class="side">
        <b>${side.name}</b>${side.about}<br />
        ${colour.css === undefined ? colour.why : labText(colour.lab, 2)}<br />
        <span class="role">${index === 0 ? 'standard' : 'trial'}</span>
      </p>`;
  }

  private choice(
    name: string, options: readonly (readonly [number | boolean, string])[], now: number | boolean, take: (value: number | boolean) => void,
  ): TemplateResult {
    const keys = (event: KeyboardEvent): void => {
      const buttons = [...(event.currentTarget as HTMLElement).querySelectorAll<HTMLElement>('button')];
      if (roveFocus(event, buttons, 'both')) (this.shadowRoot?.activeElement as HTMLElement | null)?.click();
    };
    return html`
      <span class="set">
        <span id=${name}>${name}</span>
        <div role="radiogroup" aria-labelledby=${name} @keydown=${keys}>
          ${options.map(([value, label]) => html`
            <button
              type="button" role="radio" aria-checked=${value === now} tabindex=${value === now ? 0 : -1} @click=${() => take(value)}
            >${label}</button>`)}
        </div>
      </span>`;
  }

  private measures(): string {
    const { kind, gapMm, stepMm, lengthMm, viewMm } = this.joint;
    return [
      gapMm === undefined || gapMm === 0 ? kind : kind === 'gap' ? `gap of ${fixed(gapMm, 1)} mm` : `${kind}, gap ${fixed(gapMm, 1)} mm`,
      stepMm === undefined ? undefined : `step ${fixed(stepMm, 1)} mm`,
      lengthMm === undefined ? undefined : `${fixed(lengthMm, 0)} mm long`,
      viewMm === undefined ? undefined : `seen from ${fixed(viewMm, 0)} mm`,
    ].filter((text) => text !== undefined).join(', ');
  }

  private notes(colours: readonly [PartColour, PartColour], shown: readonly [PartColour, PartColour]): string {
    const notes: string[] = [];
    const [first, second] = colours;
    if (first.css !== undefined && second.css !== undefined) {
      const lightness = (first.lab[0] + second.lab[0]) / 2;
      notes.push(this.factor === 1
        ? `An 8-bit screen steps by about ${fixed(screenStep(lightness), 2)} in L* here (L* ${fixed(lightness, 0)}); `
          + 'what is smaller cannot be seen as it is.'
        : `The difference is multiplied by ${this.factor} about the mean of the pair in CIELAB. Neither side has its own colour now.`);
    }
    const outside = shown.filter((colour) => colour.css !== undefined && !colour.inGamut);
    if (outside.length > 0) {
      const error = Math.max(...outside.map((colour) => (colour.css === undefined ? 0 : colour.error)));
      const gamut = this.gamut === 'srgb' ? 'sRGB' : 'Display P3';
      notes.push(`Outside what this screen can show (${gamut}); the nearest colour is drawn, CIEDE2000 ${fixed(error, 1)} from the true one.`);
    }
    notes.push('The page cannot see the calibration of the screen: judge by the numbers.');
    return notes.join(' ');
  }
}

customElements.define('adjoin-joint-stage', AdjoinJointStage);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-joint-stage': AdjoinJointStage;
  }
}
