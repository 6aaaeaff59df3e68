import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { counted } from '../../../src/report/number-text.ts';
import type { MeasureOptions } from '../../../src/texture/measure-surface.ts';
import { textureVanishes } from '../../../src/texture/vanishing-distance.ts';
import { visibleTexture } from '../../../src/texture/visible-texture.ts';
import type { Viewing } from '../../../src/texture/visible-texture.ts';
import { SurfaceBridge } from '../../../src/workers/surface-bridge.ts';
import type { MeasuredReply, RefusedSurface, SurfaceProgress } from '../../../src/workers/surface-protocol.ts';
import { announce } from '../../controllers/announcer.ts';
import '../../app/adjoin-choice.ts';
import '../../figures/adjoin-figure-table.ts';
import { scene } from '../../figures/scene.ts';
import { mostInList } from '../../model/matching.ts';
import type { Choice } from '../../model/matching.ts';
import { surfaceTerms, typedLength } from '../../model/surface-terms.ts';
import type { SurfaceTerms } from '../../model/surface-terms.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import { ViewElement } from '../view-element.ts';
import { distanceCurve } from './distance-curve.ts';
import { reliefOf } from './relief.ts';
import { styles } from './surface-view.styles.ts';

const largestBytes = 256 * 1024 * 1024;

/** Names and meanings as ISO 25178-2 and ISO 21920-2 have them. */
const rows = [
  ['saUm', 'Sa', 'µm', 'arithmetical mean height'], ['sqUm', 'Sq', 'µm', 'root mean square height'], ['szUm', 'Sz', 'µm', 'highest peak to deepest pit'],
  ['ssk', 'Ssk', '', 'skewness: below 0 more pits, above 0 more peaks'], ['sku', 'Sku', '', 'kurtosis: 3 for heights by chance'],
  ['salMm', 'Sal', 'mm', 'length over which heights are alike'], ['str', 'Str', '', '1 alike in all directions, 0 all one way'], ['stdDeg', 'Std', '°', 'direction of the lay'],
  ['sdq', 'Sdq', '', 'root mean square slope'], ['sdr', 'Sdr', '', 'developed area beyond the flat one, over it'],
  ['raUm', 'Ra', 'µm', 'of profiles'], ['rzUm', 'Rz', 'µm', 'of profiles'], ['rsmMm', 'RSm', 'mm', 'mean width of profile elements'], ['vdiClass', 'VDI 3400', '', 'class of a tool’s surface, by Ra'],
] as const;

interface Brought {
  readonly name: string;
  readonly file: File;
}

/** A height map or photograph of a surface: measured off the main thread, looked at, and added to a specimen as one reading of texture. */
export class AdjoinSurfaceView extends ViewElement {
  static override styles = [base, controls, fields, styles];
  static override properties = { brought: { state: true }, reply: { state: true }, progress: { state: true }, fault: { state: true }, flat: { state: true } };

  declare brought: Brought | undefined;
  declare reply: MeasuredReply | RefusedSurface | undefined;
  declare progress: SurfaceProgress | undefined;
  declare fault: string | undefined;
  /** Photograph of an even grey card in the same light. */
  declare flat: File | undefined;
  private readonly bridge = new SurfaceBridge();
  private work: AbortController | undefined;

  constructor() {
    super();
    this.addEventListener('adjoin-files', (event) => this.bring((event as CustomEvent<readonly File[]>).detail[0]));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.work?.abort(new DOMException('Cancelled', 'AbortError'));
  }

  private get terms(): SurfaceTerms {
    return surfaceTerms(this.route.options ?? {});
  }

  /** The place may be another one by now, where a file was long in measuring. */
  private set(change: Readonly<Record<string, string>>): void {
    if (this.isConnected && this.route.view === 'surfaces') this.go({ options: { ...this.route.options, ...change } }, true);
  }

  private bring(file: File | undefined): void {
    if (file === undefined) return;
    this.brought = { name: file.name, file };
    this.fault = undefined;
    void this.measure();
  }

  private pick(take: (file: File | undefined) => void, accept: string): void {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.addEventListener('change', () => take(input.files?.[0]));
    input.click();
  }

  private get picture(): boolean {
    return /\.png$/i.test(this.brought?.name ?? '');
  }

  private async measure(): Promise<void> {
    const { brought } = this;
    if (brought === undefined) return;
    this.work?.abort(new DOMException('Cancelled', 'AbortError'));
    const work = new AbortController();
    this.work = work;
    this.reply = undefined;
    if (brought.file.size > largestBytes) {
      this.reply = { kind: 'refused', issues: [{ code: 'file-too-large', severity: 'error', found: `${Math.round(brought.file.size / 1024 / 1024)} MB`, expected: 'at most 256 MB' }] };
      return;
    }
    const { form, of, sFilter, lFilter, pitch, transfer, capture } = this.terms;
    const wrong = [sFilter, lFilter, pitch].filter((text) => Number.isNaN(typedLength(text)));
    if (wrong.length > 0) {
      this.reply = { kind: 'refused', issues: wrong.map((found) => ({ code: 'not-a-length', severity: 'error', found, expected: 'a length above 0 mm', hint: 'Correct it on the left, then measure again.' })) };
      return;
    }
    this.progress = { kind: 'progress', doing: 'reading', share: 0 };
    const [sFilterMm, lFilterMm, mmPerPixel] = [sFilter, lFilter, pitch].map(typedLength);
    const measuring: MeasureOptions = { form, of, ...(sFilterMm === undefined ? {} : { sFilterMm }), ...(lFilterMm === undefined ? {} : { lFilterMm }) };
    try {
      const reply = await this.bridge.measure({
        bytes: new Uint8Array(await brought.file.arrayBuffer()),
        reading: {
          file: brought.name, ...(mmPerPixel === undefined ? {} : this.picture ? { mmPerPixel } : { spacingMm: mmPerPixel }), ...(transfer === '' ? {} : { transfer }),
          ...(this.flat === undefined ? {} : { flatField: new Uint8Array(await this.flat.arrayBuffer()) }),
        },
        measuring: { measuring, ...(capture.trim() === '' ? {} : { capture: capture.trim() }) },
      }, { signal: work.signal, progress: (progress) => { if (this.work === work) this.progress = progress; } });
      if (this.work !== work) return;
      this.reply = reply;
      announce(this, reply.kind === 'refused' ? `${brought.name} was not taken: ${counted(reply.issues.length, 'fault')}` : `${brought.name} is measured`);
    } catch (reason) {
      if (this.work !== work) return;
      if (!work.signal.aborted) this.reply = { kind: 'refused', issues: [{ code: 'not-measured', severity: 'error', found: reason instanceof Error ? reason.message : String(reason) }] };
      else this.brought = undefined;
    } finally {
      if (this.work === work) this.progress = undefined;
    }
  }

  private cancel(): void {
    this.work?.abort(new DOMException('Cancelled', 'AbortError'));
  }

  protected override updated(changed: PropertyValues<this>): void {
    // The file of what is shown stands in the address by its name.
    const shown = this.brought?.name ?? '';
    if (shown !== this.terms.file && (shown !== '' || changed.get('brought') !== undefined)) this.set({ file: shown });
    if (!changed.has('reply') || this.reply?.kind !== 'measured') return;
    const canvas = this.renderRoot.querySelector('canvas');
    const context = canvas?.getContext('2d');
    if (!canvas || !context) return;
    const { heights } = this.reply;
    if (heights !== undefined) {
      const { pixels } = reliefOf(heights);
      [canvas.width, canvas.height] = [pixels.width, pixels.height];
      context.putImageData(pixels, 0, 0);
    } else if (this.brought !== undefined) {
      void createImageBitmap(this.brought.file).then((bitmap) => {
        [canvas.width, canvas.height] = [bitmap.width, bitmap.height];
        context.drawImage(bitmap, 0, 0);
      });
    }
  }

  private get cabin(): Cabin {
    return this.desk.present ?? this.open.cabin;
  }

  override render(): TemplateResult {
    return html`
      <header>
        <div><h1>Surfaces</h1><p class="quiet">A measured height map, or an evenly lit photograph, becomes the texture of a specimen.</p></div>
        <button type="button" @click=${() => this.pick((file) => this.bring(file), '.sdf,.x3p,.png,.csv,.txt')}>Choose a file…</button>
      </header>
      <div class="desk">
        ${this.settings()}
        <div class="found" aria-busy=${this.progress !== undefined}>${this.found()}</div>
      </div>
      ${this.reply?.kind === 'measured' && this.reply.data !== undefined ? this.foot(this.reply) : nothing}`;
  }

  private settings(): TemplateResult {
    const { form, of, sFilter, lFilter, pitch, transfer, capture } = this.terms;
    const wrong = [sFilter, lFilter, pitch].some((text) => Number.isNaN(typedLength(text)));
    const field = (label: string, value: string, set: (value: string) => void, hint: string): TemplateResult => html`
      <label class="field"><span class="label">${label}</span>
        <input type="text" autocomplete="off" maxlength="200" .value=${value} placeholder=${hint} @change=${(event: Event) => set((event.target as HTMLInputElement).value)}></label>`;
    const length = (label: string, name: string, value: string, hint: string): TemplateResult => html`
      <div><label class="field"><span class="label">${label} <span class="unit">mm</span></span>
        <input type="text" inputmode="decimal" autocomplete="off" maxlength="20" .value=${value} placeholder=${hint} aria-invalid=${Number.isNaN(typedLength(value))} aria-describedby=${`fault-${name}`}
          @change=${(event: Event) => this.set({ [name]: (event.target as HTMLInputElement).value.trim() })}></label>
        <p class="fault" id=${`fault-${name}`} role="status">${Number.isNaN(typedLength(value)) ? 'No length: a number above 0.' : ''}</p></div>`;
    const choice = (label: string, value: string, options: readonly (readonly [string, string])[], set: (value: string) => void): TemplateResult => html`
      <label class="field"><span class="label">${label}</span><span class="pick"><select @change=${(event: Event) => set((event.target as HTMLSelectElement).value)}>
        ${options.map(([id, name]) => html`<option value=${id} ?selected=${id === value}>${name}</option>`)}</select></span></label>`;
    return html`
      <form @submit=${(event: Event) => { event.preventDefault(); void this.measure(); }} aria-label="How it is measured">
        <h2>How it is measured</h2>
        ${choice('F-operation: form taken out', form, [['none', 'none'], ['plane', 'plane'], ['second-order', 'second-order surface']], (value) => this.set({ form: value }))}
        <div class="row">
          ${length('S-filter', 's-filter', sFilter, 'none')}
          ${length('L-filter', 'l-filter', lFilter, 'none')}
        </div>
        ${choice('The surface is of', of, [['part', 'a part or plaque'], ['tool', 'a tool']], (value) => this.set({ of: value }))}
        ${length(this.picture ? 'Pixel pitch' : 'Point spacing, if the file has none', 'pitch', pitch, 'as the file says')}
        ${this.picture ? html`
          ${choice('Transfer curve', transfer, [['', 'as the file says'], ['linear', 'linear'], ['srgb', 'sRGB']], (value) => this.set({ curve: value }))}
          ${field('Name of the set-up of lamp and camera', capture, (value) => this.set({ 'set-up': value.trim() }), 'needed to compare photographs')}
          <div class="field"><span class="label">Flat field: an even grey card in the same light</span>
            <button type="button" @click=${() => this.pick((file) => { this.flat = file; }, '.png')}>${this.flat?.name ?? 'Choose…'}</button></div>` : nothing}
        <button class="strong" type="submit" ?disabled=${this.brought === undefined || wrong}>Measure${this.brought === undefined ? '' : ' again'}</button>
        <p class="quiet">Two surfaces are compared only where these are the same on both sides. Filters are Gaussian (ISO 16610-61).</p>
      </form>`;
  }

  private found(): TemplateResult {
    if (this.progress !== undefined) {
      return html`<div class="working"><p>${this.progress.doing === 'reading' ? 'Reading' : 'Measuring'} ${this.brought?.name}</p>
        <progress max="1" value=${this.progress.share} aria-label="Done"></progress><button type="button" @click=${this.cancel}>Cancel</button></div>`;
    }
    const { reply } = this;
    if (reply === undefined) return this.empty();
    if (reply.kind === 'refused') {
      return html`<div class="faults" role="alert"><h2>${this.brought?.name ?? 'The file'} was not taken</h2>
        <ul>${reply.issues.map((issue) => html`<li><b>${issue.code}</b> ${[issue.line === undefined ? '' : `line ${issue.line}`, issue.found === undefined ? '' : `found ${issue.found}`, issue.expected === undefined ? '' : `expected ${issue.expected}`, issue.hint ?? ''].filter(Boolean).join('; ')}</li>`)}</ul></div>`;
    }
    return html`${this.relief(reply)}<div class="right">${this.parameters(reply)}${this.seen(reply)}</div>${this.cautions(reply)}`;
  }

  private empty(): TemplateResult {
    const { file } = this.terms;
    return html`
      <div class="empty">
        ${file === '' ? nothing : html`<p class="absent" role="status">This address is of the file <b>${file}</b>, and files do not go with an address. Choose it again to measure it in the same way.</p>`}
        <div class="target"><b>Let a surface file fall here</b><span>or choose it; it is read on this machine and sent nowhere</span></div>
        <dl>
          <div><dt>Height maps</dt><dd>SDF by ISO 25178-71, ASCII and binary; X3P by ISO 25178-72; a grid of numbers as CSV</dd></div>
          <div><dt>Photographs</dt><dd>grey PNG of 8 or 16 bit with its pixel pitch and transfer curve, and an even grey card in the same light</dd></div>
          <div><dt>What comes of it</dt><dd>areal parameters by ISO 25178-2, and how strongly the texture shows from where one sits</dd></div>
        </dl>
      </div>`;
  }

  private relief(reply: MeasuredReply): TemplateResult {
    const { width, height, spacingMm, heights, surface, missing } = reply;
    const mm = (points: number, spacing: number): string => (points * spacing).toPrecision(3);
    const shown = heights === undefined || (heights.width === width && heights.height === height) ? '' : ` Shown: ${mm(heights.width, heights.spacingMm[0])} × ${mm(heights.height, heights.spacingMm[1])} mm from its middle.`;
    return html`
      <figure class="relief">
        <canvas width="1" height="1" role="img" aria-label=${surface === 'heights' ? `Relief of ${this.brought?.name ?? 'the surface'}` : `Photograph ${this.brought?.name ?? ''}`}></canvas>
        <figcaption>${surface === 'heights' ? 'Relief under a lamp from the upper left, its slopes stretched to show.' : 'The photograph as it is.'}
          ${width} × ${height} points, ${mm(width, spacingMm[0])} × ${mm(height, spacingMm[1])} mm, ${(1000 * spacingMm[0]).toPrecision(3)} µm apart.${missing === 0 ? '' : ` ${counted(missing, 'point')} missing (${((100 * missing) / (width * height)).toPrecision(2)} %).`}${shown}</figcaption>
      </figure>`;
  }

  private parameters({ data, measurement }: MeasuredReply): TemplateResult | typeof nothing {
    const parameters = data?.parameters as Readonly<Record<string, number | undefined>> | undefined;
    if (parameters === undefined || Object.keys(parameters).length === 0) return nothing;
    const conditions = measurement?.conditions;
    return html`
      <section>
        <h2><adjoin-term word="Sa, Sal, Str">Areal parameters</adjoin-term></h2>
        <p class="quiet">ISO 25178-2${conditions === undefined ? '' : `; form: ${conditions.form === 'none' ? 'left in' : conditions.form}; S-filter ${conditions.sFilterMm ?? 'none'}${conditions.sFilterMm === undefined ? '' : ' mm'}, L-filter ${conditions.lFilterMm ?? 'none'}${conditions.lFilterMm === undefined ? '' : ' mm'}`}</p>
        <table><thead class="unseen"><tr><th>Parameter</th><th>Value</th><th>Meaning</th></tr></thead><tbody>
          ${rows.filter(([key]) => parameters[key] !== undefined).map(([key, symbol, unit, about]) => html`
            <tr><th class="symbol" scope="row">${symbol}</th><td class="number">${key === 'vdiClass' ? parameters[key] : (parameters[key] as number).toPrecision(3)}${unit === '' ? '' : ` ${unit}`}</td><td class="about">${about}</td></tr>`)}
        </tbody></table>
      </section>`;
  }

  private seen({ spectrum }: MeasuredReply): TemplateResult | typeof nothing {
    if (spectrum === undefined) return html`<section><h2>As it is seen</h2><p class="quiet">The field is too small, or without light: nothing can be said of how it looks.</p></section>`;
    const { viewMm, illuminanceLx, reflectance } = this.terms;
    const at = (distance: number): Viewing => ({ viewMm: distance, illuminanceLx, reflectance });
    const here = visibleTexture(spectrum, at(viewMm));
    const points = Array.from({ length: 41 }, (_, step) => 200 * (5000 / 200) ** (step / 40)).map((distance) => ({ viewMm: distance, contrast: visibleTexture(spectrum, at(distance)).visibleContrast }));
    const gone = textureVanishes(spectrum, at(viewMm));
    const number = (label: string, unit: string, value: number, set: (value: number) => void): TemplateResult => html`
      <label class="field"><span class="label">${label} <span class="unit">${unit}</span></span>
        <input type="text" inputmode="decimal" .value=${String(value)} @change=${(event: Event) => {
          const input = event.target as HTMLInputElement;
          const entered = Number(input.value.replace(',', '.'));
          if (entered > 0) set(entered);
          else input.value = String(value);
        }}></label>`;
    return html`
      <section class="curve">
        <h2>As it is seen</h2>
        <p>At ${viewMm / 1000} m the texture has ${here.visibleContrast.toFixed(1)} ± ${here.uncertainty.toFixed(1)} times the contrast that is just seen${here.pitchMm === undefined ? '' : `, most of it in waves ${here.pitchMm.toPrecision(2)} mm long`}${here.directionDeg === undefined || here.directionality < 0.2 ? '' : `, along ${Math.round(here.directionDeg)}°`}.
          ${gone.kind === 'never seen' ? 'It is never seen.' : gone.kind === 'beyond' ? 'It is still seen from 20 m.' : `It melts into an even surface at ${(gone.viewMm / 1000).toPrecision(2)} m.`}</p>
        ${scene(distanceCurve(points, Math.min(5000, Math.max(200, viewMm))))}
        <adjoin-figure-table of="Visible contrast over the viewing distance" .table=${() => ({ head: ['viewing distance, mm', 'times the threshold'], rows: points.map((point) => [String(Math.round(point.viewMm)), point.contrast.toFixed(2)]) })}></adjoin-figure-table>
        <div class="row">
          ${number('Viewing distance', 'mm', viewMm, (value) => this.set({ seen: String(Math.min(20_000, Math.max(100, value))) }))}
          ${number('Illuminance', 'lx', illuminanceLx, (value) => this.set({ lux: String(value) }))}
          ${number('Luminance factor of the part', '%', Number((100 * reflectance).toPrecision(3)), (value) => this.set({ factor: String(Math.min(100, value)) }))}
        </div>
        <p class="quiet">Contrast sensitivity: Barten (2004). ${spectrum.source === 'rendered' ? 'Heights are rendered matt under a lamp at 45°: gloss is left out.' : 'As the photograph has it.'} A joint asks again with its own distance, light and colours.</p>
      </section>`;
  }

  private cautions({ issues }: MeasuredReply): TemplateResult | typeof nothing {
    return issues.length === 0 ? nothing : html`<ul class="cautions" aria-label="Cautions">${issues.map((issue) => html`<li>${[issue.found, issue.expected === undefined ? undefined : `expected ${issue.expected}`, issue.hint].filter((text) => text !== undefined).join('; ')}</li>`)}</ul>`;
  }

  private foot(reply: MeasuredReply): TemplateResult {
    const { cabin, terms } = this;
    const ofInstrument = new Map(cabin.instruments.map((instrument) => [instrument.id, instrument]));
    const usable = cabin.conditions.filter(({ instrument }) => ofInstrument.get(instrument)?.kind === 'areal profiler');
    const conditions = usable.length > 0 ? usable : cabin.conditions;
    const chosenConditions = conditions.find(({ id }) => id === terms.conditions) ?? conditions[0];
    const specimens = new Set([...cabin.parts.flatMap((part) => part.sources.flatMap((source) => source.specimens)), ...cabin.masters ?? []].map(({ id }) => id));
    const chosen = specimens.has(terms.specimen) ? terms.specimen : '';
    return html`
      <footer>
        <label class="field wide"><span class="label">Specimen</span>${specimens.size > mostInList ? html`<adjoin-choice
          keeps label="Specimen" hint="Choose the specimen it was measured on" .count=${specimens.size} .choices=${() => specimenChoices(cabin)} .given=${chosen === '' ? undefined : specimenChoices(cabin).find(({ id }) => id === chosen)}
          @adjoin-chosen=${(event: CustomEvent<string>) => this.set({ specimen: event.detail })}></adjoin-choice>` : html`<span class="pick"><select @change=${(event: Event) => this.set({ specimen: (event.target as HTMLSelectElement).value })}>
          <option value="" ?selected=${chosen === ''}>Choose the specimen it was measured on</option>
          ${cabin.parts.map((part) => html`<optgroup label=${part.name}>${part.sources.flatMap((source) => source.specimens.map(({ id, kind }) => html`<option value=${id} ?selected=${id === chosen}>${part.name}: ${kind} ${id}</option>`))}</optgroup>`)}
          ${(cabin.masters ?? []).length === 0 ? nothing : html`<optgroup label="Masters">${(cabin.masters ?? []).map(({ id }) => html`<option value=${id} ?selected=${id === chosen}>${id}</option>`)}</optgroup>`}
        </select></span>`}</label>
        <label class="field"><span class="label">Instrument and conditions</span><span class="pick"><select @change=${(event: Event) => this.set({ conditions: (event.target as HTMLSelectElement).value })}>
          ${conditions.map(({ id, instrument }) => html`<option value=${id} ?selected=${id === chosenConditions?.id}>${ofInstrument.get(instrument)?.name ?? instrument} (${id})</option>`)}
        </select></span></label>
        <label class="field"><span class="label">Spot</span><input type="text" .value=${terms.spot} @change=${(event: Event) => this.set({ spot: (event.target as HTMLInputElement).value.trim() })}></label>
        ${this.open.locked ? html`<p>The cabin is open in another tab and cannot be changed here.</p>` : html`
          <button class="strong" type="button" ?disabled=${chosen === '' || chosenConditions === undefined || reply.sha256 === undefined}
            @click=${() => this.add(reply, chosen, chosenConditions?.id ?? '')}>Add to the specimen</button>`}
        ${conditions.length === 0 ? html`<p>The cabin has no instrument yet: add one, with its conditions, and come back.</p>` : nothing}
        ${this.fault === undefined ? nothing : html`<p class="fault" role="alert">${this.fault}</p>`}
      </footer>`;
  }

  private add(reply: MeasuredReply, specimen: string, conditions: string): void {
    if (reply.data === undefined || reply.sha256 === undefined || this.brought === undefined) return;
    const result = this.desk.do('readings.add-surface', {
      specimen, texture: { ...reply.data, spot: { name: this.terms.spot }, conditions }, file: { id: this.brought.name, name: this.brought.name, sha256: reply.sha256 },
    });
    const [issue] = result.issues;
    this.fault = result.done ? undefined : `Not added: ${issue?.hint ?? issue?.expected ?? issue?.code ?? 'the cabin was not changed'}`;
    if (!result.done) return;
    announce(this, `The texture was added to ${specimen}`);
    this.reply = undefined;
    this.brought = undefined;
  }
}

const specimenChoices = (cabin: Cabin): readonly Choice[] => [
  ...cabin.parts.flatMap((part) => part.sources.flatMap((source) => source.specimens.map(({ id, kind }) => ({ id, name: `${part.name}: ${kind} ${id}` })))),
  ...(cabin.masters ?? []).map(({ id }) => ({ id, name: `Master ${id}` })),
];

customElements.define('adjoin-surface-view', AdjoinSurfaceView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-surface-view': AdjoinSurfaceView;
  }
}
