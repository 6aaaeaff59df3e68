import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { ChosenSet, CostFront } from '../../../src/plan/index.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { paperInk } from '../../figures/inks.ts';
import '../../figures/adjoin-figure-table.ts';
import { scene } from '../../figures/scene.ts';
import { moneyText } from '../../model/money-text.ts';
import { base } from '../../styles/shared.ts';
import { frontPlot } from './front-plot.ts';

/**
 * The front of cost and harmony, to pick a set from by pointer or by arrow keys.
 * @fires adjoin-pick-set - position of the point picked
 */
export class AdjoinFront extends LitElement {
  static override styles = [base, css`
    :host { display: block; min-width: 0; }
    .plot { height: 320px; position: relative; overflow: hidden; }
    .plot > svg { position: absolute; inset: 0; }
    @media (max-width: 760px) { .plot { height: 260px; } }
  `];
  static override properties = { front: { attribute: false }, present: { attribute: false }, picked: { type: Number }, currency: {}, budget: { type: Number } };

  declare front: CostFront;
  declare present: ChosenSet;
  declare picked: number | undefined;
  declare currency: string;
  declare budget: number | undefined;
  private readonly size = new ElementSize(this, '.plot');

  private pick(point: number): void {
    const kept = Math.max(0, Math.min(this.front.sets.length - 1, point));
    if (kept !== this.picked) this.dispatchEvent(new CustomEvent('adjoin-pick-set', { detail: kept, bubbles: true, composed: true }));
  }

  private key(event: KeyboardEvent): void {
    const step = { ArrowRight: -1, ArrowUp: -1, ArrowLeft: 1, ArrowDown: 1, PageUp: -5, PageDown: 5, Home: -1000, End: 1000 }[event.key];
    if (step === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    this.pick((this.picked ?? 0) + step);
  }

  private words(): string {
    const set = this.picked === undefined ? undefined : this.front.sets[this.picked];
    return set === undefined ? 'no point picked'
      : `point ${(this.picked ?? 0) + 1} of ${this.front.sets.length}: ${fixed(set.clashes, 2)} clashes, ${moneyText(set.cost, this.currency)}${set.proved ? ', proved' : ', not proved'}`;
  }

  override render(): TemplateResult {
    const { width, height } = this.size;
    const { sets } = this.front;
    const drawn = width === 0 ? undefined : frontPlot({
      front: sets, present: { ...this.present, proved: true }, picked: this.picked, currency: this.currency, budget: this.budget,
    }, { width, height }, paperInk);
    return html`<div
      class="plot" role="slider" tabindex="0" aria-label="Front of cost and harmony" aria-valuemin="1" aria-valuemax=${sets.length} aria-valuenow=${(this.picked ?? 0) + 1} aria-valuetext=${this.words()}
      @keydown=${this.key}
      @click=${(event: Event) => {
        const point = (event.target as Element).closest<SVGElement>('[data-point]')?.dataset['point'];
        if (point !== undefined) this.pick(Number(point));
      }}
    >${drawn === undefined ? nothing : scene(drawn)}</div>
    <adjoin-figure-table of="Front of cost and harmony" .table=${() => ({
      head: ['point', 'clashes', `cost of a year${this.currency === '' ? '' : `, ${this.currency}`}`, 'proof'],
      rows: sets.map((set, at) => [String(at + 1), fixed(set.clashes, 2), moneyText(set.cost, ''), set.proved ? 'proved' : 'not proved']),
    })}></adjoin-figure-table>`;
  }
}

customElements.define('adjoin-front', AdjoinFront);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-front': AdjoinFront;
  }
}
