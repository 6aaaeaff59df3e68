import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { sameValue } from '../../../src/actions/edit.ts';
import type { Cabin, Part } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { SpecimenQuality, SpotsForLimit } from '../../../src/harmony/quality/index.ts';
import type { GaugeShare, OutlierSuggestion, VarianceComponents } from '../../../src/readings/quality/index.ts';
import type { Reading } from '../../../src/readings/reading.ts';
import { counted, fixed, percent } from '../../../src/report/number-text.ts';
import type { QualityLook } from '../../../src/workers/session-look.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Route } from '../../controllers/route.ts';
import { mostPrinted } from '../../controllers/windowed-list.ts';
import { bareRows } from '../../controllers/windowed-rows.ts';
import { Sections } from '../../controllers/sections.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { shareBar } from '../../figures/share-bar.ts';
import { partsById } from '../../model/joint-filter.ts';
import { remembered } from '../../model/remembered.ts';
import '../../app/adjoin-long-list.ts';
import '../../app/adjoin-term.ts';
import '../../app/adjoin-ways.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { pageStyles } from './readings-view.styles.ts';

/** Readings of one quantity of one specimen as a row. */
interface Row {
  readonly key: string;
  readonly specimen: SpecimenQuality;
  readonly what: string;
  readonly unit: string;
  readonly instrument: string;
  readonly readings: number;
  readonly spots: number;
  /** Spread in words, by axis where there are axes. */
  readonly spread: string;
  readonly mcdm?: number;
  readonly forLimit?: SpotsForLimit;
  readonly gauge?: GaugeShare;
  readonly components: readonly (readonly [axis: string, components: VarianceComponents, all: number, spots: number])[];
  readonly outliers: readonly (OutlierSuggestion & { readonly reading: Reading })[];
  readonly decimals: number;
}

const textureNames: Readonly<Record<string, string>> = { saUm: 'Sa', salMm: 'Sal', str: 'Str', vdiClass: 'VDI 3400 class' };

function rowsOf(specimen: SpecimenQuality): Row[] {
  const axes = ['L*', 'a*', 'b*'] as const;
  return [
    ...specimen.colour.map((one, index): Row => ({
      key: `${specimen.specimen} colour ${index}`, specimen, what: `colour, ${one.geometryClass}`, unit: one.formula, instrument: one.instrument, readings: one.readings, spots: one.spots, mcdm: one.all.mcdm,
      spread: axes.map((axis, at) => `${axis} ${fixed(one.spotSd[at], 2)}`).join(', '), ...(one.forLimit === undefined ? {} : { forLimit: one.forLimit }), ...(one.gauge === undefined ? {} : { gauge: one.gauge }),
      components: axes.map((axis, at) => [axis, one.components[at], one.all.sd[at], one.spotSd[at]] as never), outliers: one.outliers, decimals: 3,
    })),
    ...specimen.gloss.map((one): Row => ({
      key: `${specimen.specimen} gloss ${one.angle}`, specimen, what: `gloss at ${one.angle}°`, unit: 'GU', instrument: one.instrument, readings: one.readings, spots: one.spots,
      spread: fixed(one.spotSd, 2), ...(one.forLimit === undefined ? {} : { forLimit: one.forLimit }), ...(one.gauge === undefined ? {} : { gauge: one.gauge }),
      components: [['gloss', one.components, one.sd, one.spotSd]], outliers: one.outliers, decimals: 2,
    })),
    ...specimen.texture.map((one): Row => ({
      key: `${specimen.specimen} texture ${one.parameter}`, specimen, what: textureNames[one.parameter] ?? one.parameter, unit: one.relative ? 'share of the size' : '', instrument: one.instrument, readings: one.readings, spots: one.spots,
      spread: one.relative ? percent(one.spotSd) : fixed(one.spotSd, 2), ...(one.forLimit === undefined ? {} : { forLimit: one.forLimit }), ...(one.gauge === undefined ? {} : { gauge: one.gauge }),
      components: [[textureNames[one.parameter] ?? one.parameter, one.components, one.sd, one.spotSd]], outliers: one.outliers, decimals: 3,
    })),
  ];
}

const shares = ({ forLimit, gauge }: Row): { readonly error: number | undefined; readonly gauge: number | undefined } =>
  ({ error: forLimit === undefined ? undefined : forLimit.standardError / forLimit.limit, gauge: gauge?.share });

const allRows = remembered((specimens: readonly SpecimenQuality[]): readonly Row[] => specimens.flatMap(rowsOf));

const troubled = (row: Row): boolean => {
  const { error } = shares(row);
  return (error !== undefined && row.forLimit !== undefined && error > row.forLimit.goalShare) || (row.gauge?.instrumentShare ?? 0) > 0.25 || row.outliers.length > 0;
};

/** Every group of readings: repeatability, spread over spots, enough spots or not, share of the gauge in the limit, and what stands out. */
export class AdjoinQualityTable extends InTurnElement {
  static override styles = [base, controls, pageStyles, bareRows, stacked, css`
    .specimen { display: inline-block; }
    .filters { display: flex; gap: 8px; flex-wrap: wrap; align-items: center; }
    tbody th button { text-align: left; padding: 2px 4px 2px 18px; justify-content: flex-start; position: relative; }
    tbody th button::before { content: ''; position: absolute; left: 4px; top: 9px; width: 6px; height: 6px; border: solid var(--quiet); border-width: 0 1.5px 1.5px 0; transform: rotate(-45deg); }
    tbody th button[aria-expanded='true'] { background: none; color: var(--ink); border-color: transparent; }
    tbody th button[aria-expanded='true']::before { transform: rotate(45deg); top: 7px; }
    adjoin-long-list > table { min-width: 1080px; table-layout: fixed; } .who { width: 19%; } .what { width: 12%; } .many { width: 9.5%; } .mean { width: 9.5%; } .spread { width: 15%; } .bar { width: 156px; } .error { width: 7.5%; } .out { width: 8%; }
    @media (max-width: 760px) { adjoin-long-list > table { min-width: 0; } .stacked .detail td { flex: 1 1 100%; } .stacked .detail > td { padding: 8px 0 10px 18px; } }
    thead th.mean { white-space: normal; } .printed { display: none; } @media print { .printed { display: block; } }
    .detail td { background: var(--raised); padding: 8px 16px 14px 18px; }
    .detail table { min-width: 0; width: auto; } .detail .outliers li { display: flex; gap: 12px; align-items: center; padding: 2px 0; flex-wrap: wrap; }
    .legend { display: flex; gap: 6px 20px; flex-wrap: wrap; align-items: center; } .legend span { display: inline-flex; gap: 6px; align-items: center; }
  `];

  static override properties = {
    cabin: { attribute: false }, look: { attribute: false }, item: {}, route: { attribute: false }, locked: { type: Boolean }, linkTo: { attribute: false }, go: { attribute: false },
  };

  declare cabin: Cabin;
  declare look: QualityLook;
  /** Specimen to open. */
  declare item: string | undefined;
  declare route: Route;
  declare locked: boolean;
  declare linkTo: (change: Partial<Route>) => string;
  declare go: (change: Partial<Route>, refine?: boolean) => void;
  private readonly sections = new Sections(this);

  override render(): TemplateResult {
    const rows = allRows(this.look.quality.specimens);
    if (rows.length === 0) {
      return html`<p class="lead">No specimen has readings yet. Import files of them: how well they repeat, whether the spots suffice for the limits and what stands out is then seen here.</p>
        <adjoin-ways .cabin=${this.cabin} .linkTo=${this.linkTo}></adjoin-ways>`;
    }
    const judged = rows.filter(({ forLimit }) => forLimit !== undefined);
    const few = judged.filter((row) => (shares(row).error ?? 0) > (row.forLimit?.goalShare ?? 1));
    const gauges = judged.filter(({ gauge }) => (gauge?.instrumentShare ?? 0) > 0.25);
    const outliers = rows.reduce((sum, row) => sum + row.outliers.length, 0);
    const only = this.route.options?.['only'] === 'troubled';
    const supplier = this.route.filter.supplier;
    const passing = rows.filter((row) => (!only || troubled(row)) && (supplier === undefined || row.specimen.supplier === supplier) && (this.item === undefined || row.specimen.specimen === this.item || row.specimen.part === this.item))
      .toSorted((a, b) => Number(b.specimen.stands) - Number(a.specimen.stands) || (shares(b).error ?? -1) - (shares(a).error ?? -1));
    // The details of a row are a row of their own.
    const listed = passing.flatMap((row) => (this.sections.isUnfolded(row.key) ? [{ id: row.key, row, open: false }, { id: `${row.key} details`, row, open: true }] : [{ id: row.key, row, open: false }]));
    const parts = partsById(this.cabin);
    return html`
      <p class="lead">${counted(rows.length, 'group')} of readings, each of one specimen, quantity and geometry. Of the ${judged.length} that serve a limit, <b>${few.length}</b> ${few.length === 1 ? 'has' : 'have'} too few spots for it,
        in <b>${gauges.length}</b> the agreement of the instrument alone takes more than a quarter of it. <b>${counted(outliers, 'reading')}</b> ${outliers === 1 ? 'stands' : 'stand'} out; nothing is left out until it is marked.</p>
      <div class="filters">
        <a class="button ${only ? 'strong' : ''}" aria-current=${only ? 'true' : nothing} href=${this.linkTo({ view: 'readings', options: only ? {} : { only: 'troubled' } })}>Only what needs a look</a>
        <span class="pick ${supplier === undefined ? '' : 'on'}"><select aria-label="Supplier" @change=${(event: Event) => this.go({ filter: { ...this.route.filter, supplier: (event.target as HTMLSelectElement).value || undefined } as Route['filter'] }, true)}>
          <option value="" ?selected=${supplier === undefined}>Supplier: all</option>${this.cabin.suppliers.map(({ id, name }) => html`<option value=${id} ?selected=${id === supplier}>${name}</option>`)}</select></span>
        ${this.item === undefined ? nothing : html`<a class="button" href=${this.linkTo({ view: 'readings', item: undefined })}>Only ${this.item}: show all</a>`}
        <span class="quiet legend"><span>${scene(shareBar({ share: 0.12, goal: 0.16 }, { width: 70, height: 16 }, paperInk))} standard error, up to half the limit; the tick is the goal</span><span>${scene(shareBar({ share: undefined, goal: 0.16, mark: 0.2 }, { width: 70, height: 16 }, paperInk))} gauge</span></span>
      </div>
      ${passing.length === 0 ? html`<p>Nothing passes the filter.</p>` : html`
      <adjoin-long-list class="wide stacked" tabindex="0" role="region" aria-label="Measurement quality by specimen" .usual=${33} .printed=${mostPrinted} .ids=${listed.map(({ id }) => id)}
        .head=${html`<thead><tr aria-rowindex="1"><th scope="col" class="who">part, specimen</th><th scope="col" class="what">what</th><th scope="col" class="number many">readings</th><th scope="col" class="number mean"><adjoin-term word="mean difference from mean">mean difference from mean</adjoin-term></th><th scope="col" class="spread">standard deviation of spots</th>
          <th scope="col" class="bar"><adjoin-term word="limit use">share of the limit</adjoin-term></th><th scope="col" class="number error"><adjoin-term word="standard uncertainty, u">standard error</adjoin-term></th><th scope="col" class="number error"><adjoin-term word="gauge">gauge</adjoin-term></th><th scope="col" class="number error"><adjoin-term word="spots needed">spots needed</adjoin-term></th><th scope="col" class="out"><adjoin-term word="stands out">stands out</adjoin-term></th></tr></thead>`}
        .row=${(place: number) => { const { row, open } = listed[place]!; return open ? html`<tr class="detail" data-place=${place} aria-rowindex=${place + 2}><td colspan="10">${this.detail(row)}</td></tr>` : this.row(row, place, parts); }}></adjoin-long-list>
      ${listed.length > mostPrinted ? html`<p class="printed">The first ${mostPrinted} of ${counted(passing.length, 'row')} are printed here.</p>` : nothing}`}
      <p class="quiet">Mean difference from the mean (MCDM) after ASTM E2214; spots needed for the standard error by the idea of ASTM E1345; outliers by a robust score of 3.5 (Iglewicz and Hoaglin). Goal and quarter are assumptions without a source.</p>`;
  }

  private row(row: Row, place: number, parts: ReadonlyMap<string, Part>): TemplateResult {
    const { specimen, forLimit, gauge } = row;
    const { error, gauge: share } = shares(row);
    const part = specimen.part === undefined ? undefined : parts.get(specimen.part);
    const here = this.sections.isUnfolded(row.key);
    const few = forLimit !== undefined && error !== undefined && error > forLimit.goalShare;
    return html`
      <tr data-place=${place} aria-rowindex=${place + 2}>
        <th scope="row"><button class="bare" type="button" aria-expanded=${here} @click=${() => this.sections.toggle(row.key)}><span><b>${part?.name ?? (specimen.kind === 'master' ? 'master' : '')}</b> <span class="specimen">${specimen.specimen}</span>${specimen.stage === 'new' ? '' : `, ${specimen.stage}`}${specimen.stands ? nothing : html` <span class="quiet">not judged on</span>`}</span></button></th>
        <td>${row.what}</td><td class="number" data-name="readings">${row.readings} <span class="quiet">at ${counted(row.spots, 'spot')}</span></td>
        <td class=${row.mcdm === undefined ? 'number none' : 'number'} data-name="mean difference from mean">${row.mcdm === undefined ? '–' : fixed(row.mcdm, 2)}</td><td data-name="spread">${row.spots < 2 ? html`<span class="quiet">one spot</span>` : row.spread}</td>
        <td class="whole" data-name="share of the limit">${forLimit === undefined ? html`<span class="quiet">no limit</span>` : scene(shareBar({ share: error, goal: forLimit.goalShare, mark: share }, { width: 140, height: 18 }, paperInk))}</td>
        <td class="number ${few ? 'lacking' : error === undefined ? 'none' : ''}" data-name="standard error">${percent(error)}</td>
        <td class="number ${(gauge?.instrumentShare ?? 0) > 0.25 ? 'lacking' : share === undefined ? 'none' : ''}" data-name="gauge">${percent(share)}${gauge?.instrumentAssumed === true ? html` <span class="quiet">assumed</span>` : nothing}</td>
        <td class="number ${few ? 'lacking' : forLimit === undefined ? 'none' : ''}" data-name="spots needed">${forLimit === undefined ? '–' : few ? `${forLimit.spotsNeeded}, has ${forLimit.spots}` : 'enough'}</td>
        <td class=${row.outliers.length > 0 ? 'lacking' : 'none'} data-name="stands out">${row.outliers.length === 0 ? '–' : counted(row.outliers.length, 'reading')}</td>
      </tr>`;
  }

  private detail(row: Row): TemplateResult {
    const { forLimit, gauge, components, decimals } = row;
    const instrument = this.cabin.instruments.find(({ id }) => id === row.instrument)?.name ?? row.instrument;
    return html`
      <p class="quiet">${instrument}${row.unit === '' ? '' : `, in ${row.unit}`}${forLimit === undefined ? '' : `. Limit ${fixed(forLimit.limit, 2)}, standard deviation of one spot ${fixed(forLimit.spotSd, 3)} pooled with what the rule book assumes, standard error ${fixed(forLimit.standardError, 3)}`}${
        gauge === undefined ? '' : `. Instrument ${fixed(gauge.instrument, 3)}, repeatability ${gauge.repeatability === undefined ? 'not known: no place was read twice' : fixed(gauge.repeatability, 3)}, capability of the limit ${Number.isFinite(gauge.capability) ? fixed(gauge.capability, 1) : '–'}`}.</p>
      <table><thead><tr><th scope="col">standard deviation</th><th scope="col" class="number">all readings</th><th scope="col" class="number">means of spots</th><th scope="col" class="number">of that: spot</th><th scope="col" class="number">rotation</th><th scope="col" class="number">spot by rotation</th><th scope="col" class="number">repeat</th></tr></thead>
        <tbody>${components.map(([axis, found, all, spots]) => html`<tr><th scope="row">${axis}</th><td class="number" data-name="all readings">${fixed(all, decimals)}</td><td class="number" data-name="means of spots">${fixed(spots, decimals)}</td>
          ${[found.spot, found.rotation, found.spotByRotation, found.flash].map((component, index) => html`<td class="number" data-name=${['spot', 'rotation', 'spot by rotation', 'repeat'][index] ?? ''}>${component === undefined ? '–' : fixed(component.sd, decimals)}</td>`)}</tr>`)}</tbody></table>
      ${row.outliers.length === 0 ? nothing : html`<ul class="outliers">${row.outliers.map((outlier) => html`<li>
        <span>Spot ${outlier.reading.spot.name}${outlier.reading.rotationDeg === undefined ? '' : ` at ${outlier.reading.rotationDeg}°`}: ${outlier.axisName} ${fixed(outlier.value, 2)}, the others about ${fixed(outlier.median, 2)}, ${fixed(outlier.score, 1)} standard deviations out</span>
        <button type="button" ?disabled=${this.locked} @click=${() => this.mark(row.specimen.specimen, outlier.reading)}>Mark as outlier</button></li>`)}</ul>`}
      ${row.specimen.part === undefined ? nothing : html`<p class="quiet"><a href=${this.linkTo({ view: 'parts', item: row.specimen.part, options: {} })}>The part with its readings</a></p>`}`;
  }

  private mark(specimen: string, reading: Reading): void {
    const place = cabinIndex(this.cabin).specimens.get(specimen)?.specimen.readings.findIndex((one) => sameValue(one, reading)) ?? -1;
    if (place >= 0) doAction(this, 'readings.set-outlier', { specimen, readings: [place], outlier: true });
  }
}

customElements.define('adjoin-quality-table', AdjoinQualityTable);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-quality-table': AdjoinQualityTable;
  }
}
