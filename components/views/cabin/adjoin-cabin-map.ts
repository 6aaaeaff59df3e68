import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Selection } from '../../../src/actions/selection.ts';
import type { Cabin, MapPoint, Part } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { JointResult, Judgement, RunResult } from '../../../src/harmony/judgement.ts';
import { cabinMap, placeOfMap } from '../../../src/report/figures/cabin-map.ts';
import type { CabinMapInput, CabinMapSize, MapPart } from '../../../src/report/figures/cabin-map.ts';
import { MapMemory } from '../../../src/report/figures/map-memory.ts';
import type { MapPlace, MapView } from '../../../src/report/figures/map-place.ts';
import type { Point } from '../../../src/report/figures/polyline.ts';
import { element } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import type { JointPaths } from '../../../src/workers/session-protocol.ts';
import { askAction, askMenu, askSelection, doAction } from '../../controllers/edit-events.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { draftOutline, halfWay, keyMove, outlineHandles, rounded } from '../../controllers/map-outline.ts';
import { tableInk } from '../../figures/inks.ts';
import { mapLayers } from '../../figures/map-layers.ts';
import { scene } from '../../figures/scene.ts';
import { mostZoom, movedView, nearestTowards, parseView, viewBoxOf, viewText, zoomedView } from '../../model/map-gestures.ts';
import { isDrawn } from '../../model/is-drawn.ts';
import { mapInput } from '../../model/map-input.ts';
import { remembered } from '../../model/remembered.ts';
import { tintedParts, tints } from '../../model/map-tints.ts';
import type { Tint } from '../../model/map-tints.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base } from '../../styles/shared.ts';
import type { MapCall, MapTool } from './adjoin-map-tools.ts';
import './adjoin-map-tools.ts';
import { styles } from './cabin-map.styles.ts';
import './adjoin-map-foot.ts';
import './adjoin-matrix.ts';
import { middleOf, runKey, runOverlay } from './map-run.ts';

interface Pulled { readonly pointer: number; readonly from: Point; at: Point; readonly part: string | undefined; readonly joint: string | undefined; readonly point: number | undefined; moved: boolean }

/** Px that a pointer may stray and still click. */
const steady = 4;
const settleMs = 140;
const noJoints: ReadonlySet<string> = new Set();

/**
 * The cabin unfolded. It can be moved about, its faces tinted, its parts outlined and joined, a run watched; what is pointed at is read out below.
 * @fires adjoin-point - id of the joint pointed at, or undefined
 * @fires adjoin-open-joint - id of the joint the user opens
 * @fires adjoin-option - choices of the map for the address
 */
export class AdjoinCabinMap extends LitElement {
  static override styles = [base, styles];
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, listed: { attribute: false }, colours: { attribute: false }, paths: { attribute: false }, light: {},
    pointed: {}, selection: { attribute: false }, options: { attribute: false }, present: { attribute: false }, editable: { type: Boolean },
    pointedPart: { state: true }, tool: { state: true }, walk: { state: true }, draft: { state: true }, joining: { state: true },
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
  declare editable: boolean;
  declare pointedPart: string | undefined;
  declare tool: MapTool;
  /** What the arrow keys go along. */
  declare walk: 'joints' | 'parts';
  /** The outline that is being drawn. */
  declare draft: { readonly points: readonly MapPoint[]; readonly cross: MapPoint } | undefined;
  /** First part of a joint that is being drawn. */
  declare joining: string | undefined;
  private readonly size = new ElementSize(this, '.map');
  private readonly memory = new MapMemory();
  private input: CabinMapInput | undefined;
  private rested: ReadonlySet<string> = noJoints;
  private view: MapView | undefined;
  private drawn: { readonly scene: SceneElement; readonly place: MapPlace } | undefined;
  private settling: ReturnType<typeof setTimeout> | undefined;
  private readonly pointers = new Map<number, Point>();
  private pulled: Pulled | undefined;
  private moving: { readonly place: number; readonly to: MapPoint } | undefined;

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

  private get run(): RunResult | undefined {
    const wanted = this.options['run'];
    return wanted === undefined ? undefined : this.judgement.runs.find((run) => runKey(run) === wanted);
  }

  /** The part that the tools work on. */
  private get active(): Part | undefined {
    const id = this.selection.parts?.at(-1);
    return id === undefined ? undefined : cabinIndex(this.present ?? this.cabin).parts.get(id);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (['cabin', 'judgement', 'colours', 'paths', 'options'].some((name) => (changed as Map<string, unknown>).has(name))) {
      this.input = mapInput(this.cabin, this.judgement, tintedParts(this.tint, this.judgement, this.colours), this.paths);
    }
    if (changed.has('listed') || changed.has('judgement')) this.rested = restedJoints(this.judgement.joints, this.listed);
    if (changed.has('options') && this.settling === undefined && this.pointers.size === 0) this.view = parseView(this.options['at']);
    if (changed.has('selection') && changed.get('selection')?.parts?.at(-1) !== this.selection.parts?.at(-1)) this.beginDraft();
  }

  private say(name: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  // The view

  private get boxSize(): Point {
    return [this.size.width, this.size.height];
  }

  private get mapSize(): CabinMapSize {
    return { width: this.size.width, height: this.size.height, interactive: true, memory: this.memory, ...(this.view === undefined ? {} : { view: this.view }) };
  }

  private get place(): MapPlace | undefined {
    return this.input === undefined || this.size.width === 0 ? undefined : placeOfMap(this.input, this.mapSize);
  }

  /** Looks elsewhere at once through what is drawn, and draws it anew when the eye rests. */
  private look(view: MapView | undefined): void {
    this.view = view;
    clearTimeout(this.settling);
    this.settling = setTimeout(() => {
      this.settling = undefined;
      this.requestUpdate();
      const at = viewText(this.view);
      if (at !== (this.options['at'] ?? '')) this.say('adjoin-option', { at });
    }, settleMs);
    this.requestUpdate();
  }

  private zoom(factor: number, about: Point = [this.size.width / 2, this.size.height / 2]): void {
    const { place } = this;
    if (place !== undefined) this.look(zoomedView(place, factor, about, this.boxSize));
  }

  private move(by: Point): void {
    const { place } = this;
    if (place !== undefined) this.look(movedView(place.view.zoom > 1 ? place : { ...place, view: { ...place.view, zoom: 1.0011 } }, by));
  }

  /** Brings a part or joint into the box where it lies outside. */
  private reveal(point: Point): void {
    const { place } = this;
    if (place === undefined || this.view === undefined) return;
    const [x, y] = place.toScreen(point);
    const margin = 48;
    if (x > margin && y > margin && x < this.size.width - margin && y < this.size.height - margin) return;
    this.look({ zoom: place.view.zoom, centre: point });
  }

  private call(call: MapCall): void {
    if ('zoom' in call) this.zoom(call.zoom);
    else if ('fit' in call) this.look(undefined);
    else if ('tool' in call) this.take(call.tool);
    else if ('tint' in call) this.say('adjoin-option', { tint: call.tint === 'colour' ? '' : call.tint });
    else if ('run' in call) this.say('adjoin-option', { run: call.run });
    else this.say('adjoin-option', { show: call.show === 'map' ? '' : call.show });
  }

  private take(tool: MapTool): void {
    this.tool = tool;
    this.joining = undefined;
    if (tool !== 'look') this.walk = 'parts';
    this.beginDraft();
    if (tool === 'outline') this.nearOutline();
  }

  /** Goes so near to an outline that its points can be told apart. */
  private nearOutline(): void {
    const { active: part, place } = this;
    if (part?.outline === undefined || place === undefined || !isDrawn(part)) return;
    const points = part.outline.map(place.toScreen);
    const closest = points.map((point, index) => Math.hypot(point[0] - (points.at(index - 1)?.[0] ?? 0), point[1] - (points.at(index - 1)?.[1] ?? 0))).sort((a, b) => a - b);
    if ((closest[Math.floor(closest.length / 4)] ?? Infinity) > 14) return;
    const [xs, ys] = [part.outline.map(([x]) => x), part.outline.map(([, y]) => y)];
    const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    const scale = Math.min(this.size.width / Math.max(1, right - left), this.size.height / Math.max(1, bottom - top)) * 0.8;
    const zoom = (place.view.zoom * scale) / place.scale;
    if (zoom > place.view.zoom) this.look({ zoom: Math.min(mostZoom, zoom), centre: [(left + right) / 2, (top + bottom) / 2] });
  }

  // Outlines and joints

  private beginDraft(): void {
    const { active: part, place } = this;
    const wanted = this.tool === 'outline' && part !== undefined && !isDrawn(part) && this.editable;
    this.draft = wanted && place !== undefined ? { points: [], cross: rounded(place.toCabin([this.size.width / 2, this.size.height / 2])) } : undefined;
  }

  private addDraftPoint(at: MapPoint): void {
    const { draft, place } = this;
    if (draft === undefined || place === undefined) return;
    const [first] = draft.points;
    const near = first !== undefined && Math.hypot(...place.toScreen(first).map((value, axis) => value - (place.toScreen(at)[axis] as number))) < 10;
    if (near && draft.points.length > 2) this.finishDraft();
    else this.draft = { points: [...draft.points, at], cross: at };
  }

  private finishDraft(): void {
    const { draft, active: part } = this;
    if (draft === undefined || part === undefined || draft.points.length < 3) return;
    if (doAction(this, 'part.set-outline', { part: part.id, outline: draft.points })?.done === true) this.draft = undefined;
  }

  private movePoint(place: number, to: MapPoint, key?: string): void {
    const { active: part } = this;
    if (part !== undefined) doAction(this, 'part.move-point', { part: part.id, point: place, to }, key === undefined ? {} : { key });
  }

  private join(second: string): void {
    const { joining } = this;
    if (joining === undefined) this.joining = second;
    else if (second !== joining) {
      this.joining = undefined;
      askAction(this, 'joint.add', { first: joining, second });
    }
  }

  private select(part: string, more: boolean): void {
    const before = this.selection.parts ?? [];
    const parts = !more ? [part] : before.includes(part) ? before.filter((id) => id !== part) : [...before, part];
    askSelection(this, { parts });
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
    return { part: data('part'), joint: data('joint'), point: point === undefined ? undefined : Number(point) };
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
    if (this.pointers.size === 2) this.pinch(event.pointerId, now);
    this.pointers.set(event.pointerId, now);
    const { pulled, place } = this;
    if (pulled?.pointer !== event.pointerId || place === undefined) return;
    if (!pulled.moved) {
      if (Math.hypot(now[0] - pulled.from[0], now[1] - pulled.from[1]) < steady) return;
      pulled.moved = true;
      (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    }
    pulled.at = now;
    if (this.tool === 'outline' && pulled.point !== undefined) this.moving = { place: pulled.point, to: rounded(place.toCabin(now)) };
    else if (this.tool !== 'join' || pulled.part === undefined) this.move([now[0] - before[0], now[1] - before[1]]);
    this.requestUpdate();
  };

  private pinch(pointer: number, now: Point): void {
    const other = [...this.pointers].find(([id]) => id !== pointer)?.[1];
    const before = this.pointers.get(pointer);
    if (other === undefined || before === undefined) return;
    const apart = (point: Point): number => Math.hypot(point[0] - other[0], point[1] - other[1]);
    if (apart(before) > 0) this.zoom(apart(now) / apart(before), [(now[0] + other[0]) / 2, (now[1] + other[1]) / 2]);
  }

  private readonly pointerUp = (event: PointerEvent): void => {
    this.pointers.delete(event.pointerId);
    const { pulled, moving } = this;
    this.pulled = undefined;
    this.moving = undefined;
    if (pulled === undefined || pulled.pointer !== event.pointerId || event.type === 'pointercancel') {
      this.requestUpdate();
      return;
    }
    if (pulled.moved) {
      if (moving !== undefined) this.movePoint(moving.place, moving.to);
      const target = this.tool === 'join' && pulled.part !== undefined ? this.under(event).part : undefined;
      if (target !== undefined && target !== pulled.part) askAction(this, 'joint.add', { first: pulled.part, second: target });
      this.requestUpdate();
    } else this.clicked(pulled, event);
  };

  private clicked({ part, joint, point, at }: Pulled, event: PointerEvent): void {
    const { place } = this;
    if (this.draft !== undefined && place !== undefined) this.addDraftPoint(rounded(place.toCabin(at)));
    else if (point !== undefined) return;
    else if (this.tool === 'join') {
      if (part !== undefined) this.join(part);
    } else if (joint !== undefined && this.tool === 'look') this.say('adjoin-open-joint', joint);
    else if (part !== undefined) this.select(part, event.shiftKey || event.ctrlKey || event.metaKey);
    else if (this.selection.parts !== undefined) askSelection(this, {});
  }

  private over(event: PointerEvent, now: Point): void {
    const { part, joint } = this.under(event);
    if (this.draft !== undefined && this.place !== undefined) this.draft = { ...this.draft, cross: rounded(this.place.toCabin(now)) };
    if (part !== this.pointedPart) this.pointedPart = part;
    const told = this.tool === 'look' ? joint : undefined;
    if (told !== this.pointed) this.say('adjoin-point', told);
  }

  private readonly leave = (): void => {
    if (this.pointers.size > 0) return;
    this.pointedPart = undefined;
    this.say('adjoin-point', undefined);
  };

  private readonly wheel = (event: WheelEvent): void => {
    // Where the map scrolls with the page, turning the wheel scrolls on; with Ctrl, and as a pinch on a pad, it zooms everywhere.
    if (!event.ctrlKey && matchMedia('(max-width: 1080px)').matches) return;
    event.preventDefault();
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    this.zoom(Math.exp(-event.deltaY * lines * (event.ctrlKey ? 0.01 : 0.0015)), this.at(event));
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
    const taken = this.viewKey(event) || (this.tool === 'outline' && this.outlineKey(event)) || this.walkKey(event);
    if (!taken) return;
    event.preventDefault();
    event.stopPropagation();
  };

  private viewKey(event: KeyboardEvent): boolean {
    const { key } = event;
    if ((event.ctrlKey || event.metaKey) && !event.shiftKey && key.startsWith('Arrow')) {
      const by = ({ ArrowLeft: [60, 0], ArrowRight: [-60, 0], ArrowUp: [0, 60], ArrowDown: [0, -60] } as Readonly<Record<string, Point>>)[key];
      if (by !== undefined) this.move(by);
      return true;
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    switch (key) {
      case '+': case '=': this.zoom(1.4); return true;
      case '-': this.zoom(1 / 1.4); return true;
      case '0': this.look(undefined); return true;
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
    if (tool === 'join') this.joining = at ?? this.selection.parts?.at(-1);
  }

  private outlineKey(event: KeyboardEvent): boolean {
    const { active: part, draft, place } = this;
    if (part === undefined || place === undefined) return false;
    const by = keyMove(event, place.scale);
    if (draft !== undefined) {
      if (by !== undefined) this.draft = { ...draft, cross: [draft.cross[0] + by[0], draft.cross[1] + by[1]] };
      else if (event.key === ' ') this.addDraftPoint(draft.cross);
      else if (event.key === 'Enter') this.finishDraft();
      else if (event.key === 'Backspace') this.draft = { ...draft, points: draft.points.slice(0, -1) };
      else if (event.key === 'Escape') this.take('look');
      else return false;
      return true;
    }
    const outline = part.outline ?? [];
    const chosen = this.selection.point ?? 0;
    const choose = (point: number): void => { askSelection(this, { parts: this.selection.parts ?? [], point: (point + outline.length) % outline.length }); };
    const now = outline[chosen];
    if (now === undefined) return false;
    if (by !== undefined) this.movePoint(chosen, rounded([now[0] + by[0], now[1] + by[1]]), `keys ${part.id} ${chosen}`);
    else if (event.key === 'PageDown' || event.key === '.') choose(chosen + 1);
    else if (event.key === 'PageUp' || event.key === ',') choose(chosen - 1);
    else if (event.key === 'Insert' || event.key === 'i') {
      doAction(this, 'part.insert-point', { part: part.id, point: chosen + 1, to: halfWay(outline, chosen) });
      choose(chosen + 1);
    } else if (event.key === 'Delete') doAction(this, 'part.delete-point', { part: part.id, point: chosen });
    else if (event.key === 'Escape') this.take('look');
    else return false;
    return true;
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
      else if (this.pointedPart !== undefined && this.tool === 'join') this.join(this.pointedPart);
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
    if (path?.[0] !== undefined) this.reveal(path[Math.floor(path.length / 2)] ?? path[0]);
    return true;
  }

  private walkParts(key: string): boolean {
    const parts = this.input?.parts ?? [];
    const here = parts.find(({ id }) => id === (this.pointedPart ?? this.selection.parts?.at(-1)));
    const stops = parts.filter((part) => part !== here).map((part) => ({ part, at: middleOf(part) }));
    const next = here === undefined ? parts[0] : nearestTowards(middleOf(here), key, stops)?.part;
    if (next !== undefined) {
      this.pointedPart = next.id;
      this.reveal(middleOf(next));
    }
    return true;
  }

  // Drawing

  private scene(): SceneElement | undefined {
    const { place, input } = this;
    if (place === undefined || input === undefined) return undefined;
    if (this.settling !== undefined && this.drawn !== undefined) {
      const { scene: before, place: then } = this.drawn;
      return { ...before, attributes: { ...before.attributes, viewBox: viewBoxOf(then, place, this.boxSize) } };
    }
    const made = cabinMap(
      { ...input, highlight: this.pointed, part: this.pointedPart, rested: this.rested, selected: this.selection.parts ?? [] },
      { ...this.mapSize, overlay: (at) => this.overlay(input, at) }, tableInk,
    );
    this.drawn = { scene: made, place };
    return made;
  }

  private overlay(input: CabinMapInput, at: MapPlace): readonly (SceneElement | undefined)[] {
    const { run, active: part, draft, moving, pulled } = this;
    const parts = mapPartsById(input.parts);
    const outline = part?.outline;
    const handles = this.tool === 'outline' && this.editable && part !== undefined && outline !== undefined && draft === undefined
      ? outlineHandles(part, moving === undefined ? outline : outline.with(moving.place, moving.to), this.selection.point, at) : undefined;
    const first = parts.get((this.tool === 'join' ? (pulled?.moved === true ? pulled.part : this.joining) : undefined) ?? '');
    const end = pulled?.moved === true ? pulled.at : this.pointedPart === undefined ? undefined : at.toScreen(middleOf(parts.get(this.pointedPart) ?? first ?? { id: '', name: '', outline: [] }));
    return [
      run === undefined ? undefined : runOverlay(run, parts, at),
      handles,
      draft === undefined ? undefined : draftOutline(draft.points, draft.cross, at),
      first === undefined ? undefined : joiningLine(at.toScreen(middleOf(first)), end),
    ];
  }

  override render(): TemplateResult {
    const matrix = this.options['show'] === 'matrix';
    const map = matrix ? undefined : this.scene();
    const runs = this.judgement.runs.map((run) => ({ key: runKey(run), name: this.runName(run) }));
    const { run } = this;
    return html`
      <adjoin-map-tools
        .tint=${this.tint} .tool=${this.tool} .run=${run === undefined ? '' : runKey(run)} .runs=${runs} .editable=${this.editable} .zoomed=${this.view !== undefined} .show=${matrix ? 'matrix' : 'map'}
        @adjoin-map=${(event: CustomEvent<MapCall>) => this.call(event.detail)}
      ></adjoin-map-tools>
      ${matrix ? this.matrix() : html`<div
        class="map ${this.tool}" tabindex="0" role="group" aria-roledescription="cabin map" aria-label=${this.label()}
        @pointerdown=${this.pointerDown} @pointermove=${this.pointerMove} @pointerup=${this.pointerUp} @pointercancel=${this.pointerUp} @pointerleave=${this.leave}
        @wheel=${this.wheel} @contextmenu=${this.menu} @keydown=${this.key}
      >${map === undefined ? this.empty() : repeat(mapLayers(map), ({ key }) => key, ({ svg }) => scene(svg))}</div>`}
      <adjoin-map-foot
        .cabin=${this.cabin} .judgement=${this.judgement} .colours=${this.colours} .light=${this.light} .pointed=${this.pointed}
        .pointedPart=${this.pointedPart ?? this.selection.parts?.at(-1)} .tint=${matrix ? 'colour' : this.tint} .run=${matrix ? undefined : run} .hint=${this.hint()} .outlining=${this.outlining()}
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
    if (this.tool === 'join') {
      const first = cabinIndex(this.cabin).parts.get(this.joining ?? '')?.name;
      return first === undefined ? 'Drag from one part to another, or pick two: by pointer, or by arrow keys and Enter.' : `${first} and …? Pick the second part. Escape leaves.`;
    }
    if (this.tool !== 'outline') return undefined;
    if (this.active === undefined) return 'Choose the part to outline: by pointer, or by arrow keys and Enter.';
    if (this.draft !== undefined) return `Draw ${this.active.name}: click or Space sets a point, the first point again or Enter closes the outline, Backspace takes one back, Escape leaves.`;
    return 'Drag a point, or move it by arrow keys. Page Up and Page Down choose a point, Insert puts one in after it, Delete takes it out, Escape leaves.';
  }

  private outlining(): string | undefined {
    const { active: part, draft } = this;
    if (this.tool !== 'outline' || part === undefined) return undefined;
    if (draft !== undefined) return `${part.name}: ${draft.points.length} points set; at x ${draft.cross[0]}, y ${draft.cross[1]} mm`;
    const place = this.selection.point ?? 0;
    const point = this.moving?.to ?? part.outline?.[place];
    return point === undefined ? undefined : `${part.name}: point ${place + 1} of ${part.outline?.length ?? 0}, x ${point[0]}, y ${point[1]} mm`;
  }
}

const mapPartsById = remembered((parts: readonly MapPart[]): ReadonlyMap<string, MapPart> => new Map(parts.map((part) => [part.id, part])));

/** Joints outside the filter. */
function restedJoints(joints: readonly JointResult[], listed: readonly JointResult[]): ReadonlySet<string> {
  if (listed.length === joints.length) return noJoints;
  const shown = new Set(listed.map(({ id }) => id));
  return new Set(joints.map(({ id }) => id).filter((id) => !shown.has(id)));
}

function joiningLine(from: Point, to: Point | undefined): SceneElement {
  const line = to === undefined ? undefined : { x1: from[0], y1: from[1], x2: to[0], y2: to[1] };
  return element(
    'g', { class: 'joining', 'pointer-events': 'none' },
    line === undefined ? undefined : element('line', { ...line, stroke: tableInk.casing, 'stroke-width': 6 }),
    line === undefined ? undefined : element('line', { ...line, stroke: tableInk.core, 'stroke-width': 2, 'stroke-dasharray': '3 5', 'stroke-linecap': 'round' }),
    element('circle', { cx: from[0], cy: from[1], r: 7, fill: tableInk.core, stroke: tableInk.casing, 'stroke-width': 2 }),
  );
}

customElements.define('adjoin-cabin-map', AdjoinCabinMap);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-cabin-map': AdjoinCabinMap;
  }
}
