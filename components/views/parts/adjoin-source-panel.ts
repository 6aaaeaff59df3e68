import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Part, Source, Specimen } from '../../../src/cabin/cabin.ts';
import { stageOf } from '../../../src/cabin/index.ts';
import { counted, fixed } from '../../../src/report/number-text.ts';
import { askAction, doAction } from '../../controllers/edit-events.ts';
import { Sections } from '../../controllers/sections.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { base, controls } from '../../styles/shared.ts';
import './adjoin-inline-fields.ts';
import './adjoin-specimen-panel.ts';
import { styles } from './source-panel.styles.ts';

/** One supplier's version of a part: what it costs, what it is made of, and its specimens. */
export class AdjoinSourcePanel extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { cabin: { attribute: false }, of: { attribute: false }, source: { attribute: false }, locked: { type: Boolean } };

  declare cabin: Cabin;
  declare of: Part;
  declare source: Source;
  declare locked: boolean;
  private readonly sections = new Sections(this);

  private isShown({ id }: Specimen): boolean {
    return this.sections.isUnfolded(`specimen-${id}`);
  }

  /** One specimen of a source at a time. */
  private toggle(specimen: Specimen): void {
    for (const one of this.source.specimens) if (one !== specimen && this.isShown(one)) this.sections.toggle(`specimen-${one.id}`);
    this.sections.toggle(`specimen-${specimen.id}`);
  }

  override render(): TemplateResult {
    const { cabin, of: part, source, locked } = this;
    const name = `source-${part.id}-${source.id}`;
    const shown = this.sections.isUnfolded(name);
    const about = { part: part.id, source: source.id };
    const stands = (part.source ?? part.sources[0]?.id) === source.id;
    const supplier = cabin.suppliers.find(({ id }) => id === source.supplier)?.name ?? source.supplier;
    const fields = (action: string): TemplateResult => html`<adjoin-inline-fields .cabin=${cabin} .action=${action} .about=${about} .locked=${locked}></adjoin-inline-fields>`;
    const facts = [
      source.material, source.grain && `grain ${source.grain.id}`, source.status, source.piecePrice === undefined ? undefined : `${fixed(source.piecePrice, 2)} ${source.currency ?? ''} a piece`.replace('  ', ' '),
      source.leadWeeks === undefined ? undefined : `${source.leadWeeks} weeks`,
    ].filter(Boolean).join(', ');
    return html`
      <article class=${stands ? 'stands' : ''} ${standsFor({ parts: [part.id], source: source.id }, !locked)}>
        <header>
          <button class="bare title" type="button" aria-expanded=${shown} @click=${() => this.sections.toggle(name)}><b>${supplier}</b><span class="quiet">${facts}</span></button>
          ${stands ? html`<span class="mark">the part stands by it</span>` : html`<button type="button" ?disabled=${locked} @click=${() => doAction(this, 'part.choose-source', about)}>Let the part stand by it</button>`}
        </header>
        ${shown ? html`
          <div class="fields">
            ${fields('source.set')}
            <h4>Cost</h4>${fields('source.set-prices')}
            <h4>Grain</h4>${fields('source.set-grain')}
            <p class="does">
              <button type="button" ?disabled=${locked || source.specimens.length === 0} @click=${() => askAction(this, 'source.set-stands-by', { ...about, stage: 'new' }, { asks: ['stage', 'specimen'] })}>Pick what it stands by</button>
              <button type="button" ?disabled=${locked} @click=${() => askAction(this, 'source.set-named-colours', about)}>Colours of a pattern</button>
              <button type="button" ?disabled=${locked || part.sources.length < 2} @click=${() => askAction(this, 'source.remove', about)}>Remove source</button></p>
          </div>` : nothing}
        <ul>
          ${source.specimens.map((specimen) => html`
            <li class=${this.isShown(specimen) ? 'here' : ''} ${standsFor({ parts: [part.id], source: source.id, specimen: specimen.id }, !locked)}>
              <button class="bare title" type="button" aria-expanded=${this.isShown(specimen)} @click=${() => this.toggle(specimen)}>
                <b>${specimen.id}</b><span class="quiet">${[specimen.kind, stageOf(specimen) === 'new' ? undefined : stageOf(specimen), specimen.lot && `lot ${specimen.lot.id}`, counted(specimen.readings.length, 'reading')].filter(Boolean).join(', ')}</span>
              </button>
              ${this.isShown(specimen) ? html`<adjoin-specimen-panel .cabin=${cabin} .specimen=${specimen} .within=${{ parts: [part.id], source: source.id }} .locked=${locked}></adjoin-specimen-panel>` : nothing}
            </li>`)}
        </ul>
        <p class="does"><button type="button" ?disabled=${locked} @click=${() => askAction(this, 'specimen.add', about)}>Add a specimen</button></p>
      </article>`;
  }
}

customElements.define('adjoin-source-panel', AdjoinSourcePanel);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-source-panel': AdjoinSourcePanel;
  }
}
