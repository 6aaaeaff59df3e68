import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { CabinComparison, JointChange } from '../../../src/harmony/compare/index.ts';
import { compareCabins } from '../../../src/harmony/compare/index.ts';
import { standingWord } from '../../../src/harmony/compare/joint-figures.ts';
import type { JointFigures } from '../../../src/harmony/compare/joint-figures.ts';
import type { Judgement } from '../../../src/harmony/judgement.ts';
import type { Issue } from '../../../src/issue.ts';
import { counted, decimalsOf, fixed, limitUseText, signed } from '../../../src/report/number-text.ts';
import { builtInRuleBooks, parseRuleBook, ruleBookById } from '../../../src/rules/index.ts';
import type { RuleBook } from '../../../src/rules/index.ts';
import { doAction } from '../../controllers/edit-events.ts';
import type { Desk } from '../../controllers/desk.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { useScatter } from '../../figures/use-scatter.ts';
import type { UsePoint } from '../../figures/use-scatter.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { keepFile, keptFile } from '../../platform/file-memory.ts';
import { openFile } from '../../platform/open-save.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './book-compare.styles.ts';
import type { RulesContext } from './rules-context.ts';

/** A rule book to compare with. */
export interface OtherBook {
  readonly book: RuleBook;
  /** Name of its file; built-in where absent. */
  readonly file?: string;
}

const filters = { changed: 'Changed', verdict: 'Other verdict', all: 'All joints' } as const;
type Filter = keyof typeof filters;

/** In the address: the other book is that of a file. */
const ofFile = 'file';

/** The list begins with as many joints. */
const listedAtMost = 200;

/** How long one waits before it is said how far the judging is, ms. */
const patienceMs = 300;

/** The cabin's rule book beside another one, joint by joint: the picture of limit use under both, the table, and the way to take the other one. */
export class AdjoinBookCompare extends LitElement {
  static override styles = [base, controls, fields, styles];
  static override properties = {
    at: { attribute: false }, desk: { attribute: false }, options: { attribute: false }, dropped: { attribute: false }, opened: { attribute: false }, keep: { attribute: false }, faults: { state: true }, share: { state: true }, made: { state: true }, pointed: { state: true }, whole: { state: true },
  };

  declare at: RulesContext;
  declare desk: Desk;
  declare options: Readonly<Record<string, string>>;
  /** A file that fell on the page. */
  declare dropped: File | undefined;
  /** A book of a file; the place keeps it while one looks elsewhere. */
  declare opened: OtherBook | undefined;
  declare keep: (opened: OtherBook | undefined) => void;
  declare faults: { readonly file: string; readonly issues: readonly Issue[] } | undefined;
  declare share: number | undefined;
  declare made: { readonly book: RuleBook; readonly of: Judgement; readonly judgement: Judgement; readonly comparison: CabinComparison } | undefined;
  declare pointed: string | undefined;
  /** Long lists are shown to their end. */
  declare whole: boolean;
  constructor() {
    super();
    this.whole = false;
  }

  private asked: { readonly book: RuleBook; readonly of: Judgement } | undefined;
  /** The file of the address was looked for. */
  private searched = false;

  private get other(): OtherBook | undefined {
    if (this.opened !== undefined) return this.opened;
    const book = ruleBookById(this.options['against'] ?? '');
    return book === undefined ? undefined : { book };
  }

  /** Takes a rule book file that was picked or dropped: whole, or not at all with its faults. */
  private async takeFile(file: File): Promise<void> {
    const text = await file.text();
    const { value, issues } = parseRuleBook(text, file.name);
    this.faults = value === undefined ? { file: file.name, issues } : undefined;
    if (value === undefined) return;
    keepFile('book', { name: file.name, text });
    this.keep({ book: value, file: file.name });
    this.at.set({ see: 'compare', against: ofFile }, true);
  }

  private async pick(): Promise<void> {
    const opened = await openFile();
    if (opened !== undefined) await this.takeFile(opened.file);
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('dropped') && this.dropped !== undefined) void this.takeFile(this.dropped);
    if (changed.has('options') && this.options['against'] === ofFile && this.opened === undefined && !this.searched) {
      this.searched = true;
      const file = keptFile('book');
      if (file !== undefined) void this.takeFile(file);
    }
    if (!['at', 'options', 'opened'].some((name) => changed.has(name as keyof AdjoinBookCompare))) return;
    const { other } = this;
    const { open } = this.at;
    if (other === undefined || open.judging || (this.asked?.book === other.book && this.asked.of === open.judgement)) return;
    void this.judge(other.book);
  }

  private async judge(book: RuleBook): Promise<void> {
    const { open } = this.at;
    const asked = (this.asked = { book, of: open.judgement });
    const begun = performance.now();
    const reply = await this.desk.judgeBy(book, (share) => { if (this.asked === asked && performance.now() - begun > patienceMs) this.share = share; }).catch(() => undefined);
    if (this.asked !== asked) return;
    this.share = undefined;
    if (reply === undefined) this.asked = undefined;
    if (reply?.value === undefined) return;
    this.made = { book, of: open.judgement, judgement: reply.value, comparison: compareCabins({ cabin: open.cabin, judgement: open.judgement }, { cabin: open.cabin, judgement: reply.value }) };
  }

  override render(): TemplateResult {
    const { other, made } = this;
    const { book } = this.at;
    const shown = made !== undefined && other !== undefined && made.book === other.book ? made : undefined;
    return html`
      <div class="choose"><span class="label">${book.name}, against</span>
        ${builtInRuleBooks.filter(({ id }) => id !== book.id).map(({ id, name }) => html`<button type="button" aria-pressed=${this.opened === undefined && other?.book.id === id} @click=${() => { this.keep(undefined); this.faults = undefined; this.at.set({ against: id }, true); }}>${name}</button>`)}
        ${this.opened === undefined ? nothing : html`<button type="button" aria-pressed="true" @click=${() => { this.keep(undefined); this.at.set({ against: '' }, true); }}>${this.opened.book.name} <span class="small">${this.opened.file} ×</span><span class="unseen"> leave it</span></button>`}
        <button type="button" @click=${() => void this.pick()}>A rule book file</button></div>
      ${this.faults === undefined ? nothing : this.faultList(this.faults)}
      ${other === undefined ? this.empty() : shown === undefined ? this.waiting(other) : this.compared(other, shown.comparison)}`;
  }

  private empty(): TemplateResult {
    return html`<div class="teach">${this.options['against'] === ofFile ? html`<p role="status"><b>The book of this address was in a file that is not here.</b> Take the file again to see the comparison.</p>` : nothing}<p class="ask">Which joints would another rule book judge otherwise?</p>
      <p class="quiet">Take a built-in book, a customer’s book as a file, or the book of another programme. Every joint is judged by both; what differs is drawn and listed, and the other book can be taken in one step that undo takes back. A file may also be dropped on this page.</p></div>`;
  }

  private waiting({ book }: OtherBook): TemplateResult {
    return html`<div class="running" role="status"><label for="share">Judging every joint by ${book.name}${this.share === undefined ? '' : `, ${Math.round(this.share * 100)} %`}</label><progress id="share" max="1" .value=${this.share ?? 0}></progress></div>`;
  }

  private faultList({ file, issues }: NonNullable<AdjoinBookCompare['faults']>): TemplateResult {
    return html`<div class="faults" role="alert"><p><b>${file} was not taken.</b> ${counted(issues.length, 'fault')}; a rule book goes in whole or not at all.</p>
      <div class="scroll" tabindex="0" role="region" aria-label="Faults of the file"><table><thead><tr><th scope="col">line</th><th scope="col">column</th><th scope="col">where</th><th scope="col">found</th><th scope="col">expected</th><th scope="col">what to do</th></tr></thead>
      <tbody>${issues.slice(0, 100).map((issue) => html`<tr><td class="n">${issue.line ?? '–'}</td><td class="n">${issue.column ?? '–'}</td><td>${issue.path ?? 'the file'}</td><td>${issue.found ?? issue.code.replaceAll('-', ' ')}</td><td>${issue.expected ?? ''}</td><td>${issue.hint ?? ''}</td></tr>`)}</tbody></table></div></div>`;
  }

  private adopt({ book, file }: OtherBook): void {
    if (this.at.open.locked) return;
    const result = file === undefined ? doAction(this, 'cabin.name-rule-book', { ruleBook: book.id }) : doAction(this, 'cabin.embed-rule-book', { ruleBook: book });
    if (result?.done !== true) return;
    this.keep(undefined);
    this.at.set({ see: 'pairs', against: '', rule: '' });
  }

  private compared(other: OtherBook, comparison: CabinComparison): TemplateResult {
    const filter = (Object.keys(filters) as Filter[]).find((name) => name === this.options['only']) ?? 'changed';
    const { summary, joints } = comparison;
    const turned = joints.filter(({ kind }) => kind === 'verdict');
    const changed = joints.filter(({ kind }) => kind !== 'same');
    // That the books differ is what this is about.
    const notes = comparison.notes.slice(comparison.before.ruleBook === comparison.after.ruleBook ? 0 : 1);
    const counts: Readonly<Record<Filter, number>> = { changed: changed.length, verdict: turned.length, all: joints.length };
    const listed = filter === 'all' ? joints : filter === 'verdict' ? turned : changed;
    return html`
      <div class="lead"><p class="said" role="status">${changed.length === 0 ? `Both books judge all ${joints.length} joints alike.`
        : html`<b>${counted(turned.length, 'joint')} of ${joints.length}</b> ${turned.length === 1 ? 'gets' : 'get'} another verdict: ${summary.worseVerdict} worse, ${summary.betterVerdict} better. ${counted(changed.length - turned.length, 'more joint', 'more joints')} ${changed.length - turned.length === 1 ? 'uses' : 'use'} more or less of the limit.`}</p>
        <button type="button" class="strong" aria-disabled=${this.at.open.locked} @click=${() => this.adopt(other)}>Judge by ${other.book.name}</button></div>
      ${notes.length === 0 ? nothing : html`<ul class="notes">${notes.map((note) => html`<li>${note}</li>`)}</ul>`}
      <div class="both"><figure>${this.picture(joints, other)}<figcaption class="quiet">
          ${(['clashes', 'open', 'holds'] as const).map((verdict) => html`<span>${scene(verdictSample({ verdict }, 24, 10, paperInk))}${verdict} by the other book</span>`)}<span>full: another verdict</span></figcaption></figure>
        <div class="list"><div class="bar" role="group" aria-label="Joints that are listed">${(Object.keys(filters) as Filter[]).map((name) => html`<button type="button" aria-pressed=${name === filter} @click=${() => this.at.set({ only: name }, true)}>${filters[name]} <b>${counts[name]}</b></button>`)}</div>
          ${this.table(listed)}</div></div>`;
  }

  private picture(joints: readonly JointChange[], other: OtherBook): TemplateResult {
    const points = joints.flatMap(({ id, names, kind, before, after }): readonly UsePoint[] => (before?.limitUse === undefined || after?.limitUse === undefined ? [] : [{
      id, label: `${names.join(' / ')}: ${limitUseText(before.limitUse)} then ${limitUseText(after.limitUse)}`, before: before.limitUse, after: after.limitUse, verdict: after.verdict, turned: kind === 'verdict',
    }]));
    const point = (event: Event): string | undefined => (event.target as Element).closest('[data-joint]')?.getAttribute('data-joint') ?? undefined;
    return html`<div @pointerover=${(event: Event) => { this.pointed = point(event); }} @pointerleave=${() => { this.pointed = undefined; }} @click=${(event: Event) => {
      const id = point(event);
      if (id !== undefined) this.renderRoot.querySelector(`tr[data-joint="${CSS.escape(id)}"]`)?.scrollIntoView({ block: 'center' });
    }}>${scene(useScatter({ points, across: 'the cabin’s book', up: other.file ?? 'the other book', pointed: this.pointed }, { width: 520, height: 500 }, paperInk))}</div>`;
  }

  private table(all: readonly JointChange[]): TemplateResult {
    const changes = this.whole ? all : all.slice(0, listedAtMost);
    if (changes.length === 0) return html`<p class="quiet">No joint is to be listed so.</p>`;
    return html`<div class="scroll" tabindex="0" role="region" aria-label="Joints under both books"><table><caption class="unseen">Joints under both books, the largest change first</caption>
      <thead><tr><th scope="col">joint</th><th scope="col">by the cabin’s book</th><th scope="col" class="n"><adjoin-term word="limit use">limit use</adjoin-term></th><th scope="col">by the other</th><th scope="col" class="n">limit use</th><th scope="col" class="n">change</th></tr></thead>
      <tbody>${changes.map(({ id, names, before, after, limitUseChange }) => html`<tr data-joint=${id} class=${id === this.pointed ? 'on' : ''} @pointerenter=${() => { this.pointed = id; }} @pointerleave=${() => { this.pointed = undefined; }}>
        <th scope="row"><a href=${this.at.linkTo({ view: 'joint', joint: id, item: undefined, options: {} })}>${names.join(' / ')}</a></th>
        <td data-name="cabin’s book">${this.verdict(before)}</td><td class="n" data-name="limit use">${limitUseText(before?.limitUse)}</td><td data-name="other book">${this.verdict(after)}</td><td class="n" data-name="limit use">${limitUseText(after?.limitUse)}</td>
        <td class="n" data-name="change">${limitUseChange === undefined ? '–' : `${signed(limitUseChange * 100, 0)} %`}</td></tr>`)}</tbody></table></div>${changes.length < all.length ? html`<p><button type="button" @click=${() => { this.whole = true; }}>List all ${all.length}</button></p>` : nothing}`;
  }

  private verdict(side: JointFigures | undefined): TemplateResult | string {
    if (side === undefined) return '–';
    const { leading } = side;
    return html`<span class="verdict">${scene(verdictSample({ verdict: side.verdict, accepted: side.accepted }, 22, 10, paperInk))}<span class="word ${side.verdict}">${standingWord(side)}</span></span>
      ${leading?.value === undefined ? nothing : html`<span class="small quiet">${leading.check} ${fixed(leading.value, decimalsOf(leading.unit))}${leading.limit === undefined ? '' : `${leading.check === 'near-miss' ? ', asked' : ' of'} ${fixed(leading.limit, decimalsOf(leading.unit))}`}${leading.light === undefined ? '' : `, ${leading.light}`}</span>`}`;
  }
}

customElements.define('adjoin-book-compare', AdjoinBookCompare);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-book-compare': AdjoinBookCompare;
  }
}
