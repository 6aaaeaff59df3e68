import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { Judgement, RunResult } from '../../../src/harmony/judgement.ts';
import { hatchPath } from '../../../src/report/figures/hatch.ts';
import { runSteps } from '../../../src/report/figures/run-steps.ts';
import type { VerdictMark } from '../../../src/report/figures/verdict-line.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { drawing, element } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import { askAction } from '../../controllers/edit-events.ts';
import { unfolds } from '../../controllers/sections.ts';
import { tableInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { standingSource } from '../../model/joint-filter.ts';
import { labText } from '../../model/lab-text.ts';
import { tintKeys, tintTitles } from '../../model/map-tints.ts';
import type { Tint } from '../../model/map-tints.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './map-foot.styles.ts';

const marks: readonly (readonly [string, VerdictMark])[] = [
  ['holds', { verdict: 'holds' }], ['open', { verdict: 'open' }],
  ['clashes', { verdict: 'clashes' }], ['clashes, accepted', { verdict: 'clashes', accepted: true }],
];

/** Under the map: what is pointed at in words, the run that is watched, and the keys to lines and tints. */
export class AdjoinMapFoot extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, colours: { attribute: false }, light: {}, pointed: {}, pointedPart: {}, tint: {}, run: { attribute: false }, path: { attribute: false }, onMap: { type: Boolean }, editable: { type: Boolean }, hint: {}, outlining: {},
  };

  declare cabin: Cabin;
  declare judgement: Judgement;
  declare colours: ReadonlyMap<string, PartColour>;
  declare light: string;
  /** Joint that is pointed at. */
  declare pointed: string | undefined;
  declare pointedPart: string | undefined;
  declare tint: Tint;
  declare run: RunResult | undefined;
  /** Parts that are picked one after the other; the run is theirs where there are two or more. */
  declare path: readonly string[];
  /** It stands under the map and not under its matrix. */
  declare onMap: boolean;
  declare editable: boolean;
  /** What the tool in hand does. */
  declare hint: string | undefined;
  /** Where a point of an outline is. */
  declare outlining: string | undefined;

  constructor() {
    super();
    this.path = [];
    this.onMap = true;
    this.editable = false;
  }

  override render(): TemplateResult {
    const without = this.tint === 'colour' && this.cabin.parts.some((part) => this.colours.get(part.id)?.css === undefined);
    return html`
      <div class="readout" aria-live="polite">${this.hint === undefined ? this.readout() : html`<b>${this.outlining ?? ''}</b><p>${this.hint}</p>`}</div>
      ${this.run === undefined ? nothing : this.runFigure(this.run)}
      <div class="keys">
        ${this.tint === 'colour' ? nothing : html`
          <ul class="legend tint" aria-label=${tintTitles[this.tint]}>
            ${tintKeys(this.tint).map(({ fill, hatch, word }) => html`<li>${scene(swatch(fill, hatch))}${word}</li>`)}
          </ul>`}
        <ul class="legend" aria-label="Lines">
          ${marks.map(([word, mark]) => html`<li>${scene(verdictSample(mark, 40, 14, tableInk, true))}${word}</li>`)}
          ${without ? html`<li>${scene(swatch(undefined, 6))}no data under ${this.light}</li>` : nothing}
        </ul>
      </div>
    `;
  }

  private name(id: string): string {
    return cabinIndex(this.cabin).parts.get(id)?.name ?? id;
  }

  private readout(): TemplateResult {
    const joint = this.judgement.joints.find((one) => one.id === this.pointed);
    if (joint !== undefined) return html`<b>${this.name(joint.parts[0])} / ${this.name(joint.parts[1])}</b><p>${joint.sentence}</p>`;
    const part = cabinIndex(this.cabin).parts.get(this.pointedPart ?? '');
    if (part === undefined) {
      return html`<p class="idle">Point at a part or a joint${this.onMap ? '; pick parts one after the other with Shift to see the drift along them' : ''}. Colours are computed under ${this.light} and are indicative on this screen.</p>`;
    }
    const source = standingSource(part);
    const colour = this.colours.get(part.id);
    const gloss = this.judgement.parts.find((one) => one.id === part.id)?.appearance.gloss ?? [];
    const supplier = cabinIndex(this.cabin).suppliers.get(source?.supplier ?? '')?.name ?? source?.supplier;
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

  private runFigure(run: RunResult): TemplateResult {
    const label = `Difference from ${this.name(run.parts[0] ?? '')} along the run, ${run.formula}${run.light === undefined ? '' : ` under ${run.light}`}`;
    return html`
      <figure class="run">
        ${run.limit === undefined ? nothing : scene(runSteps({ steps: run.steps, limit: run.limit, label }, { width: 220, height: 64 }, { ...tableInk, ink: tableInk.tableInk, faint: tableInk.tableInk }))}
        <figcaption>
          <b class="word">${run.verdict}</b> along the <adjoin-term word="run">run</adjoin-term>: ${run.sentence}
          ${this.path.length > 1 && this.editable ? html`<button type="button" @click=${() => askAction(this, 'run.add', { parts: this.path })}>Watch this path</button>` : nothing}
          <details ${unfolds(`steps-${run.id ?? 'of-path'}`)}>
            <summary>The steps as a table</summary>
            <table>
              <caption class="unseen">${label}</caption>
              <thead><tr><th scope="col">Part</th><th scope="col">From the first</th></tr></thead>
              <tbody>${run.parts.map((part, place) => html`<tr><th scope="row">${this.name(part)}</th><td>${place === 0 ? fixed(0, 2) : fixed(run.steps[place], 2)}</td></tr>`)}</tbody>
            </table>
          </details>
        </figcaption>
      </figure>
    `;
  }
}

/** A box with a fill and its hatching, 40 by 14 px. */
function swatch(fill: string | undefined, hatch: number | undefined): SceneElement {
  const box = [[1, 1], [39, 1], [39, 13], [1, 13]] as const;
  return drawing(
    40, 14, undefined,
    element('path', { class: fill === undefined ? undefined : 'sample', fill: fill ?? 'none', stroke: tableInk.tableInk, d: 'M1 1h38v12h-38z' }),
    hatch === undefined ? undefined : element('path', { fill: 'none', stroke: fill === undefined ? tableInk.tableInk : tableInk.core, d: hatchPath(box, hatch), 'stroke-width': 0.75 }),
  );
}

customElements.define('adjoin-map-foot', AdjoinMapFoot);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-map-foot': AdjoinMapFoot;
  }
}
