import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { lightNames } from '../../../src/colour/lights.ts';
import type { Issue } from '../../../src/issue.ts';
import type { LightRule } from '../../../src/rules/index.ts';
import { commonPractice } from '../../../src/rules/book-bases.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { typedValue } from '../../controllers/typed-value.ts';
import { faultText } from '../../model/fault-text.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { editorStyles } from './editor.styles.ts';
import type { RulesContext } from './rules-context.ts';

/** The lights of a rule or of the book, in order: the factor on the colour limit under each, whether it is required, and the basis. Each change is one edit. */
export class AdjoinLightRows extends LitElement {
  static override styles = [base, controls, fields, editorStyles];
  static override properties = { at: { attribute: false }, lights: { attribute: false }, action: {}, of: { attribute: false }, issue: { state: true } };

  declare at: RulesContext;
  declare lights: readonly LightRule[];
  declare action: string;
  declare of: Readonly<Record<string, string>>;
  declare issue: Issue | undefined;

  private keep(lights: readonly LightRule[]): void {
    const result = doAction(this, this.action, { ...this.of, lights });
    this.issue = result?.done === true ? undefined : result?.issues[0];
    this.requestUpdate();
  }

  private change(index: number, more: Partial<LightRule>): void {
    const light = this.lights[index];
    if (light !== undefined) this.keep(this.lights.with(index, { ...light, ...more }));
  }

  private move(index: number, by: number): void {
    const light = this.lights[index];
    if (light !== undefined) this.keep(this.lights.toSpliced(index, 1).toSpliced(index + by, 0, light));
  }

  private add(): void {
    const known = new Set(this.lights.map(({ light }) => light));
    const light = [...lightNames, ...(this.at.open.cabin.lights ?? []).map(({ id }) => id)].find((name) => !known.has(name));
    if (light !== undefined) this.keep([...this.lights, { light, factor: 1, standing: 'shown', basis: commonPractice }]);
  }

  override render(): TemplateResult {
    const { locked, cabin } = this.at.open;
    const names = [...lightNames, ...(cabin.lights ?? []).map(({ id }) => id)];
    const text = (event: Event): string => (event.target as HTMLInputElement).value;
    return html`
      <table class="rows"><thead><tr><th scope="col">light</th><th scope="col"><adjoin-term word="factor of a light">limit times</adjoin-term></th><th scope="col"><adjoin-term word="standing">judged</adjoin-term></th><th scope="col"><span class="unseen">order</span></th></tr></thead>
      <tbody>${this.lights.map((light, index) => html`
        <tr><td><span class="pick"><select aria-label="Light ${index + 1}" ?disabled=${locked} .value=${live(light.light)} @change=${(event: Event) => this.change(index, { light: text(event) })}>
            ${[...new Set([light.light, ...names])].map((name) => html`<option value=${name} ?selected=${name === light.light}>${name}</option>`)}</select></span></td>
          <td><input type="text" inputmode="decimal" aria-label="Factor under ${light.light}" ?disabled=${locked} .value=${typedValue(String(light.factor))} @change=${(event: Event) => this.change(index, { factor: Number(text(event).replace(',', '.')) })} /></td>
          <td><span class="pick"><select aria-label="Standing of ${light.light}" ?disabled=${locked} .value=${live(light.standing)} @change=${(event: Event) => this.change(index, { standing: text(event) as LightRule['standing'] })}>
            ${['required', 'shown'].map((standing) => html`<option value=${standing} ?selected=${standing === light.standing}>${standing}</option>`)}</select></span></td>
          <td class="moves"><button type="button" aria-label="${light.light} earlier" aria-disabled=${locked || index === 0} @click=${() => { if (!locked && index > 0) this.move(index, -1); }}>↑</button>
            <button type="button" aria-label="${light.light} later" aria-disabled=${locked || index === this.lights.length - 1} @click=${() => { if (!locked && index < this.lights.length - 1) this.move(index, 1); }}>↓</button>
            <button type="button" aria-label="Take ${light.light} out" aria-disabled=${locked} @click=${() => { if (!locked) this.keep(this.lights.toSpliced(index, 1)); }}>×</button></td></tr>
        <tr class="basis"><td colspan="4"><input type="text" aria-label="Basis of ${light.light}" ?disabled=${locked} .value=${typedValue(light.basis)} @change=${(event: Event) => this.change(index, { basis: text(event) })} /></td></tr>`)}</tbody></table>
      ${this.issue === undefined ? nothing : html`<p class="fault" role="alert">${faultText(this.issue)}</p>`}
      <div class="bar"><button type="button" aria-disabled=${locked} @click=${() => { if (!locked) this.add(); }}>Add a light</button></div>`;
  }
}

customElements.define('adjoin-light-rows', AdjoinLightRows);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-light-rows': AdjoinLightRows;
  }
}
