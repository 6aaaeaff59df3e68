import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Material } from '../../../src/cabin/cabin.ts';
import { counted } from '../../../src/report/number-text.ts';
import { drawing, element } from '../../../src/report/scene.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { unfolds } from '../../controllers/sections.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { verdictShares } from '../../figures/verdict-shares.ts';
import { standingSource } from '../../model/joint-filter.ts';
import type { RuleCell } from '../../model/rule-cells.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './rule-matrix.styles.ts';
import type { RulesContext } from './rules-context.ts';

const steps: Readonly<Record<string, readonly [row: number, column: number]>> = { ArrowRight: [0, 1], ArrowLeft: [0, -1], ArrowDown: [1, 0], ArrowUp: [-1, 0] };
const chips = 6;

/** The pairs of materials as a matrix up to its diagonal, or as a list: which rule wins, its limit, how many joints it touches and how these stand. */
export class AdjoinRuleMatrix extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = { at: { attribute: false }, cells: { attribute: false }, materials: { attribute: false }, picked: {}, shown: {} };

  declare at: RulesContext;
  declare cells: readonly (readonly RuleCell[])[];
  declare materials: readonly Material[];
  declare picked: string;
  declare shown: 'matrix' | 'list';

  private keyed(event: KeyboardEvent, row: number, column: number): void {
    const step = steps[event.key];
    const last = this.materials.length - 1;
    const target = step !== undefined ? [row + step[0], column + step[1]] as const
      : event.key === 'Home' ? [row, 0] as const : event.key === 'End' ? [row, row] as const
        : event.key === 'PageUp' ? [column, column] as const : event.key === 'PageDown' ? [last, column] as const : undefined;
    if (target === undefined) return;
    event.preventDefault();
    this.renderRoot.querySelector<HTMLElement>(`[data-at="${target[0]} ${target[1]}"]`)?.focus();
  }

  override render(): TemplateResult {
    return this.shown === 'list' ? this.list() : this.matrix();
  }

  private matrix(): TemplateResult {
    const [a, b] = this.picked.split('+');
    const all = this.cells.flat();
    const reached = all.find(({ key }) => key === this.picked) ?? all[0];
    return html`<div class="scroll"><table class="grid" role="grid" aria-label="Pairs of materials; arrow keys go from pair to pair, Enter shows the pair">
      <thead><tr role="row"><td role="presentation"></td>${this.materials.map((material) => html`<th role="columnheader" scope="col" class=${material === a || material === b ? 'on' : ''}>${material}</th>`)}</tr></thead>
      <tbody>${this.cells.map((line, row) => html`<tr role="row">
        <th role="rowheader" scope="row" class=${this.materials[row] === a || this.materials[row] === b ? 'on' : ''}>${this.materials[row]}${this.swatches(this.materials[row] ?? '')}</th>
        ${line.map((cell, column) => html`<td role="gridcell">${this.cell(cell, row, column, cell === reached)}</td>`)}
      </tr>`)}</tbody></table>
      <div class=${this.materials.length > 7 ? 'legend corner' : 'legend'}>
        <span><b>0.70</b> colour limit; <b class="bad">1</b> of 12 joints that clash</span><span><span><adjoin-term word="class of material">classes</adjoin-term>: the values of both materials combined; in bold the rule that wins before them</span></span>
        ${(['clashes', 'open', 'holds'] as const).map((verdict) => html`<span>${scene(verdictSample({ verdict }, 26, 12, paperInk))}${verdict}, as long as its share</span>`)}
      </div></div>`;
  }

  private swatches(material: Material): TemplateResult | typeof nothing {
    const { open, colours } = this.at;
    const fills = open.cabin.parts.filter((part) => standingSource(part)?.material === material).map((part) => colours.get(part.id)?.css).filter((css) => css !== undefined).slice(0, chips);
    if (fills.length === 0) return nothing;
    return html`<span class="swatches sample">${scene(drawing(fills.length * 11, 10, undefined, fills.map((fill, index) => element('rect', { x: index * 11, y: 0, width: 10, height: 10, fill }))))}</span>`;
  }

  private winnerText({ winners }: RuleCell): string {
    return winners.length > 1 ? `${winners.length} rules` : winners[0]?.id ?? 'classes';
  }

  private cell(cell: RuleCell, row: number, column: number, reached: boolean): TemplateResult {
    const { joints, clashes, limit, key, materials } = cell;
    const by = this.winnerText(cell);
    return html`<button type="button" class=${joints.length > 0 ? 'cell meets' : 'cell'} data-at=${`${row} ${column}`} tabindex=${reached ? '0' : '-1'} aria-pressed=${key === this.picked}
      title=${`${materials.join(' and ')}: ${by}, limit ${limit}`} @keydown=${(event: KeyboardEvent) => this.keyed(event, row, column)} @click=${() => this.at.set({ pair: key, rule: '', joint: '' }, true)}>
      <span class="top"><b><span class="unseen">${materials.join(' and ')}, limit </span>${limit.length > 7 ? 'formula' : limit}</b>
        ${joints.length === 0 ? html`<span class="unseen">, no joint</span>` : html`<span class="count"><span class="unseen">, </span>${clashes === 0 ? nothing : html`<span class="bad">${clashes}<span class="unseen"> clash</span></span> of `}${joints.length}<span class="unseen"> ${joints.length === 1 ? 'joint' : 'joints'}</span></span>`}</span>
      <span class=${cell.winners.some((winner) => winner !== undefined) ? 'by rule' : 'by'}><span class="unseen">by </span>${by}</span>
      ${joints.length === 0 ? nothing : scene(verdictShares(cell, 72, 12, paperInk))}
    </button>`;
  }

  private list(): TemplateResult {
    const cells = this.cells.flat().sort((one, other) => other.clashes - one.clashes || other.open - one.open || other.joints.length - one.joints.length);
    const meeting = cells.filter(({ joints }) => joints.length > 0);
    const others = cells.filter(({ joints }) => joints.length === 0);
    return html`${this.table(meeting, 'Pairs of materials, most clashes first')}
      ${others.length === 0 ? nothing : html`<details ${unfolds('other-pairs')}><summary>${counted(others.length, 'pair')} that ${others.length === 1 ? 'does' : 'do'} not meet in this cabin</summary>${this.table(others, 'Pairs that do not meet')}</details>`}`;
  }

  private pick(key: string): void {
    this.at.set({ pair: key, rule: '', joint: '' }, true);
    this.dispatchEvent(new CustomEvent('adjoin-pair'));
  }

  private table(cells: readonly RuleCell[], caption: string): TemplateResult {
    return html`<table class="list"><caption>${caption}</caption>
      <thead><tr><th scope="col">pair</th><th scope="col">rule that wins</th><th scope="col">limit</th><th scope="col">gloss</th><th scope="col"><span class="unseen">picture</span></th>${['joints', 'clash', 'accepted', 'open', 'hold'].map((name) => html`<th scope="col" class="n">${name}</th>`)}</tr></thead>
      <tbody>${cells.map((cell) => html`<tr class=${cell.key === this.picked ? 'here' : ''}>
        <th scope="row"><button type="button" class="bare" aria-pressed=${cell.key === this.picked} @click=${() => this.pick(cell.key)}>${cell.materials[0] === cell.materials[1] ? cell.materials[0] : cell.materials.join(' and ')}</button></th>
        <td data-name="by">${cell.winners.map((winner) => winner?.id ?? 'classes').join(', ')}</td><td data-name="limit">${cell.limit}</td><td class="small gloss" data-name="gloss">${cell.gloss}</td>
        <td class="line">${cell.joints.length === 0 ? nothing : scene(verdictShares(cell, 72, 12, paperInk))}</td>
        <td class="n" data-name="joints">${cell.joints.length}</td><td class="n" data-name="clash">${cell.clashes === 0 ? '0' : html`<span class="bad">${cell.clashes}</span>`}</td><td class="n" data-name="accepted">${cell.accepted}</td><td class="n" data-name="open">${cell.open}</td><td class="n" data-name="hold">${cell.holds}</td>
      </tr>`)}</tbody></table>`;
  }
}

customElements.define('adjoin-rule-matrix', AdjoinRuleMatrix);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-rule-matrix': AdjoinRuleMatrix;
  }
}
