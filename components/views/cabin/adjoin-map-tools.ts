import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { mapTools } from '../../controllers/map-tool-in-hand.ts';
import type { MapTool } from '../../controllers/map-tool-in-hand.ts';
import { roveFocus } from '../../controllers/roving-focus.ts';
import { tell } from '../../controllers/tell.ts';
import { tints, tintTitles } from '../../model/map-tints.ts';
import type { Tint } from '../../model/map-tints.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './map-tools.styles.ts';

/** What the tools ask of the map. */
export type MapCall = { readonly zoom: number } | { readonly fit: true } | { readonly tool: MapTool } | { readonly tint: Tint } | { readonly run: string } | { readonly show: 'map' | 'matrix' };

const toolNames: Readonly<Record<MapTool, readonly [string, string]>> = {
  look: ['Look', 'Point, choose and move about'], outline: ['Outline', 'Draw or drag the outline of the chosen part (O)'], join: ['Join', 'Drag from part to part, or pick two (J)'],
};

/**
 * The row above the map.
 * @fires adjoin-map - a MapCall
 */
export class AdjoinMapTools extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { tint: {}, tool: {}, run: {}, runs: { attribute: false }, editable: { type: Boolean }, show: {}, zoomed: { type: Boolean } };

  declare tint: Tint;
  declare tool: MapTool;
  /** Key of the run that is shown; empty where none is. */
  declare run: string;
  declare runs: readonly { readonly key: string; readonly name: string }[];
  declare editable: boolean;
  declare show: 'map' | 'matrix';
  declare zoomed: boolean;

  constructor() {
    super();
    this.tint = 'colour';
    this.tool = 'look';
    this.run = '';
    this.runs = [];
    this.editable = false;
    this.show = 'map';
    this.zoomed = false;
  }

  private call(call: MapCall): void {
    tell(this, 'adjoin-map', call);
  }

  override render(): TemplateResult {
    const map = this.show === 'map';
    return html`
      <div class="row" role="toolbar" aria-label="Map">
        ${this.radios('Shown as', [['map', 'Map', 'The cabin unfolded'], ['matrix', 'Matrix', 'Every part against every other, as a table']], this.show, (show) => this.call({ show: show as 'map' | 'matrix' }))}
        ${map ? this.mapTools() : nothing}
      </div>
    `;
  }

  private mapTools(): TemplateResult {
    return html`
      <span class="pick ${this.tint === 'colour' ? '' : 'on'}">
        <select aria-label="Faces tinted by" .value=${this.tint} @change=${(event: Event) => this.call({ tint: (event.target as HTMLSelectElement).value as Tint })}>
          ${tints.map((tint) => html`<option value=${tint} ?selected=${tint === this.tint}>${tintTitles[tint]}</option>`)}
        </select>
      </span>
      ${this.runs.length === 0 ? nothing : html`
        <span class="pick ${this.run === '' ? '' : 'on'}">
          <select aria-label="Drift along a run" .value=${this.run} @change=${(event: Event) => this.call({ run: (event.target as HTMLSelectElement).value })}>
            <option value="" ?selected=${this.run === ''}>No run</option>
            ${this.runs.map(({ key, name }) => html`<option value=${key} ?selected=${key === this.run}>${name}</option>`)}
          </select>
        </span>`}
      ${this.editable ? this.radios('Tool', mapTools.map((tool) => [tool, ...toolNames[tool]] as const), this.tool, (tool) => this.call({ tool: tool as MapTool })) : nothing}
      <span class="zoom">
        <button type="button" aria-label="Farther" title="Farther (−)" @click=${() => this.call({ zoom: 1 / 1.4 })}>−</button>
        <button type="button" aria-disabled=${!this.zoomed} title="The whole cabin (0)" @click=${() => this.call({ fit: true })}>Fit</button>
        <button type="button" aria-label="Nearer" title="Nearer (+)" @click=${() => this.call({ zoom: 1.4 })}>+</button>
      </span>
    `;
  }

  private radios(label: string, options: readonly (readonly [value: string, name: string, title: string])[], now: string, take: (value: string) => void): TemplateResult {
    const keys = (event: KeyboardEvent): void => {
      const buttons = [...(event.currentTarget as HTMLElement).querySelectorAll<HTMLElement>('button')];
      if (roveFocus(event, buttons, 'both')) (this.shadowRoot?.activeElement as HTMLElement | null)?.click();
    };
    return html`
      <span class="set" role="radiogroup" aria-label=${label} @keydown=${keys}>
        ${options.map(([value, name, title]) => html`
          <button type="button" role="radio" aria-checked=${value === now} tabindex=${value === now ? 0 : -1} title=${title} @click=${() => take(value)}>${name}</button>`)}
      </span>`;
  }
}

customElements.define('adjoin-map-tools', AdjoinMapTools);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-map-tools': AdjoinMapTools;
  }
}
