import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';

/** The list that an input offers while one writes in it; the input names it by `list`. */
export const suggestions = (id: string, names: readonly string[]): TemplateResult | typeof nothing =>
  (names.length === 0 ? nothing : html`<datalist id=${id}>${names.map((name) => html`<option value=${name}></option>`)}</datalist>`);
