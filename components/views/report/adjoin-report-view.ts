import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { Issue } from '../../../src/issue.ts';
import { issueText } from '../../../src/issue.ts';
import { reportSections } from '../../../src/report/sections/all-sections.ts';
import { agedStages } from '../../../src/harmony/compare/ageing.ts';
import { ReportBridge } from '../../../src/workers/report-bridge.ts';
import type { AgainstState, ReportFormat } from '../../../src/workers/report-protocol.ts';
import { announce } from '../../controllers/announcer.ts';
import { ComparedCabin, ofFile } from '../../controllers/compared-cabin.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import { fields } from '../../styles/fields.ts';
import '../../app/adjoin-ways.ts';
import { base, controls } from '../../styles/shared.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-report-page.ts';
import { styles } from './report-view.styles.ts';

const types: Readonly<Record<ReportFormat, string>> = { html: 'text/html', json: 'application/json', csv: 'text/csv' };

/** The harmony report of the open cabin: what goes into it, a preview as its reader sees it, and its export. Written in a worker, anew after each edit. */
export class AdjoinReportView extends ViewElement {
  static override styles = [base, controls, fields, styles];
  static override properties = { text: { state: true }, working: { state: true }, against: { state: true }, issues: { state: true } };

  declare text: string | undefined;
  declare working: boolean;
  /** Another cabin to compare with; a stage to compare with stands in the address, and that there is another cabin. */
  declare against: AgainstState | undefined;
  declare issues: readonly Issue[];
  private readonly bridge = new ReportBridge();
  private readonly compared = new ComparedCabin(this, this.bridge, 'reported against');
  private written: { readonly cabin: Cabin; readonly asked: string; readonly against: AgainstState | undefined } | undefined;

  constructor() {
    super();
    this.working = false;
    this.issues = [];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.bridge.end();
    this.working = false;
  }

  private get stages(): readonly string[] {
    return ['new', ...agedStages(this.open.cabin)];
  }

  private get stage(): string {
    const asked = this.route.options?.['stage'];
    return asked !== undefined && this.stages.includes(asked) ? asked : this.open.judgement.stage;
  }

  private get without(): readonly string[] {
    return (this.route.options?.['without'] ?? '').split(' ').filter(Boolean);
  }

  private get state(): AgainstState | undefined {
    const stage = this.route.options?.['against'];
    const known = stage !== undefined && this.stages.includes(stage) && stage !== this.stage;
    return this.against ?? (known ? { stage } : undefined);
  }

  private set(name: string, value: string): void {
    this.go({ options: { ...this.route.options, [name]: value } }, true);
  }

  /** The address asks for the cabin of a file. */
  private get asksFile(): boolean {
    return this.route.options?.['against'] === ofFile && !this.stages.includes(ofFile);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('against') && this.against?.cabin !== undefined && !this.asksFile) this.set('against', ofFile);
    this.compared.follow(this.asksFile);
    // What is written is stopped by the next; the file is read first.
    if (this.asksFile && this.against === undefined && !this.compared.absent) return;
    const other = this.written === undefined || ['open', 'route', 'against'].some((name) => changed.has(name as keyof AdjoinReportView));
    if (!other || this.open.judging || this.open.cabin.parts.length === 0) return;
    const asked = JSON.stringify([this.stage, this.without, this.state?.stage]);
    const { written } = this;
    if (written !== undefined && written.cabin === this.open.cabin && written.asked === asked && written.against === this.against && this.text !== undefined) return;
    void this.write(asked);
  }

  private async write(asked: string): Promise<void> {
    const now = { cabin: this.open.cabin, asked, against: this.against };
    this.written = now;
    this.bridge.stop();
    this.working = true;
    try {
      const reply = await this.bridge.ask(this.request(['html']));
      if (this.written !== now) return;
      if (reply.kind === 'refused') this.issues = reply.issues;
      if (reply.kind === 'written') this.text = reply.texts.html;
    } catch (reason) {
      if (this.written === now && !(reason instanceof DOMException)) this.issues = [{ code: 'not-written', severity: 'error', found: String(reason) }];
    } finally {
      if (this.written === now) this.working = false;
    }
  }

  private request(formats: readonly ReportFormat[]) {
    const against = this.state;
    return {
      kind: 'report' as const, cabin: this.open.cabin, file: this.open.file, stage: this.stage, formats, without: this.without,
      ...(against === undefined ? {} : { against }),
    };
  }

  private async writtenAs(format: ReportFormat): Promise<string | undefined> {
    const reply = await this.bridge.ask(this.request([format]));
    return reply.kind === 'written' ? reply.texts[format] : undefined;
  }

  private async save(format: ReportFormat): Promise<void> {
    const text = format === 'html' && !this.working ? this.text : await this.writtenAs(format);
    if (text === undefined) return;
    const name = `${fileName(this.open.cabin.id, 'report')}.${format}`;
    downloadText(name, text, types[format]);
    announce(this, `${name} went to your downloads`);
  }

  override render(): TemplateResult {
    const { open } = this;
    if (open.cabin.parts.length === 0) {
      return html`<div class="page whole"><div class="empty"><h1>There is nothing to report yet.</h1><p>The report shows the cabin, what clashes and what is open, the evidence, what is proposed and accepted, and by which method. This cabin has no parts: add parts and readings, and it writes itself.</p>
        <adjoin-ways .cabin=${open.cabin} .linkTo=${this.linkTo}></adjoin-ways></div></div>`;
    }
    return html`
      <aside>
        <h1>Report</h1>
        <div class="actions">
          <button class="strong" type="button" @click=${() => this.renderRoot.querySelector('adjoin-report-page')?.print()}>Print or save as PDF</button>
          ${(['html', 'json', 'csv'] as const).map((format) => html`<button type="button" @click=${() => void this.save(format)}>${format.toUpperCase()}</button>`)}
        </div>
        ${this.issues.length === 0 ? nothing : html`<div class="faults" role="alert"><b>Not taken</b>${this.issues.slice(0, 8).map((issue) => html`<p>${issueText(issue)}</p>`)}</div>`}
        <label class="field"><span class="label"><adjoin-term word="stage">Stage</adjoin-term> judged</span><span class="pick"><select @change=${(event: Event) => this.set('stage', (event.target as HTMLSelectElement).value)}>
          ${this.stages.map((stage) => html`<option value=${stage} ?selected=${stage === this.stage}>${stage}</option>`)}
        </select></span></label>
        ${this.comparedWith()}
        <fieldset class="sections">
          <legend>Sections</legend>
          <div class="list">
          ${reportSections.filter(({ needed }) => needed !== true).map(({ id, title }) => html`<label><input
            type="checkbox" .checked=${!this.without.includes(id)} @change=${(event: Event) => this.include(id, (event.target as HTMLInputElement).checked)}
          />${title}</label>`)}
          </div>
          <p class="quiet">Clashes, open joints, accepted clashes and the cautions are always in it. JSON and CSV carry everything.</p>
        </fieldset>
      </aside>
      <div class="page">
        ${this.working ? html`<div class="working" role="status"><span>Writing the report</span><button type="button" @click=${() => { this.bridge.stop(); }}>Cancel</button></div>` : nothing}
        ${this.text === undefined
          ? html`<div class="empty"><b>${this.working ? 'One moment.' : 'The report was not written.'}</b></div>`
          : html`<adjoin-report-page .text=${this.text}></adjoin-report-page>`}
      </div>
    `;
  }

  private comparedWith(): TemplateResult {
    const { against } = this;
    const stages = this.stages.filter((stage) => stage !== this.stage);
    return html`<div class="against">
      ${this.asksFile && this.compared.absent ? html`<p class="quiet" role="status">The cabin of this address was in a file that is not here. Pick it again to compare with it.</p>` : nothing}
      ${against?.cabin === undefined ? nothing : html`<div class="other"><span>Compared with <b>${against.cabin.name}</b></span><button type="button" @click=${() => { this.against = undefined; this.set('against', ''); }}>Leave out</button></div>`}
      ${against?.cabin !== undefined || stages.length === 0 ? nothing : html`
        <label class="field"><span class="label">Compared with stage</span><span class="pick"><select @change=${(event: Event) => this.set('against', (event.target as HTMLSelectElement).value)}>
          <option value="">none</option>
          ${stages.map((stage) => html`<option value=${stage} ?selected=${stage === this.state?.stage}>${stage}</option>`)}
        </select></span></label>`}
      ${against?.cabin === undefined ? html`<button type="button" @click=${() => void this.compared.take()}>Compare with another cabin</button>` : nothing}
    </div>`;
  }

  private include(id: string, wanted: boolean): void {
    const without = wanted ? this.without.filter((one) => one !== id) : [...this.without, id];
    this.set('without', without.join(' '));
  }
}

customElements.define('adjoin-report-view', AdjoinReportView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-report-view': AdjoinReportView;
  }
}
