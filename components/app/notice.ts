import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Desk } from '../controllers/desk.ts';
import type { NewerVersion } from '../controllers/newer-version.ts';

/** What stands above every place as long as it is so, one at a time and the gravest first, each with what can be done about it. */
export function notice(desk: Desk, newer: NewerVersion): TemplateResult | typeof nothing {
  const { open, keepFault, keeping } = desk;
  if (open?.locked === true) {
    return shown(html`${open.cabin.name} is open in another tab. It can be looked at here, not changed.`, button('Take it over', () => void desk.takeOver()));
  }
  if (open !== undefined && keepFault !== undefined) {
    return shown(html`<b>Changes are not kept.</b> ${keepFault.hint ?? keepFault.found}`, button('Save to a file', () => void desk.save()));
  }
  if (open !== undefined && keeping !== undefined) {
    return shown(
      html`<b>Not safe from a crash yet.</b> The last change has so many readings that keeping it takes a while: a crash now would lose it and what follows it.`,
      html`<span aria-hidden="true">${Math.round(100 * keeping)} % kept</span>`,
    );
  }
  if (newer.isReady) {
    return shown(html`A newer version of Adjoin is ready. It is used once the page is loaded anew; what is open stays open.`, button('Load anew', () => void newer.take()));
  }
  return nothing;
}

const shown = (words: TemplateResult, aside: TemplateResult): TemplateResult => html`<div class="notice" role="status"><p>${words}</p> ${aside}</div>`;

const button = (words: string, act: () => void): TemplateResult => html`<button type="button" @click=${act}>${words}</button>`;
