import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Cabin, Joint } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { CheckResult, JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import type { Trial } from '../../../src/plan/proposal/proposed-cabin.ts';
import { limitScale } from '../../../src/report/figures/limit-scale.ts';
import { limitUseText } from '../../../src/report/number-text.ts';
import { drawing } from '../../../src/report/scene.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { uncertaintyUse, verdictWord } from '../../model/leading-check.ts';
import { isNothing, shiftFields, shiftNames, shiftOf, withShift } from '../../model/trial-text.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './what-if.styles.ts';
import { typedValue } from '../../controllers/typed-value.ts';

/** Reach of a slider; a field beside it takes more. */
const colourReach = 5;
const glossReach = { low: 5, high: 40 } as const;
const usualViewMm = 700;

/**
 * What if a side were other, the gap closer or the eye farther: sliders, and beside them what becomes of every check and of the joints around.
 * @fires adjoin-trial - the change that is tried; an empty one is none
 * @fires adjoin-keep - the change is to be kept as a proposal
 */
export class AdjoinWhatIf extends InTurnElement {
  static override styles = [base, controls, fields, styles];
  static override properties = {
    cabin: { attribute: false }, joint: { attribute: false }, result: { attribute: false }, trial: { attribute: false }, judgement: { attribute: false },
    tried: { attribute: false }, together: { attribute: false }, locked: { type: Boolean }, linkTo: { attribute: false },
  };

  declare cabin: Cabin;
  declare joint: Joint;
  /** As the document is judged. */
  declare result: JointResult;
  declare judgement: Judgement;
  declare trial: Trial;
  /** As it would be judged; undefined where nothing is tried. */
  declare tried: Judgement | undefined;
  declare together: readonly string[];
  declare locked: boolean;
  declare linkTo: (joint: string) => string;

  constructor() {
    super();
    this.trial = {};
    this.together = [];
    this.locked = false;
    this.linkTo = () => '#/';
  }

  private wish(trial: Trial): void {
    this.dispatchEvent(new CustomEvent('adjoin-trial', { detail: trial, bubbles: true, composed: true }));
  }

  private name(id: string): string {
    return cabinIndex(this.cabin).parts.get(id)?.name ?? id;
  }

  override render(): TemplateResult {
    const { result, trial } = this;
    const idle = isNothing(trial);
    const closing = this.closing();
    return html`
      <div class="sides">
        ${this.side(result.standard, 'standard')}${this.side(result.trial, 'trial')}
        <fieldset>
          <legend>Joint <span>gap and eye</span></legend>
          ${this.measure('gapMm', 'Gap', this.joint.gapMm ?? 0, { min: 0, max: Math.max(20, Math.ceil((this.joint.gapMm ?? 0) * 2)), step: 0.1 })}
          ${this.measure('viewMm', 'Seen from', this.joint.viewMm ?? usualViewMm, { min: 100, max: Math.max(2000, (this.joint.viewMm ?? 0) * 2), step: 10 })}
          <div class="do">
            ${closing === undefined ? nothing : html`<button type="button" @click=${() => this.wish(closing)}>Bring the trial to the standard</button>`}
            <button type="button" aria-disabled=${idle} @click=${() => { if (!idle) this.wish({}); }}>As measured</button>
            <button class="strong" type="button" aria-disabled=${idle || this.locked} @click=${this.keep}>Keep as proposal</button>
          </div>
        </fieldset>
      </div>
      ${this.outcome()}
    `;
  }

  private readonly keep = (): void => {
    if (isNothing(this.trial) || this.locked) return;
    this.dispatchEvent(new CustomEvent('adjoin-keep', { bubbles: true, composed: true }));
  };

  /** The shift of the trial side that closes what is left of the difference in daylight, or else under the first light. */
  private closing(): Trial | undefined {
    const { id, trial: part } = this.result;
    const { lights = [] } = (this.tried?.joints.find((joint) => joint.id === id) ?? this.result).checks.find(({ check }) => check === 'colour') ?? {};
    const { difference } = lights.find(({ light }) => light === 'D65') ?? lights[0] ?? {};
    if (difference === undefined) return undefined;
    const before = shiftOf(this.trial, part);
    return (['dL', 'da', 'db'] as const).reduce((trial, field) => withShift(trial, part, field, Math.round(((before[field] ?? 0) - difference[field]) * 100) / 100), this.trial);
  }

  private side(part: string, role: string): TemplateResult {
    const shift = shiftOf(this.trial, part);
    const gloss = this.judgement.parts.find(({ id }) => id === part)?.appearance.gloss ?? [];
    const reach = gloss.some(({ mean }) => mean > 12) ? glossReach.high : glossReach.low;
    return html`
      <fieldset>
        <legend>${this.name(part)} <span>${role}</span></legend>
        ${shiftFields.map((field) => this.slider({
          id: `${role}-${field}`, label: shiftNames[field], unit: field === 'dGloss' ? 'GU' : '', value: shift[field] ?? 0, now: 0, of: this.name(part),
          range: field === 'dGloss' ? { min: -reach, max: reach, step: 0.1 } : { min: -colourReach, max: colourReach, step: 0.05 },
          most: field === 'dGloss' ? 100 : 50,
          take: (value) => this.wish(withShift(this.trial, part, field, value)),
        }))}
      </fieldset>
    `;
  }

  private measure(field: 'gapMm' | 'viewMm', label: string, now: number, range: { min: number; max: number; step: number }): TemplateResult {
    return this.slider({
      id: field, label, unit: 'mm', value: this.trial[field] ?? now, now, of: 'joint', range, most: field === 'gapMm' ? 1000 : 100_000,
      take: (value) => {
        const { [field]: gone, ...rest } = this.trial;
        this.wish(value === now || (field === 'viewMm' && value <= 0) ? rest : { ...rest, [field]: value });
      },
    });
  }

  private slider({ id, label, unit, value, now, of, range, most, take }: Slider): TemplateResult {
    const set = (event: Event): void => {
      const input = event.target as HTMLInputElement;
      const given = Number(input.value.replace('\u2212', '-').replace(',', '.'));
      const least = range.min < 0 ? -most : 0;
      const valid = input.value.trim() !== '' && Number.isFinite(given) && given >= least && given <= most;
      input.setAttribute('aria-invalid', String(!valid));
      if (valid) take(Math.round(given * 1000) / 1000);
    };
    return html`
      <div class="slider ${value === now ? '' : 'set'}">
        <label for=${id}>${label}</label>
        <input
          type="range" aria-label=${`${label} of ${of}`} min=${range.min} max=${range.max} step=${range.step} .value=${live(String(value))}
          @input=${set} @dblclick=${() => take(now)}
        />
        <input id=${id} type="text" inputmode="decimal" autocomplete="off" aria-label=${`${label} of ${of}${unit === '' ? '' : `, ${unit}`}`} .value=${typedValue(String(value))} @change=${set} />
        <span class="unit">${unit}</span>
      </div>
    `;
  }

  private outcome(): TemplateResult {
    const { result, tried } = this;
    const after = tried?.joints.find(({ id }) => id === result.id);
    const rows = result.checks.flatMap((check, place) => {
      const later = after?.checks[place]?.check === check.check ? after.checks[place] : after?.checks.find((one) => one.check === check.check && one.subject === check.subject);
      return check.verdict === 'not applicable' ? [] : [{ check, later }];
    });
    return html`
      <div class="outcome">
        <table>
          <caption class="unseen">Checks as measured and as tried</caption>
          <thead><tr><th scope="col">Check</th><th scope="col">As measured</th><th scope="col">As tried</th><th scope="col" class="figure"><span class="unseen">Limit use as tried</span></th></tr></thead>
          <tbody>
            <tr class="whole">
              <th scope="row">Joint</th><td>${this.verdict(result)}</td><td aria-live="polite">${after === undefined ? html`<span class="quiet">as measured</span>` : this.verdict(after)}</td><td class="figure"></td>
            </tr>
            ${rows.map(({ check, later }) => html`
              <tr>
                <th scope="row">${check.check}${check.subject === undefined ? nothing : html` <span class="quiet">${check.subject}</span>`}</th>
                <td>${this.use(check)}</td>
                <td>${later === undefined ? nothing : this.use(later)}</td>
                <td class="figure">${this.scale(later ?? check, check)}</td>
              </tr>`)}
          </tbody>
        </table>
        ${this.around()}
      </div>
    `;
  }

  private verdict(joint: JointResult): TemplateResult {
    return html`<span class="word ${joint.verdict}">${verdictWord(joint)}</span> ${limitUseText(joint.limitUse)}`;
  }

  private use(check: CheckResult): TemplateResult {
    return html`<span class="word ${check.verdict.replace(' ', '-')}">${check.verdict}</span>${check.limitUse === undefined ? nothing : html` ${limitUseText(check.limitUse)}`}`;
  }

  private scale(check: CheckResult, before: CheckResult): TemplateResult {
    const size = { width: 168, height: 18 } as const;
    const verdict = check.verdict === 'holds' || check.verdict === 'clashes' ? check.verdict : 'open';
    const mark = { verdict, accepted: check.accepted, limitUse: check.limitUse, uncertaintyUse: uncertaintyUse(check), indicative: check.indicative, marker: before.limitUse } as const;
    return check.limitUse === undefined ? html`` : html`${scene(drawing(size.width, size.height, undefined, limitScale(mark, size, paperInk)))}`;
  }

  /** The other joints whose verdict a trial would change: what a shift is paid with. */
  private around(): TemplateResult {
    const { tried } = this;
    if (tried === undefined) return html`<p class="quiet">Nothing is tried. Move a slider: every check follows, here, on the stage and in the list below; the document stays as it is. The small triangle on a scale is the value as measured.</p>`;
    const before = new Map(this.judgement.joints.map((joint) => [joint.id, joint]));
    const changed = tried.joints.filter((joint) => joint.id !== this.result.id && before.get(joint.id) !== joint && before.get(joint.id)?.verdict !== joint.verdict);
    const judged = tried.joints.filter((joint) => joint.id !== this.result.id && before.get(joint.id) !== joint).length;
    return html`
      <div>
        <h3>Around it</h3>
        ${this.together.length === 0 ? nothing : html`<p>${this.together.map((id) => this.name(id)).join(', ')} borrow${this.together.length === 1 ? 's' : ''} these readings and change${this.together.length === 1 ? 's' : ''} along.</p>`}
        ${changed.length === 0
          ? html`<p class="quiet">${judged === 0 ? 'No other joint is touched.' : `${judged} other joint${judged === 1 ? ' is' : 's are'} touched; no verdict changes.`}</p>`
          : html`<ul>${changed.map((joint) => html`
              <li><a href=${this.linkTo(joint.id)}>${joint.parts.map((id) => this.name(id)).join(' / ')}</a>
                <span class="word ${before.get(joint.id)?.verdict ?? 'open'}">${before.get(joint.id)?.verdict}</span> → <span class="word ${joint.verdict}">${joint.verdict}</span></li>`)}</ul>`}
      </div>
    `;
  }
}

interface Slider {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  /** Value of the document. */
  readonly now: number;
  readonly of: string;
  readonly range: { readonly min: number; readonly max: number; readonly step: number };
  /** Largest magnitude that the field takes. */
  readonly most: number;
  readonly take: (value: number) => void;
}

customElements.define('adjoin-what-if', AdjoinWhatIf);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-what-if': AdjoinWhatIf;
  }
}
