import { css, html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Cabin, Part } from '../../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import { counted } from '../../../src/report/number-text.ts';
import type { Route } from '../../controllers/route.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { WindowedList } from '../../controllers/windowed-list.ts';
import { bareRows, windowedRows } from '../../controllers/windowed-rows.ts';
import { swatch } from '../../figures/swatch.ts';
import { standingSource } from '../../model/joint-filter.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { remembered } from '../../model/remembered.ts';
import { base, controls } from '../../styles/shared.ts';
import '../../app/adjoin-term.ts';

/** Height of a row, px, until it is measured. */
const usualHeight = 32.5;

/** What joins a part, and whether its readings are those of its mirror part. */
interface Joined {
  readonly joints: number;
  readonly clashes: number;
  readonly mirrored: boolean;
}

/** Parts in a table, a row each, with the arrow keys from row to row. Rows far from what is seen are not rendered. */
export class AdjoinPartTable extends LitElement {
  static override styles = [base, controls, bareRows, css`
    :host { display: block; overflow: auto; min-height: 0; padding-bottom: 24px; scroll-padding: 40px 0 10px; }
    table { border-collapse: collapse; width: 100%; table-layout: fixed; }
    thead :is(th, td) { position: sticky; top: 0; background: var(--paper); text-align: left; font-weight: 400; font-size: var(--small); color: var(--quiet); padding: 8px 12px 4px 0; z-index: 1; box-shadow: inset 0 -1px var(--line); vertical-align: bottom; border: 0; }
    td, tbody th { padding: 3px 12px 3px 0; border-bottom: 1px solid var(--faint); text-align: left; font-weight: 400; height: 30px; }
    .swatch { padding-left: 24px; width: 68px; padding-right: 10px; } .swatch svg { outline: 1px solid var(--faint); }
    .zone { width: 12%; } .material { width: 10%; } .supplier { width: 18.5%; } .code { width: 8%; } .count { width: 84px; } .joints { width: 132px; }
    tbody th a { text-decoration: none; font-weight: 600; display: inline-block; padding: 3px 0; }
    tbody th a:hover { text-decoration: underline; }
    tr:hover { background: var(--raised); }
    tr.here { background: var(--field); box-shadow: inset 6px 0 var(--ink); }
    .number, thead th.number { text-align: right; }
    .number:last-child { padding-right: 24px; }
    .quiet { color: var(--quiet); font-size: var(--small); }
    .lacking { color: var(--open); font-weight: 600; }
    .none { padding: 24px; }
    :host(.beside) .more { display: none; } :host(.beside) .zone { width: 24%; } :host(.beside) .material { width: 18%; } :host(.beside) .readings { padding-right: 16px; }
    @media (max-width: 1080px) { :host(.beside) { display: none; } .code { display: none; } }
    @media (max-width: 760px) {
      :host { overflow: visible; }
      .more, .less { display: none; }
      .swatch { padding-left: 12px; width: 44px; } .zone { width: 23%; } .material { width: 20%; } .count { width: 68px; } .readings, thead .readings { padding-right: 12px; }
      thead :is(th, td) { position: static; }
      td, tbody th { overflow-wrap: anywhere; }
    }
    @media (max-width: 480px) {
      table, thead, tbody, .bare-rows { display: block; } thead tr { display: flex; flex-wrap: wrap; gap: 0 16px; padding: 6px 12px; border-bottom: 1px solid var(--line); }
      thead :is(th, td) { display: flex; align-items: center; min-height: 24px; height: auto; width: auto; padding: 0; box-shadow: none; } thead :is(th, td):not(:has(adjoin-term)), thead .less { display: none; }
      tbody tr[data-place] { display: grid; grid-template-columns: 44px minmax(0, 1fr) auto; padding: 4px 0; border-bottom: 1px solid var(--faint); }
      tr[data-place] :is(td, th) { border: 0; height: auto; width: auto; padding-block: 1px; } .swatch { grid-row: 1 / 3; } .readings { grid-row: 1; grid-column: 3; }
      tbody th { grid-column: 2; } .zone { grid-area: 2 / 2; color: var(--quiet); font-size: var(--small); } .material { grid-area: 2 / 3; color: var(--quiet); font-size: var(--small); text-align: right; } tbody .material { padding-right: 12px; }
      tbody .readings:not(.quiet, .lacking)::after { content: ' readings'; color: var(--quiet); font-size: var(--small); }
    }
    @media print { :host { overflow: visible; } thead :is(th, td) { position: static; } }
  `];
  static override properties = {
    cabin: { attribute: false }, parts: { attribute: false }, chosen: {}, judgement: { attribute: false }, colours: { attribute: false }, locked: { type: Boolean }, linkTo: { attribute: false },
  };

  declare cabin: Cabin;
  /** The parts that pass the filter. */
  declare parts: readonly Part[];
  /** Id of the part that is shown beside. */
  declare chosen: string | undefined;
  declare judgement: Judgement;
  declare colours: ReadonlyMap<string, PartColour>;
  declare locked: boolean;
  declare linkTo: (change: Partial<Route>) => string;
  private readonly list = new WindowedList(this, { list: 'tbody', usual: usualHeight, focusable: 'th a', printed: Infinity, whole: 60 });

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('cabin') && changed.get('cabin')?.id !== this.cabin.id) this.list.reset();
    if (changed.has('parts')) this.list.setItems(this.parts.map(({ id }) => id));
    if (changed.has('chosen') && this.chosen !== undefined) {
      this.list.focused(this.chosen);
      this.list.goTo(this.chosen);
    }
  }

  /** Renders the row of a part that lies outside what is rendered. */
  bring(part: string): void {
    this.list.goTo(part);
  }

  private focusIn(event: FocusEvent): void {
    const row = event.composedPath().find((target): target is HTMLElement => target instanceof HTMLElement && target.dataset['place'] !== undefined);
    const part = row === undefined ? undefined : this.parts[Number(row.dataset['place'])];
    if (part !== undefined) this.list.focused(part.id);
  }

  override render(): TemplateResult {
    const { parts, list } = this;
    const { stop } = list;
    const joined = joinedParts(this.judgement.joints);
    return html`
      <table aria-rowcount=${parts.length + 1} @keydown=${(event: KeyboardEvent) => list.key(event)} @focusin=${(event: FocusEvent) => this.focusIn(event)}>
        <caption class="unseen">Parts of the cabin; arrow keys go from row to row, Enter opens one</caption>
        <thead><tr aria-rowindex="1"><td class="swatch"></td><th scope="col"><adjoin-term word="part">part</adjoin-term></th><th scope="col" class="code more">number</th><th scope="col" class="zone">zone</th><th scope="col" class="material"><adjoin-term word="material">material</adjoin-term></th><th scope="col" class="supplier more">supplier</th>
          <th scope="col" class="number count more"><adjoin-term word="source">sources</adjoin-term></th><th scope="col" class="number count less"><adjoin-term word="specimen">specimens</adjoin-term></th><th scope="col" class="number count readings"><adjoin-term word="reading">readings</adjoin-term></th><th scope="col" class="number joints more">joints</th></tr></thead>
        <tbody>${windowedRows(list, (place) => parts[place]?.id, (place) => this.row(parts[place] as Part, place, stop, joined))}</tbody>
      </table>
      ${parts.length === 0 ? html`<p class="none">No part passes the filter.</p>` : nothing}`;
  }

  private row(part: Part, place: number, stop: string | undefined, joined: ReadonlyMap<string, Joined>): TemplateResult {
    const source = standingSource(part);
    const here = part.id === this.chosen;
    const specimens = part.sources.flatMap((one) => one.specimens);
    const readings = specimens.reduce((sum, one) => sum + one.readings.length, 0);
    const { joints, clashes, mirrored } = joined.get(part.id) ?? { joints: 0, clashes: 0, mirrored: false };
    const suppliers = [...new Set(part.sources.map(({ supplier }) => this.cabin.suppliers.find(({ id }) => id === supplier)?.name ?? supplier))];
    return html`
      <tr data-place=${place} aria-rowindex=${place + 2} class=${here ? 'here' : ''} ${standsFor({ parts: [part.id] }, !this.locked)}>
        <td class="swatch">${swatch(this.colours.get(part.id))}</td>
        <th scope="row"><a href=${this.linkTo({ view: 'parts', item: part.id })} tabindex=${part.id === stop ? 0 : -1} aria-current=${here ? 'true' : nothing}>${part.name}</a>${part.hand === undefined || part.hand === 'none' || part.name.toLowerCase().includes(part.hand) ? nothing : html` <span class="quiet">${part.hand}</span>`}</th>
        <td class="code more quiet">${part.partNumber ?? '–'}</td>
        <td class="zone">${this.cabin.zones.find(({ id }) => id === part.zone)?.name ?? part.zone}</td>
        <td class="material">${source?.material ?? '–'}</td>
        <td class="more">${suppliers.join(', ')}</td>
        <td class="number more">${part.sources.length}</td>
        <td class="number less">${specimens.length}</td>
        <td class="number readings ${readings === 0 ? mirrored ? 'quiet' : 'lacking' : ''}">${readings === 0 ? mirrored ? 'mirrored' : 'none' : readings}</td>
        <td class="number more">${joints}${clashes > 0 ? html`, <span class="word clashes">${counted(clashes, 'clash', 'clashes')}</span>` : nothing}</td>
      </tr>`;
  }
}

/** By the id of each part that is joined. */
const joinedParts = remembered((joints: readonly JointResult[]): ReadonlyMap<string, Joined> => {
  const found = new Map<string, { joints: number; clashes: number; mirrored: boolean }>();
  const of = (id: string): { joints: number; clashes: number; mirrored: boolean } => {
    const known = found.get(id) ?? { joints: 0, clashes: 0, mirrored: false };
    found.set(id, known);
    return known;
  };
  for (const { parts, verdict, judgedOn } of joints) {
    for (const id of parts) {
      const joined = of(id);
      joined.joints += 1;
      if (verdict === 'clashes') joined.clashes += 1;
    }
    for (const { part, borrowedFrom } of judgedOn) if (borrowedFrom !== undefined) of(part).mirrored = true;
  }
  return found;
});

customElements.define('adjoin-part-table', AdjoinPartTable);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-part-table': AdjoinPartTable;
  }
}
