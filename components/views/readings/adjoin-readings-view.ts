import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { Looking } from '../../controllers/looking.ts';
import type { Route } from '../../controllers/route.ts';
import { base, controls } from '../../styles/shared.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-geometry-table.ts';
import './adjoin-instruments.ts';
import './adjoin-quality-table.ts';
import './adjoin-requests.ts';
import { styles } from './readings-view.styles.ts';

const pages = [['quality', 'Measurement quality'], ['instruments', 'Instruments'], ['requests', 'Request sheets'], ['geometry', 'What may be compared']] as const;
type Page = (typeof pages)[number][0];

/** Whether the readings are good enough to judge by: quality, instruments, what to ask suppliers for, and what may be compared with what. */
export class AdjoinReadingsView extends ViewElement {
  static override styles = [base, controls, styles];

  private readonly quality = new Looking(this, 'quality', () => this.page !== 'requests');
  private readonly requests = new Looking(this, 'requests', () => this.page === 'requests');

  private get page(): Page {
    const wanted = this.route?.options?.['show'];
    return pages.find(([page]) => page === wanted)?.[0] ?? 'quality';
  }

  override render(): TemplateResult {
    const { page } = this;
    return html`
      <header>
        <h1>Readings</h1>
        <nav aria-label="Pages of readings">${pages.map(([id, title]) => html`<a class="button ${id === page ? 'strong' : ''}" aria-current=${id === page ? 'page' : nothing}
          href=${this.linkTo({ view: 'readings', item: undefined, options: id === 'quality' ? {} : { show: id } })}>${title}</a>`)}</nav>
      </header>
      <div class="page">${this.shown(page)}</div>`;
  }

  private shown(page: Page): TemplateResult {
    const { open } = this;
    if (this.quality.failed || this.requests.failed) return html`<p class="note">This could not be reckoned. Change or open the cabin again.</p>`;
    const { cabin } = open;
    if (page === 'requests') {
      return this.requests.value === undefined ? this.waiting() : html`<adjoin-requests .cabin=${cabin} .sheets=${this.requests.value} .desk=${this.desk} .supplier=${this.route.filter.supplier} .linkTo=${this.linkTo}
        @adjoin-supplier=${(event: CustomEvent<string | undefined>) => this.go({ filter: { ...this.route.filter, supplier: event.detail } as Route['filter'] }, true)}></adjoin-requests>`;
    }
    const look = this.quality.value;
    if (look === undefined) return this.waiting();
    if (page === 'instruments') return html`<adjoin-instruments .cabin=${cabin} .look=${look} .desk=${this.desk} .locked=${open.locked} .linkTo=${this.linkTo}></adjoin-instruments>`;
    if (page === 'geometry') return html`<adjoin-geometry-table .cabin=${cabin} .look=${look} .linkTo=${this.linkTo}></adjoin-geometry-table>`;
    return html`<adjoin-quality-table .cabin=${cabin} .look=${look} .item=${this.route.item} .route=${this.route} .locked=${open.locked} .linkTo=${this.linkTo} .go=${this.go}></adjoin-quality-table>`;
  }

  private waiting(): TemplateResult {
    return html`<p class="note" role="status">Being reckoned.</p>`;
  }
}

customElements.define('adjoin-readings-view', AdjoinReadingsView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-readings-view': AdjoinReadingsView;
  }
}
