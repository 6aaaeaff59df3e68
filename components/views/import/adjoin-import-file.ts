import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { Issue } from '../../../src/issue.ts';
import type { FoundReply } from '../../../src/workers/import-protocol.ts';
import { counted } from '../../../src/report/number-text.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import type { ImportItem } from '../../controllers/import-desk.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import '../../figures/adjoin-figure-table.ts';
import { curvesTable } from '../../figures/curves-table.ts';
import { spectraSketch } from '../../figures/spectra-sketch.ts';
import { base, controls } from '../../styles/shared.ts';
import './adjoin-import-places.ts';
import './adjoin-import-questions.ts';
import { styles } from './import-file.styles.ts';
import { importState, isSettled } from './import-state.ts';

const mostFaults = 200;

/**
 * One file: what was recognised in it, its first rows, what it leaves open, where its readings go, and its faults.
 * @fires adjoin-choices - answers and places that the user gave
 * @fires adjoin-cancel - the reading is not wanted any more
 * @fires adjoin-remove - the file is not wanted
 */
export class AdjoinImportFile extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = { item: { attribute: false }, cabin: { attribute: false }, locked: { type: Boolean } };

  declare item: ImportItem;
  declare cabin: Cabin;
  declare locked: boolean;
  private readonly size = new ElementSize(this, '.plot');

  constructor() {
    super();
    this.locked = false;
  }

  private say(name: 'adjoin-cancel' | 'adjoin-remove'): void {
    this.dispatchEvent(new CustomEvent(name));
  }

  override render(): TemplateResult {
    const { item } = this;
    const { found } = item;
    const { words, mark } = importState(item);
    const faults = [...item.issues, ...(item.planned?.issues ?? []).filter(({ code }) => !isSettled(code))];
    return html`
      <header>
        <h2>${item.name}</h2>
        <span class="state ${mark}">${words}</span>
        ${item.state === 'reading'
          ? html`<button type="button" @click=${() => this.say('adjoin-cancel')}>Cancel</button>`
          : item.state === 'taken' ? nothing : html`<button type="button" @click=${() => this.say('adjoin-remove')}>Leave this file out</button>`}
      </header>
      ${faults.length === 0 ? nothing : this.faults(faults)}
      ${found === undefined ? nothing : html`
        ${item.state !== 'found' ? nothing : html`<adjoin-import-questions .item=${item} .cabin=${this.cabin} .locked=${this.locked}></adjoin-import-questions>`}
        <div class="two">
          ${this.recognised(found)}
          ${found.summary.spectra.length === 0 ? nothing : this.plot(found)}
        </div>
        ${found.summary.lights.length === 0 ? nothing : this.lights(found)}
        ${found.summary.specimens.length === 0 ? nothing : html`<adjoin-import-places .item=${item} .cabin=${this.cabin} .locked=${this.locked || item.state === 'taken'}></adjoin-import-places>`}
        ${found.summary.preview.length === 0 ? nothing : this.preview(found)}`}
    `;
  }

  private recognised({ label, layout, encoding, summary }: FoundReply): TemplateResult {
    const spectra = summary.quantities.some(([name]) => name === 'spectrum');
    const text = [encoding, ...(layout.separator === undefined ? [] : [`separated by ${layout.separator}`]), ...(layout.decimal === undefined ? [] : [`decimal ${layout.decimal}`])].join(', ');
    return html`
      <section>
        <h3>Recognised</h3>
        <dl class="facts">
          <dt>format</dt><dd>${label}, ${layout.layout}</dd>
          <dt>text</dt><dd>${text}</dd>
          <dt>holds</dt><dd>${[...summary.quantities.map(([name, count]) => counted(count, ...quantityWords[name] ?? [name, name])), ...(summary.lights.length === 0 ? [] : [counted(summary.lights.length, 'light')])].join(', ')}</dd>
          ${spectra ? html`<dt>reflectance</dt><dd>${summary.scaleUndeclared ? 'per cent or fraction is not said: asked' : 'scale as the file declares it, shown in per cent'}</dd>` : nothing}
          ${summary.created === undefined ? nothing : html`<dt>made</dt><dd>${summary.created}</dd>`}
          ${summary.conditions.map((found, index) => html`
            <dt>conditions${summary.conditions.length > 1 ? ` ${index + 1}` : ''}</dt>
            <dd>${[
              found.instrument ?? 'instrument not said', found.geometry ?? (summary.quantities.some(([name]) => name !== 'gloss' && name !== 'texture') ? 'geometry not said' : undefined),
              found.apertureMm === undefined ? undefined : `aperture ${found.apertureMm} mm`, found.uv === undefined ? undefined : `UV ${found.uv}`,
              found.aspecularDeg === undefined ? undefined : `aspecular ${found.aspecularDeg}°`, found.backing === undefined ? undefined : `backing ${found.backing}`,
              found.calibratedOn === undefined ? undefined : `calibrated ${found.calibratedOn}`, counted(found.readings, 'reading'),
            ].filter((word) => word !== undefined).join(', ')}</dd>`)}
        </dl>
      </section>`;
  }

  private plot({ summary }: FoundReply): TemplateResult {
    const { spectra, scaleUndeclared } = summary;
    const width = Math.max(200, Math.min(520, this.size.width || 420));
    const curves = scaleUndeclared ? spectra : spectra.map((one) => ({ ...one, values: one.values.map((value) => value * 100) }));
    const unit = scaleUndeclared ? 'reflectance as in the file' : 'reflectance factor, %';
    return html`
      <section class="plot">
        <h3>Spectra${spectra.length < (summary.quantities.find(([name]) => name === 'spectrum')?.[1] ?? 0) ? `, ${spectra.length} of them` : ''}</h3>
        ${scene(spectraSketch(curves, { width, height: 190 }, unit, paperInk, `${counted(spectra.length, 'spectrum', 'spectra')} of the file over wavelength; the table below has the numbers`))}
        <adjoin-figure-table of="Spectra of the file" .table=${() => curvesTable(curves, scaleUndeclared ? 4 : 2)}></adjoin-figure-table>
      </section>`;
  }

  private preview({ summary }: FoundReply): TemplateResult {
    const places = summary.preview.some(({ line }) => line !== undefined);
    return html`
      <section>
        <h3>First rows</h3>
        <div class="wide" tabindex="0" role="region" aria-label="First rows of the file"><table>
          <thead><tr><th scope="col">${places ? 'line' : 'no.'}</th><th scope="col"><adjoin-term word="part">part</adjoin-term></th><th scope="col"><adjoin-term word="specimen">specimen</adjoin-term></th><th scope="col"><adjoin-term word="spot">spot</adjoin-term></th><th scope="col"><adjoin-term word="reading">reading</adjoin-term></th><th scope="col">value</th></tr></thead>
          <tbody>${summary.preview.map((row) => html`<tr><td class="number">${row.line ?? row.row}</td><td>${row.part || '–'}</td><td>${row.specimen}</td><td>${row.spot || '–'}</td><td>${row.what}</td><td>${row.value}</td></tr>`)}</tbody>
        </table></div>
        ${summary.readings > summary.preview.length ? html`<p class="quiet">and ${counted(summary.readings - summary.preview.length, 'more', 'more')}</p>` : nothing}
      </section>`;
  }

  private lights({ summary }: FoundReply): TemplateResult {
    const width = Math.max(200, Math.min(520, this.size.width || 420));
    return html`
      <section class="plot">
        <h3>${counted(summary.lights.length, 'light')} of the cabin to be</h3>
        ${summary.lights.slice(0, 6).map((light) => html`
          <figure>${scene(spectraSketch([light], { width, height: 150 }, 'relative power', paperInk, `Relative spectral power of ${light.name}`))}
            <figcaption>${light.name}: ${light.values.length} values, ${light.startNm} to ${light.startNm + light.stepNm * (light.values.length - 1)} nm by ${light.stepNm}</figcaption>
            <adjoin-figure-table of=${`Spectral power of ${light.name}`} .table=${() => curvesTable([light], 3)}></adjoin-figure-table></figure>`)}
      </section>`;
  }

  private faults(faults: readonly Issue[]): TemplateResult {
    const errors = faults.filter(({ severity }) => severity === 'error');
    return html`
      <section class="faults ${errors.length > 0 ? 'errors' : ''}">
        <h3>${errors.length > 0 ? `${counted(errors.length, 'fault')}: nothing of the file is taken` : counted(faults.length, 'remark')}</h3>
        <div class="wide" tabindex="0" role="region" aria-label="Faults and remarks"><table>
          <thead><tr><th scope="col">line</th><th scope="col">column</th><th scope="col">what</th><th scope="col">found</th><th scope="col">expected</th></tr></thead>
          <tbody>${faults.slice(0, mostFaults).map((issue) => html`
            <tr><td class="number">${issue.line ?? '–'}</td><td class="number">${issue.column ?? '–'}</td>
              <td>${issue.severity === 'error' ? '' : `${issue.severity}: `}${issue.code.replaceAll('-', ' ')}</td><td>${issue.found ?? ''}</td><td>${[issue.expected, issue.hint].filter(Boolean).join('. ')}</td></tr>`)}</tbody>
        </table></div>
        ${faults.length > mostFaults ? html`<p class="quiet">and ${faults.length - mostFaults} more</p>` : nothing}
      </section>`;
  }
}

const quantityWords: Readonly<Record<string, readonly [string, string]>> = {
  spectrum: ['spectrum', 'spectra'], cielab: ['CIELAB reading', 'CIELAB readings'], difference: ['difference', 'differences'], gloss: ['gloss reading', 'gloss readings'], texture: ['texture reading', 'texture readings'],
};

customElements.define('adjoin-import-file', AdjoinImportFile);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-import-file': AdjoinImportFile;
  }
}
