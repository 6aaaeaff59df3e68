import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { colourIntents, jointKinds } from '../../../src/cabin/cabin.ts';
import { counted, limitUseText } from '../../../src/report/number-text.ts';
import { worstFirst } from '../../../src/report/worst-first.ts';
import { pairRuling } from '../../../src/rules/index.ts';
import type { PairRule, RulingEntry } from '../../../src/rules/index.ts';
import { commonPractice } from '../../../src/rules/book-bases.ts';
import { paperInk } from '../../figures/inks.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import type { RuleCell, RuleFilter } from '../../model/rule-cells.ts';
import { partsById } from '../../model/joint-filter.ts';
import { limitText } from '../../model/rule-cells.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import '../../app/adjoin-term.ts';
import './adjoin-class-editor.ts';
import './adjoin-joint-choice.ts';
import './adjoin-rule-editor.ts';
import type { RulesContext } from './rules-context.ts';
import { jointWords } from './rules-context.ts';

/** How the joints of a pair stand, what there is of it. */
const standingText = ({ clashes, accepted, open, holds }: RuleCell): string => [
  clashes === 0 ? '' : counted(clashes, 'clashes', 'clash'), accepted === 0 ? '' : `${accepted} accepted`, open === 0 ? '' : `${open} open`, holds === 0 ? '' : counted(holds, 'holds', 'hold'),
].filter(Boolean).join(', ');

/** More joints than this are counted, not listed. */
const listedAtMost = 60;

const placeWords: Readonly<Record<RulingEntry['place'], string>> = { wins: 'wins here', yields: 'applies, yields', elsewhere: 'not here' };

/** One pair of materials: the rules that could apply in the order of specificity with why the winner wins, the joint they are tried on, the editor, the joints. */
export class AdjoinPairPanel extends InTurnElement {
  static override styles = [base, controls, fields, css`
    :host { display: grid; gap: 18px; align-content: start; min-width: 0; }
    h2 { font-size: 1.25rem; letter-spacing: -0.01em; } h3 { font-size: var(--body); margin-bottom: 6px; }
    .quiet { color: var(--quiet); } .small { font-size: var(--small); }
    ol { display: grid; gap: 0; border-top: 1px solid var(--line); }
    .entry { display: grid; grid-template-columns: 22px minmax(0, 1fr) auto; gap: 0 8px; width: 100%; padding: 7px 8px 7px 6px; border: 0; border-bottom: 1px solid var(--faint); border-radius: 0; background: none; text-align: left; align-items: baseline; justify-content: stretch; }
    .entry:hover { background: var(--raised); } .entry[aria-pressed='true'] { background: var(--raised); color: var(--ink); box-shadow: inset 4px 0 var(--ink); }
    .entry .rank { color: var(--quiet); font-size: var(--small); text-align: right; } .entry .name { font-weight: 400; overflow-wrap: anywhere; } .entry.wins .name { font-weight: 700; } .entry .name .small { font-weight: 400; }
    .entry .place { font-size: var(--tiny); white-space: nowrap; color: var(--quiet); } .entry.wins .place { color: var(--ink); font-weight: 600; border-bottom: 2px solid var(--ink); }
    .entry .why { grid-column: 2 / -1; font-size: var(--small); color: var(--quiet); text-wrap: pretty; } .entry.elsewhere .name { color: var(--quiet); }
    @media (forced-colors: active) { .entry[aria-pressed='true'] { forced-color-adjust: auto; background: Canvas; color: CanvasText; } }
    .bar { display: flex; flex-wrap: wrap; gap: 6px; margin-top: 10px; } .class { font-weight: 600; padding: 10px 0 4px; }
    .new { margin-top: 8px; display: grid; grid-template-columns: repeat(auto-fill, minmax(130px, 1fr)); gap: 8px 12px; align-items: end; padding: 10px 12px; border: 1px dashed var(--line); } .new .field.wide { grid-column: 1 / -1; }
    table { border-collapse: collapse; width: 100%; } caption { text-align: left; font-weight: 600; padding-bottom: 4px; }
    td, th { padding: 4px 10px 4px 0; border-bottom: 1px solid var(--faint); text-align: left; font-weight: 400; vertical-align: top; } thead th { color: var(--quiet); font-size: var(--small); } .n { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
    .verdict { display: inline-flex; gap: 6px; align-items: center; } tr.here th { font-weight: 600; } .scroll { overflow-x: auto; position: relative; } th a { display: inline-block; min-height: 24px; }
    th button { min-height: 24px; padding: 0; text-align: left; justify-content: flex-start; }
  `];
  static override properties = { at: { attribute: false }, cell: { attribute: false }, filter: { attribute: false }, chosen: {}, adding: { type: Boolean } };

  declare at: RulesContext;
  declare cell: RuleCell;
  declare filter: RuleFilter;
  /** Id of the rule that is edited, `classes` for those of the materials; the winner where empty. */
  declare chosen: string | undefined;
  /** The form of a new rule is open, as the address says. */
  declare adding: boolean;

  constructor() {
    super();
    this.adding = false;
  }

  private get ruling(): readonly RulingEntry[] {
    const { at, cell, filter } = this;
    const { joint, open, book } = at;
    if (joint === undefined || !cell.joints.includes(joint)) return pairRuling(book, cell.materials, { intent: filter.intent, kind: filter.kind, zones: filter.zone === undefined ? undefined : [filter.zone] });
    const parts = partsById(open.cabin);
    return pairRuling(book, cell.materials, { intent: joint.intent.colour, kind: joint.kind, zones: joint.parts.map((part) => parts.get(part)?.zone ?? '') });
  }

  override render(): TemplateResult {
    const { cell, at, ruling } = this;
    const entry = ruling.find(({ rule }) => (rule?.id ?? 'classes') === this.chosen) ?? ruling.find(({ place }) => place === 'wins') ?? ruling.at(-1)!;
    const { rule } = entry;
    const [a, b] = cell.materials;
    return html`
      <div><h2>${a === b ? `${a} against its like` : `${a} and ${b}`}</h2>
        <p class="quiet">${cell.joints.length === 0 ? 'No joint of this cabin meets so.' : `${counted(cell.joints.length, 'joint')}: ${standingText(cell)}.`}</p></div>
      <section><h3>Tried on</h3><adjoin-joint-choice .at=${at} .touched=${cell.joints}></adjoin-joint-choice></section>
      <section><h3><adjoin-term word="rule, rule book">Rules</adjoin-term> that could apply, the most specific first</h3>
        <ol>${ruling.map((one, index) => this.entry(one, index, one === entry))}</ol>
        <div class="bar">${this.tools(rule)}</div>${this.adding ? this.addForm() : nothing}</section>
      <section><h3>${rule === undefined ? html`<adjoin-term word="class of material">${a === b ? 'The class' : 'The classes'}</adjoin-term>${a === b ? ` ${a}` : ''}` : html`The rule <code>${rule.id}</code>`}</h3>
        ${rule === undefined ? this.classes() : html`<adjoin-rule-editor .at=${at} .rule=${rule}></adjoin-rule-editor>`}</section>
      ${cell.joints.length === 0 ? nothing : this.joints()}`;
  }

  private entry({ rule, place, why, reach }: RulingEntry, index: number, chosen: boolean): TemplateResult {
    const { cell, at } = this;
    const ids = new Set(at.book.rules.map(({ id }) => id));
    const wins = cell.joints.filter((joint) => (rule === undefined ? !ids.has(joint.rule) : joint.rule === rule.id)).length;
    return html`<li ${standsFor(rule === undefined ? {} : { rule: rule.id }, rule !== undefined && !at.open.locked)}><button type="button" class="entry ${place}" aria-pressed=${chosen} @click=${() => this.at.set({ rule: rule?.id ?? 'classes' }, true)}>
      <span class="rank">${index + 1}</span><span class="name">${rule?.id ?? 'classes combined'} <span class="small quiet">limit ${limitText(at.book, cell.materials, rule)}${wins === 0 ? '' : `, decides ${counted(wins, 'joint')}`}</span></span><span class="place">${placeWords[place]}</span>
      <span class="why">${rule === undefined ? '' : `Names ${reach}. `}${why.charAt(0).toUpperCase()}${why.slice(1)}.</span></button></li>`;
  }

  private tools(rule: PairRule | undefined): TemplateResult {
    const { locked } = this.at.open;
    const { rules } = this.at.book;
    const place = rule === undefined ? -1 : rules.indexOf(rule);
    const act = (action: string, values: object): void => { if (!locked) doAction(this, action, { rule: rule?.id, ...values }); };
    return html`<button type="button" aria-expanded=${this.adding} aria-disabled=${locked} @click=${() => { if (!locked) this.at.set({ new: this.adding ? '' : 'rule' }, true); }}>New rule for this pair</button>
      ${rule === undefined ? nothing : html`
        <button type="button" aria-disabled=${locked} @click=${() => act('rule.duplicate', {})}>Duplicate</button>
        <button type="button" aria-disabled=${locked || place === 0} @click=${() => { if (place > 0) act('rule.move', { place: place - 1 }); }}  title="Among rules that name as much the later one in the book wins">Earlier</button>
        <button type="button" aria-disabled=${locked || place === rules.length - 1} @click=${() => { if (place < rules.length - 1) act('rule.move', { place: place + 1 }); }}>Later</button>
        <button type="button" aria-disabled=${locked} @click=${() => { act('rule.remove', {}); this.at.set({ rule: '' }, true); }}>Remove</button>`}`;
  }

  private addForm(): TemplateResult {
    const { open, book } = this.at;
    const options = (name: string, label: string, values: readonly string[]): TemplateResult => html`<label class="field"><span class="label">${label}</span><span class="pick"><select name=${name}><option value="">any</option>${values.map((value) => html`<option>${value}</option>`)}</select></span></label>`;
    const [a, b] = this.cell.materials;
    return html`<form class="new" @submit=${(event: SubmitEvent) => this.add(event)}>
      <label class="field"><span class="label">For</span><span class="pick"><select name="pair"><option value="both">${a === b ? `${a} against its like` : `${a} and ${b}`}</option><option value="first">${a} and any material</option>${a === b ? nothing : html`<option value="second">${b} and any material</option>`}</select></span></label>
      ${options('intent', 'Intent', colourIntents)}${options('kind', 'Kind of joint', jointKinds)}${options('zone', 'Zone', open.cabin.zones.map(({ id }) => id))}
      <label class="field wide"><span class="label"><adjoin-term word="basis">Basis</adjoin-term></span><input type="text" name="basis" required .value=${commonPractice} /></label>
      <div class="bar"><button class="strong" type="submit">Add the rule</button><button type="button" @click=${() => this.at.set({ new: '' }, true)}>Leave it</button></div>
      <p class="small quiet field wide">It begins with the limit that holds now, ${limitText(book, this.cell.materials, this.ruling.find(({ place }) => place === 'wins')?.rule)}, and leaves all else to the classes.</p></form>`;
  }

  private add(event: SubmitEvent): void {
    event.preventDefault();
    const form = new FormData(event.target as HTMLFormElement);
    const text = (name: string): string | undefined => (form.get(name) as string | null)?.trim() || undefined;
    const [a, b] = this.cell.materials;
    const sides = { both: [a, b], first: [a, '*'], second: [b, '*'] }[text('pair') ?? 'both'] ?? [a, b];
    const written = limitText(this.at.book, this.cell.materials, this.ruling.find(({ place }) => place === 'wins')?.rule);
    const limit = written === '–' ? undefined : Number.isFinite(Number(written)) ? Number(written) : written;
    const result = doAction(this, 'rule.add', { one: sides[0], other: sides[1], intent: text('intent'), kind: text('kind'), zone: text('zone'), limit, basis: text('basis') });
    const id = result?.editor.selection.rule;
    if (result?.done !== true) return;
    this.at.set({ new: '', ...(id === undefined ? {} : { rule: id }) }, true);
  }

  private classes(): TemplateResult {
    const { at, cell } = this;
    const rows = [...new Set(cell.materials)].map((material) => at.book.materials.find((row) => row.material === material));
    return html`${rows.map((row, index) => (row === undefined
      ? html`<p class="small">The book has no class for ${cell.materials[index]}; add one under Classes, or a rule for the pair.</p>`
      : html`${rows.length > 1 ? html`<p class="class">${row.material}</p>` : nothing}<adjoin-class-editor .at=${at} .row=${row}></adjoin-class-editor>`))}`;
  }

  private joints(): TemplateResult {
    const { at, cell } = this;
    return html`<section class="scroll" tabindex="0" role="region" aria-label="Joints of the pair"><table><caption>${counted(cell.joints.length, 'joint')} of the pair</caption><thead><tr><th scope="col">joint</th><th scope="col">verdict</th><th scope="col" class="n">limit use</th><th scope="col">by</th></tr></thead>
      <tbody>${worstFirst(cell.joints).slice(0, listedAtMost).map((joint) => html`<tr class=${joint === at.joint ? 'here' : ''}><th scope="row"><button class="bare" type="button" title="Try formulas on this joint" @click=${() => at.set({ joint: joint.id }, true)}>${jointWords(at, joint)}</button></th>
        <td><span class="verdict">${scene(verdictSample({ verdict: joint.verdict, accepted: joint.accepted }, 22, 10, paperInk))}<span class="word ${joint.verdict}">${joint.verdict}</span></span></td><td class="n">${limitUseText(joint.limitUse)}</td><td class="small quiet">${joint.rule}</td></tr>`)}</tbody></table>${cell.joints.length > listedAtMost ? html`<p class="small quiet">The ${listedAtMost} worst of ${cell.joints.length}.</p>` : nothing}</section>`;
  }
}

customElements.define('adjoin-pair-panel', AdjoinPairPanel);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-pair-panel': AdjoinPairPanel;
  }
}
