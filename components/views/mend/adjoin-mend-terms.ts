import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Part, Reach } from '../../../src/cabin/cabin.ts';
import { sourceOf } from '../../../src/cabin/source-of.ts';
import { partNames } from '../../../src/harmony/names.ts';
import { assumedReach, reachBasis, toolGlossStep } from '../../../src/plan/mend/material-reach.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { asksBeside, exceptOf, lockedOf, reachAxes, toggled, usualSeconds } from '../../model/mend-terms.ts';
import type { ReachAxis } from '../../model/mend-terms.ts';
import type { Options } from '../../model/source-terms.ts';
import { jointNames } from '../../model/joint-names.ts';
import type { Choice } from '../../model/matching.ts';
import '../../app/adjoin-choice.ts';
import '../../app/adjoin-term.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { planStyles } from '../plan/plan.styles.ts';

const axisNames: Readonly<Record<ReachAxis, string>> = { L: 'L*', a: 'a*', b: 'b*', gloss: 'gloss units' };

/**
 * What a mend has to keep to. Reach, costs, locks and the time allowed are edits of the cabin; the aim, joints left as they are and the release of
 * carry-over parts belong to one plan.
 * @fires adjoin-terms - the options of the address as they are wanted
 * @fires adjoin-keep-terms - what the address asks for is to be kept in the cabin
 */
export class AdjoinMendTerms extends InTurnElement {
  static override styles = [base, controls, fields, planStyles, css`
    :host { display: grid; gap: 20px; grid-template-columns: minmax(0, 1fr); background: none; min-height: 0; align-content: start; }
    .kept li { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 8px; align-items: center; font-size: var(--small); padding: 2px 0; }
    .terms-table { table-layout: fixed; } .terms-table th:first-child { width: 88px; overflow-wrap: anywhere; }
    .terms-table input, .axes input { width: 100%; min-width: 0; min-height: 26px; padding: 2px 4px; text-align: right; font-variant-numeric: tabular-nums; font-size: var(--small); appearance: textfield; }
    .terms-table input::-webkit-inner-spin-button, .axes input::-webkit-inner-spin-button { appearance: none; }
    input.set { font-weight: 700; border-width: 2px; padding: 1px 4px; }
    td, tbody th { vertical-align: middle; } td, th { padding: 2px 0 2px 5px; font-size: var(--small); } tbody th, thead th:first-child { padding-left: 0; }
    .terms-table + p { margin: 6px 0; } .time input { max-width: 120px; } .radios { display: grid; }
    .own { display: grid; gap: 8px; border: 1px solid var(--line); border-radius: var(--radius); padding: 10px; margin-top: 8px; }
    .own .axes { display: grid; grid-template-columns: repeat(4, minmax(0, 1fr)); gap: 6px; } .own input[type='number'] { padding: 2px 5px; min-height: 26px; text-align: right; }
    .notice { flex-direction: column; align-items: stretch; padding: 10px 12px; } .notice ul { font-size: var(--small); display: grid; gap: 2px; }
    .notice .does { display: flex; flex-wrap: wrap; gap: 6px; }
    @media (min-width: 761px) and (max-width: 1080px) { :host { grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 20px 40px; } .notice { grid-column: 1 / -1; } }
  `];
  static override properties = { cabin: { attribute: false }, options: { attribute: false }, failing: { attribute: false }, locked: { type: Boolean }, editing: { state: true } };

  declare cabin: Cabin;
  declare options: Options;
  /** Ids of joints that do not hold. */
  declare failing: readonly string[];
  /** Another tab owns the cabin. */
  declare locked: boolean;
  /** The part whose own terms are open. */
  declare editing: string | undefined;

  private change(options: Options): void {
    this.dispatchEvent(new CustomEvent('adjoin-terms', { detail: options, bubbles: true, composed: true }));
  }

  private name(part: string): string {
    return partNames(this.cabin.parts).get(part) ?? part;
  }

  private mend(part: string, values: Readonly<Record<string, unknown>>): void {
    doAction(this, 'part.set-mend', { part, ...values });
  }

  override render(): TemplateResult {
    const radio = (value: string, label: string): TemplateResult => html`<label class="check"><input type="radio" name="aim" value=${value} .checked=${(this.options['aim'] || 'fewest') === value}
      @change=${() => this.change({ ...this.options, aim: value === 'fewest' ? '' : value })} /><span>${label}</span></label>`;
    return html`
      ${this.asked()}
      <fieldset><legend>Change</legend><div class="radios">${radio('fewest', 'as few parts as can be')}${radio('cheapest', 'the cheapest set of parts, by set-ups and tools')}</div></fieldset>
      ${this.still()}
      ${this.joints()}
      ${this.reachTable()}
      ${this.ownTerms()}
      <label class="field time"><span class="label">Time allowed <span class="unit">s for the whole plan</span></span><input type="number" name="time" min="0.1" step="any" placeholder=${String(usualSeconds)} ?disabled=${this.locked} .value=${String(this.cabin.planning?.timeLimitS ?? '')}
        @change=${(event: Event) => { const value = numberOf(event); if (value !== 0) doAction(this, 'planning.set-time', { timeLimitS: value }); }} /></label>
      <p class="small quiet">Reach, costs, locks and time are kept in the cabin and its file; Undo takes each back.</p>
    `;
  }

  /** What an address that was sent asks for beside what the cabin holds. */
  private asked(): TemplateResult | typeof nothing {
    const asks = asksBeside(this.options, this.cabin);
    if (asks.length === 0) return nothing;
    return html`<div class="notice" role="status"><div><b>This address plans with terms of its own.</b><ul>${asks.map((ask) => html`<li>${ask}</li>`)}</ul></div>
      <div class="does"><button type="button" ?disabled=${this.locked} @click=${() => this.dispatchEvent(new CustomEvent('adjoin-keep-terms', { bubbles: true, composed: true }))}>Keep them in the cabin</button>
      <button type="button" @click=${() => this.change({ ...this.options, lock: '', reach: '', cost: '', time: '' })}>Plan as the cabin says</button></div></div>`;
  }

  private adder(list: string, label: string, count: number, choices: () => readonly Choice[], add: (value: string) => void): TemplateResult {
    return html`<adjoin-choice .name=${list} .label=${label} .count=${count} .choices=${choices} ?disabled=${this.locked && list !== 'except'} @adjoin-chosen=${(event: CustomEvent<string>) => add(event.detail)}></adjoin-choice>`;
  }

  private kept(entries: readonly string[], text: (entry: string) => string, letGo: (entry: string) => void): TemplateResult | typeof nothing {
    return entries.length === 0 ? nothing : html`<ul class="kept">${entries.map((entry) => html`<li><span>${text(entry)}</span><button type="button" aria-label=${`Let go ${text(entry)}`} @click=${() => letGo(entry)}>Let go</button></li>`)}</ul>`;
  }

  private still(): TemplateResult {
    const { cabin, options } = this;
    const name = (part: string): string => this.name(part);
    const own = cabin.parts.filter(({ mend }) => mend?.locked === true).map(({ id }) => id);
    const asked = lockedOf(options).filter((part) => !own.includes(part));
    const still = new Set([...own, ...asked]);
    const frozen = cabin.parts.filter((part) => part.frozen === true).length;
    return html`<fieldset><legend>Parts that stay as they are</legend>
      ${this.kept([...own, ...asked], name, (part) => (own.includes(part) ? this.mend(part, { locked: null }) : this.change(toggled(options, 'lock', part))))}
      ${this.adder('lock', 'Lock a part…', cabin.parts.length - still.size, () => cabin.parts.filter(({ id }) => !still.has(id)).map(({ id }) => ({ id, name: name(id) })), (part) => this.mend(part, { locked: true }))}
      ${frozen === 0 ? nothing : html`<label class="check"><input type="checkbox" name="frozen" .checked=${options['frozen'] === 'free'} @change=${(event: Event) => this.change({ ...options, frozen: (event.target as HTMLInputElement).checked ? 'free' : '' })} /><span>${frozen} <adjoin-term word="carry-over">carry-over</adjoin-term> ${frozen === 1 ? 'part' : 'parts'} may change as well</span></label>`}</fieldset>`;
  }

  private joints(): TemplateResult {
    const { failing } = this;
    const joint = (id: string): string => jointNames(this.cabin).get(id) ?? id;
    const except = exceptOf(this.options);
    const offered = (): readonly Choice[] => failing.filter((id) => !except.includes(id)).map((id) => ({ id, name: joint(id) }));
    return html`<fieldset><legend>Joints left as they are in this plan</legend>${this.kept(except, joint, (id) => this.change(toggled(this.options, 'except', id)))}
      ${this.adder('except', 'Leave out a joint…', failing.length, offered, (id) => this.change(toggled(this.options, 'except', id)))}</fieldset>`;
  }

  /** How far each material can be taken, to be set to what its supplier says. */
  private reachTable(): TemplateResult {
    const { cabin } = this;
    const materials = [...new Set(cabin.parts.map((part) => sourceOf(part).material))].sort();
    const own = cabin.planning?.reach ?? {};
    const cell = (material: string, axis: ReachAxis): TemplateResult => {
      const [value, assumed] = [own[material]?.[axis], assumedReach(material)[axis]];
      const isSet = value !== undefined && value !== assumed;
      return html`<td class="n"><input class=${isSet ? 'set' : ''} type="number" name="reach" data-material=${material} data-axis=${axis} min="0" max="200" step="any" ?disabled=${this.locked} aria-label=${`Reach of ${material}, ${axisNames[axis]}`} placeholder=${fixed(assumed, 1)}
        .value=${isSet ? String(value) : ''} @change=${(event: Event) => doAction(this, 'planning.set-reach', { material, [axis]: numberOf(event) })} /></td>`;
    };
    const set = materials.some((material) => own[material] !== undefined);
    return html`<div><table class="terms-table"><caption><adjoin-term word="reach">Reach</adjoin-term> of the materials, up or down</caption><thead><tr><th scope="col">material</th><th scope="col" class="n"><adjoin-term word="L*, a*, b*">L*</adjoin-term></th><th scope="col" class="n">a*</th><th scope="col" class="n">b*</th><th scope="col" class="n"><adjoin-term word="gloss unit, GU">GU</adjoin-term></th></tr></thead>
        <tbody>${materials.map((material) => html`<tr><th scope="row">${material}</th>${reachAxes.map((axis) => cell(material, axis))}</tr>`)}</tbody></table>
      <p class="small quiet">${set ? html`Set ones stand bold, the others are an ${reachBasis}.` : html`${reachBasis[0]?.toUpperCase()}${reachBasis.slice(1)}: set it to what the suppliers say.`} The gloss of a grained moulding changes in steps of ${fixed(toolGlossStep, 1)} GU, with its tool.</p></div>`;
  }

  /** What single parts have of their own: cost of a change, and a reach that goes before the material's. */
  private ownTerms(): TemplateResult {
    const { cabin } = this;
    const set = cabin.parts.filter(({ mend }) => mend?.cost !== undefined || mend?.reach !== undefined);
    const open = cabin.parts.find(({ id }) => id === this.editing);
    return html`<fieldset class="parts"><legend>Cost and reach of single parts</legend>
      ${set.length === 0 ? nothing : html`<ul class="kept">${set.map((part) => html`<li><span>${this.name(part.id)}: <span class="quiet">${told(part)}</span></span><button type="button" aria-label=${`Edit ${this.name(part.id)}`} @click=${() => { this.editing = part.id; }}>Edit</button></li>`)}</ul>`}
      ${this.adder('part', 'Choose a part…', cabin.parts.length, () => cabin.parts.map(({ id }) => ({ id, name: this.name(id) })), (part) => { this.editing = part; })}
      ${open === undefined ? nothing : this.editor(open)}</fieldset>`;
  }

  private editor(part: Part): TemplateResult {
    const { setupCost, toolCost, material, currency } = sourceOf(part);
    const stated = setupCost === undefined ? 'not stated, counts as 1' : `${fixed(setupCost, 0)}${toolCost === undefined ? '' : `, and ${fixed(toolCost, 0)} with a tool`}${currency === undefined ? '' : ` ${currency}`}`;
    const own: Reach | undefined = part.mend?.reach;
    const of: Reach = this.cabin.planning?.reach?.[material] ?? assumedReach(material);
    const name = this.name(part.id);
    return html`<div class="own" role="group" aria-label=${`Terms of ${name}`}><b>${name}</b>
      <label class="field"><span class="label">A change costs <span class="unit">source: ${stated}</span></span><input class=${part.mend?.cost === undefined ? '' : 'set'} type="number" name="cost" data-part=${part.id} min="0" step="any" ?disabled=${this.locked} .value=${String(part.mend?.cost ?? '')}
        @change=${(event: Event) => this.mend(part.id, { cost: numberOf(event) })} /></label>
      <div><span class="label small quiet">Reach, in place of that of ${material}</span><div class="axes">${reachAxes.map((axis) => html`<label class="field"><span class="unit">${axis === 'gloss' ? 'GU' : axisNames[axis]}</span><input class=${own === undefined || own[axis] === of[axis] ? '' : 'set'} type="number" name="part-reach" data-axis=${axis} min="0" max="200" step="any" placeholder=${fixed(of[axis], 1)} aria-label=${`Reach of ${name}, ${axisNames[axis]}`} ?disabled=${this.locked}
        .value=${own === undefined || own[axis] === of[axis] ? '' : String(own[axis])} @change=${(event: Event) => this.mend(part.id, { [axis]: numberOf(event) })} /></label>`)}</div></div>
      <button type="button" @click=${() => { this.editing = undefined; }}>Done</button></div>`;
  }
}

/** What a field holds; `null` where it is empty or no number of at least 0, which takes the value out. */
function numberOf(event: Event): number | null {
  const { value } = event.target as HTMLInputElement;
  return value.trim() === '' || !(Number(value) >= 0) ? null : Number(value);
}

const told = ({ mend }: Part): string => [
  mend?.cost === undefined ? undefined : `costs ${fixed(mend.cost, 0)}`,
  mend?.reach === undefined ? undefined : `reach ${reachAxes.map((axis) => fixed(mend.reach?.[axis], 1)).join(', ')}`,
].filter(Boolean).join('; ');

customElements.define('adjoin-mend-terms', AdjoinMendTerms);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-mend-terms': AdjoinMendTerms;
  }
}
