import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { fieldWords } from '../model/field-words.ts';
import './adjoin-term.ts';

/** The label of a field; a term of the trade explains itself there. */
export function fieldLabel(label: string): TemplateResult | string {
  const word = fieldWords.get(label);
  return word === undefined ? label : html`<adjoin-term word=${word}>${label}</adjoin-term>`;
}
