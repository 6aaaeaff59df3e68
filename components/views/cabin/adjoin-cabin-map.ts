import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import { cabinMap } from '../../../src/report/figures/cabin-map.ts';
import type { CabinMapInput } from '../../../src/report/figures/cabin-map.ts';
import { hatchPath } from '../../../src/report/figures/hatch.ts';
import type { VerdictMark } from '../../../src/report/figures/verdict-line.ts';
import { drawing, element } from '../../../src/report/scene.ts';
import type { JointPaths } from '../../../src/workers/session-protocol.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { tableInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { standingSource } from '../../model/joint-filter.ts';
import { labText } from '../../model/lab-text.ts';
import { mapInput } from '../../model/map-input.ts';
import { fixed } from '../../../src/report/number-text.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base } from '../../styles/shared.ts';
import { styles } from './cabin-map.styles.ts';

const marks: readonly (readonly [string, VerdictMark])[] = [
  ['holds', { verdict: 'holds' }], ['open', { verdict: 'open' }],
  ['clashes', { verdict: 'clashes' }], ['clashes, accepted', { verdict: 'clashes', accepted: true }],
];

/**
 * The cabin unfolded. Points and arrow keys go from joint to joint; what is pointed at is read out below.
 * @fires adjoin-point - id of the joint pointed at, or undefined
 * @fires adjoin-open-joint - id of the joint the user opens
 */
export class AdjoinCabinMap extends LitElement {
  static override styles = [base, styles];
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, listed: { attribute: false }, colours: { attribute: false },
    paths: { attribute: false }, light: {},
    pointed: {}, pointedPart: { state: true },
  };

  declare cabin: Cabin;
  declare judgement: Judgement;
  /** Joints that pass the filter, worst first. */
  declare listed: readonly JointResult[];
  declare colours: ReadonlyMap<string, PartColour>;
  declare paths: JointPaths;
  declare light: string;
  declare pointed: string | undefined;
  declare pointedPart: string | undefined;
  private readonly size = new ElementSize(this, '.map');
  private input: CabinMapInput | undefined;

  constructor() {
    super();
    this.listed = [];
    this.colours = new Map();
    this.paths = new Map();
    this.light = 'D65';
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!['cabin', 'judgement', 'colours', 'paths'].some((name) => changed.has(name))) return;
    this.input = mapInput(this.cabin, this.judgement, this.colours, this.paths);
  }

  private say(name: 'adjoin-point' | 'adjoin-open-joint', detail: string | undefined): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  private over(event: Event): void {
    const target = event.target as SVGElement;
    const joint = target.closest<SVGElement>('[data-joint]')?.dataset['joint'];
    this.pointedPart = target.closest<SVGElement>('[data-part]')?.dataset['part'];
    if (joint !== this.pointed) this.say('adjoin-point', joint);
  }

  private key(event: KeyboardEvent): void {
    const here = this.listed.findIndex((joint) => joint.id === this.pointed);
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step !== undefined && this.listed.length > 0) {
      event.preventDefault();
      const next = this.listed[Math.max(0, Math.min(this.listed.length - 1, here < 0 ? 0 : here + step))];
      this.say('adjoin-point', next?.id);
    } else if (event.key === 'Enter' && this.pointed !== undefined) this.say('adjoin-open-joint', this.pointed);
    else if (event.key === 'Escape') this.say('adjoin-point', undefined);
  }

  override render(): TemplateResult {
    const { width, height } = this.size;
    const listed = new Set(this.listed.map((joint) => joint.id));
    const rested = new Set(this.judgement.joints.map((joint) => joint.id).filter((id) => !listed.has(id)));
    const map = this.input !== undefined && width > 0
      ? cabinMap({ ...this.input, highlight: this.pointed, part: this.pointedPart, rested }, { width, height, interactive: true }, tableInk)
      : undefined;
    return html`
      <div
        class="map" tabindex="0" role="group" aria-roledescription="cabin map"
        aria-label="Map of the cabin. Arrow keys go through the joints, worst first; Enter opens one."
        @pointerover=${this.over} @pointerleave=${() => { this.pointedPart = undefined; this.say('adjoin-point', undefined); }}
        @click=${(event: Event) => {
          const joint = (event.target as SVGElement).closest<SVGElement>('[data-joint]')?.dataset['joint'];
          if (joint !== undefined) this.say('adjoin-open-joint', joint);
        }}
        @keydown=${this.key}
      >${map === undefined ? nothing : scene(map)}</div>
      <div class="foot">
        <div class="readout" aria-live="polite">${this.readout()}</div>
        <ul class="legend" aria-label="Legend">
          ${marks.map(([word, mark]) => html`<li>${scene(verdictSample(mark, 40, 14, tableInk, true))}${word}</li>`)}
          ${this.hatched().length > 0 ? html`<li>${scene(hatchSample())}no data under ${this.light}</li>` : nothing}
        </ul>
      </div>
    `;
  }

  private hatched(): string[] {
    return this.cabin.parts.filter((part) => this.colours.get(part.id)?.css === undefined).map((part) => part.name);
  }

  private readout(): TemplateResult {
    const joint = this.judgement.joints.find((one) => one.id === this.pointed);
    const name = (id: string): string => this.cabin.parts.find((part) => part.id === id)?.name ?? id;
    if (joint !== undefined) return html`<b>${name(joint.parts[0])} / ${name(joint.parts[1])}</b><p>${joint.sentence}</p>`;
    const part = this.cabin.parts.find((one) => one.id === this.pointedPart);
    if (part === undefined) {
      return html`<p class="idle">Point at a part or a joint. Colours are computed under ${this.light} and are indicative on this screen.</p>`;
    }
    const source = standingSource(part);
    const colour = this.colours.get(part.id);
    const gloss = this.judgement.parts.find((one) => one.id === part.id)?.appearance.gloss ?? [];
    const supplier = this.cabin.suppliers.find((one) => one.id === source?.supplier)?.name ?? source?.supplier;
    return html`
      <b>${part.name}</b>
      <p>${[source?.material, source?.grain?.id && `grain ${source.grain.id}`, supplier].filter(Boolean).join(', ')}</p>
      <p>
        ${colour === undefined || colour.css === undefined
          ? colour?.why
          : `${labText(colour.lab, 1)} under ${this.light}${colour.inGamut ? '' : '; outside what this screen can show'}`}
        ${gloss.map((one) => `, ${fixed(one.mean, 1)} GU at ${one.angle}°`).join('')}
      </p>
    `;
  }
}

function hatchSample(): ReturnType<typeof drawing> {
  const box = [[1, 1], [39, 1], [39, 13], [1, 13]] as const;
  const line = { fill: 'none', stroke: tableInk.tableInk } as const;
  return drawing(40, 14, undefined, element('path', { ...line, d: 'M1 1h38v12h-38z' }), element('path', { ...line, d: hatchPath(box, 6), 'stroke-width': 0.75 }));
}

customElements.define('adjoin-cabin-map', AdjoinCabinMap);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-cabin-map': AdjoinCabinMap;
  }
}
