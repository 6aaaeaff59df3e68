import { html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import { keysText } from '../model/keys.ts';
import { base, controls } from '../styles/shared.ts';
import { styles } from './help.styles.ts';

const words: readonly (readonly [string, string])[] = [
  ['cabin', 'The document: one trim level in one colourway at one build phase.'],
  ['part', 'One visible face: one material, grain and colour. It has an outline on the map, a zone, and one or more sources. Faces bought together form a module.'],
  ['source', 'One supplier’s version of a part, with its material, grain, cost, lead time and specimens.'],
  ['specimen', 'One physical thing that was measured: a plaque, a tool part, a series part, a master or a boundary sample, at a named stage and of a lot.'],
  ['reading', 'One measurement at one spot: a spectrum, CIELAB values or a difference to a master; gloss; texture; and the conditions it was taken under.'],
  ['joint', 'Two parts that meet at an edge, a gap, a step or a seam, or that are only seen together: a sightline.'],
  ['intent', 'What the designer wants of a joint: match, a clear tone step, contrast, or free. What is free is shown and never judged.'],
  ['rule, rule book', 'What a pairing of materials must satisfy, and the ordered set of such rules.'],
  ['check', 'One comparison of a joint under its rule: colour, metamerism, gloss, texture, near miss, conditions; of a part alone: master and cap.'],
  ['limit use', 'Value over limit in per cent: 100 % is at the limit.'],
  ['verdict', 'holds: inside the limit with the confidence asked for. clashes: outside with that confidence. open: the data cannot decide, or may not be compared, and the reason is given.'],
  ['decision', 'An agreed deviation on one check of a joint, with reason, role, date and expiry. The verdict stays; the clash counts as accepted.'],
  ['visual record', 'What the light booth said of a joint: date, light, illuminance, observers, result.'],
  ['mend, choose, apportion', 'Plans: the smallest set of changes; the sources to pick; the joints’ limits turned into tolerances of parts.'],
];

const keys: readonly (readonly [string, string])[] = [
  ['Mod+K', 'everything that can be done'], ['Mod+O', 'open a cabin'], ['Mod+S', 'save'], ['Mod+Z', 'undo'], ['Mod+Shift+Z', 'redo'],
  ['Shift+ArrowRight', 'next joint of the wall'], ['Shift+ArrowLeft', 'joint before it'], ['F1', 'this page'],
];

/** What the words mean and which keys there are. */
export class AdjoinHelp extends LitElement {
  static override styles = [base, controls, styles];

  show(): void {
    this.renderRoot.querySelector('dialog')?.showModal();
  }

  override render(): TemplateResult {
    return html`
      <dialog aria-labelledby="title">
        <div class="head"><h2 id="title">Words and keys</h2><button type="button" autofocus @click=${() => this.renderRoot.querySelector('dialog')?.close()}>Close</button></div>
        <div class="body" tabindex="0" role="group" aria-label="Words and keys">
          <dl>${words.map(([word, meaning]) => html`<dt>${word}</dt><dd>${meaning}</dd>`)}</dl>
          <h3>Keys</h3>
          <dl class="keys">${keys.map(([key, what]) => html`<dt><kbd>${keysText(key)}</kbd></dt><dd>${what}</dd>`)}</dl>
          <h3>What the results are for</h3>
          <p>
            Results support a judgement and do not replace a visual assessment under agreed conditions (ISO 3668, SAE J361). A change of material or source
            touches flammability, emissions, airbag covers and glare, which are not judged here: local codes and the responsible licensed engineer decide.
            Screens are not colour-true unless calibrated.
          </p>
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
