import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Joint } from '../../../src/cabin/cabin.ts';
import type { Light } from '../../../src/colour/index.ts';
import type { PartAppearance } from '../../../src/harmony/judgement.ts';
import { pixelsAtAngle } from '../../../src/report/figures/joint-strip.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { drawing } from '../../../src/report/scene.ts';
import type { HeightMap } from '../../../src/texture/index.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { roveFocus } from '../../controllers/roving-focus.ts';
import { tableInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import '../../figures/surface/adjoin-lamp.ts';
import '../../figures/surface/adjoin-surface-strip.ts';
import type { Painted } from '../../figures/surface/adjoin-surface-strip.ts';
import { draggedLamp } from '../../figures/surface/lamp-drag.ts';
import { lampAddress, lampOfAddress } from '../../figures/surface/lamp-address.ts';
import { usualLamp } from '../../figures/surface/lamp.ts';
import type { LampSetting } from '../../figures/surface/lamp.ts';
import { scaleBar } from '../../figures/surface/scale-bar.ts';
import { surfaceSide } from '../../figures/surface/surface-side.ts';
import { labText } from '../../model/lab-text.ts';
import { colourOfLab, exaggerated, partColour, whiteOf } from '../../model/part-colours.ts';
import type { Gamut, PartColour } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './joint-stage.styles.ts';
import { colourNotes, gapIsCut, surfaceNotes } from './stage-notes.ts';

export interface StageSide {
  readonly name: string;
  readonly about: string;
  readonly appearance: PartAppearance | undefined;
  readonly part?: string;
  readonly material?: string;
  /** Measured heights, where they are at hand: drawn instead of a grain made from parameters. */
  readonly map?: HeightMap;
}

const factors = [1, 3, 10] as const;
const usualViewMm = 700;
/** Height of the figure, px, before it is measured. */
const usualHeight = 280;
/** Distances that the joint may be brought to, beside that in the cabin; the first is the one it is shown at. */
const nearerMm = [250, 100] as const;

/** The joint at large under the light of the workbench: its difference as it is or exaggerated, its gap as built or closed, with grain and gloss under a lamp. */
export class AdjoinJointStage extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = {
    joint: { attribute: false }, sides: { attribute: false }, light: { attribute: false }, observer: { type: Number }, gamut: {}, options: { attribute: false },
    factor: { state: true }, closed: { state: true }, seenMm: { state: true }, lamp: { state: true }, moving: { state: true }, painted: { state: true },
  };

  declare joint: Joint;
  /** Standard above, trial below. */
  declare sides: readonly [StageSide, StageSide];
  declare light: Light;
  declare observer: 2 | 10;
  declare gamut: Gamut;
  /** What the address says of how the joint is shown: `times`, `gap`, `seen` and `lamp`. */
  declare options: Readonly<Record<string, string>>;
  declare factor: number;
  declare closed: boolean;
  /** Distance it is shown at; undefined for that in the cabin. */
  declare seenMm: number | undefined;
  declare lamp: LampSetting;
  declare moving: boolean;
  declare painted: Painted | undefined;
  private readonly figure = new ElementSize(this, '.figure');

  constructor() {
    super();
    this.factor = 1;
    this.closed = false;
    this.gamut = 'srgb';
    this.seenMm = nearerMm[0];
    this.lamp = usualLamp;
    this.moving = false;
    this.options = {};
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('options') || this.moving) return;
    const { times, gap, seen, lamp } = this.options;
    this.factor = factors.find((factor) => String(factor) === times) ?? 1;
    this.closed = gap === 'closed';
    this.seenMm = seen === 'cabin' ? undefined : nearerMm.find((mm) => String(mm) === seen) ?? nearerMm[0];
    this.lamp = lampOfAddress(lamp);
  }

  private say(option: Readonly<Record<string, string>>): void {
    this.dispatchEvent(new CustomEvent('adjoin-option', { detail: option }));
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
    const shown = this.shown(colours);
    const { joint } = this;
    const cabinMm = joint.viewMm ?? usualViewMm;
    const seenMm = this.seenMm === undefined || this.seenMm >= cabinMm ? cabinMm : this.seenMm;
    const surface = (index: 0 | 1) => {
      const { part, name, material, appearance, map } = this.sides[index];
      return surfaceSide(part ?? name, material, appearance, shown[index], map);
    };
    const surfaces = [surface(0), surface(1)] as const;
    const names = [this.sides[0].name, this.sides[1].name] as const;
    const perMm = pixelsAtAngle(1, seenMm);
    const notes = [
      ...surfaceNotes(surfaces, names, this.painted?.contrast), ...colourNotes(colours, shown, this.factor, this.gamut),
      ...(!this.closed && gapIsCut(joint, perMm, this.figure.height || usualHeight) ? ['The gap is drawn narrower than it is.'] : []),
    ];
    return html`
      <div class="stage">
        <div class="names">${this.side(0, colours[0])}${this.side(1, colours[1])}</div>
        <div
          class="figure" @pointerdown=${this.grasp} @pointermove=${this.pull} @pointerup=${this.release} @pointercancel=${this.release}
          @adjoin-painted=${(event: CustomEvent<Painted>) => { this.painted = event.detail; }}
        >
          <adjoin-surface-strip
            .joint=${{ kind: joint.kind, gapMm: joint.gapMm, stepMm: joint.stepMm, viewMm: cabinMm }} .sides=${surfaces} .fills=${[shown[0].css, shown[1].css]}
            .lamp=${this.lamp} .moving=${this.moving} .closed=${this.closed} .magnification=${cabinMm / seenMm} .ink=${tableInk} .gamut=${this.gamut} .leading=${true}
            .label=${`${names[0]} above, ${names[1]} below, under ${this.light.name}; simulated grain and gloss`}
          ></adjoin-surface-strip>
        </div>
        <adjoin-lamp
          class="row" .setting=${this.lamp}
          @adjoin-lamp=${(event: CustomEvent<{ setting: LampSetting; moving: boolean }>) => {
            this.lamp = event.detail.setting;
            this.moving = event.detail.moving;
            if (!this.moving) this.say({ lamp: lampAddress(this.lamp) });
          }}
        ></adjoin-lamp>
        <div class="under row">
          ${this.choice('Difference', factors.map((factor) => [factor, factor === 1 ? 'as it is' : `×${factor}`] as const), this.factor, (value) => {
            this.factor = Number(value);
            this.say({ times: value === 1 ? '' : String(value) });
          })}
          ${joint.kind === 'gap' || joint.kind === 'sightline'
            ? this.choice('Gap', [[false, 'as built'], [true, 'closed']], this.closed, (value) => {
              this.closed = value === true;
              this.say({ gap: this.closed ? 'closed' : '' });
            })
            : nothing}
          ${this.choice(
            'Seen from', [cabinMm, ...nearerMm.filter((mm) => mm < cabinMm)].map((mm) => [mm, `${fixed(mm, 0)} mm`] as const), seenMm,
            (value) => {
              this.seenMm = Number(value) === cabinMm ? undefined : Number(value);
              this.say({ seen: this.seenMm === undefined ? 'cabin' : this.seenMm === nearerMm[0] ? '' : String(this.seenMm) });
            },
          )}
          <span class="set">${this.scale(perMm)}</span>
          <span class="set">${this.measures()}</span>
        </div>
        <p class="notes row">${notes.join(' ')}</p>
      </div>
    `;
  }

  private held: { readonly id: number; x: number; y: number } | undefined;

  private readonly grasp = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    this.held = { id: event.pointerId, x: event.clientX, y: event.clientY };
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
  };

  private readonly pull = (event: PointerEvent): void => {
    if (this.held?.id !== event.pointerId) return;
    this.lamp = draggedLamp(this.lamp, event.clientX - this.held.x, event.clientY - this.held.y, event.shiftKey);
    this.moving = true;
    [this.held.x, this.held.y] = [event.clientX, event.clientY];
  };

  private readonly release = (event: PointerEvent): void => {
    if (this.held?.id !== event.pointerId) return;
    this.held = undefined;
    this.moving = false;
    this.say({ lamp: lampAddress(this.lamp) });
  };

  private side(index: 0 | 1, colour: PartColour): TemplateResult {
    const side = this.sides[index];
    return html`
      <p class="side">
        <b>${side.name}</b>${side.about}<br />
        ${colour.css === undefined ? colour.why : labText(colour.lab, 2)}<br />
        <span class="role">${index === 0 ? 'standard' : 'trial'}</span>
      </p>`;
  }

  private scale(perMm: number): TemplateResult {
    const { mm, width, bar } = scaleBar(perMm, 'currentColor');
    return html`${scene(drawing(width, 10, undefined, bar))} ${mm} mm`;
  }

  private choice(
    name: string, options: readonly (readonly [number | boolean, string])[], now: number | boolean, take: (value: number | boolean) => void,
  ): TemplateResult {
    const keys = (event: KeyboardEvent): void => {
      const buttons = [...(event.currentTarget as HTMLElement).querySelectorAll<HTMLElement>('button')];
      if (roveFocus(event, buttons, 'both')) (this.shadowRoot?.activeElement as HTMLElement | null)?.click();
    };
    const id = name.toLowerCase().replace(' ', '-');
    return html`
      <span class="set">
        <span id=${id}>${name}</span>
        <div role="radiogroup" aria-labelledby=${id} @keydown=${keys}>
          ${options.map(([value, label]) => html`
            <button
              type="button" role="radio" aria-checked=${value === now} tabindex=${value === now ? 0 : -1} @click=${() => take(value)}
            >${label}</button>`)}
        </div>
      </span>`;
  }

  private measures(): string {
    const { kind, gapMm, stepMm, lengthMm } = this.joint;
    return [
      gapMm === undefined || gapMm === 0 ? kind : kind === 'gap' ? `gap of ${fixed(gapMm, 1)} mm` : `${kind}, gap ${fixed(gapMm, 1)} mm`,
      stepMm === undefined ? undefined : `step ${fixed(stepMm, 1)} mm`,
      lengthMm === undefined ? undefined : `${fixed(lengthMm, 0)} mm long`,
    ].filter((text) => text !== undefined).join(', ');
  }
}

customElements.define('adjoin-joint-stage', AdjoinJointStage);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-joint-stage': AdjoinJointStage;
  }
}
