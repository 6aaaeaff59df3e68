import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Decision, Joint, VisualRecord } from '../../../src/cabin/cabin.ts';
import { voidReason } from '../../../src/harmony/decisions.ts';
import type { JointResult, JudgedOn } from '../../../src/harmony/judgement.ts';
import { counted, fixed, percent, probability } from '../../../src/report/number-text.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { askAction, doAction } from '../../controllers/edit-events.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { proposedDecision } from '../../model/proposed-decision.ts';
import '../../app/adjoin-term.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './joint-evidence.styles.ts';

/** What a verdict stands on: the specimens, the rule and why it applies, what was decided, and what the booth said. */
export class AdjoinJointEvidence extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = { cabin: { attribute: false }, joint: { attribute: false }, result: { attribute: false }, editable: { type: Boolean }, light: {} };

  declare cabin: Cabin;
  declare joint: Joint;
  declare result: JointResult;
  /** Decisions and records can be added and withdrawn. */
  declare editable: boolean;
  /** Light of the workbench, which a new record begins with. */
  declare light: string;

  constructor() {
    super();
    this.editable = false;
    this.light = 'D65';
  }

  private partName(id: string): string {
    return this.cabin.parts.find((part) => part.id === id)?.name ?? id;
  }

  override render(): TemplateResult {
    const { joint, result } = this;
    const { intent } = result;
    const { withData, wanted } = result.coverage;
    return html`
      ${result.judgedOn.map((judged) => this.judgedOn(judged))}
      <section>
        <h3><adjoin-term word="rule, rule book">Rule</adjoin-term></h3>
        <p><b>${result.rule}</b></p>
        <p>${result.ruleWhy}</p>
        <p class="quiet">
          Intent: colour ${intent.colour}, gloss ${intent.gloss}, texture ${intent.texture}. Coverage: ${withData} of
          ${counted(wanted, 'check')} wanted have data (${percent(withData / Math.max(1, wanted))}). By value against limit alone: ${result.simple}.
        </p>
        ${result.lotProbability === undefined
          ? nothing
          : html`<p class="quiet">Between lots: a random pair of parts holds with probability ${probability(result.lotProbability)}.</p>`}
      </section>
      <section>
        <h3><adjoin-term word="decision">Decisions</adjoin-term></h3>
        ${joint.decisions?.length
          ? html`<ul>${joint.decisions.map((decision) => this.decision(decision, result))}</ul>`
          : html`<p class="quiet">None on record.</p>`}
        ${this.editable ? html`<p class="do"><button type="button" @click=${this.accept}>Accept a clash for a time</button></p>` : nothing}
      </section>
      <section>
        <h3><adjoin-term word="visual record">Light booth</adjoin-term></h3>
        ${joint.visualRecords?.length
          ? html`<ul>${joint.visualRecords.map((record, place) => this.record(record, place))}</ul>
              ${result.visual === undefined
                ? nothing
                : html`<p>The latest one ${result.visual.agrees ? 'agrees' : 'does not agree'} with the verdict.</p>`}`
          : html`<p class="quiet">Nobody has looked at this joint yet, or it was not recorded.</p>`}
        ${this.editable ? html`<p class="do"><button type="button" @click=${this.recordOne}>Record a visual assessment</button></p>` : nothing}
      </section>
      ${joint.note === undefined ? nothing : html`<section><h3>Note</h3><p>${joint.note}</p></section>`}
    `;
  }

  /** The worst clashing check is proposed for acceptance, at the value it has. */
  private readonly accept = (): void => {
    const clashing = this.result.checks.filter((check) => check.verdict === 'clashes' && check.standing !== 'advisory' && check.accepted !== true);
    const worst = clashing.toSorted((first, second) => (second.limitUse ?? 0) - (first.limitUse ?? 0))[0];
    askAction(this, 'decision.add', {
      joint: this.joint.id, date: this.cabin.asOf, ...proposedDecision(worst),
    });
  };

  private readonly recordOne = (): void => {
    askAction(this, 'visual-record.add', { joint: this.joint.id, date: this.cabin.asOf, light: this.light });
  };

  private judgedOn(judged: JudgedOn): TemplateResult {
    const instrument = this.cabin.instruments.find((one) => one.id === judged.instrument)?.name ?? judged.instrument;
    const owner = this.cabin.parts.find((part) => part.id === judged.part)?.sources.find((source) => source.id === judged.source);
    const supplier = this.cabin.suppliers.find((one) => one.id === owner?.supplier)?.name ?? owner?.supplier;
    const about = [supplier, owner?.material, owner?.grain && `grain ${owner.grain.id}`, owner?.status].filter(Boolean).join(', ');
    return html`
      <section>
        <h3>${this.partName(judged.part)}, judged on</h3>
        <dl>
          <dt>specimen</dt><dd>${judged.specimen}, ${judged.kind}${judged.lot === undefined ? nothing : `, lot ${judged.lot}`}</dd>
          <dt>readings</dt><dd>${counted(judged.spots, 'spot')}, ${judged.geometry}, ${instrument}</dd>
          <dt>source</dt><dd>${about || judged.source}</dd>
          ${judged.borrowedFrom === undefined ? nothing : html`<dt>borrowed</dt><dd>from the mirror part ${this.partName(judged.borrowedFrom)}</dd>`}
        </dl>
      </section>
    `;
  }

  private decision(decision: Decision, result: JointResult): TemplateResult {
    const check = result.checks.find((candidate) => candidate.check === decision.check);
    const reason = check === undefined ? undefined : voidReason(decision, check, this.cabin.asOf);
    return html`
      <li ${standsFor({ joint: this.joint.id, decision: decision.id }, this.editable)}>
        <b>${decision.check}</b> at ${decision.criterion === undefined ? nothing : `${decision.criterion} `}${fixed(decision.value, 2)}${decision.light === undefined ? nothing : ` under ${decision.light}`},
        until ${decision.expires}${check?.verdict !== 'clashes' ? html`: <b>not needed</b>, the check does not clash` : reason === undefined ? html`: <b>in force</b>` : html`: <b>void</b>, ${reason}`}
        <p>${decision.reason}</p><p class="quiet">${decision.role}, ${decision.date}</p>
        ${this.editable ? html`<p class="do"><button type="button" aria-label=${`Withdraw the decision on ${decision.check} of ${decision.date}`} @click=${() => doAction(this, 'decision.withdraw', { decision: decision.id })}>Withdraw</button></p>` : nothing}
      </li>`;
  }

  private record(record: VisualRecord, place: number): TemplateResult {
    const observers = `${counted(record.observers.count, 'observer')}${record.observers.roles.length ? ` (${record.observers.roles.join(', ')})` : ''}`;
    const lux = record.illuminanceLx === undefined ? '' : `, ${record.illuminanceLx} lx`;
    const rating = record.rating === undefined ? '' : `, ${record.rating.scale} grade ${record.rating.grade}`;
    return html`
      <li ${standsFor({ joint: this.joint.id, record: place }, this.editable)}>
        <b>${record.result}</b> under ${record.light}${lux}${rating}
        <p class="quiet">${record.date}, ${observers}</p>
        ${record.note === undefined ? nothing : html`<p>${record.note}</p>`}
        ${this.editable ? html`<p class="do"><button type="button" aria-label=${`Remove the record of ${record.date}`} @click=${() => doAction(this, 'visual-record.remove', { joint: this.joint.id, record: place })}>Remove</button></p>` : nothing}
      </li>`;
  }
}

customElements.define('adjoin-joint-evidence', AdjoinJointEvidence);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-joint-evidence': AdjoinJointEvidence;
  }
}
