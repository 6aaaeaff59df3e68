import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { counted, limitUseText } from '../../../src/report/number-text.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { ReviewRow } from '../../model/review-log.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './review-view.styles.ts';

/** What came of a review: every joint that was seen or worked on. */
export class AdjoinReviewList extends InTurnElement {
  static override styles = [base, controls, styles, css`:host { height: auto; background: none; display: grid; gap: 16px; }`];
  static override properties = { rows: { attribute: false } };

  declare rows: readonly ReviewRow[];

  override render(): TemplateResult {
    const seen = this.rows.filter((row) => row.seen);
    const shown = this.rows.filter((row) => row.seen || row.steps.length > 0);
    const steps = this.rows.flatMap((row) => row.steps);
    const count = (kind: string): number => steps.filter((step) => step.kind === kind).length;
    return html`
      <p class="sentence">${counted(seen.length, 'joint')} of ${this.rows.length} seen. ${counted(count('decision'), 'decision')}, ${counted(count('visual record'), 'visual record')} and ${counted(count('note'), 'note')} taken in this review.</p>
      ${shown.length === 0 ? nothing : html`<div class="wrap" tabindex="0" role="region" aria-label="Running list"><table>
        <caption>Running list, worst joint first</caption>
        <thead><tr><th scope="col">Joint</th><th scope="col"><adjoin-term word="verdict">Verdict</adjoin-term></th><th scope="col" class="number">Limit use</th><th scope="col">Taken</th></tr></thead>
        <tbody>${shown.map((row) => html`<tr>
          <th scope="row">${row.names[0]} and ${row.names[1]}</th><td><span class="word ${row.verdict.split(',')[0] ?? ''}">${row.verdict}</span></td>
          <td class="number">${limitUseText(row.limitUse)}</td><td>${row.steps.length === 0 ? '–' : row.steps.map(({ kind, text }, index) => html`${index > 0 ? html`<br />` : nothing}<b>${kind}</b> ${text}`)}</td>
        </tr>`)}</tbody>
      </table></div>`}
    `;
  }
}

customElements.define('adjoin-review-list', AdjoinReviewList);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-review-list': AdjoinReviewList;
  }
}
