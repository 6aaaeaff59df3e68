import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { geometryKind, geometryKinds, geometryTable } from '../../../src/readings/geometry-table.ts';
import type { GeometryKind, GeometryRule } from '../../../src/readings/geometry-table.ts';
import { counted, fixed } from '../../../src/report/number-text.ts';
import type { QualityLook } from '../../../src/workers/session-look.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Route } from '../../controllers/route.ts';
import '../../app/adjoin-term.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { pageStyles } from './readings-view.styles.ts';

const ruleFor = (first: GeometryKind, second: GeometryKind): GeometryRule | undefined =>
  geometryTable.find(({ kinds }) => (kinds[0] === first && kinds[1] === second) || (kinds[0] === second && kinds[1] === first));
const marks = { 'may be compared': ['yes', 'yes'], 'with a caution': ['caution', 'with care'], 'not compared': ['no', 'no'] } as const;

/** What may be compared with what, and what of it this cabin has. */
export class AdjoinGeometryTable extends InTurnElement {
  static override styles = [base, controls, pageStyles, stacked, css`
    .matrix { width: auto; border-collapse: separate; border-spacing: 2px; }
    .matrix th, .matrix td { border: 0; padding: 0; } .matrix thead th { padding: 0 4px 4px; vertical-align: bottom; max-width: 110px; }
    .matrix tbody th { padding-right: 12px; white-space: nowrap; }
    .matrix td button { width: 108px; height: 44px; border: 1px solid var(--faint); background: none; border-radius: 0; }
    .matrix td.yes button { border: 1px solid var(--holds); color: var(--holds); font-weight: 600; }
    .matrix td.caution button { border: 2px dashed var(--open); color: var(--open); font-weight: 600; }
    .matrix td.no button { color: var(--quiet); }
    .matrix td button[aria-pressed='true'] { background: var(--ink); color: var(--paper) !important; border-color: var(--ink); }
    @media (max-width: 760px) { .matrix.stacked { width: 100%; } .matrix.stacked tbody tr { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 6px 8px; align-items: end; } .matrix.stacked tbody th { grid-column: 1 / -1; } .matrix td[data-name]:has(button)::before { display: block; } .matrix td button { width: 100%; height: 30px; } .matrix td.number { grid-column: 1 / -1; } .said { position: sticky; bottom: 0; background: var(--paper); box-shadow: 0 -1px var(--line); padding: 8px 0 8px 12px; min-height: 0; } }
    .said { border-left: 6px solid var(--line); padding-left: 16px; min-height: 84px; max-width: 92ch; }
  `];

  static override properties = { cabin: { attribute: false }, look: { attribute: false }, linkTo: { attribute: false }, pointed: { state: true } };
  declare cabin: Cabin;
  declare look: QualityLook;
  declare linkTo: (change: Partial<Route>) => string;
  declare pointed: readonly [GeometryKind, GeometryKind];

  constructor() {
    super();
    this.pointed = ['45:0 all round', 'di:8'];
  }

  private counts(): ReadonlyMap<GeometryKind, number> {
    const kinds = new Map(this.cabin.conditions.map(({ id, geometry }) => [id, geometryKind(geometry)]));
    const found = new Map<GeometryKind, number>();
    const specimens = [...(this.cabin.masters ?? []), ...this.cabin.parts.flatMap(({ sources }) => sources.flatMap((source) => source.specimens))];
    for (const { readings } of specimens) {
      for (const { quantity, conditions } of readings) {
        if (quantity === 'gloss' || quantity === 'texture') continue;
        const kind = kinds.get(conditions) ?? 'unknown';
        found.set(kind, (found.get(kind) ?? 0) + 1);
      }
    }
    return found;
  }

  override render(): TemplateResult {
    const counts = this.counts();
    const rule = ruleFor(...this.pointed);
    return html`
      <p class="lead">Colour readings are grouped by how they were taken before any mean. Unlike <adjoin-term word="geometry">geometries</adjoin-term> are never compared; a joint whose sides share none is open.</p>
      <div class="wide" tabindex="0" role="region" aria-label="What may be compared"><table class="matrix stacked">
        <thead><tr><th scope="col"><span class="unseen">geometry</span></th>${geometryKinds.map((kind) => html`<th scope="col">${kind}</th>`)}<th scope="col" class="number">readings here</th></tr></thead>
        <tbody>${geometryKinds.map((row) => html`<tr><th scope="row">${row}</th>${geometryKinds.map((column) => this.cell(row, column))}<td class="number" data-name="readings here">${counts.get(row) ?? 0}</td></tr>`)}</tbody>
      </table></div>
      ${rule === undefined ? nothing : html`<div class="said" aria-live="polite"><b>${rule.kinds[0]} and ${rule.kinds[1]}: ${rule.comparison}</b><p>${capital(rule.reason)}.</p>${rule.mind === undefined ? nothing : html`<p>Mind: ${rule.mind}.</p>`}<p class="quiet">${rule.basis}</p></div>`}
      <section>
        <h2>Gloss as a sphere sees it</h2>
        <p class="quiet">Luminance with the mirror reflection less without it, of one instrument: a cue that ranks parts by gloss and replaces no glossmeter.</p>
        ${this.look.cues.length === 0 ? html`<p class="quiet">No specimen was read with the mirror reflection and without it on one sphere.</p>` : html`
          <div class="wide" tabindex="0" role="region" aria-label="Gloss as a sphere sees it"><table class="stacked"><thead><tr><th scope="col">specimen</th><th scope="col">instrument</th><th scope="col" class="number">Y included</th><th scope="col" class="number">Y excluded</th><th scope="col" class="number">difference</th><th scope="col" class="number">at most</th></tr></thead>
          <tbody>${this.look.cues.map(({ specimen, cue }) => html`<tr><th scope="row">${specimen}</th><td data-name="instrument">${this.cabin.instruments.find(({ id }) => id === cue.instrument)?.name ?? cue.instrument}</td>
            <td class="number" data-name="Y included">${fixed(cue.yIncluded, 2)}</td><td class="number" data-name="Y excluded">${fixed(cue.yExcluded, 2)}</td><td class="number" data-name="difference">${fixed(cue.difference, 2)}</td><td class="number" data-name="at most">${fixed(cue.ceiling, 1)}</td></tr>`)}</tbody></table></div>
          <p class="quiet">${counted(this.look.cues.length, 'specimen')}.</p>`}
      </section>`;
  }

  private cell(row: GeometryKind, column: GeometryKind): TemplateResult {
    const [mark, word] = marks[ruleFor(row, column)?.comparison ?? 'not compared'];
    const here = (this.pointed[0] === row && this.pointed[1] === column) || (this.pointed[0] === column && this.pointed[1] === row);
    return html`<td class=${mark} data-name=${column}><button type="button" aria-pressed=${here} aria-label="${row} with ${column}: ${word}" @click=${() => { this.pointed = [row, column]; }}>${word}</button></td>`;
  }
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

customElements.define('adjoin-geometry-table', AdjoinGeometryTable);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-geometry-table': AdjoinGeometryTable;
  }
}
