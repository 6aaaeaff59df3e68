import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Recoverable } from '../platform/document-store.ts';
import { counted } from '../../src/report/number-text.ts';
import { jointStrip } from '../../src/report/figures/joint-strip.ts';
import { limitScale } from '../../src/report/figures/limit-scale.ts';
import type { LimitScaleInput } from '../../src/report/figures/limit-scale.ts';
import type { FigureTheme } from '../../src/report/figures/theme.ts';
import { drawing, element } from '../../src/report/scene.ts';
import { scene } from '../figures/scene.ts';
import { tableInk } from '../figures/inks.ts';
import { offeredCabins } from '../model/offered-cabins.ts';
import { base, controls } from '../styles/shared.ts';
import { styles } from './start.styles.ts';

const lessons: readonly { readonly use: LimitScaleInput; readonly greys: readonly [string, string]; readonly text: string }[] = [
  {
    use: { verdict: 'holds', limitUse: 0.46, uncertaintyUse: 0.12 }, greys: ['#4c4c4c', '#4f4f4f'],
    text: 'Inside the limit with the confidence that was asked for. A thin solid line.',
  },
  {
    use: { verdict: 'open', limitUse: 0.93, uncertaintyUse: 0.3 }, greys: ['#4c4c4c', '#565656'],
    text: 'The readings cannot decide: the bar of uncertainty crosses the limit. Dashed, with the cause and what would decide it.',
  },
  {
    use: { verdict: 'clashes', limitUse: 1.62, uncertaintyUse: 0.14 }, greys: ['#4c4c4c', '#666666'],
    text: 'Outside the limit with that confidence. A saw, the heaviest line there is.',
  },
];

/** One ink for all verdicts: the lesson is that they differ without hue. */
const lessonInk: FigureTheme = {
  ...tableInk, ink: 'var(--table-ink)', faint: 'var(--start-bar)', holds: 'var(--table-ink)', open: 'var(--table-ink)', clashes: 'var(--table-ink)',
};

/**
 * What stands where no cabin is open: what the workbench is for, how to read its one picture, and ways in.
 * @fires adjoin-pick - the user wants to choose a file
 * @fires adjoin-new - the user wants to make a cabin
 * @fires adjoin-recover - key of a kept document to open
 * @fires adjoin-forget - key of a kept document that is not wanted any more
 */
export class AdjoinStart extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { recoverable: { attribute: false } };

  /** Documents with changes that never reached a file. */
  declare recoverable: readonly Recoverable[];

  constructor() {
    super();
    this.recoverable = [];
  }

  private say(name: string, detail?: string): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }

  private kept(): TemplateResult {
    return html`
      <section class="kept" aria-labelledby="kept">
        <h2 id="kept">Changes that never reached a file</h2>
        <ul>${this.recoverable.map(({ key, name, fileName, keptAt, changes }) => html`
          <li>
            <span><b>${name}</b> <span class="quiet">${fileName ?? 'in no file'}, ${counted(changes, 'change')}, kept ${new Date(keptAt).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}</span></span>
            <button class="strong" type="button" @click=${() => this.say('adjoin-recover', key)}>Take up again</button>
            <button type="button" @click=${() => this.say('adjoin-forget', key)}>Throw away</button>
          </li>`)}
        </ul>
      </section>
    `;
  }

  override render(): TemplateResult {
    return html`
      <div class="sheet">
        <div>
          <h1>See which neighbours clash, and why.</h1>
          <p class="lead">
            A cabin file holds what was measured on every visible part and where parts meet. Adjoin judges each joint for colour under
            every light of the rules, gloss and texture, and says whether the readings are good enough to know.
          </p>
          ${this.recoverable.length > 0 ? this.kept() : nothing}
          <div class="ways">
            ${offeredCabins.map((demo, i) => html`
              <a class="way ${i === 0 ? 'first' : ''}" href=${`#/${demo.place}?open=${demo.address}`}>
                <b>${demo.name}</b><span>${demo.about}</span>
              </a>`)}
            <button class="way" type="button" @click=${() => this.say('adjoin-pick')}>
              <b>Open a cabin file…</b><span>.cabin.json</span>
            </button>
            <button class="way" type="button" @click=${() => this.say('adjoin-new')}>
              <b>Make a new cabin</b><span>then draw its parts and import readings</span>
            </button>
          </div>
          <p class="drop">Or let a file fall anywhere on this page. It is read here and sent nowhere.</p>
        </div>
        <figure>
          <ol class="lesson">
            ${lessons.map(({ use, greys, text }) => html`
              <li>
                <span class="verdict">${use.verdict}</span>
                ${scene(this.lesson(use, greys))}
                <p>${text}</p>
              </li>`)}
          </ol>
          <figcaption>
            A joint strip: two materials across their real gap, and under it the use of the limit. The upright tick is the limit;
            the bar is the standard uncertainty.
          </figcaption>
        </figure>
        <p class="caution">
          Results support a judgement and do not replace a visual assessment under agreed conditions. Colours on a screen are
          indicative: a page cannot see the display's calibration. The demonstration cabins, their people and companies are invented.
        </p>
      </div>
    `;
  }

  private lesson(use: LimitScaleInput, greys: readonly [string, string]): ReturnType<typeof drawing> {
    return drawing(
      440,
      76,
      undefined,
      jointStrip({ fills: greys, kind: 'gap', gapMm: 0.8, viewMm: 700 }, { width: 440, height: 52 }, tableInk),
      element('g', { transform: 'translate(0 57)' }, limitScale(use, { width: 440, height: 18 }, lessonInk)),
    );
  }
}

customElements.define('adjoin-start', AdjoinStart);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-start': AdjoinStart;
  }
}
