import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { Judgement, PartAppearance } from '../../../src/harmony/judgement.ts';
import { spectraPlot } from '../../../src/report/figures/spectra-plot.ts';
import type { PlottedSpectrum } from '../../../src/report/figures/spectra-plot.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import '../../figures/adjoin-figure-table.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { spectraTable } from '../../figures/spectra-table.ts';
import { spotsPlot } from '../../figures/spots-plot.ts';
import type { SpotsSide } from '../../figures/spots-plot.ts';
import { findLight } from '../../model/light-groups.ts';
import { partColour } from '../../model/part-colours.ts';
import type { Gamut } from '../../model/part-colours.ts';
import { spotColours } from '../../model/spot-colours.ts';
import { base } from '../../styles/shared.ts';
import { styles } from './joint-plots.styles.ts';

/** A side of a joint, by what it was measured to be. */
export interface PlottedSide {
  readonly name: string;
  readonly appearance: PartAppearance | undefined;
}

/** The spectra of both sides of a joint, and their readings under the light, each with its table. */
export class AdjoinJointPlots extends InTurnElement {
  static override styles = [base, styles];
  static override properties = { cabin: { attribute: false }, sides: { attribute: false }, light: {}, observer: {}, gamut: {} };

  declare cabin: Cabin;
  /** Standard and trial. */
  declare sides: readonly [PlottedSide, PlottedSide];
  /** Name of the light. */
  declare light: string;
  declare observer: Judgement['observer'];
  declare gamut: Gamut;
  private readonly size = new ElementSize(this, '.plots');

  override render(): TemplateResult {
    const { sides } = this;
    const wide = this.size.width > 860;
    const width = this.size.width || 900;
    const first = wide ? (width - 40) * 0.6 : width;
    const second = Math.min(wide ? (width - 40) * 0.4 : width, 480);
    const spectra = [this.spectrum(sides[0]), this.spectrum(sides[1])] as const;
    const missing = sides.filter((_, side) => spectra[side] === undefined);
    const note = missing.length === 0 ? undefined : `no spectrum of ${missing.map(({ name }) => name).join(' and ')}`;
    const spots = [this.spots(sides[0]), this.spots(sides[1])] as const;
    return html`<div class="plots">
      <section><h2>Spectra</h2>
        ${scene(spectraPlot({ standard: spectra[0], trial: spectra[1], note }, { width: first, height: 400 }, paperInk))}
        <adjoin-figure-table of="Spectra" .table=${() => spectraTable(...spectra)}></adjoin-figure-table></section>
      <section><h2>Readings under ${this.light}</h2>
        ${scene(spotsPlot(...spots, { width: second, height: Math.min(400, second * 0.9) }, paperInk))}
        <adjoin-figure-table of="Readings" .table=${() => ({
          head: ['side and spot', 'L*', 'a*', 'b*'],
          rows: spots.flatMap((side) => side.spots.map(({ name, lab }) => [`${side.name}, ${name}`, ...lab.map((value) => fixed(value, 2))])),
        })}></adjoin-figure-table></section>
    </div>`;
  }

  private spectrum({ name, appearance }: PlottedSide): PlottedSpectrum | undefined {
    const light = findLight(this.light, this.cabin.lights);
    if (appearance?.spectrum === undefined || light === undefined) return undefined;
    const fill = partColour(appearance, light, this.observer, this.gamut).css;
    return { name, ...appearance.spectrum, ...(fill === undefined ? {} : { fill }) };
  }

  private spots({ name, appearance }: PlottedSide): SpotsSide {
    const light = findLight(this.light, this.cabin.lights);
    return { name, spots: light === undefined ? [] : spotColours(this.cabin, appearance, light, this.observer) };
  }
}

customElements.define('adjoin-joint-plots', AdjoinJointPlots);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-joint-plots': AdjoinJointPlots;
  }
}
