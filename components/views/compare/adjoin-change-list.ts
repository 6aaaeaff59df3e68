import { css, html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { JointChange, JointFigures } from '../../../src/harmony/compare/index.ts';
import { standingWord } from '../../../src/harmony/compare/joint-figures.ts';
import { jointStrip } from '../../../src/report/figures/joint-strip.ts';
import { useChange } from '../../../src/report/figures/use-change.ts';
import { limitUseText } from '../../../src/report/number-text.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import { drawing } from '../../../src/report/scene.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base } from '../../styles/shared.ts';
import { styles } from './compare-view.styles.ts';

/** One side of the comparison as it is drawn. */
export interface DrawnState {
  readonly cabin: Cabin;
  readonly colours: ReadonlyMap<string, PartColour>;
  readonly title: string;
}

const strip = { width: 82, height: 54 };

/** The changed joints, each as its strip before and after, its verdicts and its way along the limit. */
export class AdjoinChangeList extends LitElement {
  static override styles = [base, styles, css`:host { display: block; height: auto; }`];
  static override properties = { changes: { attribute: false }, former: { attribute: false }, present: { attribute: false }, linkTo: { attribute: false }, locked: { type: Boolean } };

  declare changes: readonly JointChange[];
  declare former: DrawnState;
  declare present: DrawnState;
  declare linkTo: (joint: string) => string;
  /** Looked at and not changed. */
  declare locked: boolean;

  override render(): TemplateResult {
    return html`<ol class="changes">${this.changes.map((change) => html`<li ${standsFor({ joint: change.id }, change.after !== undefined && !this.locked, change.after !== undefined)}>${change.after === undefined
      ? html`<div class="gone"><p class="names">${this.names(change)}</p><p class="sentence">${change.sentence}</p></div>`
      : html`<a href=${this.linkTo(change.id)}>
        <div>
          <p class="names">${this.names(change)}</p>
          <p class="words">${this.verdict(change.before)}<span class="to">then</span>${this.verdict(change.after)}</p>
        </div>
        <div class="pair">
          ${scene(this.strip(change, this.former, change.idBefore ?? change.id, change.before !== undefined))}${scene(this.strip(change, this.present, change.id, true))}
          <span>${this.former.title}</span><span>${this.present.title}</span>
        </div>
        <div class="use">
          ${scene(useChange({ before: change.before?.limitUse, after: change.after.limitUse }, { width: 500, height: 14 }, paperInk))}
          <span class="quiet">of the limit <b>${limitUseText(change.before?.limitUse)}</b> then <b>${limitUseText(change.after.limitUse)}</b></span>
        </div>
        <p class="sentence">${change.sentence}</p>
      </a>`}</li>`)}</ol>`;
  }

  private names({ names }: JointChange): TemplateResult {
    return html`${names[0]} <i>and</i> ${names[1]}`;
  }

  private verdict(side: JointFigures | undefined): TemplateResult {
    if (side === undefined) return html`<span class="quiet">not there</span>`;
    return html`${scene(verdictSample({ verdict: side.verdict, accepted: side.accepted }, 30, 12, paperInk))}<span class="word ${side.verdict}">${standingWord(side)}</span>`;
  }

  private strip({ names }: JointChange, state: DrawnState, id: string, there: boolean): SceneElement {
    const joint = there ? state.cabin.joints.find((one) => one.id === id) : undefined;
    if (joint === undefined) return drawing(strip.width, strip.height, undefined);
    const [first, second] = joint.parts.map((part) => state.colours.get(part)?.css);
    return drawing(strip.width, strip.height, `${names[0]} and ${names[1]}, ${state.title}`,
      jointStrip({ fills: [first, second], kind: joint.kind, gapMm: joint.gapMm, stepMm: joint.stepMm, viewMm: joint.viewMm }, strip, paperInk));
  }
}

customElements.define('adjoin-change-list', AdjoinChangeList);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-change-list': AdjoinChangeList;
  }
}
