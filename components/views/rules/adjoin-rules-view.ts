import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { bookOfCabin } from '../../../src/actions/index.ts';
import { colourIntents, jointKinds } from '../../../src/cabin/cabin.ts';
import type { JointResult } from '../../../src/harmony/judgement.ts';
import { partNames } from '../../../src/harmony/names.ts';
import { counted } from '../../../src/report/number-text.ts';
import { worstFirst } from '../../../src/report/worst-first.ts';
import { builtInRuleBooks, describeBook, glossRuleText, serialiseRuleBook } from '../../../src/rules/index.ts';
import { plainNumber } from '../../../src/rules/plain-number.ts';
import type { GlossRule, MaterialClass, RuleBook } from '../../../src/rules/index.ts';
import type { JointRuleLook } from '../../../src/workers/session-look.ts';
import { announce } from '../../controllers/announcer.ts';
import type { BookDraft } from '../../controllers/book-trial.ts';
import { BookTrial } from '../../controllers/book-trial.ts';
import { askSelection, doAction } from '../../controllers/edit-events.ts';
import type { OpenCabin } from '../../controllers/open-cabin.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { partsById, standingSource } from '../../model/joint-filter.ts';
import type { RuleCell } from '../../model/rule-cells.ts';
import { materialsInUse, ruleCells, ruleFilter } from '../../model/rule-cells.ts';
import { pairKey, pairOf } from '../../model/rule-pairs.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-book-compare.ts';
import type { OtherBook } from './adjoin-book-compare.ts';
import './adjoin-book-editor.ts';
import './adjoin-class-editor.ts';
import './adjoin-joint-choice.ts';
import './adjoin-pair-panel.ts';
import './adjoin-rule-matrix.ts';
import type { RulesContext } from './rules-context.ts';
import { draftEvent } from './rules-context.ts';
import { styles } from './rules-view.styles.ts';

const places = { pairs: 'Pairs of materials', classes: 'Classes of material', book: 'Whole book', compare: 'Against another book' } as const;
type Place = keyof typeof places;

/** A gloss rule as a table has room for it. */
const shortGloss = (rule: GlossRule): string => (rule.kind === 'not applicable' ? 'not judged' : rule.kind === 'level' ? `${plainNumber(rule.share * 100)} % of the level` : glossRuleText(rule));

/** Below this the matrix is a list, px. */
const matrixFrom = 620;

/**
 * The rule book of the cabin: the matrix of material pairs with the rule that wins in each, the editor of rules, classes and the book with what
 * every edit would change, and the book beside another one. All of it can be gone to by its address.
 */
export class AdjoinRulesView extends ViewElement {
  static override styles = [base, controls, fields, styles, stacked];
  static override properties = { look: { state: true }, narrow: { state: true }, dropped: { state: true }, otherBook: { state: true } };

  declare look: JointRuleLook | undefined;
  declare narrow: boolean;
  /** A rule book file that fell on the page. */
  declare dropped: File | undefined;
  /** The book of a file that the cabin's own is compared with. */
  declare otherBook: OtherBook | undefined;
  private readonly trial = new BookTrial(this);
  private lookOf: { readonly joint: string; readonly of: OpenCabin['judgement'] } | undefined;
  private readonly watch = new ResizeObserver(([entry]) => {
    const narrow = (entry?.contentRect.width ?? matrixFrom) < matrixFrom;
    if (narrow !== this.narrow) requestAnimationFrame(() => { this.narrow = narrow; });
  });

  constructor() {
    super();
    this.narrow = false;
    this.colours = new Map();
    this.addEventListener(draftEvent, (event) => this.trial.take((event as CustomEvent<BookDraft | null>).detail ?? undefined));
    this.addEventListener('adjoin-files', (event) => {
      const [file] = (event as CustomEvent<readonly File[]>).detail;
      if (file === undefined) return;
      this.dropped = file;
      this.set({ see: 'compare' });
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.watch.disconnect();
    // A key for what is selected must not reach a rule that is out of sight.
    if (this.open?.selection.rule !== undefined) this.desk.select({});
  }

  private get options(): Readonly<Record<string, string>> {
    return this.route.options ?? {};
  }

  /** The form that is open; only one that may change the cabin has any. */
  private get beginning(): 'book' | 'rule' | undefined {
    const { new: wanted } = this.options;
    return !this.open.locked && (wanted === 'book' || wanted === 'rule') ? wanted : undefined;
  }

  private get place(): Place {
    return (Object.keys(places) as Place[]).find((name) => name === this.options['see']) ?? 'pairs';
  }

  private readonly set = (change: Readonly<Record<string, string>>, refine = false): void => {
    const options = Object.fromEntries(Object.entries({ ...this.options, ...change }).filter(([, value]) => value !== ''));
    this.go({ options }, refine);
    const rule = options['rule'];
    if ('rule' in change) askSelection(this, rule === undefined || rule === 'classes' ? {} : { rule });
  };

  private get materials(): readonly string[] {
    const book = bookOfCabin(this.open.cabin);
    if (book === undefined) return [];
    const used = materialsInUse(this.open.cabin, book);
    return this.options['all'] === 'yes' || used.length === 0 ? [...book.materials.map(({ material }) => material), ...used.filter((one) => !book.materials.some(({ material }) => material === one))] : used;
  }

  /** The joint of the address, else the worst of those that what is edited touches. */
  private chosenJoint(cell: RuleCell | undefined): JointResult | undefined {
    const { joints } = this.open.judgement;
    const named = joints.find(({ id }) => id === this.options['joint']);
    if (named !== undefined) return named;
    if (this.place === 'pairs') {
      const rule = this.options['rule'];
      const own = cell?.joints.filter((joint) => joint.rule === rule) ?? [];
      return worstFirst(own.length > 0 ? own : cell?.joints ?? [])[0];
    }
    return worstFirst(this.place === 'classes' ? this.jointsOf(this.shownClass?.material ?? '') : joints)[0];
  }

  /** The class of the address, else the first that the cabin uses. */
  private get shownClass(): MaterialClass | undefined {
    const book = bookOfCabin(this.open.cabin);
    const used = new Set(book === undefined ? [] : materialsInUse(this.open.cabin, book));
    return book?.materials.find(({ material }) => material === this.options['class']) ?? book?.materials.find(({ material }) => used.has(material)) ?? book?.materials[0];
  }

  private jointsOf(material: string): readonly JointResult[] {
    const parts = partsById(this.open.cabin);
    return this.open.judgement.joints.filter((joint) => joint.parts.some((id) => standingSource(parts.get(id))?.material === material));
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const joint = this.shownJoint;
    const { judgement, judging } = this.open;
    if (joint === undefined || judging || (this.lookOf?.joint === joint.id && this.lookOf.of === judgement)) return;
    const asked = (this.lookOf = { joint: joint.id, of: judgement });
    this.desk.look({ what: 'joint rule', joint: joint.id }).then((look) => { if (this.lookOf === asked) this.look = look; }, () => undefined);
  }

  private shownJoint: JointResult | undefined;

  override render(): TemplateResult {
    const { cabin, judgement } = this.open;
    const book = bookOfCabin(cabin);
    if (book === undefined) return html`<div class="content"><h1>Rules</h1><p>The rule book of this cabin cannot be read.</p></div>`;
    const { materials } = this;
    const cells = ruleCells(cabin, book, judgement.joints, ruleFilter(this.options), materials);
    const busiest = cells.flat().sort((one, other) => other.clashes - one.clashes || other.joints.length - one.joints.length)[0];
    const picked = this.options['pair'] ?? busiest?.key ?? '';
    const cell = cells.flat().find(({ key }) => key === picked) ?? this.outside(book, picked);
    this.shownJoint = this.chosenJoint(cell);
    const at: RulesContext = {
      open: this.open, book, names: partNames(cabin.parts), colours: this.colours, joint: this.shownJoint, look: this.lookOf?.joint === this.shownJoint?.id ? this.look : undefined,
      trial: this.trial, linkTo: this.linkTo, set: this.set,
    };
    const { place } = this;
    return html`
      <header>
        <div><h1>Rules</h1><p class="book"><adjoin-term word="rule, rule book">Rule book</adjoin-term>: ${book.name}</p><p class="note">${book.note}</p></div>
        <div class="actions">
          <button type="button" @click=${() => this.save(book)}>Save the book to a file</button>
          <button type="button" aria-expanded=${this.beginning === 'book'} aria-disabled=${this.open.locked} @click=${() => { if (!this.open.locked) this.set({ new: this.beginning === 'book' ? '' : 'book' }, true); }}>New book</button>
        </div>
        ${this.beginning === 'book' ? this.beginForm() : nothing}
        <nav aria-label="Rule book">${(Object.keys(places) as Place[]).map((name) => html`<button type="button" aria-pressed=${name === place} @click=${() => this.set({ see: name === 'pairs' ? '' : name, joint: '', new: '' })}>${places[name]}</button>`)}</nav>
      </header>
      <div class="content">${place === 'pairs' ? this.pairs(at, cells, cell, picked) : place === 'classes' ? this.classes(at) : place === 'book' ? this.whole(at)
        : html`<adjoin-book-compare .at=${at} .desk=${this.desk} .options=${this.options} .dropped=${this.dropped} .opened=${this.otherBook}
          .keep=${(book: OtherBook | undefined) => { this.otherBook = book; this.dropped = undefined; }}></adjoin-book-compare>`}</div>`;
  }

  /** A pair of an address that is not among the materials shown. */
  private outside(book: RuleBook, key: string): RuleCell | undefined {
    const pair = pairOf(key);
    if (!pair.every((material) => book.materials.some((row) => row.material === material))) return undefined;
    return ruleCells(this.open.cabin, book, this.open.judgement.joints, ruleFilter(this.options), pair[0] === pair[1] ? [pair[0]] : pair).flat().find((cell) => cell.key === pairKey(...pair));
  }

  private save(book: RuleBook): void {
    const name = `${fileName(book.id)}.rules.json`;
    downloadText(name, serialiseRuleBook(book), 'application/json');
    announce(this, `${name} went to your downloads`);
  }

  private beginForm(): TemplateResult {
    const take = (event: SubmitEvent): void => {
      event.preventDefault();
      const form = new FormData(event.target as HTMLFormElement);
      const result = doAction(this, 'rule-book.begin', { from: form.get('from'), name: (form.get('name') as string).trim() });
      if (result?.done === true) this.set({ new: '' }, true);
    };
    return html`<form class="begin" @submit=${take}>
      <label class="field"><span class="label">From</span><span class="pick"><select name="from">${builtInRuleBooks.map(({ id, name }) => html`<option value=${id}>${name}</option>`)}</select></span></label>
      <label class="field"><span class="label">Name</span><input type="text" name="name" required .value=${`${this.open.cabin.name}, own limits`} /></label>
      <button class="strong" type="submit">Begin it in this cabin</button><button type="button" @click=${() => this.set({ new: '' }, true)}>Leave it</button></form>`;
  }

  private pick(name: string, label: string | TemplateResult, values: readonly (readonly [string, string])[]): TemplateResult {
    const now = this.options[name] ?? '';
    return html`<label class="field"><span class="label">${label}</span><span class=${now === '' ? 'pick' : 'pick on'}><select @change=${(event: Event) => this.set({ [name]: (event.target as HTMLSelectElement).value }, true)}>
      <option value="" ?selected=${now === ''}>any</option>${values.map(([value, text]) => html`<option value=${value} ?selected=${value === now}>${text}</option>`)}</select></span></label>`;
  }

  private pairs(at: RulesContext, cells: readonly (readonly RuleCell[])[], cell: RuleCell | undefined, picked: string): TemplateResult {
    const { cabin, judgement } = this.open;
    const shown = this.options['as'] === 'list' || this.narrow ? 'list' : 'matrix';
    const meets = cells.flat().filter(({ joints }) => joints.length > 0).length;
    return html`
      ${judgement.joints.length > 0 ? nothing : html`<div class="teach"><p class="ask">A rule book says what two materials that meet must satisfy.</p>
        <p>This cabin has no joint yet. Each pair of materials below has its limit: from the classes of the two, combined, or from a rule of its own. Draw joints between parts on the map and every pair shows how many it judges.</p></div>`}
      <div class="filters">
        ${this.pick('intent', html`<adjoin-term word="intent">Intent</adjoin-term> of colour`, colourIntents.map((intent) => [intent, intent]))}${this.pick('kind', 'Kind of joint', jointKinds.map((kind) => [kind, kind]))}${this.pick('in-zone', 'Zone', cabin.zones.map(({ id, name }) => [id, name]))}
        <label class="check"><input type="checkbox" .checked=${this.options['all'] === 'yes'} @change=${(event: Event) => this.set({ all: (event.target as HTMLInputElement).checked ? 'yes' : '' }, true)} />all materials of the book</label>
        <span class="small quiet">${counted(meets, 'pair')} of <adjoin-term word="material">materials</adjoin-term> ${meets === 1 ? 'meets' : 'meet'} so</span>
        ${this.narrow ? nothing : html`<span class="views"><button type="button" aria-pressed=${shown === 'matrix'} @click=${() => this.set({ as: '' }, true)}>Matrix</button><button type="button" aria-pressed=${shown === 'list'} @click=${() => this.set({ as: 'list' }, true)}>Table</button></span>`}
      </div>
      <div class="two">
        <adjoin-rule-matrix class="stay" @adjoin-pair=${() => void this.showPair()} .at=${at} .cells=${cells} .materials=${this.materials} .picked=${picked} .shown=${shown}></adjoin-rule-matrix>
        <div class="side">${cell === undefined ? html`<p class="quiet">Choose a pair of materials.</p>` : html`<adjoin-pair-panel .at=${at} .cell=${cell} .filter=${ruleFilter(this.options)} .chosen=${this.options['rule']} .adding=${this.beginning === 'rule'}></adjoin-pair-panel>`}</div>
      </div>`;
  }

  /** Where the list stands above the pair, the pair that was picked comes into sight. */
  private async showPair(): Promise<void> {
    if (!this.narrow) return;
    await new Promise((resolve) => requestAnimationFrame(resolve));
    this.renderRoot.querySelector('adjoin-pair-panel')?.scrollIntoView({ block: 'start' });
  }

  private classes(at: RulesContext): TemplateResult {
    const { book } = at;
    const row = this.shownClass;
    return html`<div class="two">
      <div class="stay"><p class="about" id="classes">Limits and factors of each material; those of two <adjoin-term word="class of material">classes</adjoin-term> are combined for their pair</p><div class="scroll" tabindex="0" role="region" aria-label="Classes of material"><table class="stacked" aria-labelledby="classes">
        <thead><tr><th scope="col">material</th><th scope="col"><adjoin-term word="family">family</adjoin-term></th><th scope="col" class="n">limit</th><th scope="col" class="n"><adjoin-term word="kL">kL</adjoin-term></th><th scope="col" class="n"><adjoin-term word="component limit">cap |dL*|</adjoin-term></th><th scope="col">gloss</th><th scope="col" class="n"><adjoin-term word="spot">spots</adjoin-term></th><th scope="col" class="n">joints</th></tr></thead>
        <tbody>${book.materials.map((one) => html`<tr class=${one === row ? 'here' : ''} ${standsFor({ material: one.material }, !this.open.locked)}><th scope="row"><button type="button" class="bare" aria-pressed=${one === row} @click=${() => this.set({ class: one.material, joint: '' }, true)}>${one.material}</button></th>
          <td data-name="family">${one.family}</td><td class="n" data-name="limit">${plainNumber(one.colourLimit)}</td><td class="n" data-name="kL">${plainNumber(one.kL)}</td><td class=${one.lightnessCap === undefined ? 'n none' : 'n'} data-name="cap |dL*|">${one.lightnessCap === undefined ? '–' : plainNumber(one.lightnessCap)}</td><td class="small" data-name="gloss" title=${glossRuleText(one.gloss)}>${shortGloss(one.gloss)}</td>
          <td class="n" data-name="spots">${one.wanted.spots}</td><td class="n" data-name="joints">${this.jointsOf(one.material).length}</td></tr>`)}</tbody></table></div></div>
      <div class="side">${row === undefined ? nothing : html`<h2>${row.material}</h2><adjoin-joint-choice .at=${at} .touched=${this.jointsOf(row.material)}></adjoin-joint-choice><adjoin-class-editor .at=${at} .row=${row}></adjoin-class-editor>
        <div><button type="button" aria-disabled=${this.open.locked} @click=${() => { if (!this.open.locked) this.copyClass(book, row.material); }}>Add a material like ${row.material}</button></div>`}</div></div>`;
  }

  private copyClass(book: RuleBook, like: string): void {
    let number = 2;
    while (book.materials.some(({ material }) => material === `${like}-${number}`)) number += 1;
    if (doAction(this, 'material.add', { name: `${like}-${number}`, like })?.done === true) this.set({ class: `${like}-${number}` }, true);
  }

  private whole(at: RulesContext): TemplateResult {
    return html`<div class="two even">
      <div class="side first"><adjoin-joint-choice .at=${at} .touched=${[]}></adjoin-joint-choice><adjoin-book-editor .at=${at}></adjoin-book-editor></div>
      <div class="side"><p class="about" id="values">Every value with its basis, as the report prints it</p><div class="scroll" tabindex="0" role="region" aria-label="Every value of the book"><table class="stacked" aria-labelledby="values"><thead><tr><th scope="col">of</th><th scope="col">value</th><th scope="col">is</th><th scope="col"><adjoin-term word="basis">basis</adjoin-term></th></tr></thead>
        <tbody>${describeBook(at.book).map((row) => html`<tr><th scope="row" class="beside">${row.subject}</th><td>${row.name}</td><td class="whole">${row.value} ${row.unit}</td><td class="small quiet whole">${row.basis}</td></tr>`)}</tbody></table></div></div></div>`;
  }
}

customElements.define('adjoin-rules-view', AdjoinRulesView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-rules-view': AdjoinRulesView;
  }
}
