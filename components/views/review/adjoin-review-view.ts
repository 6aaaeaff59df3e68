import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { JointResult } from '../../../src/harmony/judgement.ts';
import { limitUseText } from '../../../src/report/number-text.ts';
import { askAction } from '../../controllers/edit-events.ts';
import { tableInk, paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import '../../figures/surface/adjoin-surface-strip.ts';
import { usualLamp } from '../../figures/surface/lamp.ts';
import { surfaceSide } from '../../figures/surface/surface-side.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { filterText, isOpenFilter, partsById, passes, standingSource } from '../../model/joint-filter.ts';
import { orderedJoints } from '../../model/joint-order.ts';
import { proposedDecision } from '../../model/proposed-decision.ts';
import { leadingCheck, underLight, verdictWord } from '../../model/leading-check.ts';
import { sweepLights } from '../../model/light-groups.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { reviewCsv, reviewRows } from '../../model/review-log.ts';
import type { BoothSetting, ReviewStep } from '../../model/review-log.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import { keepReview, keptReview } from '../../platform/review-memory.ts';
import { fields } from '../../styles/fields.ts';
import '../../app/adjoin-ways.ts';
import { base, controls } from '../../styles/shared.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-record-form.ts';
import './adjoin-review-list.ts';
import { styles } from './review-view.styles.ts';

const usualViewMm = 700;
/** Distance that the joint is shown as seen from, mm. */
const seenMm = 250;

const usualBooth: BoothSetting = { light: 'D65', illuminance: '2000', observers: '1', roles: '', scale: 'ISO 3668' };
const panels = ['record', 'note'] as const;

/** The design review: full screen, one joint at a time, worst first, by keyboard; what is taken goes into the document and onto the running list. */
export class AdjoinReviewView extends ViewElement {
  override readonly covers = true;

  static override styles = [base, controls, fields, styles];
  static override properties = { seen: { state: true }, steps: { state: true }, fault: { state: true }, order: { state: true } };

  declare seen: ReadonlySet<string>;
  declare steps: readonly ReviewStep[];
  declare fault: string | undefined;
  /** Ids in the order of the review: it stays as it began, whatever decisions do to the verdicts. */
  declare order: readonly string[];
  private booth: BoothSetting = usualBooth;
  /** What the order is of: the cabin, the filter of the wall, and the joints as they were judged last. */
  private of: { readonly cabin: string; readonly filter: string; readonly joints: readonly JointResult[] } | undefined;
  private known: ReadonlySet<string> = new Set();

  constructor() {
    super();
    this.seen = new Set();
    this.steps = [];
    this.order = [];
  }

  protected override willUpdate(): void {
    if (this.open.judging) return;
    const { cabin, judgement: { joints } } = this.open;
    const filter = JSON.stringify(this.route.filter);
    if (this.of?.cabin !== cabin.id) {
      const kept = keptReview(cabin.id);
      this.seen = new Set(kept?.seen);
      this.steps = kept?.steps ?? [];
      this.booth = kept?.booth ?? usualBooth;
    }
    if (this.of?.cabin !== cabin.id || this.of.filter !== filter) {
      this.known = new Set(joints.map((joint) => joint.id));
      this.order = this.passing();
    } else if (this.of.joints !== joints) this.goOn(joints);
    const { item } = this.route;
    // A joint that was asked for by its name is shown, whatever the filter says.
    if (item !== undefined && this.known.has(item) && !this.order.includes(item)) this.order = [item, ...this.order];
    this.of = { cabin: cabin.id, filter, joints };
    const here = this.here;
    if (here !== undefined && !this.atList && !this.seen.has(here)) this.seen = new Set([...this.seen, here]);
  }

  /** What passed when the review began stays in it, whatever decisions do to the verdicts; a joint that was drawn since comes last. */
  private goOn(joints: readonly JointResult[]): void {
    const [before, now, listed] = [this.known, new Set(joints.map((joint) => joint.id)), new Set(this.order)];
    this.known = now;
    const fresh = joints.length === before.size && joints.every(({ id }) => before.has(id)) ? [] : this.passing().filter((joint) => !before.has(joint) && !listed.has(joint));
    if (fresh.length > 0 || this.order.some((joint) => !now.has(joint))) this.order = [...this.order.filter((joint) => now.has(joint)), ...fresh];
  }

  /** Ids of the joints that pass the filter of the wall, worst first. */
  private passing(): readonly string[] {
    const parts = partsById(this.open.cabin);
    return orderedJoints(this.open.judgement.joints).filter((joint) => passes(joint, this.route.filter, parts)).map((joint) => joint.id);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!this.isConnected || this.open.judging) return;
    if (changed.has('seen') || changed.has('steps')) this.keep();
    const { here } = this;
    // What is shown stands in the address, also where it named no joint, or one that is gone.
    if (this.route.view === 'review' && here !== undefined && here !== this.route.item) this.go({ item: here }, true);
    const dialog = this.renderRoot.querySelector('dialog');
    if (dialog === null || dialog.open) return;
    dialog.showModal();
    (this.renderRoot.querySelector<HTMLElement>('textarea') ?? this.renderRoot.querySelector<HTMLElement>('.joint h1, .ending h1'))?.focus();
  }

  private keep(): void {
    if (this.of !== undefined) keepReview({ cabin: this.of.cabin, seen: [...this.seen], steps: this.steps, booth: this.booth });
  }

  private get panel(): (typeof panels)[number] | undefined {
    return this.atList || this.open.locked ? undefined : panels.find((panel) => panel === this.route.options?.['panel']);
  }

  private set(options: Readonly<Record<string, string>>, item = this.route.item): void {
    this.go({ item, options: { ...this.route.options, ...options } }, true);
  }

  private get atList(): boolean {
    return this.route.options?.['at'] === 'list';
  }

  private get here(): string | undefined {
    const { item } = this.route;
    return item !== undefined && this.order.includes(item) ? item : this.order[0];
  }

  private to(joint: string | undefined, at = ''): void {
    this.set({ at, panel: '' }, joint);
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.joint h1, .ending h1')?.focus());
  }

  private step(by: number): void {
    if (this.atList) {
      if (by < 0) this.to(this.order.at(-1));
      return;
    }
    const place = this.order.indexOf(this.here ?? '') + by;
    if (place >= this.order.length) this.to(this.here, 'list');
    else if (place >= 0) this.to(this.order[place]);
  }

  private sweep(by: number): void {
    const lights = sweepLights(this.open.judgement);
    if (lights.length === 0) return;
    const place = (lights.indexOf(this.light) + by + lights.length) % lights.length;
    this.show(lights[place] ?? this.light);
  }

  private show(light: string): void {
    this.dispatchEvent(new CustomEvent('adjoin-light', { detail: light, bubbles: true, composed: true }));
  }

  private readonly leave = (): void => {
    if (document.fullscreenElement !== null) void document.exitFullscreen();
    this.renderRoot.querySelector('dialog')?.close();
    if (this.panel !== undefined) this.set({ panel: '' });
    this.go({ view: 'cabin', item: undefined });
  };

  private readonly key = (event: KeyboardEvent): void => {
    const from = event.composedPath()[0] as HTMLElement;
    const typing = from.matches?.('input, select, textarea') === true;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      if (this.panel !== undefined) this.close();
      else this.leave();
      return;
    }
    if (typing) {
      event.stopPropagation();
      return;
    }
    if (event.key === ' ' && from.matches?.('button')) return;
    const done = ((): boolean => {
      switch (event.key) {
        case 'ArrowRight': case 'PageDown': case ' ': this.step(1); return true;
        case 'ArrowLeft': case 'PageUp': this.step(-1); return true;
        case 'Home': this.to(this.order[0]); return true;
        case 'End': this.to(this.here, 'list'); return true;
        case 'l': this.sweep(1); return true;
        case 'L': this.sweep(-1); return true;
        case 'd': this.decide(); return true;
        case 'v': this.begin('record'); return true;
        case 'n': this.begin('note'); return true;
        case 'f': this.fill(); return true;
        case 'Delete': case 'F2': return true;
        default: return false;
      }
    })();
    if (!done) return;
    event.preventDefault();
    event.stopPropagation();
  };

  private fill(): void {
    if (document.fullscreenElement === null) void document.documentElement.requestFullscreen?.();
    else void document.exitFullscreen();
  }

  private close(): void {
    this.set({ panel: '' });
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.joint h1')?.focus());
  }

  private begin(panel: 'record' | 'note'): void {
    if (this.atList || this.open.locked) return;
    this.fault = undefined;
    this.set({ panel });
    if (panel === 'note') void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('textarea')?.focus());
  }

  private log(kind: ReviewStep['kind'], text: string): void {
    const joint = this.here;
    if (joint !== undefined) this.steps = [...this.steps, { joint, kind, text }];
  }

  private get result(): JointResult | undefined {
    const { here } = this;
    return this.open.judgement.joints.find((joint) => joint.id === here);
  }

  /** Accepts the check that the joint stands or falls by, at the value it has now. */
  private decide(): void {
    const { result } = this;
    if (result === undefined || this.atList || this.open.locked) return;
    const check = leadingCheck(result);
    askAction(this, 'decision.add', {
      joint: result.id, date: this.open.cabin.asOf, ...proposedDecision(check),
    }, {
      done: () => {
        const made = this.desk.present?.joints.find(({ id }) => id === result.id)?.decisions?.at(-1);
        this.log('decision', made === undefined ? 'taken' : `${made.check} accepted at ${made.value} until ${made.expires}: ${made.reason}`);
      },
    });
  }

  private readonly keepRecord = (event: CustomEvent<{ readonly values: Readonly<Record<string, unknown>>; readonly setting: BoothSetting }>): void => {
    const { values, setting } = event.detail;
    const done = this.desk.do('visual-record.add', { joint: this.here, ...values });
    if (!done.done) {
      const [issue] = done.issues;
      this.fault = `${issue?.path ?? ''} ${issue?.hint ?? `expected ${issue?.expected ?? 'something else'}`}`.trim();
      return;
    }
    this.booth = setting;
    this.log('visual record', `${String(values['result'])} under ${setting.light}, ${setting.observers} ${setting.observers === '1' ? 'observer' : 'observers'}`);
    this.close();
  };

  private readonly keepNote = (event: Event): void => {
    event.preventDefault();
    const note = String(new FormData(event.target as HTMLFormElement).get('note') ?? '').trim();
    const done = this.desk.do('joint.set', { joint: this.here, note: note === '' ? null : note });
    if (!done.done) {
      this.fault = done.issues[0]?.hint ?? 'The note was not taken.';
      return;
    }
    if (note !== '') this.log('note', note);
    this.close();
  };

  private export(): void {
    const rows = reviewRows(this.open.cabin, this.listed, this.seen, this.steps);
    downloadText(`${fileName(this.open.cabin.id, 'review')}.csv`, reviewCsv(rows), 'text/csv');
  }

  private get listed(): readonly JointResult[] {
    const results = new Map(this.open.judgement.joints.map((joint) => [joint.id, joint]));
    return this.order.flatMap((id) => results.get(id) ?? []);
  }

  override render(): TemplateResult {
    const { result } = this;
    if (this.open.judging) return html`<div class="empty" role="status"><b>Judging.</b></div>`;
    if (result === undefined && this.open.judgement.joints.length > 0) {
      return html`<div class="empty"><h1>No joint passes the filter.</h1><p>It lets through only ${filterText(this.route.filter, this.open.cabin)}.</p><p><button class="strong" type="button" @click=${() => this.go({ filter: {} }, true)}>Review all ${this.open.judgement.joints.length} joints</button></p></div>`;
    }
    if (result === undefined) return html`<div class="empty"><h1>There is no joint to review.</h1><p>Review goes through the joints one at a time, worst first. Draw parts that meet, or open a cabin that has joints.</p><adjoin-ways .cabin=${this.open.cabin} .linkTo=${this.linkTo}></adjoin-ways></div>`;
    const place = this.order.indexOf(result.id);
    return html`
      <dialog aria-label="Design review" @keydown=${this.key} @cancel=${(event: Event) => { event.preventDefault(); this.leave(); }}>
        <div class="bar">
          <span class="place" role="status">${this.atList ? 'The list' : html`Joint ${place + 1} of ${this.order.length}`}</span>
          ${this.filtered()}
          <span class="quiet">${this.seen.size} seen, ${this.steps.length} taken</span>
          <span class="light quiet">Light <b>${this.light}</b></span>
          <button type="button" @click=${this.leave}>Leave <kbd>Esc</kbd></button>
        </div>
        <div class="progress" aria-hidden="true">${this.order.length > 400
          ? html`<span class="seen"></span>`
          : this.order.map((id) => html`<span class=${!this.atList && id === result.id ? 'here' : this.seen.has(id) ? 'seen' : ''}></span>`)}</div>
        ${this.atList ? this.ending() : this.joint(result)}
        ${this.foot()}
      </dialog>
    `;
  }

  /** That the wall was filtered, and so is the review. */
  private filtered(): TemplateResult | typeof nothing {
    const [all, { filter }] = [this.open.judgement.joints.length, this.route];
    if (isOpenFilter(filter)) return nothing;
    return html`<span class="filtered">Only ${filterText(filter, this.open.cabin)}. <button type="button" @click=${() => this.go({ filter: {} }, true)}>All ${all} joints</button></span>`;
  }

  private begun(): void {
    this.seen = new Set();
    this.steps = [];
    this.order = this.passing();
    this.to(this.order[0]);
  }

  private ending(): TemplateResult {
    return html`<div class="ending">
      <h1 tabindex="-1">What came of it</h1>
      <adjoin-review-list .rows=${reviewRows(this.open.cabin, this.listed, this.seen, this.steps)}></adjoin-review-list>
      <div class="actions"><button class="strong" type="button" @click=${() => this.export()}>Export the list as CSV</button><button type="button" @click=${() => this.to(this.order[0])}>From the first joint</button>
        ${this.seen.size === 0 && this.steps.length === 0 ? nothing : html`<button type="button" @click=${() => this.begun()}>Begin a new list</button>`}</div>
    </div>`;
  }

  private joint(result: JointResult): TemplateResult {
    const { cabin, judgement } = this.open;
    const joint = cabin.joints.find(({ id }) => id === result.id);
    const name = (id: string): string => cabin.parts.find((part) => part.id === id)?.name ?? id;
    const names = [name(result.standard), name(result.trial)] as const;
    const viewMm = joint?.viewMm ?? usualViewMm;
    const unseen: PartColour = { css: undefined, why: 'no colour readings' };
    const colours = [result.standard, result.trial].map((id) => this.colours.get(id) ?? unseen) as [PartColour, PartColour];
    const sides = ([result.standard, result.trial] as const).map((id, index) => surfaceSide(
      id, standingSource(cabin.parts.find((part) => part.id === id))?.material, judgement.parts.find((part) => part.id === id)?.appearance, colours[index] as PartColour,
    ));
    return html`<div class="joint">
      <div class="figure">
        <adjoin-surface-strip
          .joint=${{ kind: result.kind, gapMm: joint?.gapMm, stepMm: joint?.stepMm, viewMm }} .sides=${sides} .fills=${colours.map(({ css }) => css)} .magnification=${Math.max(1, viewMm / seenMm)}
          .lamp=${usualLamp} .ink=${tableInk} .gamut=${this.gamut} .leading=${true} .label=${`${names[0]} above, ${names[1]} below, under ${this.light}`}
        ></adjoin-surface-strip>
        <div class="names" aria-hidden="true"><span>${names[0]}<small>standard</small></span><span>${names[1]}<small>trial</small></span></div>
      </div>
      <div>
        <div class="told">
          <h1 tabindex="-1">${names[0]} and ${names[1]}</h1>
          <p class="big">${limitUseText(result.limitUse)}<small>of the limit</small></p>
          <p class="verdict">${scene(verdictSample(result, 48, 16, paperInk))}<span class="word ${result.verdict}">${verdictWord(result)}${result.accepted && result.acceptedUntil !== undefined ? ` until ${result.acceptedUntil}` : ''}</span></p>
          <p class="sentence" role="status">${result.sentence}</p>
          ${this.taken(result)}
        </div>
        <div class="lights">${sweepLights(judgement).map((light) => {
          const use = underLight(result, light)?.limitUse;
          return html`<button type="button" aria-pressed=${light === this.light} @click=${() => this.show(light)}>${light}${use === undefined ? nothing : html` <small>${limitUseText(use)}</small>`}</button>`;
        })}</div>
      </div>
    </div>`;
  }

  /** What the document has of this joint already. */
  private taken(result: JointResult): TemplateResult | typeof nothing {
    const joint = this.open.cabin.joints.find(({ id }) => id === result.id);
    const records = joint?.visualRecords ?? [];
    const decisions = joint?.decisions ?? [];
    const lines = [
      ...records.slice(-2).map((record) => html`<li><b><adjoin-term word="visual record">Booth</adjoin-term>, ${record.date}:</b> ${record.result} under ${record.light}${record.note === undefined ? '' : `. ${record.note}`}</li>`),
      ...decisions.slice(-2).map((decision) => html`<li><b><adjoin-term word="decision">Decision</adjoin-term>, ${decision.date}:</b> ${decision.check} accepted until ${decision.expires}. ${decision.reason}</li>`),
      ...(joint?.note === undefined ? [] : [html`<li><b>Note:</b> ${joint.note}</li>`]),
    ];
    return lines.length === 0 ? nothing : html`<ul class="done">${lines}</ul>`;
  }

  private foot(): TemplateResult {
    if (this.panel === 'record' && !this.atList) {
      return html`<adjoin-record-form .cabin=${this.open.cabin} .setting=${this.booth} .fault=${this.fault} @adjoin-record=${this.keepRecord} @adjoin-leave=${() => this.close()}></adjoin-record-form>`;
    }
    if (this.panel === 'note' && !this.atList) {
      const note = this.open.cabin.joints.find(({ id }) => id === this.here)?.note ?? '';
      return html`<footer><form class="note field" @submit=${this.keepNote}>
        <label class="field"><span class="label">Note of this joint</span><textarea name="note" rows="2" cols="70" maxlength="4000" .value=${note}></textarea></label>
        ${this.fault === undefined ? nothing : html`<span class="fault" role="alert">${this.fault}</span>`}
        <span><button class="strong" type="submit">Keep the note</button> <button type="button" @click=${() => this.close()}>Cancel</button></span>
      </form></footer>`;
    }
    const key = (letter: string, title: string, act: () => void, off = false): TemplateResult =>
      html`<button type="button" aria-disabled=${off} @click=${() => { if (!off) act(); }}>${title} <kbd>${letter}</kbd></button>`;
    const idle = this.atList || this.open.locked;
    return html`<footer>
      ${key('←', 'Back', () => this.step(-1))}${key('→', 'Next', () => this.step(1), this.atList)}
      ${key('L', 'Light', () => this.sweep(1), this.atList)}
      <span class="gap"></span>
      ${key('D', 'Decide', () => this.decide(), idle)}${key('V', 'Visual record', () => this.begin('record'), idle)}${key('N', 'Note', () => this.begin('note'), idle)}
      <span class="gap"></span>
      ${key('End', 'The list', () => this.to(this.here, 'list'), this.atList)}${key('F', 'Fill the screen', () => this.fill())}
    </footer>`;
  }
}

customElements.define('adjoin-review-view', AdjoinReviewView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-review-view': AdjoinReviewView;
  }
}
