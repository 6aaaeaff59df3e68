import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { visualResults } from '../../../src/cabin/cabin.ts';
import { lightNames } from '../../../src/colour/index.ts';
import type { BoothSetting } from '../../model/review-log.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';

/** Grades of a scale, best first. ISO 3668 notes how much difference is seen from 0, none, to 5, very great; the grey scale of ISO 105-A02 goes from 5, none, to 1. The words of ISO 3668 from memory. */
const scales: Readonly<Record<string, readonly (readonly [number, string])[]>> = {
  'ISO 3668': [[0, '0, not perceptible'], [1, '1, very slight'], [2, '2, slight'], [3, '3, moderate'], [4, '4, considerable'], [5, '5, very great']],
  'ISO 105-A02': [5, 4.5, 4, 3.5, 3, 2.5, 2, 1.5, 1].map((grade) => [grade, Number.isInteger(grade) ? String(grade) : `${Math.floor(grade)}-${Math.ceil(grade)}`] as const),
};

/**
 * What was seen in the light booth at a joint.
 * @fires adjoin-record - values for the action `visual-record.add`, without the joint
 * @fires adjoin-leave - the form is left without a record
 */
export class AdjoinRecordForm extends LitElement {
  static override styles = [base, controls, fields, css`
    form { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(150px, 100%), 1fr)); gap: 12px 16px; align-items: start; padding: 14px 24px 16px; border-top: 1px solid var(--line); background: var(--raised); }
    fieldset { border: 0; margin: 0; padding: 0; min-width: 0; grid-column: 1 / -1; display: flex; flex-wrap: wrap; gap: 8px 16px; align-items: center; }
    legend { float: left; font-weight: 600; padding: 0; margin-right: 8px; }
    fieldset label { display: inline-flex; align-items: center; gap: 4px; min-height: 28px; cursor: pointer; }
    .wide { grid-column: span 2; }
    .foot { grid-column: 1 / -1; display: flex; gap: 8px; justify-content: flex-end; align-items: center; flex-wrap: wrap; }
    .fault { color: var(--clashes); font-weight: 600; margin-right: auto; }
    @media (max-width: 700px) { form { padding-left: 16px; padding-right: 16px; max-height: 60vh; overflow: auto; } .wide { grid-column: 1 / -1; } }
  `];
  static override properties = { cabin: { attribute: false }, setting: { attribute: false }, fault: {}, scale: { state: true } };

  declare cabin: Cabin;
  declare setting: BoothSetting;
  declare fault: string | undefined;
  declare scale: string;

  protected override firstUpdated(): void {
    this.scale = this.setting.scale;
    this.renderRoot.querySelector<HTMLInputElement>('input[type="radio"]')?.focus();
  }

  private readonly submit = (event: Event): void => {
    event.preventDefault();
    const data = new FormData(event.target as HTMLFormElement);
    const text = (name: string): string => String(data.get(name) ?? '').trim();
    const number = (name: string): number | undefined => (text(name) === '' ? undefined : Number(text(name).replace(',', '.')));
    const roles = text('roles').split(',').map((role) => role.trim()).filter(Boolean);
    const [illuminanceLx, grade] = [number('illuminance'), number('grade')];
    const setting: BoothSetting = { light: text('light'), illuminance: text('illuminance'), observers: text('observers'), roles: text('roles'), scale: text('scale') };
    const values = {
      date: text('date'), light: text('light'), observers: number('observers'), roles, result: text('result'),
      ...(illuminanceLx === undefined ? {} : { illuminanceLx }), ...(grade === undefined || setting.scale === '' ? {} : { scale: setting.scale, grade }),
      ...(text('note') === '' ? {} : { note: text('note') }),
    };
    this.dispatchEvent(new CustomEvent('adjoin-record', { detail: { values, setting } }));
  };

  override render(): TemplateResult {
    const { cabin, setting } = this;
    const lights = [...lightNames, ...(cabin.lights ?? []).map(({ id }) => id)];
    const scale = this.scale ?? setting.scale;
    return html`<form @submit=${this.submit} aria-label="Visual record">
      <fieldset><legend>Seen as</legend>${visualResults.map((result, index) => html`<label><input type="radio" name="result" value=${result} ?checked=${index === 0} />${result}</label>`)}</fieldset>
      <label class="field"><span class="label">Booth light</span><span class="pick"><select name="light">${lights.map((light) => html`<option ?selected=${light === setting.light}>${light}</option>`)}</select></span></label>
      <label class="field"><span class="label">Illuminance <span class="unit">lx</span></span><input type="text" inputmode="decimal" name="illuminance" .value=${setting.illuminance} /></label>
      <label class="field"><span class="label">Observers</span><input type="text" inputmode="numeric" name="observers" required .value=${setting.observers} /></label>
      <label class="field wide"><span class="label">Their roles <span class="unit">with commas between</span></span><input type="text" name="roles" .value=${setting.roles} /></label>
      <label class="field"><span class="label">Rating by</span><span class="pick"><select name="scale" @change=${(event: Event) => { this.scale = (event.target as HTMLSelectElement).value; }}>
        <option value="">no scale</option>${Object.keys(scales).map((name) => html`<option value=${name} ?selected=${name === scale}>${name}</option>`)}
      </select></span></label>
      ${scales[scale] === undefined ? nothing : html`<label class="field"><span class="label">Grade</span><span class="pick"><select name="grade">${scales[scale].map(([grade, words]) => html`<option value=${grade}>${words}</option>`)}</select></span></label>`}
      <label class="field"><span class="label">Date</span><input type="date" name="date" required .value=${cabin.asOf} /></label>
      <label class="field wide"><span class="label">Note <span class="unit">optional</span></span><input type="text" name="note" /></label>
      <div class="foot">
        ${this.fault === undefined ? nothing : html`<span class="fault" role="alert">${this.fault}</span>`}
        <button type="button" @click=${() => this.dispatchEvent(new CustomEvent('adjoin-leave'))}>Cancel</button><button class="strong" type="submit">Keep the record</button>
      </div>
    </form>`;
  }
}

customElements.define('adjoin-record-form', AdjoinRecordForm);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-record-form': AdjoinRecordForm;
  }
}
