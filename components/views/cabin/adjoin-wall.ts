import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Cabin, Joint } from '../../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { formatRoute } from '../../controllers/route.ts';
import type { JointFilter, Route } from '../../controllers/route.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { tell } from '../../controllers/tell.ts';
import { mostPrinted, WindowedList } from '../../controllers/windowed-list.ts';
import type { SurfaceSide } from '../../figures/surface/surface-side.ts';
import { filterChoices, filterProperty, partsById } from '../../model/joint-filter.ts';
import type { FilterChoices } from '../../model/joint-filter.ts';
import { remembered } from '../../model/remembered.ts';
import { surfacesOf, unknownSide } from '../../model/surfaces-of.ts';
import { counted } from '../../../src/report/number-text.ts';
import type { Gamut, PartColour } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import '../../app/adjoin-term.ts';
import '../../app/adjoin-ways.ts';
import './adjoin-strip.ts';
import { AdjoinStrip } from './adjoin-strip.ts';
import './adjoin-wall-filters.ts';
import { wallSummary } from './wall-summary.ts';
import { styles } from './wall.styles.ts';

/** Height of a strip, px, until it is measured. */
const usualHeight = 124;
/** How long the pointer rests on a joint of the map before the wall goes to its strip, where that is not rendered. */
const restsMs = 120;

/**
 * The wall of joint strips, worst first.
 * @fires adjoin-point - id of the joint under the pointer or focus, or undefined
 */
export class AdjoinWall extends InTurnElement {
  static override styles = [base, controls, styles];
  protected static override readonly inTurn = new Set(['cabin', 'judgement', 'joints', 'colours', 'filter', 'light']);
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, joints: { attribute: false }, colours: { attribute: false }, light: {},
    filter: filterProperty, judging: { type: Boolean }, pointed: {}, visited: {}, linkTo: { attribute: false }, editable: { type: Boolean },
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
  /** The joint that was looked at last, which one comes back from. */
  declare visited: string | undefined;
  declare linkTo: (joint: string) => string;
  declare editable: boolean;
  private readonly list = new WindowedList(this, { list: 'ol', usual: usualHeight, focusable: 'adjoin-strip' });
  private revealing: ReturnType<typeof setTimeout> | undefined;
  private telling = 0;
  private readonly wayTo = (change: Partial<Route>): string => formatRoute({ view: 'cabin', filter: {}, ...change });
  private surfaces: (part: string) => SurfaceSide = () => unknownSide;
  private choices: FilterChoices | undefined;

  constructor() {
    super();
    this.joints = [];
    this.colours = new Map();
    this.light = 'D65';
    this.filter = {};
    this.judging = false;
    this.editable = false;
    this.linkTo = () => '#/';
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('cabin') && changed.get('cabin')?.id !== this.cabin.id) this.list.reset();
    if (changed.has('joints')) this.list.setItems(this.joints.map(({ id }) => id));
    if (changed.has('visited') && this.joints.some(({ id }) => id === this.visited)) this.list.returnTo(this.visited as string);
    if (changed.has('cabin') || changed.has('judgement') || changed.has('filter')) this.choices = filterChoices(this.judgement.joints, this.cabin, this.filter);
    if (changed.has('cabin') || changed.has('judgement') || changed.has('colours')) this.surfaces = surfacesOf(this.cabin, this.judgement, this.colours);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.revealing);
    cancelAnimationFrame(this.telling);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('pointed')) return;
    clearTimeout(this.revealing);
    const { pointed } = this;
    if (pointed !== undefined && !this.matches(':hover, :focus-within')) this.revealing = setTimeout(() => this.reveal(pointed), restsMs);
  }

  private reveal(id: string): void {
    // Where the wall scrolls with the page, that would take the map out of sight.
    if (this.checkVisibility() && getComputedStyle(this).overflowY !== 'visible') this.list.goTo(id);
  }

  /** After it lay at rest on the page. */
  wake(): void {
    this.list.wake();
  }

  /** Renders the strip of a joint that lies outside what is rendered. */
  bring(id: string): void {
    if (this.joints.some((joint) => joint.id === id)) this.list.goTo(id);
  }

  private point(event: Event): void {
    const strip = event.composedPath().find((target) => target instanceof AdjoinStrip);
    if (strip !== undefined && event.type === 'focusin') this.list.focused(strip.result.id);
    this.pointAt(strip?.result.id);
  }

  /** Told once a frame: a press takes the pointer and the focus from strip to strip by way of none, and map and wall are drawn for each word of it. */
  private pointAt(joint: string | undefined): void {
    cancelAnimationFrame(this.telling);
    this.telling = requestAnimationFrame(() => tell(this, 'adjoin-point', joint));
  }

  private showAll(): void {
    tell(this, 'adjoin-filter', {});
  }

  override render(): TemplateResult {
    if (this.judging && this.judgement.joints.length === 0) return html`<p class="nothing">Judging ${counted(this.cabin.joints.length, 'joint')} under the lights of the rules.</p>`;
    const every = counted(this.judgement.joints.length, 'joint');
    const parts = partsById(this.cabin);
    const joints = jointsById(this.cabin.joints);
    const { stop, items } = this.list;
    const gamut = this.gamutOf();
    const name = (id: string): string => parts.get(id)?.name ?? id;
    const leave = (): void => this.pointAt(undefined);
    return html`
      <div class="head">
        <p class="summary">${wallSummary(this.cabin, this.judgement, this.judging)}</p>
        <adjoin-wall-filters .filter=${this.filter} .choices=${this.choices}></adjoin-wall-filters>
        <div class="scale">
          <span class="count">${this.joints.length === this.judgement.joints.length ? every : `${this.joints.length} of ${every}`}</span>
          <span class="ends" aria-hidden="true"><span>0</span><b>limit</b><span>200 %</span></span>
          <adjoin-term word="limit use">limit use</adjoin-term>
        </div>
      </div>
      ${this.judgement.joints.length === 0 ? this.noJoints() : this.joints.length === 0
        ? html`<div class="nothing"><p>No joint passes this filter.</p><button type="button" @click=${this.showAll}>Show all ${every}</button></div>`
        : nothing}
      <ol
        aria-label="Joints, worst first" @pointerover=${this.point} @pointerleave=${leave} @focusin=${this.point} @focusout=${leave}
        @keydown=${(event: KeyboardEvent) => this.list.key(event)}
      >
        ${repeat(items, ({ place }) => this.joints[place]?.id, ({ place }) => {
          const result = this.joints[place] as JointResult;
          return html`
          <li data-place=${place} ${standsFor({ joint: result.id }, this.editable, false)} aria-posinset=${place + 1} aria-setsize=${this.joints.length}>
            <adjoin-strip
              .joint=${joints.get(result.id)} .result=${result} .names=${[name(result.standard), name(result.trial)]}
              .fills=${[this.colours.get(result.standard)?.css, this.colours.get(result.trial)?.css]}
              .sides=${[this.surfaces(result.standard), this.surfaces(result.trial)]}
              .light=${this.light} .gamut=${gamut}
              .href=${this.linkTo(result.id)} .lit=${this.pointed === result.id} .current=${stop === result.id}
            ></adjoin-strip>
          </li>`;
        })}
      </ol>
      ${this.joints.length > mostPrinted
        ? html`<p class="printed">The worst ${mostPrinted} of ${counted(this.joints.length, 'joint')} are printed here. The report holds all of them.</p>`
        : nothing}
      ${this.joints.length > 0
        ? html`<p class="keys">
            Arrow keys move along the wall, Enter opens a joint. Gaps are drawn at the angle they have in the cabin, for a screen at
            600 mm, grain likewise: a simulation from Sa, Sal, Str and gloss, not a photograph; parts without such readings are plain. The small triangle is the colour's limit use under ${this.light}. Lines and words say the <adjoin-term word="verdict">verdict</adjoin-term>.
          </p>`
        : nothing}
    `;
  }

  private noJoints(): TemplateResult {
    return html`<div class="nothing teach">
      <h2>No joint yet.</h2>
      <p>A <adjoin-term word="joint">joint</adjoin-term> is where two parts meet${this.cabin.parts.length === 0 ? '. Make the parts first: by hand, or while importing readings that name them.' : ': draw from one part to another on the map, or pick a pair in the matrix. Every joint is then judged, and its strip stands here.'}</p>
      <adjoin-ways .cabin=${this.cabin} .linkTo=${this.wayTo}></adjoin-ways>
    </div>`;
  }

  /** The colours say which gamut they were made for. */
  private gamutOf(): Gamut {
    for (const { css } of this.colours.values()) if (css !== undefined) return css.startsWith('color(display-p3') ? 'display-p3' : 'srgb';
    return 'srgb';
  }
}

const jointsById = remembered((joints: readonly Joint[]): ReadonlyMap<string, Joint> => new Map(joints.map((joint) => [joint.id, joint])));

customElements.define('adjoin-wall', AdjoinWall);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-wall': AdjoinWall;
  }
}
