import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { SpecimenPlace } from '../../../src/actions/import-mapping.ts';
import type { ImportChoices, NewPart, PlannedPlace } from '../../../src/actions/plan-imports.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { materials, specimenKinds } from '../../../src/cabin/cabin.ts';
import { specimenKey } from '../../../src/formats/reading-summary.ts';
import type { FoundSpecimen } from '../../../src/formats/reading-summary.ts';
import { counted } from '../../../src/report/number-text.ts';
import type { ImportItem } from '../../controllers/import-desk.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { mostInList } from '../../model/matching.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields } from '../../styles/fields.ts';
import { styles } from './import-places.styles.ts';

const shownAtFirst = 60;
/** Choices that all rows together may have. */
const mostInTable = 1000;
const leaveOut = '\u0000out';
const newPart = '\u0000new';

/**
 * Where the readings of each specimen of a file go: part, source, specimen, stage; each can be changed.
 * @fires adjoin-choices - a place was given
 */
export class AdjoinImportPlaces extends InTurnElement {
  static override styles = [base, controls, fields, styles];
  static override properties = { item: { attribute: false }, cabin: { attribute: false }, locked: { type: Boolean }, all: { state: true }, offering: { state: true } };

  declare item: ImportItem;
  declare cabin: Cabin;
  declare locked: boolean;
  declare all: boolean;
  /** Specimen whose row offers all parts. */
  declare offering: string | undefined;

  constructor() {
    super();
    this.all = false;
  }

  private tell(change: Partial<ImportChoices>): void {
    this.dispatchEvent(new CustomEvent('adjoin-choices', { detail: change, bubbles: true, composed: true }));
  }

  private setPlace(specimen: string, change: Partial<Record<keyof SpecimenPlace, unknown>>): void {
    const { specimens = {} } = this.item.choices;
    const place = Object.fromEntries(Object.entries({ ...specimens[specimen], ...change }).filter(([, value]) => value !== undefined && value !== '')) as SpecimenPlace;
    this.tell({ specimens: { ...specimens, [specimen]: place } });
  }

  private setPart({ part, specimen }: FoundSpecimen, value: string): void {
    const { parts = {}, newParts = {} } = this.item.choices;
    const name = part ?? specimen;
    const { [name]: _new, ...otherNew } = newParts;
    const { [name]: _part, ...others } = parts;
    if (value === leaveOut) {
      this.setPlace(specimen, { skip: true, part: undefined, source: undefined });
      return;
    }
    const specimens = { ...this.item.choices.specimens, [specimen]: withoutPart(this.item.choices.specimens?.[specimen]) };
    if (value === newPart) this.tell({ specimens, parts: others, newParts: { ...otherNew, [name]: this.draft(name) } });
    else if (part === undefined) this.tell({ newParts: otherNew, specimens: { ...specimens, [specimen]: { ...specimens[specimen], ...(value === '' ? {} : { part: value }) } } });
    else this.tell({ specimens, newParts: otherNew, parts: value === '' ? others : { ...others, [part]: value } });
  }

  private draft(name: string): NewPart {
    return { name, zone: this.cabin.zones[0]?.id ?? '', supplier: this.cabin.suppliers[0]?.id ?? 'Supplier', material: 'moulded' };
  }

  override render(): TemplateResult {
    const { summary } = this.item.found ?? {};
    const specimens = summary?.specimens ?? [];
    const shown = this.all ? specimens : specimens.slice(0, shownAtFirst);
    const staged = specimens.some(({ stage }) => stage !== undefined) || this.cabin.stage !== undefined || this.cabin.parts.some((part) => part.sources.some((source) => source.specimens.some(({ exposure }) => exposure !== undefined)));
    const drafts = Object.entries(this.item.choices.newParts ?? {});
    return html`
      <section>
        <h3>Where it goes</h3>
        <div class="wide" tabindex="0" role="region" aria-label="Where the readings go"><table>
          <thead><tr><th scope="col">in the file</th><th scope="col">readings</th><th scope="col">part</th><th scope="col">source</th><th scope="col">specimen</th><th scope="col">is a</th>${staged ? html`<th scope="col">stage</th>` : nothing}</tr></thead>
          <tbody>${shown.map((found) => this.row(found, staged))}</tbody>
        </table></div>
        ${specimens.length > shown.length ? html`<button type="button" @click=${() => { this.all = true; }}>Show all ${specimens.length}</button>` : nothing}
        ${(summary?.moreSpecimens ?? 0) > 0 ? html`<p class="quiet">and ${counted(summary?.moreSpecimens ?? 0, 'specimen')} more, placed by the same names of parts and sources</p>` : nothing}
        ${drafts.length === 0 ? nothing : html`<h3 class="parts">Parts to be made</h3>${drafts.map(([name, part]) => this.newPart(name, part))}`}
      </section>`;
  }

  private row(found: FoundSpecimen, staged: boolean): TemplateResult {
    const { choices, planned } = this.item;
    const place = planned?.places[specimenKey(found)];
    const given = choices.specimens?.[found.specimen];
    const names = [...new Set([found.part, found.source ?? found.supplier, found.specimen].filter((word) => word !== undefined))];
    const label = names.join(', ');
    const part = place?.at === 'source' ? place.part : undefined;
    const isNew = choices.newParts?.[found.part ?? found.specimen] !== undefined;
    const picked = given?.skip === true ? leaveOut : isNew ? newPart : given?.part ?? (found.part === undefined ? undefined : choices.parts?.[found.part]) ?? part ?? '';
    // All rows together would have a hundred thousand choices in a large cabin.
    const offered = (this.cabin.parts.length <= mostInList && this.cabin.parts.length * (this.item.found?.summary.specimens.length ?? 0) <= mostInTable) || this.offering === specimenKey(found) ? this.cabin.parts : this.cabin.parts.filter(({ id }) => id === picked);
    const sources = this.cabin.parts.find(({ id }) => id === (part ?? picked))?.sources ?? [];
    const open = place === undefined && planned !== undefined;
    return html`
      <tr class=${open ? 'open' : place?.at === 'nowhere' ? 'out' : ''}>
        <th scope="row">${names.map((word, i) => html`${i > 0 ? ' / ' : ''}<span class=${i === names.length - 1 ? 'own' : ''}>${word}</span>`)}${found.stage === undefined ? nothing : html` <span class="quiet">${found.stage}</span>`}</th>
        <td class="number">${found.readings}</td>
        <td>${place?.at === 'masters' ? html`<span class="fixed">a master of the cabin</span>` : this.select(`Part for ${label}`, picked, [
          ['', open ? 'choose' : 'by its name'], ...offered.map(({ id, name }) => [id, name] as const), [newPart, `make a new part “${found.part ?? found.specimen}”`], [leaveOut, 'leave out'],
        ], open, (value) => this.setPart(found, value), () => { this.offering = specimenKey(found); })}</td>
        <td>${place?.at === 'nowhere' || place?.at === 'masters' || isNew || sources.length === 0 ? '–' : sources.length === 1 ? this.sourceName(sources[0]?.id ?? '', part ?? picked)
          : this.select(`Source for ${label}`, given?.source ?? (place?.at === 'source' ? place.source : ''), [
            ['', 'choose'], ...sources.map(({ id }) => [id, this.sourceName(id, part ?? picked)] as const),
          ], open && given?.source === undefined, (value) => this.setPlace(found.specimen, { source: value }))}</td>
        <td>${place?.at === 'nowhere' ? '–' : html`<input type="text" aria-label="Specimen for ${label}" autocomplete="off" ?disabled=${this.locked} .value=${live(given?.specimen ?? found.specimen)}
          @change=${(event: Event) => { const value = (event.target as HTMLInputElement).value.trim(); this.setPlace(found.specimen, { specimen: value === found.specimen ? '' : value }); }} />`}</td>
        <td>${place === undefined || place.at === 'nowhere' ? '–' : this.kind(found, place, label, given?.kind)}</td>
        ${staged ? html`<td>${place?.at === 'source' ? html`<input class="stage" type="text" aria-label="Stage of ${label}" autocomplete="off" ?disabled=${this.locked} .value=${live(given?.stage ?? choices.stages?.[found.stage ?? ''] ?? place.stage)}
          @change=${(event: Event) => this.setPlace(found.specimen, { stage: (event.target as HTMLInputElement).value.trim() })} />` : '–'}</td>` : nothing}
      </tr>`;
  }

  private kind(found: FoundSpecimen, place: Exclude<PlannedPlace, { readonly at: 'nowhere' }>, label: string, given: string | undefined): TemplateResult {
    if (!place.isNew) return html`<span class="fixed">known specimen</span>`;
    return this.select(`Kind of ${label}`, given ?? found.kind ?? '', [['', `new ${this.item.choices.newSpecimens ?? 'specimen'}`], ...specimenKinds.map((kind) => [kind, `new ${kind}`] as const)], false,
      (value) => this.setPlace(found.specimen, { kind: value }));
  }

  private sourceName(id: string, part: string): string {
    const source = this.cabin.parts.find((one) => one.id === part)?.sources.find((one) => one.id === id);
    const supplier = this.cabin.suppliers.find((one) => one.id === source?.supplier)?.name ?? source?.supplier;
    return source === undefined ? id : `${supplier}, ${source.material}`;
  }

  private newPart(name: string, part: NewPart): TemplateResult {
    const set = (change: Partial<NewPart>): void => this.tell({ newParts: { ...this.item.choices.newParts, [name]: { ...part, ...change } } });
    const text = (event: Event): string => (event.target as HTMLInputElement).value.trim();
    return html`
      <fieldset>
        <legend>for “${name}”</legend>
        <label class="field"><span class="label">Name</span><input type="text" autocomplete="off" ?disabled=${this.locked} .value=${live(part.name)} @change=${(event: Event) => set({ name: text(event) })} /></label>
        <label class="field"><span class="label">Zone</span>${this.select(undefined, part.zone, this.cabin.zones.map((zone) => [zone.id, zone.name]), false, (zone) => set({ zone }))}</label>
        <label class="field"><span class="label">Material</span>${this.select(undefined, part.material, materials.map((material) => [material, material]), false, (material) => set({ material }))}</label>
        <label class="field"><span class="label">Supplier, known or new</span><input type="text" autocomplete="off" ?disabled=${this.locked} .value=${live(this.cabin.suppliers.find(({ id }) => id === part.supplier)?.name ?? part.supplier)} @change=${(event: Event) => set({ supplier: text(event) || 'Supplier' })} /></label>
      </fieldset>`;
  }

  private select(label: string | undefined, value: string, options: readonly (readonly [string, string])[], open: boolean, set: (value: string) => void, reached?: () => void): TemplateResult {
    return html`<span class="pick"><select aria-label=${label ?? nothing} aria-invalid=${open} ?disabled=${this.locked} @focus=${reached ?? nothing} @pointerdown=${reached ?? nothing} @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
      ${options.map(([id, name]) => html`<option value=${id} ?selected=${id === value}>${name}</option>`)}
    </select></span>`;
  }
}

const withoutPart = (place: SpecimenPlace | undefined): SpecimenPlace => {
  const { skip: _skip, part: _part, source: _source, ...rest } = place ?? {};
  return rest;
};

customElements.define('adjoin-import-places', AdjoinImportPlaces);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-import-places': AdjoinImportPlaces;
  }
}
