import { html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import type { View } from '../controllers/route.ts';
import { deepFocus } from '../model/focus-path.ts';
import { glossary } from '../model/glossary.ts';
import { keysText } from '../model/keys.ts';
import { viewHelp } from '../model/view-help.ts';
import { base, controls } from '../styles/shared.ts';
import { styles } from './help.styles.ts';

const keys: readonly (readonly [string, string])[] = [
  ['Mod+K', 'everything that can be done'], ['Mod+O', 'open a cabin'], ['Mod+S', 'save'], ['Mod+Z', 'undo'], ['Mod+Shift+Z', 'redo'],
  ['Shift+ArrowRight', 'next joint of the wall'], ['Shift+ArrowLeft', 'joint before it'], ['Shift+F10', 'what can be done with what has the focus'], ['Ctrl+Space', 'in a formula of the rule book: the names there are'], ['F1', 'this page'],
];

const definitions = (words: Iterable<readonly [string, string]>): TemplateResult => html`<dl>${[...words].map(([word, meaning]) => html`<dt>${word}</dt><dd>${meaning}</dd>`)}</dl>`;

/** What this place is for and what to do here, then what all words mean and which keys there are. */
export class AdjoinHelp extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { view: {} };

  declare view: View;

  constructor() {
    super();
    this.view = 'start';
  }

  show(): void {
    const body = this.renderRoot.querySelector('.body');
    this.renderRoot.querySelector('dialog')?.showModal();
    if (body !== null) body.scrollTop = 0;
  }

  /** Where nothing had the focus before, or what had it is gone, the content takes it. A browser lets go of what is hidden only as it draws. */
  private closed(): void {
    requestAnimationFrame(() => requestAnimationFrame(() => {
      const now = deepFocus();
      if (now === undefined || this.renderRoot.contains(now)) (this.getRootNode() as ParentNode).querySelector('main')?.focus({ preventScroll: true });
    }));
  }

  override render(): TemplateResult {
    const { title, purpose, steps, words } = viewHelp[this.view];
    return html`
      <dialog aria-labelledby="title" @close=${this.closed}>
        <div class="head"><h2 id="title">${title}: what to do here</h2><button type="button" autofocus @click=${() => this.renderRoot.querySelector('dialog')?.close()}>Close</button></div>
        <div class="body" tabindex="0" role="group" aria-label="Help">
          <p class="purpose">${purpose}</p>
          <ol>${steps.map((step) => html`<li>${step}</li>`)}</ol>
          <h3>Words met here</h3>
          ${definitions(words.flatMap((word) => {
            const meaning = glossary.get(word);
            return meaning === undefined ? [] : [[word, meaning] as const];
          }))}
          <h3>Keys</h3>
          <dl class="keys">${keys.map(([key, what]) => html`<dt><kbd>${keysText(key)}</kbd></dt><dd>${what}</dd>`)}</dl>
          <h3>What the results are for</h3>
          <p>
            Results support a judgement and do not replace a visual assessment under agreed conditions (ISO 3668, SAE J361). A change of material or source
            touches flammability, emissions, airbag covers and glare, which are not judged here: local codes and the responsible licensed engineer decide.
            Screens are not colour-true unless calibrated.
          </p>
          <h3>All words</h3>
          ${definitions(glossary)}
        </div>
      </dialog>
    `;
  }
}

customElements.define('adjoin-help', AdjoinHelp);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-help': AdjoinHelp;
  }
}
