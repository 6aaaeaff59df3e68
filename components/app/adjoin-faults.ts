import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Issue } from '../../src/issue.ts';
import type { Refusal } from '../controllers/open-cabin.ts';
import { counted } from '../../src/report/number-text.ts';
import { base, controls } from '../styles/shared.ts';
import { styles } from './faults.styles.ts';

const first = 200;

/** Where in the file, in words. */
const place = (issue: Issue): string =>
  issue.line === undefined ? '' : `line ${issue.line}${issue.column === undefined ? '' : `, column ${issue.column}`}`;

/**
 * Lists every fault of a file that was not taken: where, what was found, what was expected, what to do.
 * @fires adjoin-dismiss - the list was read
 * @fires adjoin-pick - the user wants to choose another file
 */
export class AdjoinFaults extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { refusal: { attribute: false }, kept: {}, all: { state: true } };

  declare refusal: Refusal | undefined;
  /** Name of the cabin that stays open. */
  declare kept: string | undefined;
  declare all: boolean;

  constructor() {
    super();
    this.all = false;
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('refusal') || !this.isConnected) return;
    const dialog = this.renderRoot.querySelector('dialog');
    if (this.refusal !== undefined && !dialog?.open) dialog?.showModal();
    if (this.refusal === undefined && dialog?.open) dialog.close();
  }

  private say(name: 'adjoin-dismiss' | 'adjoin-pick'): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }));
  }

  override render(): TemplateResult {
    const issues = this.refusal?.issues ?? [];
    const errors = issues.filter((issue) => issue.severity === 'error').length;
    const rows = this.all ? issues : issues.slice(0, first);
    return html`
      <dialog aria-labelledby="title" @close=${() => this.say('adjoin-dismiss')}>
        <div class="head">
          <h2 id="title">${this.refusal?.file} was not opened</h2>
          <p>
            ${counted(errors, 'fault')} in the file. A cabin goes in whole or not at all,
            ${this.kept === undefined ? 'so nothing is open.' : html`so <strong>${this.kept}</strong> stays open as it was.`}
          </p>
        </div>
        <div class="list" tabindex="0" role="group" aria-label="Faults">
          <table>
            <thead><tr><th scope="col">Where</th><th scope="col">What</th></tr></thead>
            <tbody>${rows.map((issue) => this.row(issue))}</tbody>
          </table>
        </div>
        <div class="foot">
          <span>${rows.length < issues.length
            ? html`<button type="button" @click=${() => { this.all = true; }}>Show all ${issues.length}</button>`
            : nothing}</span>
          <button type="button" @click=${() => this.say('adjoin-pick')}>Open another…</button>
          <button class="strong" type="button" autofocus @click=${() => this.renderRoot.querySelector('dialog')?.close()}>Close</button>
        </div>
      </dialog>
    `;
  }

  private row(issue: Issue): TemplateResult {
    return html`
      <tr>
        <td class="place"><span class="path">${issue.path || 'the file'}</span><span class="at">${place(issue)}</span></td>
        <td>
          <span class="severity ${issue.severity}">${issue.code.replaceAll('-', ' ')}</span>
          <dl>
            ${issue.found === undefined ? nothing : html`<dt>found</dt><dd>${issue.found}</dd>`}
            ${issue.expected === undefined ? nothing : html`<dt>expected</dt><dd>${issue.expected}</dd>`}
          </dl>
          ${issue.hint === undefined ? nothing : html`<p class="hint">${issue.hint}</p>`}
        </td>
      </tr>
    `;
  }
}

customElements.define('adjoin-faults', AdjoinFaults);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-faults': AdjoinFaults;
  }
}
