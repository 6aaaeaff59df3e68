import { html, LitElement } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { jointStrip } from '../../../src/report/figures/joint-strip.ts';
import type { JointStripInput, JointStripSize } from '../../../src/report/figures/joint-strip.ts';
import type { FigureTheme } from '../../../src/report/figures/theme.ts';
import { drawing } from '../../../src/report/scene.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import type { Gamut } from '../../model/part-colours.ts';
import { paperInk } from '../inks.ts';
import { scene } from '../scene.ts';
import type { LampSetting } from './lamp.ts';
import { usualLamp } from './lamp.ts';
import { stripLayout } from './strip-layout.ts';
import type { Painting, SideRequest, StripPicture, StripRequest } from './strip-request.ts';
import { surfacePainter } from './surface-painter.ts';
import type { SurfaceSide } from './surface-side.ts';
import { styles } from './surface-strip.styles.ts';

const usualViewMm = 700;
/** How far beyond the window a strip is painted, and how far it keeps its picture. */
const near = '300px';
const far = '3000px';

/** Of the window, and of whatever scrolls in it. */
const within = (margin: string): IntersectionObserverInit & { readonly scrollMargin: string } => ({ rootMargin: margin, scrollMargin: margin });

/** Milliseconds in which a picture should follow what is being moved. */
const fluent = 60;

export interface Painted {
  readonly painted: Painting;
  readonly contrast: readonly [number, number];
}

/**
 * A joint with grain and gloss: the plain strip at once, and over it the simulated surfaces as soon as they are painted. Painted only near the window.
 * @fires adjoin-painted - how the picture was painted and with what share of its contrast
 */
export class AdjoinSurfaceStrip extends LitElement {
  static override styles = [styles];
  static override properties = {
    joint: { attribute: false }, sides: { attribute: false }, fills: { attribute: false }, lamp: { attribute: false }, closed: { type: Boolean },
    magnification: { type: Number }, ink: { attribute: false }, gamut: {}, label: {}, leading: { type: Boolean }, moving: { type: Boolean }, shown: { state: true },
  };

  declare joint: Omit<JointStripInput, 'fills'>;
  /** Standard above, trial below. */
  declare sides: readonly [SurfaceSide, SurfaceSide];
  declare fills: readonly [string | undefined, string | undefined];
  declare lamp: LampSetting;
  declare closed: boolean;
  declare magnification: number;
  declare ink: FigureTheme;
  declare gamut: Gamut;
  /** Name of the picture; without one it is decoration. */
  declare label: string | undefined;
  /** Painted before all that do not lead. */
  declare leading: boolean;
  /** Something is being moved: coarse pictures will do. */
  declare moving: boolean;
  /** What the canvas shows, but for the lamp: sides, place and size. */
  declare shown: string | undefined;
  private readonly size = new ElementSize(this);
  private visible = false;
  private asked = '';
  /** How much coarser pictures are while something is moved, since the last fine one took long. */
  private coarseness = 1;
  private readonly nearness = new IntersectionObserver((entries) => {
    this.visible = entries.some((entry) => entry.isIntersecting);
    if (this.visible) this.paint();
    else surfacePainter.giveUp(this);
  }, within(near));
  private readonly distance = new IntersectionObserver((entries) => {
    if (!entries.some((entry) => entry.isIntersecting)) this.clear();
  }, within(far));

  constructor() {
    super();
    this.lamp = usualLamp;
    this.closed = false;
    this.magnification = 1;
    this.ink = paperInk;
    this.gamut = 'srgb';
    this.leading = false;
    this.moving = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.nearness.observe(this);
    this.distance.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.nearness.disconnect();
    this.distance.disconnect();
    surfacePainter.giveUp(this);
    this.visible = false;
    this.clear();
  }

  private get box(): JointStripSize {
    return { width: this.size.width || 320, height: this.size.height || 52, closed: this.closed, magnification: this.magnification };
  }

  private get input(): JointStripInput {
    return { ...this.joint, fills: this.fills };
  }

  /** What the picture shows apart from the lamp. */
  private get subject(): string {
    const { kind, gapMm, stepMm, viewMm } = this.joint;
    const surfaces = this.sides?.map(({ grain, gloss, seed, n }) => [grain?.kind === 'measured' ? surfacePainter.mapNumber(grain.map) : grain, gloss, seed, n]);
    return JSON.stringify([this.fills, kind, gapMm, stepMm, viewMm, this.box, devicePixelRatio, this.gamut, surfaces]);
  }

  protected override updated(_changed: PropertyValues<this>): void {
    if (this.visible) this.paint();
  }

  private paint(): void {
    if (this.size.width === 0 || this.size.height === 0 || this.sides === undefined) return;
    const { subject } = this;
    const wanted = JSON.stringify([subject, this.lamp, this.moving]);
    if (wanted === this.asked) return;
    this.asked = wanted;
    const side = ({ grain, ...rest }: SurfaceSide): SideRequest => ({
      ...rest, ...(grain === undefined ? {} : { grain: grain.kind === 'made' ? grain : { kind: 'measured', map: surfacePainter.mapNumber(grain.map) } }),
    });
    const start = performance.now();
    const density = devicePixelRatio / (this.moving ? this.coarseness : 1);
    const request: StripRequest = {
      layout: stripLayout(this.input, this.box, density), sides: [side(this.sides[0]), side(this.sides[1])],
      stepMm: !this.closed && this.joint.kind === 'step' ? this.joint.stepMm ?? 0.5 : 0, viewMm: this.joint.viewMm ?? usualViewMm,
      lamp: this.lamp, draft: this.moving,
    };
    void surfacePainter.paint(this, request, this.leading).then((picture) => {
      if (!this.moving) this.coarseness = Math.min(2, Math.max(1, Math.sqrt((performance.now() - start) / fluent)));
      if (picture !== undefined) this.take(picture, subject, density);
      else if (this.asked === wanted) this.asked = '';
    });
  }

  private take(picture: StripPicture, subject: string, density: number): void {
    const canvas = this.renderRoot.querySelector('canvas');
    const context = canvas?.getContext('2d', { colorSpace: this.gamut });
    if (!canvas || !context || !this.isConnected || subject !== this.subject) return;
    if (canvas.width !== picture.width || canvas.height !== picture.height) [canvas.width, canvas.height] = [picture.width, picture.height];
    // Device pixels on device pixels, whatever fraction of one the box has.
    canvas.style.width = `${picture.width / density}px`;
    canvas.style.height = `${picture.height / density}px`;
    context.putImageData(new ImageData(picture.pixels, picture.width, picture.height, { colorSpace: this.gamut }), 0, 0);
    this.shown = subject;
    this.dispatchEvent(new CustomEvent<Painted>('adjoin-painted', { detail: { painted: picture.painted, contrast: picture.contrast }, bubbles: true, composed: true }));
  }

  private clear(): void {
    const canvas = this.renderRoot?.querySelector('canvas');
    if (canvas) [canvas.width, canvas.height] = [0, 0];
    this.shown = undefined;
    this.asked = '';
  }

  override render(): TemplateResult {
    const { box } = this;
    const overlay = this.shown !== undefined && this.shown === this.subject;
    const strip = jointStrip(this.input, { ...box, overlay }, this.ink);
    return html`<canvas class=${overlay ? 'sample' : 'sample stale'} width="0" height="0" aria-hidden="true"></canvas>${scene(drawing(box.width, box.height, this.label, strip))}`;
  }
}

customElements.define('adjoin-surface-strip', AdjoinSurfaceStrip);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-surface-strip': AdjoinSurfaceStrip;
  }
}
