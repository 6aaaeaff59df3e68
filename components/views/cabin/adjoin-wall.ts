import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import { roveFocus } from '../../controllers/roving-focus.ts';
import type { JointFilter } from '../../controllers/route.ts';
import { surfaceSide } from '../../figures/surface/surface-side.ts';
import type { SurfaceSide } from '../../figures/surface/surface-side.ts';
import { filterChoices, partsById, standingSource } from '../../model/joint-filter.ts';
import { counted, fixed, percent } from '../../../src/report/number-text.ts';
import type { Gamut, PartColour } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import './adjoin-strip.ts';
import { AdjoinStrip } from './adjoin-strip.ts';
import './adjoin-wall-filters.ts';
import { styles } from './wall.styles.ts';

/** Strips put on the wall at a time; more follow as the reader nears the end. */
const batch = 120;
const nothingKnown: SurfaceSide = { rgb: undefined, n: 1.5, metal: false, seed: 0 };

/**
 * The wall of joint strips, worst first.
 * @fires adjoin-point - id of the joint under the pointer or focus, or undefined
 */
export class AdjoinWall extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, joints: { attribute: false }, colours: { attribute: false }, light: {},
    filter: { attribute: false }, judging: { type: Boolean }, pointed: {}, linkTo: { attribute: false }, room: { state: true }, current: { state: true },
  };

  declare cabin: Cabin;
  declare judgement: Judgement;
  /** The joints that pass the filter, in the order of the wall. */
  declare joints: readonly JointResult[];
  declare colours: ReadonlyMap<string, PartColour>;
  declare light: string;
  declare filter: JointFilter;
  declare judging: boolean;
  declare pointed: string | undefined;
  declare linkTo: (joint: string) => string;
  declare room: number;
  declare current: string | undefined;
  private readonly ending = new IntersectionObserver((entries) => {
    if (entries.some((entry) => entry.isIntersecting)) this.room += batch;
  }, { rootMargin: '600px' });

  constructor() {
    super();
    this.joints = [];
    this.colours = new Map();
    this.light = 'D65';
    this.filter = {};
    this.judging = false;
    this.linkTo = () => '#/';
    this.room = batch;
  }

  private surfaces: ReadonlyMap<string, SurfaceSide> = new Map();

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('cabin') && !changed.has('judgement') && !changed.has('colours')) return;
    const parts = partsById(this.cabin);
    this.surfaces = new Map(this.judgement.parts.map(({ id, appearance }) =>
      [id, surfaceSide(id, standingSource(parts.get(id))?.material, appearance, this.colours.get(id))]));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.ending.disconnect();
  }

  protected override updated(changed: PropertyValues<this>): void {
    this.ending.disconnect();
    const end = this.renderRoot.querySelector('.more');
    if (end !== null) this.ending.observe(end);
    if (changed.has('pointed') && this.pointed !== undefined && !this.matches(':hover, :focus-within')) this.reveal(this.pointed);
  }

  private reveal(id: string): void {
    // Where the wall scrolls with the page, that would take the map out of sight.
    if (getComputedStyle(this).overflowY === 'visible') return;
    this.strips().find((strip) => strip.result.id === id)?.scrollIntoView({ block: 'nearest' });
  }

  private strips(): AdjoinStrip[] {
    return [...this.renderRoot.querySelectorAll('adjoin-strip')];
  }

  private point(event: Event): void {
    const strip = event.composedPath().find((target) => target instanceof AdjoinStrip);
    if (strip !== undefined && event.type === 'focusin') this.current = strip.result.id;
    this.dispatchEvent(new CustomEvent('adjoin-point', { detail: strip?.result.id, bubbles: true, composed: true }));
  }

  private showAll(): void {
    this.dispatchEvent(new CustomEvent('adjoin-filter', { detail: {}, bubbles: true, composed: true }));
  }

  override render(): TemplateResult {
    if (this.judging) return html`<p class="nothing">Judging ${counted(this.cabin.joints.length, 'joint')} under the lights of the rules.</p>`;
    const every = counted(this.judgement.joints.length, 'joint');
    const parts = partsById(this.cabin);
    const joints = new Map(this.cabin.joints.map((joint) => [joint.id, joint]));
    const shown = this.joints.slice(0, this.room);
    const stop = shown.some((joint) => joint.id === this.current) ? this.current : shown[0]?.id;
    const gamut = this.gamutOf();
    const name = (id: string): string => parts.get(id)?.name ?? id;
    const leave = (): unknown => this.dispatchEvent(new CustomEvent('adjoin-point', { detail: undefined, bubbles: true, composed: true }));
    return html`
      <div class="head">
        <p class="summary">${this.summary()}</p>
        <adjoin-wall-filters .filter=${this.filter} .choices=${filterChoices(this.judgement.joints, this.cabin, this.filter)}></adjoin-wall-filters>
        <div class="scale" aria-hidden="true">
          <span class="count">${this.joints.length === this.judgement.joints.length ? every : `${this.joints.length} of ${every}`}</span>
          <span class="ends"><span>0</span><b>limit</b><span>200 %</span></span>
          <span>limit use</span>
        </div>
      </div>
      ${shown.length === 0
        ? html`<div class="nothing"><p>No joint passes this filter.</p><button type="button" @click=${this.showAll}>Show all ${every}</button></div>`
        : nothing}
      <ol
        aria-label="Joints, worst first" @pointerover=${this.point} @pointerleave=${leave} @focusin=${this.point} @focusout=${leave}
        @keydown=${(event: KeyboardEvent) => roveFocus(event, this.strips())}
      >
        ${repeat(shown, (result) => result.id, (result) => html`
          <li>
            <adjoin-strip
              .joint=${joints.get(result.id)} .result=${result} .names=${[name(result.standard), name(result.trial)]}
              .fills=${[this.colours.get(result.standard)?.css, this.colours.get(result.trial)?.css]}
              .sides=${[this.surfaces.get(result.standard) ?? nothingKnown, this.surfaces.get(result.trial) ?? nothingKnown]}
              .light=${this.light} .gamut=${gamut}
              .href=${this.linkTo(result.id)} .lit=${this.pointed === result.id} .current=${stop === result.id}
            ></adjoin-strip>
          </li>`)}
      </ol>
      ${shown.length < this.joints.length ? html`<p class="more">${counted(this.joints.length - shown.length, 'more joint')}</p>` : nothing}
      ${shown.length > 0
        ? html`<p class="keys">
            Arrow keys move along the wall, Enter opens a joint. Gaps are drawn at the angle they have in the cabin, for a screen at
            600 mm, grain likewise: a simulation from Sa, Sal, Str and gloss, not a photograph; parts without such readings are plain. The small triangle is the colour's limit use under ${this.light}.
          </p>`
        : nothing}
    `;
  }

  /** The colours say which gamut they were made for. */
  private gamutOf(): Gamut {
    for (const { css } of this.colours.values()) if (css !== undefined) return css.startsWith('color(display-p3') ? 'display-p3' : 'srgb';
    return 'srgb';
  }

  private summary(): TemplateResult {
    const { holds, nothingJudged, clashes, accepted, open, expectedWrongHolds, coverage } = this.judgement.summary;
    return html`<b>${holds} hold${nothingJudged > 0 ? ` (${nothingJudged} with nothing to judge)` : ''}, ${clashes + accepted} clash${accepted > 0 ? ` (${accepted} accepted)` : ''}, ${open} open.</b>
      Expected number of holds that in truth do not: ${fixed(expectedWrongHolds, 1)}. Coverage ${percent(coverage)}. ${this.judgement.decisionRule}.`;
  }
}

customElements.define('adjoin-wall', AdjoinWall);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-wall': AdjoinWall;
  }
}
