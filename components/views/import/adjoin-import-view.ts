import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { counted } from '../../../src/report/number-text.ts';
import { announce } from '../../controllers/announcer.ts';
import { ImportDesk } from '../../controllers/import-desk.ts';
import type { ImportItem } from '../../controllers/import-desk.ts';
import { roveFocus } from '../../controllers/roving-focus.ts';
import { isTyping } from '../../model/keys.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields } from '../../styles/fields.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-import-file.ts';
import { importState } from './import-state.ts';
import { styles } from './import-view.styles.ts';

/** Files of readings on their way into the cabin: what each holds, what it leaves open, where it goes, and one button that takes them over. */
export class AdjoinImportView extends ViewElement {
  static override styles = [base, controls, fields, styles];
  static override properties = { shown: { state: true } };

  declare shown: string | undefined;
  private readonly files = new ImportDesk(this, () => this.desk, (text) => announce(this, text));

  constructor() {
    super();
    this.addEventListener('adjoin-files', (event) => this.bring((event as CustomEvent<readonly File[]>).detail));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('paste', this.pasted);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('paste', this.pasted);
  }

  private bring(files: readonly File[]): void {
    const first = this.files.add(files);
    this.shown = this.shown === undefined || this.files.item(this.shown) === undefined ? first : this.shown;
  }

  private readonly pasted = (event: ClipboardEvent): void => {
    if (isTyping(event)) return;
    const files = [...(event.clipboardData?.files ?? [])];
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (files.length > 0) this.bring(files);
    else if (text.trim() !== '') this.bringText(text);
    else return;
    event.preventDefault();
  };

  private bringText(text: string): void {
    this.shown = this.files.addText(text) ?? this.shown;
    this.openField(false);
  }

  /** The field to paste into is open; it stands in the address. */
  private get pasting(): boolean {
    return this.route.options?.['paste'] === 'yes';
  }

  private openField(open: boolean): void {
    if (open !== this.pasting) this.go({ options: { ...this.route.options, paste: open ? 'yes' : '' } }, true);
  }

  private pick(): void {
    const input = document.createElement('input');
    input.type = 'file';
    input.multiple = true;
    input.accept = '.csv,.tsv,.txt,.cxf,.xml,.spdx,.json';
    input.addEventListener('change', () => this.bring([...(input.files ?? [])]));
    input.click();
  }

  private async take(): Promise<void> {
    if (!(await this.files.take())) return;
    this.shown = this.files.items.find(({ state }) => state !== 'taken')?.key ?? this.shown;
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.after a')?.focus();
  }

  override render(): TemplateResult {
    const { items } = this.files;
    const shown = this.files.item(this.shown) ?? items[0];
    return html`
      <header>
        <div><h1>Import readings</h1><p class="quiet">Every file is taken whole or not at all, all of them in one step of undo.</p></div>
        <div class="ways">
          <button type="button" @click=${this.pick}>Choose files…</button>
          <button type="button" aria-expanded=${this.pasting} @click=${() => this.openField(!this.pasting)}>Paste a table…</button>
        </div>
      </header>
      ${this.pasting ? this.pasteField() : nothing}
      ${items.length === 0 ? this.empty() : html`
        <div class="desk">
          <div class="cards" role="listbox" aria-label="Files" @keydown=${this.key}>${items.map((item) => this.card(item, item === shown))}</div>
          ${shown === undefined ? nothing : html`<adjoin-import-file
            .item=${shown} .cabin=${this.desk.present ?? this.open.cabin} .locked=${this.open.locked}
            @adjoin-choices=${(event: CustomEvent<Partial<ImportItem['choices']>>) => this.files.choose(shown.key, event.detail)}
            @adjoin-cancel=${() => this.files.cancel(shown.key)} @adjoin-remove=${() => this.files.remove(shown.key)}
          ></adjoin-import-file>`}
        </div>`}
      ${items.length === 0 ? nothing : this.foot()}
    `;
  }

  private readonly key = (event: KeyboardEvent): void => {
    const cards = [...this.renderRoot.querySelectorAll<HTMLElement>('.card')];
    if (!roveFocus(event, cards)) return;
    const focused = (this.renderRoot as ShadowRoot).activeElement as HTMLElement | null;
    this.shown = focused?.dataset['key'] ?? this.shown;
  };

  private card(item: ImportItem, here: boolean): TemplateResult {
    const { mark, words } = importState(item);
    const summary = item.found?.summary;
    return html`
      <button class="card ${mark}" type="button" role="option" aria-selected=${here} tabindex=${here ? 0 : -1} data-key=${item.key} @click=${() => { this.shown = item.key; }}>
        <b>${item.name}</b>
        <span class="about">${item.found === undefined ? item.state === 'reading' ? 'being read' : 'not read' : item.found.label}</span>
        ${summary === undefined ? nothing : html`<span class="about">${[
          ...(summary.readings === 0 ? [] : [`${counted(summary.readings, 'reading')} of ${counted(summary.specimens.length + summary.moreSpecimens, 'specimen')}`]),
          ...(summary.lights.length === 0 ? [] : [counted(summary.lights.length, 'light')]),
        ].join(', ')}</span>`}
        ${item.state === 'reading' ? html`<progress max="1" value=${item.share} aria-label="Reading ${item.name}"></progress>` : html`<span class="state">${words}</span>`}
      </button>`;
  }

  private pasteField(): TemplateResult {
    const send = (): void => {
      const text = this.renderRoot.querySelector('textarea')?.value ?? '';
      if (text.trim() !== '') this.bringText(text);
    };
    return html`
      <div class="paste">
        <label class="field"><span class="label">Cells from a spreadsheet, their header row first</span>
          <textarea rows="6" spellcheck="false" autofocus></textarea></label>
        <button class="strong" type="button" @click=${send}>Read the table</button>
      </div>`;
  }

  private empty(): TemplateResult {
    return html`
      <div class="empty">
        <div class="target">
          <b>Let files fall here</b>
          <span>or choose them, or paste cells from a spreadsheet anywhere on this page</span>
        </div>
        <dl>
          <div><dt>Tables, CSV or TSV</dt><dd>a row a spectrum, a row a wavelength, CIELAB, differences, gloss, texture; decimal comma and point</dd></div>
          <div><dt>ISO 28178 text</dt><dd>several tables a file, fields by the standard's names</dd></div>
          <div><dt>ISO 17972-1 XML</dt><dd>spectra, CIELAB, differences, gloss, with their measurement conditions</dd></div>
          <div><dt>IES TM-27 XML</dt><dd>a lamp's spectral power as a light of the cabin</dd></div>
        </dl>
        <p class="quiet">What a file does not say is asked and never guessed: per cent or fraction, the geometry, the instrument. The answers are remembered for the next file of the same shape. Files are read here and sent nowhere.</p>
      </div>`;
  }

  private foot(): TemplateResult {
    const { ready, items, taking, planning } = this.files;
    const readings = ready.reduce((sum, { planned }) => sum + (planned?.readings ?? 0), 0);
    const lights = ready.reduce((sum, { planned }) => sum + (planned?.newLights.length ?? 0), 0);
    const what = [...(readings > 0 || lights === 0 ? [counted(readings, 'reading')] : []), ...(lights > 0 ? [counted(lights, 'light')] : [])].join(' and ');
    const taken = items.filter(({ state }) => state === 'taken').length;
    const waiting = items.filter((item) => item.state !== 'taken' && !ready.includes(item)).length;
    return html`
      <footer>
        <p role="status">${planning || taking ? 'Working…' : [
          ...(ready.length === 0 ? [] : [`${counted(ready.length, 'file is', 'files are')} ready with ${what}`]),
          ...(waiting === 0 ? [] : [`${waiting} not ready: ${waiting === 1 ? 'it stays' : 'they stay'} out`]),
          ...(taken === 0 ? [] : [`${taken} taken over`]),
        ].join('. ')}</p>
        ${taken > 0 ? html`<span class="after"><a class="button" href=${this.linkTo({ view: 'cabin', item: undefined, options: {} })}>See the cabin</a><button type="button" @click=${() => this.files.clearTaken()}>Clear what is taken</button></span>` : nothing}
        ${this.open.locked ? html`<p>The cabin is open in another tab and cannot be changed here.</p>` : html`
          <button class="strong" type="button" ?disabled=${ready.length === 0 || taking} @click=${() => void this.take()}>
            Take over ${ready.length === 0 ? '' : `${counted(ready.length, 'file')}, ${what}`}
          </button>`}
      </footer>`;
  }
}

customElements.define('adjoin-import-view', AdjoinImportView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-import-view': AdjoinImportView;
  }
}
