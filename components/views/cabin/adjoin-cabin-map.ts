import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Selection } from '../../../src/actions/selection.ts';
import type { Cabin, Part } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { JointResult, Judgement, RunResult } from '../../../src/harmony/judgement.ts';
import { placeOfMap } from '../../../src/report/figures/cabin-map.ts';
import type { CabinMapInput } from '../../../src/report/figures/cabin-map.ts';
import type { MapPlace } from '../../../src/report/figures/map-place.ts';
import type { Point } from '../../../src/report/figures/polyline.ts';
import type { JointPaths } from '../../../src/workers/session-protocol.ts';
import { askAction } from '../../controllers/edit-events.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { MapDrawing } from '../../controllers/map-drawing.ts';
import type { MapHost } from '../../controllers/map-host.ts';
import { MapKeys } from '../../controllers/map-keys.ts';
import { MapLooking } from '../../controllers/map-looking.ts';
import { MapPicks } from '../../controllers/map-picks.ts';
import { MapPointers } from '../../controllers/map-pointers.ts';
import { MapToolInHand } from '../../controllers/map-tool-in-hand.ts';
import { MapWalk } from '../../controllers/map-walk.ts';
import { tell } from '../../controllers/tell.ts';
import type { MapSheet } from '../../figures/map-sheets.ts';
import { scene } from '../../figures/scene.ts';
import { resting } from '../../model/focus-path.ts';
import { mapInput } from '../../model/map-input.ts';
import { tintedParts, tints } from '../../model/map-tints.ts';
import type { Tint } from '../../model/map-tints.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { restedJoints } from '../../model/rested-joints.ts';
import { base } from '../../styles/shared.ts';
import type { MapCall } from './adjoin-map-tools.ts';
import './adjoin-map-tools.ts';
import { styles } from './cabin-map.styles.ts';
import './adjoin-map-foot.ts';
import './adjoin-matrix.ts';
import { mapOverlay } from './map-overlay.ts';
import { runKey } from './map-run.ts';

/**
 * The cabin unfolded: it is looked about on, its parts outlined and joined, its faces tinted, a run watched; what is pointed at is read out below.
 * @fires adjoin-point - id of the joint pointed at, or undefined
 * @fires adjoin-open-joint - id of the joint the user opens
 * @fires adjoin-option - choices of the map for the address
 */
export class AdjoinCabinMap extends InTurnElement implements MapHost {
  static override styles = [base, styles];
  protected static override readonly inTurn = new Set(['cabin', 'judgement', 'listed', 'colours', 'paths', 'options']);
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, listed: { attribute: false }, colours: { attribute: false }, paths: { attribute: false }, light: {},
    pointed: {}, selection: { attribute: false }, options: { attribute: false }, present: { attribute: false }, tried: { attribute: false }, editable: { type: Boolean },
    pointedPart: { state: true },
  };

  declare cabin: Cabin;
  declare judgement: Judgement;
  /** Joints that pass the filter, worst first. */
  declare listed: readonly JointResult[];
  declare colours: ReadonlyMap<string, PartColour>;
  declare paths: JointPaths;
  declare light: string;
  declare pointed: string | undefined;
  declare selection: Selection;
  declare options: Readonly<Record<string, string>>;
  /** The document with the last edit in it, which outlines are drawn from; the cabin where there is none. */
  declare present: Cabin | undefined;
  /** The drift along the parts that are picked. */
  declare tried: RunResult | undefined;
  declare editable: boolean;
  declare pointedPart: string | undefined;
  private readonly size = new ElementSize(this, '.map');
  private readonly looking = new MapLooking(this, (at) => { if (at !== (this.options['at'] ?? '')) tell(this, 'adjoin-option', { at }); });
  private readonly picks = new MapPicks(this);
  private readonly walk = new MapWalk(this, this.looking, this.picks);
  private readonly inHand = new MapToolInHand(this, this.looking, this.picks, this.walk);
  private readonly pointers = new MapPointers(this, this.looking, this.picks, this.inHand);
  private readonly keys = new MapKeys(this, this.looking, this.picks, this.walk, this.inHand);
  private readonly drawing = new MapDrawing(this, this.looking);
  input: CabinMapInput | undefined;
  /** The tint of what is drawn. */
  private tinted: Tint | undefined;
  private rested: ReadonlySet<string> | undefined;
  /** The map as it was shown last. It stays on the page, at rest, while the matrix is shown: to lay out a large cabin anew takes long. */
  private shown: TemplateResult | typeof nothing | undefined;

  constructor() {
    super();
    this.listed = [];
    this.colours = new Map();
    this.paths = new Map();
    this.light = 'D65';
    this.selection = {};
    this.options = {};
    this.editable = false;
  }

  private get tint(): Tint {
    return tints.find((tint) => tint === this.options['tint']) ?? 'colour';
  }

  private get run(): RunResult | undefined {
    if (this.picks.path.length > 1) return this.tried;
    const wanted = this.options['run'];
    return wanted === undefined ? undefined : this.judgement.runs.find((run) => runKey(run) === wanted);
  }

  /** The part that the tools work on. */
  get active(): Part | undefined {
    const id = this.selection.parts?.at(-1);
    return id === undefined ? undefined : cabinIndex(this.present ?? this.cabin).parts.get(id);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (['cabin', 'judgement', 'colours', 'paths'].some((name) => (changed as Map<string, unknown>).has(name)) || this.tint !== this.tinted) {
      this.tinted = this.tint;
      this.input = mapInput(this.cabin, this.judgement, tintedParts(this.tint, this.judgement, this.colours), this.paths);
    }
    if (changed.has('listed') || changed.has('judgement')) this.rested = restedJoints(this.judgement.joints, this.listed);
    if (changed.has('options') && !this.pointers.down) this.looking.read(this.options['at']);
    if (changed.has('selection') && changed.get('selection')?.parts?.at(-1) !== this.selection.parts?.at(-1)) this.inHand.turnTo();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) this.requestUpdate();
  }

  get boxSize(): Point {
    return [this.size.width, this.size.height];
  }

  get place(): MapPlace | undefined {
    const { input, size: { width, height }, looking: { view } } = this;
    return input === undefined || width === 0 ? undefined : placeOfMap(input, { width, height, view });
  }

  private call(call: MapCall): void {
    if ('zoom' in call) this.looking.zoom(call.zoom);
    else if ('fit' in call) this.looking.look(undefined);
    else if ('tool' in call) this.inHand.take(call.tool);
    else if ('tint' in call) tell(this, 'adjoin-option', { tint: call.tint === 'colour' ? '' : call.tint });
    else if ('run' in call) tell(this, 'adjoin-option', { run: call.run, path: '' });
    else tell(this, 'adjoin-option', { show: call.show === 'map' ? '' : call.show });
  }

  private sheets(): TemplateResult | typeof nothing {
    const { cabin, input, run, inHand, pointers: { pulled }, pointedPart, rested } = this;
    const sheets = input === undefined ? undefined : this.drawing.sheets(
      { ...input, highlight: this.pointed, part: pointedPart, rested, selected: this.selection.parts ?? this.picks.path },
      (at) => mapOverlay({ cabin, parts: input.parts, run, inHand, pulled, pointedPart }, at),
    );
    if (sheets === undefined) return this.empty();
    return html`<div class="sheets lying">${drawnSheets(sheets.lying)}</div><div class="sheets">${drawnSheets(sheets.above)}</div>`;
  }

  override render(): TemplateResult {
    const matrix = this.options['show'] === 'matrix';
    if (!matrix) this.shown = this.sheets();
    const runs = this.judgement.runs.map((run) => ({ key: runKey(run), name: this.runName(run) }));
    const { run, pointers, picks: { path }, inHand: { tool, hint, words } } = this;
    return html`
      <adjoin-map-tools
        .tint=${this.tint} .tool=${tool} .run=${run === undefined || path.length > 1 ? '' : runKey(run)} .runs=${runs} .editable=${this.editable} .zoomed=${this.looking.view !== undefined} .show=${matrix ? 'matrix' : 'map'}
        @adjoin-map=${(event: CustomEvent<MapCall>) => this.call(event.detail)}
      ></adjoin-map-tools>
      ${this.shown === undefined ? nothing : html`<div
        class="map ${tool} ${matrix ? resting : ''}" tabindex=${matrix ? nothing : 0} aria-hidden=${matrix ? 'true' : nothing} role="group" aria-roledescription="cabin map" aria-label=${this.walk.label}
        @pointerdown=${pointers.press} @pointermove=${pointers.move} @pointerup=${pointers.lift} @pointercancel=${pointers.lift} @pointerleave=${pointers.leave}
        @wheel=${pointers.wheel} @contextmenu=${pointers.menu} @keydown=${this.keys.down}
      >${this.shown}</div>`}
      ${matrix ? this.matrix() : nothing}
      <adjoin-map-foot
        .cabin=${this.cabin} .judgement=${this.judgement} .colours=${this.colours} .light=${this.light} .pointed=${this.pointed}
        .pointedPart=${this.pointedPart ?? this.selection.parts?.at(-1)} .tint=${matrix ? 'colour' : this.tint} .run=${matrix ? undefined : run} .path=${path} .onMap=${!matrix} .editable=${this.editable} .hint=${hint} .outlining=${words}
      ></adjoin-map-foot>
    `;
  }

  private matrix(): TemplateResult {
    return html`<adjoin-matrix
      .cabin=${this.cabin} .judgement=${this.judgement} .colours=${this.colours} .editable=${this.editable} .listed=${this.listed}
    ></adjoin-matrix>`;
  }

  private empty(): TemplateResult | typeof nothing {
    if (this.cabin.parts.length > 0 || this.size.width === 0) return nothing;
    return html`<div class="empty"><p>No parts yet.</p>${this.editable ? html`<button type="button" @click=${() => askAction(this, 'part.add')}>Add a part</button>` : nothing}</div>`;
  }

  private runName({ id, parts }: RunResult): string {
    const name = (part: string | undefined): string => cabinIndex(this.cabin).parts.get(part ?? '')?.name ?? '';
    return this.cabin.runs?.find((run) => run.id === id)?.name ?? `${name(parts[0])} to ${name(parts.at(-1))}`;
  }
}

const drawnSheets = (sheets: readonly MapSheet[]): unknown => repeat(sheets, ({ key }) => key, ({ svg }) => scene(svg));

customElements.define('adjoin-cabin-map', AdjoinCabinMap);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-cabin-map': AdjoinCabinMap;
  }
}
