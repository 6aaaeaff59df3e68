import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Cabin, CheckName } from '../../../src/cabin/cabin.ts';
import { agedStages } from '../../../src/harmony/compare/ageing.ts';
import type { AgedPart, CheckChange, JointChange, JudgedState } from '../../../src/harmony/compare/index.ts';
import { standingWord } from '../../../src/harmony/compare/joint-figures.ts';
import type { Issue } from '../../../src/issue.ts';
import { issueText } from '../../../src/issue.ts';
import { decimalsOf, fixed, limitUseText, signed } from '../../../src/report/number-text.ts';
import { changeWord } from '../../../src/report/sections/change-table.ts';
import { summaryText } from '../../../src/report/sections/comparison.ts';
import { ReportBridge } from '../../../src/workers/report-bridge.ts';
import type { AgainstState, ComparedReply } from '../../../src/workers/report-protocol.ts';
import { ComparedCabin, ofFile } from '../../controllers/compared-cabin.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import type { ChangeFilter } from '../../model/change-filter.ts';
import { changeFilters, changeTitles, filterCounts, passesFilter } from '../../model/change-filter.ts';
import { findLight } from '../../model/light-groups.ts';
import { partColours } from '../../model/part-colours.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import '../cabin/adjoin-cabin-map.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-change-list.ts';
import type { DrawnState } from './adjoin-change-list.ts';
import { styles } from './compare-view.styles.ts';

/** Two judged states and what lies between them. */
interface ComparedStates extends Pick<ComparedReply, 'comparison' | 'ageing'> {
  readonly before: JudgedState;
  readonly after: JudgedState;
}

const beforeNow = ['before', 'now'] as const;
const axes = ['ΔL*', 'Δa*', 'Δb*'] as const;

/** The open cabin against another one, or against a stage of its own: on the map, as strips before and after, and as a table. */
export class AdjoinCompareView extends ViewElement {
  static override styles = [base, controls, fields, styles, stacked];
  static override properties = { against: { state: true }, reply: { state: true }, issues: { state: true }, working: { state: true }, pointed: { state: true } };

  declare against: AgainstState | undefined;
  declare reply: ComparedStates | undefined;
  declare issues: readonly Issue[];
  declare working: boolean;
  declare pointed: string | undefined;
  private readonly bridge = new ReportBridge();
  private readonly compared = new ComparedCabin(this, this.bridge, 'compared');
  private asked: { readonly cabin: Cabin; readonly key: string; readonly against: AgainstState } | undefined;

  constructor() {
    super();
    this.issues = [];
    this.working = false;
    this.addEventListener('adjoin-files', (event) => {
      const [file] = (event as CustomEvent<readonly File[]>).detail;
      if (file !== undefined) void this.compared.take(file);
    });
    this.addEventListener('adjoin-point', (event) => { this.pointed = (event as CustomEvent<string | undefined>).detail; });
    this.addEventListener('adjoin-open-joint', (event) => this.go({ view: 'joint', joint: (event as CustomEvent<string>).detail, item: undefined, options: {} }));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.bridge.end();
    this.asked = undefined;
  }

  private get stages(): readonly string[] {
    return ['new', ...agedStages(this.open.cabin)];
  }

  private option<T extends string>(name: string, values: readonly T[], otherwise: T): T {
    return values.find((value) => value === this.route.options?.[name]) ?? otherwise;
  }

  private set(change: Readonly<Record<string, string>>): void {
    this.go({ options: { ...this.route.options, ...change } }, true);
  }

  /** What stands before and what stands now; without anything to compare with there is no before. */
  private get wanted(): { readonly stage: string; readonly against: AgainstState } | undefined {
    const { stages } = this;
    const stage = this.option('stage', stages, this.open.judgement.stage);
    if (this.against !== undefined) return { stage, against: this.against };
    const before = this.route.options?.['before'];
    const earlier = this.desk.earlier.find(({ id }) => id === before);
    if (earlier !== undefined) return { stage, against: { cabin: earlier.cabin } };
    return before === undefined || !stages.includes(before) || before === stage ? undefined : { stage, against: { stage: before } };
  }

  /** The cabin of a file stands in the address as such. */
  private followFile(changed: PropertyValues<this>): void {
    const named = this.route.options?.['before'] === ofFile;
    if (changed.has('against') && this.against?.cabin !== undefined && !named) this.set({ before: ofFile });
    this.compared.follow(named);
  }

  protected override updated(changed: PropertyValues<this>): void {
    this.followFile(changed);
    if (!['open', 'route', 'against'].some((name) => changed.has(name as keyof AdjoinCompareView)) || this.open.judging) return;
    const { wanted } = this;
    if (wanted === undefined) {
      if (this.reply !== undefined) this.reply = undefined;
      this.asked = undefined;
      return;
    }
    const key = JSON.stringify([wanted.stage, wanted.against.stage]);
    const { asked } = this;
    if (asked?.cabin === this.open.cabin && asked.key === key && asked.against.cabin === wanted.against.cabin) return;
    void this.compare(wanted.stage, wanted.against, key);
  }

  private async compare(stage: string, against: AgainstState, key: string): Promise<void> {
    const now = { cabin: this.open.cabin, key, against };
    this.asked = now;
    this.bridge.stop();
    this.working = true;
    try {
      const reply = await this.bridge.ask({ kind: 'compare', cabin: now.cabin, stage, against });
      if (this.asked !== now) return;
      if (reply.kind === 'refused') this.issues = reply.issues;
      if (reply.kind === 'compared') this.reply = { ...reply, before: { cabin: against.cabin ?? now.cabin, judgement: reply.before }, after: { cabin: now.cabin, judgement: reply.after } };
    } catch (reason) {
      if (this.asked === now && !(reason instanceof DOMException)) this.issues = [{ code: 'not-compared', severity: 'error', found: String(reason) }];
    } finally {
      if (this.asked === now) this.working = false;
    }
  }

  override render(): TemplateResult {
    const { reply } = this;
    return html`
      <header>
        <div class="top">
          <h1>Compare</h1>
          ${this.beforeField()}
          <label class="field"><span class="label">Now: ${this.open.cabin.name}</span><span class="pick"><select @change=${(event: Event) => this.set({ stage: (event.target as HTMLSelectElement).value })}>
            ${this.stages.map((stage) => html`<option value=${stage} ?selected=${stage === this.option('stage', this.stages, this.open.judgement.stage)}>stage ${stage}</option>`)}
          </select></span></label>
          <button type="button" @click=${() => void this.compared.take()}>Another cabin before</button>
        </div>
        ${this.issues.length === 0 ? nothing : html`<div class="faults" role="alert"><b>Not taken</b>${this.issues.slice(0, 6).map((issue) => html`<p>${issueText(issue)}</p>`)}</div>`}
        ${reply === undefined ? nothing : this.summary(reply)}
      </header>
      ${reply === undefined ? this.empty() : this.body(reply)}
    `;
  }

  private beforeField(): TemplateResult {
    const { against } = this;
    if (against?.cabin !== undefined) {
      return html`<div class="field"><span class="label">Before</span><button type="button" @click=${() => { this.against = undefined; this.reply = undefined; this.set({ before: '' }); }}>${against.cabin.name} ×<span class="unseen"> leave out</span></button></div>`;
    }
    const before = this.route.options?.['before'] ?? '';
    return html`<label class="field"><span class="label">Before</span><span class="pick"><select @change=${(event: Event) => this.set({ before: (event.target as HTMLSelectElement).value })}>
      <option value="">nothing yet</option>
      ${this.desk.earlier.map(({ id, words }) => html`<option value=${id} ?selected=${id === before}>${words}</option>`)}
      ${this.stages.map((stage) => html`<option value=${stage} ?selected=${stage === before}>stage ${stage}</option>`)}
    </select></span></label>`;
  }

  private summary({ comparison, ageing }: ComparedStates): TemplateResult {
    const counts = filterCounts(comparison);
    const now = this.option<ChangeFilter>('kind', changeFilters, 'changed');
    const shown = this.option('as', ['map', 'table'], 'map');
    return html`
      <p class="lead" role="status">${summaryText(comparison.summary)}${ageing === undefined || ageing.holdThenClash.length === 0 ? '' : ` ${ageing.holdThenClash.length} hold before and clash after.`}</p>
      ${comparison.notes.length === 0 ? nothing : html`<ul class="notes">${comparison.notes.map((note) => html`<li>${note}</li>`)}</ul>`}
      <div class="kinds">
        <span class="unseen" id="kinds">Kind of change</span>
        ${changeFilters.filter((kind) => kind === 'changed' || kind === now || (counts.get(kind) ?? 0) > 0).map((kind) => html`<button
          type="button" aria-pressed=${kind === now} @click=${() => this.set({ kind })}>${changeTitles[kind]} <span class="count">${counts.get(kind)}</span></button>`)}
        <span class="views">
          <button type="button" aria-pressed=${shown === 'map'} @click=${() => this.set({ as: 'map' })}>Map and strips</button>
          <button type="button" aria-pressed=${shown === 'table'} @click=${() => this.set({ as: 'table' })}>Table</button>
        </span>
      </div>
    `;
  }

  private empty(): TemplateResult {
    const aged = this.stages.filter((stage) => stage !== 'new');
    if (this.working) return html`<div class="empty" role="status"><b>Judging both.</b></div>`;
    return html`<div class="empty">
      ${this.route.options?.['before'] === ofFile && this.compared.absent ? html`<p role="status">The cabin of this address was in a file that is not here. Pick it again to see the comparison.</p>` : nothing}
      <b>Which joints became better, worse, new or gone?</b>
      <p class="quiet">Set ${this.open.cabin.name} against another cabin file: the build phase before, or the cabin before a supplier changed. Or set it against itself: before one of the last steps, as it was saved, or at another <adjoin-term word="stage">stage</adjoin-term>.</p>
      <div class="choices">
        <button class="strong" type="button" @click=${() => void this.compared.take()}>Pick a cabin file</button>
        ${this.desk.earlier.slice(0, 1).map(({ id, words }) => html`<button type="button" @click=${() => this.set({ before: id })}>Now against ${words}</button>`)}
        ${aged.map((stage) => html`<button type="button" @click=${() => this.set({ before: 'new', stage })}>New against ${stage}</button>`)}
      </div>
      ${aged.length === 0 ? html`<p class="quiet">No specimen of this cabin was brought to another stage.</p>` : nothing}
    </div>`;
  }

  private drawn({ before, after }: ComparedStates): readonly [DrawnState, DrawnState] {
    const light = findLight(this.light, this.open.cabin.lights);
    const named = before.cabin === after.cabin || before.cabin.name === after.cabin.name;
    const state = ({ cabin, judgement }: JudgedState, title: string): DrawnState =>
      ({ cabin, title, colours: light === undefined ? new Map() : partColours(judgement, light, this.gamut) });
    return [
      state(before, named && before.judgement.stage !== after.judgement.stage ? before.judgement.stage : 'before'),
      state(after, named && before.judgement.stage !== after.judgement.stage ? after.judgement.stage : 'now'),
    ];
  }

  private body(reply: ComparedStates): TemplateResult {
    const kind = this.option<ChangeFilter>('kind', changeFilters, 'changed');
    const changes = reply.comparison.joints.filter((change) => passesFilter(change, kind));
    if (this.option('as', ['map', 'table'], 'map') === 'table') return this.tables(reply, changes);
    const [before, after] = this.drawn(reply);
    const ids = new Set(changes.map(({ id }) => id));
    return html`
      <div class="body">
        <adjoin-cabin-map
          .cabin=${this.open.cabin} .judgement=${reply.after.judgement} .listed=${reply.after.judgement.joints.filter(({ id }) => ids.has(id))} .colours=${after.colours}
          .paths=${this.open.paths} .light=${this.light} .pointed=${this.pointed}
        ></adjoin-cabin-map>
        <div class="list" tabindex="0" role="region" aria-label="Joints that changed">
          ${changes.length === 0 ? html`<p class="nothing">No joint is ${kind === 'changed' ? 'changed' : changeTitles[kind].toLowerCase()}.</p>` : html`<adjoin-change-list
            .changes=${changes} .former=${before} .present=${after} .locked=${this.open.locked} .linkTo=${this.toJoint}
          ></adjoin-change-list>`}
        </div>
      </div>
    `;
  }

  private readonly toJoint = (joint: string): string => this.linkTo({ view: 'joint', joint, item: undefined, options: {} });

  private readonly toPart = (part: string): string => this.linkTo({ view: 'parts', item: part, joint: undefined, options: {} });

  private tables({ comparison, ageing }: ComparedStates, changes: readonly JointChange[]): TemplateResult {
    return html`<div class="body table" tabindex="0" role="region" aria-label="Tables of the comparison">
      ${ageing === undefined || ageing.parts.length === 0 ? nothing : this.grades(ageing.parts)}
      <table class="stacked">
        <caption>Joints, before and now</caption>
        <thead><tr><th scope="col">Joint</th><th scope="col">Change</th><th scope="col"><adjoin-term word="verdict">Verdict</adjoin-term> before</th><th scope="col">now</th>
          ${['Colour', 'Gloss', 'Texture'].map((name) => html`<th scope="col" class="number">${name} before</th><th scope="col" class="number">now</th>`)}
          <th scope="col" class="number"><adjoin-term word="limit use">Limit use</adjoin-term> before</th><th scope="col" class="number">now</th></tr></thead>
        <tbody>${changes.map((change) => html`<tr ${standsFor({ joint: change.id }, change.after !== undefined && !this.open.locked, change.after !== undefined)}>
          <th scope="row">${change.after === undefined ? html`${change.names[0]} and ${change.names[1]}` : html`<a href=${this.toJoint(change.id)}>${change.names[0]} and ${change.names[1]}</a>`}</th><td data-name="change">${changeWord(change)}</td>
          ${[change.before, change.after].map((side, index) => html`<td data-name=${beforeNow[index] ?? ''}>${side === undefined ? '–' : html`<span class="word ${side.verdict}">${standingWord(side)}</span>`}</td>`)}
          ${(['colour', 'gloss', 'texture'] as const).map((name) => this.values(change, name))}
          ${[change.before, change.after].map((side, index) => html`<td class="number" data-name=${`limit use ${beforeNow[index]}`}>${limitUseText(side?.limitUse)}</td>`)}
        </tr>`)}</tbody>
      </table>
      ${comparison.parts.length === 0 ? nothing : html`<table class="stacked">
        <caption>Parts that stand by something else or look different; colour under D65, now minus before</caption>
        <thead><tr><th scope="col">Part</th><th scope="col">Stood by</th><th scope="col">Stands by</th>${['ΔL*', 'Δa*', 'Δb*', 'ΔE00', 'Gloss, GU', 'Sa, µm'].map((title) => html`<th scope="col" class="number">${title}</th>`)}</tr></thead>
        <tbody>${comparison.parts.map(({ part, name, before, after, colour, gloss, texture }) => html`<tr ${standsFor({ parts: [part] }, after !== undefined && !this.open.locked, after !== undefined)}>
          <th scope="row">${after === undefined ? name : html`<a href=${this.toPart(part)}>${name}</a>`}</th><td data-name="stood by">${before?.supplier ?? '–'}</td><td data-name="stands by">${after?.supplier ?? '–'}</td>
          ${[colour?.dL, colour?.da, colour?.db].map((value, axis) => html`<td class="number" data-name=${axes[axis] ?? ''}>${signed(value, 2)}</td>`)}<td class="number" data-name="ΔE00">${fixed(colour?.ciede2000, 2)}</td>
          <td class="number" data-name="gloss, GU">${gloss.length === 0 ? '–' : gloss.map(({ angle, change }) => `${signed(change, 2)} at ${angle}°`).join(', ')}</td><td class="number" data-name="Sa, µm">${signed(texture?.change, 2)}</td>
        </tr>`)}</tbody>
      </table>`}
    </div>`;
  }

  private values({ checks }: JointChange, name: CheckName): TemplateResult {
    const check: CheckChange | undefined = checks.find((one) => one.check === name);
    return html`${[check?.before, check?.after].map((side, index) => html`<td class="number" data-name=${`${name} ${beforeNow[index]}`}>${fixed(side?.value, decimalsOf(side?.unit ?? ''))}</td>`)}`;
  }

  private grades(parts: readonly AgedPart[]): TemplateResult {
    return html`<table class="stacked">
      <caption>Change of each part, exposed minus unexposed; grey-scale grade after ISO 105-A05</caption>
      <thead><tr><th scope="col">Part</th><th scope="col">Geometry</th>${['ΔL*', 'Δa*', 'Δb*', 'ΔE*ab', 'Grade'].map((title) => html`<th scope="col" class="number">${title === 'Grade' ? html`<adjoin-term word="grade">Grade</adjoin-term>` : title}</th>`)}<th scope="col">It is now</th></tr></thead>
      <tbody>${parts.map(({ part, source, name, geometry, difference, cie76, greyScale, words, fast }) => html`<tr ${standsFor({ parts: [part], source }, !this.open.locked)}>
        <th scope="row"><a href=${this.toPart(part)}>${name}</a></th><td data-name="geometry">${geometry}</td>${[difference.dL, difference.da, difference.db].map((value, axis) => html`<td class="number" data-name=${axes[axis] ?? ''}>${signed(value, 2)}</td>`)}
        <td class="number" data-name="ΔE*ab">${fixed(cie76, 2)}</td><td class="number" data-name="grade">${fast ? greyScale.grade : html`<b>${greyScale.grade}</b>`} (${fixed(greyScale.value, 2)})</td><td data-name="it is now">${words.join(', ') || 'hardly changed'}</td>
      </tr>`)}</tbody>
    </table>`;
  }
}

customElements.define('adjoin-compare-view', AdjoinCompareView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-compare-view': AdjoinCompareView;
  }
}
