import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { judgeContext } from '../../../src/harmony/judge-context.ts';
import { jointVariables } from '../../../src/harmony/joint-variables.ts';
import type { JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import { partNames } from '../../../src/harmony/names.ts';
import { partBasis } from '../../../src/harmony/part-bases.ts';
import { counted, fixed, limitUseText } from '../../../src/report/number-text.ts';
import { builtInRuleBooks, checkExpression, compileRuleBook, describeBook, ruleMatrix, ruleVariables } from '../../../src/rules/index.ts';
import type { RuleBook, RuleMatrixCell, RuleVariables } from '../../../src/rules/index.ts';
import { ruleBookOf } from '../../../src/workers/rule-book-of.ts';
import { announce } from '../../controllers/announcer.ts';
import type { Desk } from '../../controllers/desk.ts';
import type { OpenCabin } from '../../controllers/open-cabin.ts';
import type { Route } from '../../controllers/route.ts';
import { jointsByPair, ownRule, pairKey, withColourLimit } from '../../model/rule-pairs.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields } from '../../styles/fields.ts';
import { planStyles } from '../plan/plan.styles.ts';
import { viewProperties } from '../view-element.ts';

const usualBasis = 'agreed between the parties';

/** The rule book as a matrix of the pairs of materials; a pair shows its rule with every basis, its joints, and its limit to change. */
export class AdjoinRulesView extends LitElement {
  static override styles = [base, controls, fields, planStyles, css`
    :host { grid-template-columns: minmax(0, 1fr); }
    .matrix td { padding: 0; border: 1px solid var(--faint); } .matrix th { padding: 4px 8px 4px 0; border: 0; vertical-align: middle; } .matrix thead td { border: 0; } h3 { margin-bottom: 8px; } .two { margin-top: 16px; } .matrix thead th { white-space: normal; vertical-align: bottom; padding: 2px 4px; font-size: var(--tiny); }
    .cell { position: relative; width: 100%; min-width: 84px; min-height: 44px; display: grid; border-radius: 0; border-color: transparent; padding: 2px 6px; text-align: left; justify-content: start; align-content: center; background: none; line-height: 1.15; justify-items: start; gap: 0; }
    .cell b { font-weight: 600; } .cell span { font-size: var(--tiny); } .cell.meets { background: var(--raised); } .cell[aria-pressed='true'] { background: var(--ink); } .cell .bad { font-weight: 600; color: var(--clashes); border-bottom: 2px solid var(--clashes); }
    .cell[aria-pressed='true'] .bad { color: inherit; border-color: currentColor; }
    .two { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 32px; } .two > * { min-width: 0; }
    .editor { display: grid; gap: 10px; } .editor input { font-family: ui-monospace, monospace; } pre { margin: 0; color: var(--clashes); font-family: ui-monospace, monospace; font-size: var(--body); padding-left: 9px; white-space: pre; overflow-x: auto; }
    @media (max-width: 1000px) { .two { grid-template-columns: minmax(0, 1fr); } }
  `];
  static override properties = { ...viewProperties, typed: { state: true }, basisText: { state: true }, other: { state: true } };

  declare open: OpenCabin;
  declare desk: Desk;
  declare route: Route;
  declare linkTo: (change: Partial<Route>) => string;
  declare go: (change: Partial<Route>, refine?: boolean) => void;
  /** The limit as it is typed; undefined while it is that of the book. */
  declare typed: string | undefined;
  declare basisText: string;
  /** The cabin as another book judges it. */
  declare other: { readonly book: string; readonly of: Judgement; readonly judgement: Judgement } | undefined;
  private matrixOf: { readonly book: unknown; readonly source: RuleBook; readonly cells: readonly RuleMatrixCell[] } | undefined;

  constructor() {
    super();
    this.basisText = usualBasis;
  }

  private get book(): { readonly source: RuleBook; readonly cells: readonly RuleMatrixCell[] } {
    const named = this.open.cabin.ruleBook;
    if (this.matrixOf === undefined || this.matrixOf.book !== named) {
      const source = ruleBookOf(named).value ?? builtInRuleBooks[0]!;
      this.matrixOf = { book: named, source, cells: ruleMatrix(source).cells };
    }
    return this.matrixOf;
  }

  private pick(key: string): void {
    this.typed = undefined;
    this.basisText = usualBasis;
    this.go({ options: { ...this.route.options, pair: key } }, true);
  }

  private key(event: KeyboardEvent, row: number, column: number): void {
    const move = { ArrowRight: [0, 1], ArrowLeft: [0, -1], ArrowDown: [1, 0], ArrowUp: [-1, 0] }[event.key];
    if (move === undefined) return;
    event.preventDefault();
    this.renderRoot.querySelector<HTMLElement>(`[data-at="${row + move[0]!} ${column + move[1]!}"]`)?.focus();
  }

  override render(): TemplateResult {
    const { source, cells } = this.book;
    const { cabin, judgement } = this.open;
    const byPair = jointsByPair(cabin, judgement.joints);
    const materials = source.materials.map(({ material }) => material);
    const known = new Map(cells.map((cell) => [pairKey(...cell.materials), cell]));
    const wanted = this.route.options?.['pair'] ?? [...byPair].sort((a, b) => b[1].length - a[1].length)[0]?.[0] ?? pairKey(materials[0] ?? '', materials[0] ?? '');
    const picked = known.get(wanted);
    return html`<div class="body">
      <div class="lead"><div><h1>Rules</h1><div class="said"><p>${source.name}: ${counted(byPair.size, 'pairing')} of materials meet in this cabin.</p><p>${source.note}</p></div></div></div>
      <section><h2>Pairs of materials</h2><div class="scroll"><table class="matrix"><caption class="unseen">Colour limit of each pair of materials, joints and clashes; arrow keys go from pair to pair</caption>
        <thead><tr><td></td>${materials.map((material) => html`<th scope="col">${material}</th>`)}</tr></thead>
        <tbody>${materials.map((rowMaterial, row) => html`<tr><th scope="row">${rowMaterial}</th>${materials.map((columnMaterial, column) => this.cell(known.get(pairKey(rowMaterial, columnMaterial)), byPair, row, column, wanted))}</tr>`)}</tbody></table></div></section>
      ${picked === undefined ? nothing : this.pair(picked, byPair.get(wanted) ?? [])}
      ${this.compare()}
      <details><summary>Every value of the book with its basis</summary>${this.rows(() => true)}</details>
    </div>`;
  }

  private cell(cell: RuleMatrixCell | undefined, byPair: ReadonlyMap<string, readonly JointResult[]>, row: number, column: number, picked: string): TemplateResult {
    if (cell === undefined) return html`<td></td>`;
    const key = pairKey(...cell.materials);
    const joints = byPair.get(key) ?? [];
    const clashes = joints.filter(({ verdict, accepted }) => verdict === 'clashes' && !accepted).length;
    const [a, b] = picked.split('+');
    const here = this.book.source.materials.findIndex(({ material }) => material === a) === row && this.book.source.materials.findIndex(({ material }) => material === b) === column;
    return html`<td><button class=${joints.length > 0 ? 'cell meets' : 'cell'} type="button" data-at=${`${row} ${column}`} tabindex=${here ? '0' : '-1'} aria-pressed=${key === picked}
      @keydown=${(event: KeyboardEvent) => this.key(event, row, column)} @click=${() => this.pick(key)}>
      <b><span class="unseen">${cell.materials.join(' and ')}, limit </span>${cell.limit.length > 9 ? 'formula' : cell.limit}</b>
      <span>${joints.length === 0 ? html`<span class="unseen">no joint</span>` : counted(joints.length, 'joint')}${clashes === 0 ? nothing : html`, <span class="bad">${counted(clashes, 'clash', 'clashes')}</span>`}</span></button></td>`;
  }

  private rows(wanted: (subject: string) => boolean): TemplateResult {
    return html`<div class="scroll"><table><thead><tr><th scope="col">of</th><th scope="col">value</th><th scope="col">is</th><th scope="col">basis</th></tr></thead><tbody>${describeBook(this.book.source).filter(({ subject }) => wanted(subject)).map((row) => html`<tr>
      <th scope="row">${row.subject}</th><td>${row.name}</td><td>${row.value} ${row.unit}</td><td class="small">${row.basis}</td></tr>`)}</tbody></table></div>`;
  }

  private pair(cell: RuleMatrixCell, joints: readonly JointResult[]): TemplateResult {
    const names = partNames(this.open.cabin.parts);
    const subjects = new Set<string>([...cell.materials, ...cell.rules, ...(cell.materials[0] === cell.materials[1] ? [] : ['unlike materials'])]);
    return html`<section><h2>${cell.materials[0] === cell.materials[1] ? cell.materials[0] : cell.materials.join(' and ')}</h2>
      <p>${cell.rule.why}</p>
      <div class="two"><div><h3>Change the colour limit of this pair</h3>${this.editor(cell, joints)}</div>
        <div class="scroll"><table><caption>${counted(joints.length, 'joint')}</caption><thead><tr><th scope="col">joint</th><th scope="col">rule</th><th scope="col">verdict</th><th scope="col" class="n">limit use</th></tr></thead>
          <tbody>${joints.map((joint) => html`<tr><th scope="row"><a href=${this.linkTo({ view: 'joint', joint: joint.id, item: undefined, options: {} })}>${joint.parts.map((part) => names.get(part) ?? part).join(' / ')}</a></th><td class="small">${joint.rule}</td><td><span class="word ${joint.verdict}">${joint.verdict}</span></td><td class="n">${limitUseText(joint.limitUse)}</td></tr>`)}</tbody></table></div></div>
      <details><summary>The values that make this rule, with their basis</summary>${this.rows((subject) => subjects.has(subject))}</details></section>`;
  }

  private editor(cell: RuleMatrixCell, joints: readonly JointResult[]): TemplateResult {
    const text = this.typed ?? cell.limit;
    const number = Number(text);
    const limit = text.trim() !== '' && Number.isFinite(number) ? number : text;
    const checked = checkExpression(limit, { positive: true });
    const variables = this.variables(joints[0]);
    const value = checked.evaluate === undefined || variables === undefined ? undefined : checked.evaluate(variables);
    const column = checked.issue?.column ?? 1;
    const off = this.open.locked || !checked.ok || this.typed === undefined || this.basisText.trim() === '';
    return html`<div class="editor">
      <label class="field"><span class="label">Limit: a number, or a formula</span><input type="text" name="limit" spellcheck="false" .value=${text} aria-invalid=${checked.ok ? 'false' : 'true'} aria-describedby="found" @input=${(event: Event) => { this.typed = (event.target as HTMLInputElement).value; }} /></label>
      <div id="found" aria-live="polite">${checked.issue === undefined
        ? html`<p class="small">${value === undefined ? 'It can be reckoned.' : html`It gives <b>${fixed(value, 3)}</b> at the first joint.`}</p>`
        : html`<pre aria-hidden="true">${text}\n${' '.repeat(Math.max(0, column - 1))}^</pre><p class="small">Column ${column}: found ${checked.issue.found}, expected ${checked.issue.expected}.${checked.issue.hint === undefined ? '' : ` ${checked.issue.hint}.`}</p>`}</div>
      <label class="field"><span class="label">Its basis</span><input type="text" name="basis" .value=${this.basisText} @input=${(event: Event) => { this.basisText = (event.target as HTMLInputElement).value; }} /></label>
      <p><button class=${off ? '' : 'strong'} type="button" aria-disabled=${off} @click=${() => { if (!off) this.save(cell, limit); }}>Save in the cabin's own book</button></p>
      <p class="small quiet">${this.open.locked ? 'Another tab owns this cabin. ' : ''}${ownRule(this.book.source, ...cell.materials) === undefined ? 'It becomes a rule of its own for this pair.' : 'It changes the rule of this pair.'} Undo takes it back.</p>
      <details><summary>Variables</summary><dl class="small">${ruleVariables.map(({ name, unit, meaning }) => html`<div><dt><code>${name}</code>${variables === undefined ? nothing : html` = ${Number.isFinite(variables[name]) ? fixed(variables[name], 2) : 'not known'}`} ${unit === '1' ? nothing : unit}</dt><dd class="quiet">${meaning}</dd></div>`)}</dl></details>
    </div>`;
  }

  private variables(result: JointResult | undefined): RuleVariables | undefined {
    const { cabin, judgement } = this.open;
    const joint = cabin.joints.find(({ id }) => id === result?.id);
    const { value: rules } = compileRuleBook(this.book.source);
    if (joint === undefined || rules === undefined) return undefined;
    const context = judgeContext(cabin, rules, judgement.stage, judgement.asOf);
    const sides = joint.parts.map((id) => partBasis(context, cabin.parts.find((part) => part.id === id)!));
    return jointVariables(context, joint, [sides[0]!, sides[1]!]);
  }

  private save(cell: RuleMatrixCell, limit: number | string): void {
    const result = this.desk.do('cabin.embed-rule-book', { ruleBook: withColourLimit(this.book.source, cell.materials, limit, this.basisText.trim()) });
    if (result.done) this.typed = undefined;
    announce(this, result.done ? `The limit of ${cell.materials.join(' and ')} is ${limit} now.` : `Not done: ${result.issues[0]?.hint ?? result.issues[0]?.expected ?? 'the book was refused'}`);
  }

  private compare(): TemplateResult {
    const { judgement, cabin } = this.open;
    const other = this.other?.of === judgement ? this.other : undefined;
    const names = partNames(cabin.parts);
    const now = new Map(judgement.joints.map((joint) => [joint.id, joint]));
    const differing = other?.judgement.joints.filter((joint) => now.get(joint.id)?.verdict !== joint.verdict) ?? [];
    return html`<section><h2>Beside another book</h2><div class="joints">${builtInRuleBooks.filter(({ id }) => id !== this.book.source.id).map(({ id, name }) => html`<button type="button" aria-pressed=${other?.book === id} @click=${() => void this.judgeBy(id)}>${name}</button>`)}</div>
      ${other === undefined ? nothing : html`<p>${differing.length === 0 ? 'Both books give every joint the same verdict.' : `${counted(differing.length, 'joint')} of ${judgement.joints.length} get another verdict.`}</p>
        ${differing.length === 0 ? nothing : html`<div class="scroll"><table><thead><tr><th scope="col">joint</th><th scope="col">by this book</th><th scope="col" class="n">limit use</th><th scope="col">by the other</th><th scope="col" class="n">limit use</th></tr></thead>
          <tbody>${differing.map((joint) => { const own = now.get(joint.id); return html`<tr><th scope="row"><a href=${this.linkTo({ view: 'joint', joint: joint.id, item: undefined, options: {} })}>${joint.parts.map((part) => names.get(part) ?? part).join(' / ')}</a></th><td><span class="word ${own?.verdict ?? ''}">${own?.verdict}</span></td><td class="n">${limitUseText(own?.limitUse)}</td><td><span class="word ${joint.verdict}">${joint.verdict}</span></td><td class="n">${limitUseText(joint.limitUse)}</td></tr>`; })}</tbody></table></div>`}`}</section>`;
  }

  private async judgeBy(book: string): Promise<void> {
    const of = this.open.judgement;
    const value = (await this.desk.judgeBy(book))?.value;
    if (value !== undefined) this.other = { book, of, judgement: value };
  }
}

customElements.define('adjoin-rules-view', AdjoinRulesView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-rules-view': AdjoinRulesView;
  }
}
