import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Selection } from '../../../src/actions/selection.ts';
import type { Cabin, Part } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { JointResult, Judgement, RunResult } from '../../../src/harmony/judgement.ts';
import { jointUnder, mapLayers, placeOfMap } from '../../../src/report/figures/cabin-map.ts';
import type { CabinMapInput, CabinMapSize, MapPart } from '../../../src/report/figures/cabin-map.ts';
import { MapMemory } from '../../../src/report/figures/map-memory.ts';
import type { MapPlace } from '../../../src/report/figures/map-place.ts';
import type { Point } from '../../../src/report/figures/polyline.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import type { JointPaths } from '../../../src/workers/session-protocol.ts';
import { askAction, askMenu, askSelection } from '../../controllers/edit-events.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import type { MapHost } from '../../controllers/map-host.ts';
import { MapJoining } from '../../controllers/map-joining.ts';
import { MapLooking } from '../../controllers/map-looking.ts';
import { MapOutlining } from '../../controllers/map-outlining.ts';
import { tableInk } from '../../figures/inks.ts';
import { DrawnLayers } from '../../figures/drawn-layers.ts';
import { mapSheets } from '../../figures/map-sheets.ts';
import type { MapSheet, MapSheets } from '../../figures/map-sheets.ts';
import { scene } from '../../figures/scene.ts';
import { nearestTowards, transformBetween } from '../../model/map-gestures.ts';
import { mapInput } from '../../model/map-input.ts';
import { remembered } from '../../model/remembered.ts';
import { tintedParts, tints } from '../../model/map-tints.ts';
import type { Tint } from '../../model/map-tints.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { pathAddress, pathOfAddress } from '../../model/path-address.ts';
import { assumedOutlines } from '../../model/assumed-outlines.ts';
import { base } from '../../styles/shared.ts';
import type { MapCall, MapTool } from './adjoin-map-tools.ts';
import './adjoin-map-tools.ts';
import { styles } from './cabin-map.styles.ts';
import './adjoin-map-foot.ts';
import './adjoin-matrix.ts';
import { boxNames } from './box-names.ts';
import { middleOf, runKey, runOverlay } from './map-run.ts';

interface Pulled { readonly pointer: number; readonly from: Point; at: Point; readonly part: string | undefined; readonly joint: string | undefined; readonly point: number | undefined; moved: boolean }

/** Px that a pointer may stray and still click. */
const steady = 4;
/** Faces, or as much else, that are drawn in one frame. */
const mostInFrame = 512;
/** Ms that may go by in a frame before no more is drawn in it. The browser needs about twice as long for what was drawn. */
const mostOfFrame = 8;
/** Sheets are shown up to so many times as large or small as they are drawn, as a power of two. */
const mostEnlarged = 1.6;
const noJoints: ReadonlySet<string> = new Set();

/**
 * The cabin unfolded: it is looked about on, its parts outlined and joined, its faces tinted, a run watched; what is pointed at is read out below.
 * @fires adjoin-point - id of the joint pointed at, or undefined
 * @fires adjoin-open-joint - id of the joint the user opens
 * @fires adjoin-option - choices of the map for the address
 */
export class AdjoinCabinMap extends LitElement implements MapHost {
  static override styles = [base, styles];
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, listed: { attribute: false }, colours: { attribute: false }, paths: { attribute: false }, light: {},
    pointed: {}, selection: { attribute: false }, options: { attribute: false }, present: { attribute: false }, tried: { attribute: false }, editable: { type: Boolean },
    pointedPart: { state: true }, tool: { state: true }, walk: { state: true },
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
  declare tool: MapTool;
  /** What the arrow keys go along. */
  declare walk: 'joints' | 'parts';
  private readonly looking = new MapLooking(this, (at) => { if (at !== (this.options['at'] ?? '')) this.say('adjoin-option', { at }); });
  private readonly outlining = new MapOutlining(this);
  private readonly joining = new MapJoining(this);
  private readonly size = new ElementSize(this, '.map');
  private readonly memory = new MapMemory();
  private input: CabinMapInput | undefined;
  private rested: ReadonlySet<string> = noJoints;
  private readonly drawn = new DrawnLayers();
  private drawnFor = '';
  /** Where the sheets lie: while the map moves they are moved as a whole, which a browser does without painting them. */
  private lie: MapPlace | undefined;
  private frame = 0;
  private readonly pointers = new Map<number, Point>();
  private pulled: Pulled | undefined;

  constructor() {
    super();
    this.listed = [];
    this.colours = new Map();
    this.paths = new Map();
    this.light = 'D65';
    this.selection = {};
    this.options = {};
    this.editable = false;
    this.tool = 'look';
    this.walk = 'joints';
  }

  private get tint(): Tint {
    return tints.find((tint) => tint === this.options['tint']) ?? 'colour';
  }

  /** Parts that were picked one after the other, two or more. */
  private get path(): readonly string[] {
    return pathOfAddress(this.options['path'], (part) => cabinIndex(this.cabin).parts.has(part));
  }

  private get run(): RunResult | undefined {
    if (this.path.length > 1) return this.tried;
    const wanted = this.options['run'];
    return wanted === undefined ? undefined : this.judgement.runs.find((run) => runKey(run) === wanted);
  }

  /** The part that the tools work on. */
  get active(): Part | undefined {
    const id = this.selection.parts?.at(-1);
    return id === undefined ? undefined : cabinIndex(this.present ?? this.cabin).parts.get(id);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (['cabin', 'judgement', 'colours', 'paths', 'options'].some((name) => (changed as Map<string, unknown>).has(name))) {
      this.input = mapInput(this.cabin, this.judgement, tintedParts(this.tint, this.judgement, this.colours), this.paths);
    }
    if (changed.has('listed') || changed.has('judgement')) this.rested = restedJoints(this.judgement.joints, this.listed);
    if (changed.has('options') && this.pointers.size === 0) this.looking.read(this.options['at']);
    if (changed.has('selection') && changed.get('selection')?.parts?.at(-1) !== this.selection.parts?.at(-1)) this.outlining.begin(this.tool === 'outline');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.hasUpdated) this.requestUpdate();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    cancelAnimationFrame(this.frame);
  }

  private say(name: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  // The view

  get boxSize(): Point {
    return [this.size.width, this.size.height];
  }

  private get mapSize(): CabinMapSize {
    return { width: this.size.width, height: this.size.height, interactive: true, memory: this.memory, ...(this.looking.view === undefined ? {} : { view: this.looking.view }) };
  }

  get place(): MapPlace | undefined {
    return this.input === undefined || this.size.width === 0 ? undefined : placeOfMap(this.input, this.mapSize);
  }

  private call(call: MapCall): void {
    if ('zoom' in call) this.looking.zoom(call.zoom);
    else if ('fit' in call) this.looking.look(undefined);
    else if ('tool' in call) this.take(call.tool);
    else if ('tint' in call) this.say('adjoin-option', { tint: call.tint === 'colour' ? '' : call.tint });
    else if ('run' in call) this.say('adjoin-option', { run: call.run, path: '' });
    else this.say('adjoin-option', { show: call.show === 'map' ? '' : call.show });
  }

  private take(tool: MapTool): void {
    this.tool = tool;
    this.joining.begin(undefined);
    if (tool !== 'look') this.walk = 'parts';
    this.outlining.begin(tool === 'outline');
    if (tool === 'outline') this.looking.near(this.active?.outline ?? []);
  }

  private select(part: string, more: boolean): void {
    const before = this.selection.parts ?? this.path;
    const parts = !more ? [part] : before.includes(part) ? before.filter((id) => id !== part) : [...before, part];
    this.choose(parts);
  }

  /** What is picked stands in the address as far as it is a path. */
  private choose(parts: readonly string[]): void {
    askSelection(this, parts.length === 0 ? {} : { parts });
    const path = pathAddress(parts);
    if (path !== (this.options['path'] ?? '')) this.say('adjoin-option', { path });
  }

  // Pointers

  private at(event: MouseEvent): Point {
    const box = this.renderRoot.querySelector('.map')?.getBoundingClientRect();
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  }

  private under(event: MouseEvent): { readonly part: string | undefined; readonly joint: string | undefined; readonly point: number | undefined } {
    const target = (this.renderRoot as ShadowRoot).elementFromPoint(event.clientX, event.clientY);
    const data = (name: string): string | undefined => target?.closest<SVGElement>(`[data-${name}]`)?.dataset[name];
    const point = data('point');
    const { input, place } = this;
    const joint = this.tool === 'look' && input !== undefined && place !== undefined ? jointUnder(input, place, this.at(event))?.id : undefined;
    return { part: data('part'), joint, point: point === undefined ? undefined : Number(point) };
  }

  private readonly pointerDown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    this.pointers.set(event.pointerId, this.at(event));
    this.pulled = this.pointers.size === 1 ? { pointer: event.pointerId, from: this.at(event), at: this.at(event), ...this.under(event), moved: false } : undefined;
    if (this.pulled?.point !== undefined) askSelection(this, { parts: this.selection.parts ?? [], point: this.pulled.point });
  };

  private readonly pointerMove = (event: PointerEvent): void => {
    const now = this.at(event);
    const before = this.pointers.get(event.pointerId);
    if (before === undefined) {
      this.over(event, now);
      return;
    }
    const other = [...this.pointers].find(([id]) => id !== event.pointerId)?.[1];
    if (this.pointers.size === 2 && other !== undefined) this.looking.pinch(before, now, other);
    this.pointers.set(event.pointerId, now);
    const { pulled } = this;
    if (pulled?.pointer !== event.pointerId) return;
    if (!pulled.moved) {
      if (Math.hypot(now[0] - pulled.from[0], now[1] - pulled.from[1]) < steady) return;
      pulled.moved = true;
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    }
    pulled.at = now;
    if (this.tool === 'outline' && pulled.point !== undefined) this.outlining.drag(pulled.point, now);
    else if (this.tool !== 'join' || pulled.part === undefined) this.looking.move([now[0] - before[0], now[1] - before[1]]);
    this.requestUpdate();
  };

  private readonly pointerUp = (event: PointerEvent): void => {
    this.pointers.delete(event.pointerId);
    const { pulled } = this;
    this.pulled = undefined;
    const kept = pulled !== undefined && pulled.pointer === event.pointerId && event.type !== 'pointercancel';
    this.outlining.drop(kept && pulled.moved);
    if (kept && !pulled.moved) {
      this.clicked(pulled, event);
      return;
    }
    const target = kept && this.tool === 'join' && pulled.part !== undefined ? this.under(event).part : undefined;
    if (target !== undefined && target !== pulled?.part) this.joining.join(pulled?.part as string, target);
    this.requestUpdate();
  };

  private clicked({ part, joint, point, at }: Pulled, event: PointerEvent): void {
    if (this.outlining.isDrawing) this.outlining.set(at);
    else if (point !== undefined) return;
    else if (this.tool === 'join') {
      if (part !== undefined) this.joining.pick(part);
    } else if (joint !== undefined && this.tool === 'look') this.say('adjoin-open-joint', joint);
    else if (part !== undefined) this.select(part, event.shiftKey || event.ctrlKey || event.metaKey);
    else if (this.selection.parts !== undefined || this.path.length > 0) this.choose([]);
  }

  private over(event: PointerEvent, now: Point): void {
    const { part, joint } = this.under(event);
    this.outlining.aim(now);
    if (part !== this.pointedPart) this.pointedPart = part;
    const told = this.tool === 'look' ? joint : undefined;
    if (told !== this.pointed) this.say('adjoin-point', told);
  }

  private readonly leave = (): void => {
    if (this.pointers.size > 0) return;
    this.pointedPart = undefined;
    this.say('adjoin-point', undefined);
  };

  private readonly menu = (event: MouseEvent): void => {
    if (!this.editable) return;
    const { part, joint } = this.under(event);
    if (part === undefined && joint === undefined) return;
    event.preventDefault();
    this.openMenu(event.clientX, event.clientY, part, joint);
  };

  private openMenu(x: number, y: number, part: string | undefined, joint: string | undefined): void {
    if (joint !== undefined) askMenu(this, { x, y, selection: { joint } });
    else if (part !== undefined) {
      const parts = this.selection.parts ?? [];
      askMenu(this, { x, y, selection: { parts: parts.includes(part) ? [...parts.filter((id) => id !== part), part] : [part] } });
    }
  }

  // Keys

  private readonly key = (event: KeyboardEvent): void => {
    if (event.defaultPrevented) return;
    const taken = this.looking.key(event) || this.toolKey(event) || (this.tool === 'outline' && this.outlining.key(event, () => this.take('look'))) || this.walkKey(event);
    if (!taken) return;
    event.preventDefault();
    event.stopPropagation();
  };

  private toolKey({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
    if (ctrlKey || metaKey || altKey) return false;
    switch (key) {
      case 'p': case 'P': this.walk = this.walk === 'parts' ? 'joints' : 'parts'; return true;
      case 'o': case 'O': if (this.editable) this.pick('outline'); return this.editable;
      case 'j': case 'J': if (this.editable) this.pick('join'); return this.editable;
      default: return false;
    }
  }

  /** Takes up a tool with the part that is pointed at. */
  private pick(tool: MapTool): void {
    const at = this.pointedPart;
    if (tool === 'outline' && at !== undefined) this.select(at, false);
    this.take(tool);
    if (tool === 'join') this.joining.begin(at ?? this.selection.parts?.at(-1));
  }

  private walkKey(event: KeyboardEvent): boolean {
    const { key, shiftKey } = event;
    if (key === 'Escape') {
      if (this.tool !== 'look') this.take('look');
      this.pointedPart = undefined;
      this.say('adjoin-point', undefined);
      return true;
    }
    if (key === 'ContextMenu' || (key === 'F10' && shiftKey)) return this.menuKey();
    if (key === 'Enter') {
      if (this.walk === 'joints' && this.pointed !== undefined) this.say('adjoin-open-joint', this.pointed);
      else if (this.pointedPart !== undefined && this.tool === 'join') this.joining.pick(this.pointedPart);
      else if (this.pointedPart !== undefined) this.select(this.pointedPart, shiftKey);
      else return false;
      return true;
    }
    if (shiftKey || !key.startsWith('Arrow')) return false;
    return this.walk === 'joints' ? this.walkJoints(key) : this.walkParts(key);
  }

  private menuKey(): boolean {
    const box = this.renderRoot.querySelector('.map')?.getBoundingClientRect();
    const part = this.input?.parts.find(({ id }) => id === this.pointedPart);
    const { place } = this;
    if (!this.editable || box === undefined || place === undefined || (part === undefined && this.pointed === undefined)) return false;
    const joint = this.walk === 'joints' ? this.input?.joints.find(({ id }) => id === this.pointed) : undefined;
    const [x, y] = place.toScreen(joint?.path[0] ?? (part === undefined ? [0, 0] : middleOf(part)));
    this.openMenu(box.left + x, box.top + y, part?.id, joint?.id);
    return true;
  }

  private walkJoints(key: string): boolean {
    const step = ({ ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 } as Readonly<Record<string, number>>)[key];
    if (step === undefined || this.listed.length === 0) return false;
    const here = this.listed.findIndex((joint) => joint.id === this.pointed);
    const next = this.listed[Math.max(0, Math.min(this.listed.length - 1, here < 0 ? 0 : here + step))];
    this.say('adjoin-point', next?.id);
    const path = this.input?.joints.find(({ id }) => id === next?.id)?.path;
    if (path?.[0] !== undefined) this.looking.reveal(path[Math.floor(path.length / 2)] ?? path[0]);
    return true;
  }

  private walkParts(key: string): boolean {
    const parts = this.input?.parts ?? [];
    const here = parts.find(({ id }) => id === (this.pointedPart ?? this.selection.parts?.at(-1)));
    const stops = parts.filter((part) => part !== here).map((part) => ({ part, at: middleOf(part) }));
    const next = here === undefined ? parts[0] : nearestTowards(middleOf(here), key, stops)?.part;
    if (next !== undefined) {
      this.pointedPart = next.id;
      this.looking.reveal(middleOf(next));
    }
    return true;
  }

  // Drawing

  private sheets(): MapSheets | undefined {
    const { place, input, size: { width, height } } = this;
    if (place === undefined || input === undefined) return undefined;
    const box = `${this.cabin.id} ${width} ${height}`;
    if (box !== this.drawnFor) this.drawn.clear();
    this.drawnFor = box;
    const layers = mapLayers(
      { ...input, highlight: this.pointed, part: this.pointedPart, rested: this.rested, selected: this.selection.parts ?? this.path },
      { ...this.mapSize, overlay: (at) => this.overlay(input, at) }, tableInk,
    );
    const { settling } = this.looking;
    const begun = performance.now();
    const { layers: drawn, finished } = this.drawn.draw(layers, place, settling ? 0 : mostInFrame, () => performance.now() - begun > mostOfFrame);
    if (!finished && !settling) this.goOn();
    if (!settling || this.lie === undefined || !isNear(this.lie, place)) this.lie = place;
    return mapSheets(drawn, this.lie, this.boxSize, input.title);
  }

  protected override updated(): void {
    const sheets = this.renderRoot.querySelector<HTMLElement>('.lying');
    const { place, lie } = this;
    const moved = this.looking.settling && place !== undefined && lie !== undefined ? transformBetween(lie, place) : '';
    if (sheets !== null && sheets.style.transform !== moved) sheets.style.transform = moved;
  }

  /** Draws what is left in the next frame. */
  private goOn(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => this.requestUpdate());
  }

  private overlay(input: CabinMapInput, at: MapPlace): readonly (SceneElement | undefined)[] {
    const { run, pulled } = this;
    const parts = mapPartsById(input.parts);
    const middle = (id: string | undefined): Point | undefined => {
      const part = parts.get(id ?? '');
      return part === undefined ? undefined : at.toScreen(middleOf(part));
    };
    const isPulled = pulled?.moved === true;
    const from = this.tool === 'join' ? middle(isPulled ? pulled.part : this.joining.first) : undefined;
    return [
      boxNames(assumedOutlines(this.cabin), parts, at),
      run === undefined ? undefined : runOverlay(run, parts, at),
      ...this.outlining.overlay(this.tool === 'outline', at),
      this.joining.overlay(from, isPulled ? pulled.at : middle(this.pointedPart)),
    ];
  }

  override render(): TemplateResult {
    const matrix = this.options['show'] === 'matrix';
    const map = matrix ? undefined : this.sheets();
    const runs = this.judgement.runs.map((run) => ({ key: runKey(run), name: this.runName(run) }));
    const { run } = this;
    return html`
      <adjoin-map-tools
        .tint=${this.tint} .tool=${this.tool} .run=${run === undefined || this.path.length > 1 ? '' : runKey(run)} .runs=${runs} .editable=${this.editable} .zoomed=${this.looking.view !== undefined} .show=${matrix ? 'matrix' : 'map'}
        @adjoin-map=${(event: CustomEvent<MapCall>) => this.call(event.detail)}
      ></adjoin-map-tools>
      ${matrix ? this.matrix() : html`<div
        class="map ${this.tool}" tabindex="0" role="group" aria-roledescription="cabin map" aria-label=${this.label()}
        @pointerdown=${this.pointerDown} @pointermove=${this.pointerMove} @pointerup=${this.pointerUp} @pointercancel=${this.pointerUp} @pointerleave=${this.leave}
        @wheel=${(event: WheelEvent) => this.looking.turn(event, this.at(event))} @contextmenu=${this.menu} @keydown=${this.key}
      >${map === undefined ? this.empty() : html`<div class="sheets lying">${drawnSheets(map.lying)}</div><div class="sheets">${drawnSheets(map.above)}</div>`}</div>`}
      <adjoin-map-foot
        .cabin=${this.cabin} .judgement=${this.judgement} .colours=${this.colours} .light=${this.light} .pointed=${this.pointed}
        .pointedPart=${this.pointedPart ?? this.selection.parts?.at(-1)} .tint=${matrix ? 'colour' : this.tint} .run=${matrix ? undefined : run} .path=${this.path} .onMap=${!matrix} .editable=${this.editable} .hint=${this.hint()} .outlining=${this.tool === 'outline' ? this.outlining.words : undefined}
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
    return `${this.cabin.runs?.find((run) => run.id === id)?.name ?? `${name(parts[0])} to ${name(parts.at(-1))}`}`;
  }

  private label(): string {
    return this.walk === 'joints'
      ? 'Map of the cabin. Arrow keys go through the joints, worst first; Enter opens one. P goes along parts instead.'
      : 'Map of the cabin. Arrow keys go from part to part; Enter chooses one, with Shift one more. P goes along joints instead.';
  }

  /** What can be done now with the tool in hand. */
  private hint(): string | undefined {
    switch (this.tool) {
      case 'join': return this.joining.hint((part) => cabinIndex(this.cabin).parts.get(part)?.name);
      case 'outline': return this.outlining.hint;
      case 'look': return undefined;
    }
  }
}

const drawnSheets = (sheets: readonly MapSheet[]): unknown => repeat(sheets, ({ key }) => key, ({ svg }) => scene(svg));

/** Whether what was drawn at one place can be shown as at another without being told to be enlarged. */
const isNear = (drawn: MapPlace, now: MapPlace): boolean => Math.abs(Math.log2(now.scale / drawn.scale)) < mostEnlarged;

const mapPartsById = remembered((parts: readonly MapPart[]): ReadonlyMap<string, MapPart> => new Map(parts.map((part) => [part.id, part])));

/** Joints outside the filter. */
function restedJoints(joints: readonly JointResult[], listed: readonly JointResult[]): ReadonlySet<string> {
  if (listed.length === joints.length) return noJoints;
  const shown = new Set(listed.map(({ id }) => id));
  return new Set(joints.map(({ id }) => id).filter((id) => !shown.has(id)));
}

customElements.define('adjoin-cabin-map', AdjoinCabinMap);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-cabin-map': AdjoinCabinMap;
  }
}
