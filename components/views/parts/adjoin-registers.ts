import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Selection } from '../../../src/actions/index.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { counted } from '../../../src/report/number-text.ts';
import { askAction, doAction } from '../../controllers/edit-events.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Route } from '../../controllers/route.ts';
import { standFor, standsFor } from '../../controllers/stands-for.ts';
import { lightCurve } from '../../figures/light-curve.ts';
import { scene } from '../../figures/scene.ts';
import { findLight } from '../../model/light-groups.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './registers.styles.ts';

interface Line {
  /** What it is, for keys and its menu. */
  readonly is?: Selection;
  readonly name: string;
  readonly about: string;
  readonly picture?: TemplateResult;
  readonly link?: string;
  readonly edit?: readonly [action: string, preset: Readonly<Record<string, unknown>>];
  readonly remove?: readonly [action: string, values: Readonly<Record<string, unknown>>];
  readonly more?: readonly (readonly [title: string, action: string, preset: Readonly<Record<string, unknown>>])[];
  readonly within?: readonly Line[];
}

/** What the parts refer to: zones with their caps, suppliers, instruments, conditions, lights, runs, decisions, visual records, files. */
export class AdjoinRegisters extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = { cabin: { attribute: false }, locked: { type: Boolean }, linkTo: { attribute: false }, show: {} };

  declare cabin: Cabin;
  declare locked: boolean;
  declare linkTo: (change: Partial<Route>) => string;
  /** Section to come to. */
  declare show: string | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    standFor(this, { selection: {}, editable: false, byFocus: true });
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (changed.has('show') && this.show !== undefined) this.renderRoot.querySelector(`#${CSS.escape(this.show)}`)?.scrollIntoView({ block: 'start' });
  }

  override render(): TemplateResult {
    const { cabin } = this;
    return html`
      ${this.section('zones', html`Zones and <adjoin-term word="cap">caps</adjoin-term>`, [['Add a zone', 'zone.add']], this.zones(), 'A zone may cap the gloss or lightness of its parts, as the upper dash against veiling glare. The caps are a design aid; legal visibility requirements and the responsible engineer decide.')}
      ${this.section('suppliers', 'Suppliers', [['Add a supplier', 'supplier.add']], cabin.suppliers.map(({ id, name, setupCost }) => ({
        is: { supplier: id }, name, about: [counted(cabin.parts.flatMap(({ sources }) => sources).filter(({ supplier }) => supplier === id).length, 'source'), setupCost === undefined ? undefined : `set-up cost ${setupCost}`].filter(Boolean).join(', '),
        edit: ['supplier.set', { supplier: id }], remove: ['supplier.remove', { supplier: id }],
      })))}
      ${this.section('instruments', 'Instruments', [['Add an instrument', 'instrument.add']], cabin.instruments.map((one) => ({
        is: { instrument: one.id }, name: one.name, about: [one.kind, one.serial && `serial ${one.serial}`, one.calibratedOn && `calibrated ${one.calibratedOn}`, one.agreement && `agreement of ${one.agreement.date} on ${counted(one.agreement.tiles, 'tile')}`].filter(Boolean).join(', '),
        edit: ['instrument.set', { instrument: one.id }], remove: ['instrument.remove', { instrument: one.id }], more: [['Agreement', 'instrument.replace', { instrument: one.id }]],
      })))}
      ${this.section('conditions', 'Conditions of readings', cabin.instruments.length === 0 ? [] : [['Add conditions', 'conditions.add']], cabin.conditions.map((one) => ({
        is: { conditions: one.id }, name: one.id, about: [cabin.instruments.find(({ id }) => id === one.instrument)?.name ?? one.instrument, one.geometry, one.apertureMm === undefined ? undefined : `aperture ${one.apertureMm} mm`, one.uv && `UV ${one.uv}`].filter(Boolean).join(', '),
        edit: ['conditions.set', { conditions: one.id }], remove: ['conditions.remove', { conditions: one.id }],
      })))}
      ${this.section('lights', 'Own lights', [['Add a light by its values', 'light.add']], (cabin.lights ?? []).map((light) => {
        const found = findLight(light.id, cabin.lights);
        return {
          is: { light: light.id }, name: light.name, about: `${light.values.length} values from ${light.startNm} nm by ${light.stepNm} nm`, ...(found === undefined ? {} : { picture: html`${scene(lightCurve(found, 72, 28))}` }),
          edit: ['light.set', { light: light.id }], remove: ['light.remove', { light: light.id }],
        } satisfies Line;
      }), html`The published lights are always there. A lamp measured to IES TM-27 <a href=${this.linkTo({ view: 'import', item: undefined, options: {} })}>comes in by its file</a>.`)}
      ${this.section('runs', html`<adjoin-term word="run">Runs</adjoin-term> along which drift is watched`, [], (cabin.runs ?? []).map((run) => ({
        is: { run: run.id }, name: run.name ?? run.id, about: run.parts.map((id) => this.partName(id)).join(', '), edit: ['run.set', { run: run.id }], remove: ['run.remove', { run: run.id }],
      })), 'Select two parts or more, in their order, then choose “Watch drift along parts” among the commands.')}
      ${this.section('decisions', html`<adjoin-term word="decision">Decisions</adjoin-term>`, [], cabin.joints.flatMap((joint) => (joint.decisions ?? []).map((decision): Line => ({
        is: { joint: joint.id, decision: decision.id }, name: this.jointName(joint.parts), about: `${decision.check} until ${decision.expires}: ${decision.reason} (${decision.role}, ${decision.date})`, link: this.linkTo({ view: 'joint', joint: joint.id, item: undefined, options: {} }),
        remove: ['decision.withdraw', { decision: decision.id }],
      }))), 'A decision is made at its joint.')}
      ${this.section('visual', html`<adjoin-term word="visual record">Visual records</adjoin-term>`, [], cabin.joints.flatMap((joint) => (joint.visualRecords ?? []).map((record, place): Line => ({
        is: { joint: joint.id, record: place }, name: this.jointName(joint.parts), about: `${record.result} under ${record.light} on ${record.date}, ${counted(record.observers.count, 'observer')}${record.note === undefined ? '' : `: ${record.note}`}`,
        link: this.linkTo({ view: 'joint', joint: joint.id, item: undefined, options: {} }), remove: ['visual-record.remove', { joint: joint.id, record: place }],
      }))), 'What the light booth said is recorded at its joint.')}
      ${this.section('files', 'Files of readings', [], (cabin.files ?? []).map(({ name, sha256 }) => ({ name, about: `SHA-256 ${sha256}` })))}
    `;
  }

  /** The form shows why a removal is refused; the place of a record would be asked for there, so that goes without. */
  private takeOut(action: string, values: Readonly<Record<string, unknown>>): void {
    if ('record' in values) doAction(this, action, values);
    else askAction(this, action, values);
  }

  private partName(id: string): string {
    return this.cabin.parts.find((part) => part.id === id)?.name ?? id;
  }

  private jointName(parts: readonly string[]): string {
    return parts.map((id) => this.partName(id)).join(' and ');
  }

  private zones(): readonly Line[] {
    return this.cabin.zones.map((zone) => ({
      is: { zone: zone.id }, name: zone.name, about: counted(this.cabin.parts.filter((part) => part.zone === zone.id).length, 'part'),
      edit: ['zone.rename', { zone: zone.id }], remove: ['zone.remove', { zone: zone.id }], more: [['Add a cap', 'cap.add', { zone: zone.id }]],
      within: (zone.caps ?? []).map((cap): Line => ({
        is: { zone: zone.id, cap: cap.id }, name: `${cap.quantity} at most ${cap.max}${cap.quantity === 'gloss' ? ` GU at ${cap.angle ?? 60}°` : ''}`, about: [cap.basis, cap.caution].filter(Boolean).join('. '), edit: ['cap.set', { cap: cap.id }], remove: ['cap.remove', { cap: cap.id }],
      })),
    }));
  }

  private section(id: string, title: string | TemplateResult, adds: readonly (readonly [string, string])[], lines: readonly Line[], note: string | TemplateResult = ''): TemplateResult {
    return html`
      <section id=${id}>
        <h2><span>${title}</span> <span class="quiet">${lines.length}</span>${adds.map(([words, action]) => html`<button type="button" ?disabled=${this.locked} @click=${() => askAction(this, action)}>${words}</button>`)}</h2>
        ${note === '' ? nothing : html`<p class="quiet">${note}</p>`}
        ${lines.length === 0 ? html`<p class="none">None.</p>` : html`<ul>${lines.map((line) => this.line(line))}</ul>`}
      </section>`;
  }

  private line({ is, name, about, picture, link, edit, remove, more, within }: Line): TemplateResult {
    const { locked } = this;
    return html`
      <li>
        <div class="line" ${standsFor(is ?? {}, is !== undefined && !locked)}>
          ${picture ?? nothing}
          <span class="what">${link === undefined ? html`<b>${name}</b>` : html`<a href=${link}>${name}</a>`} <span class="quiet">${about}</span></span>
          <span class="does">
            ${more?.map(([words, action, preset]) => html`<button type="button" ?disabled=${locked} aria-label="${words}: ${name}" @click=${() => askAction(this, action, preset)}>${words}</button>`)}
            ${edit === undefined ? nothing : html`<button type="button" ?disabled=${locked} aria-label="Edit ${name}" @click=${() => askAction(this, edit[0], edit[1])}>Edit</button>`}
            ${remove === undefined ? nothing : html`<button type="button" ?disabled=${locked} aria-label="Remove ${name}" @click=${() => this.takeOut(remove[0], remove[1])}>Remove</button>`}
          </span>
        </div>
        ${within === undefined || within.length === 0 ? nothing : html`<ul>${within.map((line) => this.line(line))}</ul>`}
      </li>`;
  }
}

customElements.define('adjoin-registers', AdjoinRegisters);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-registers': AdjoinRegisters;
  }
}
