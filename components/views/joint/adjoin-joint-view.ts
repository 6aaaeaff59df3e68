import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Cabin, Joint } from '../../../src/cabin/cabin.ts';
import type { JointResult, Judgement, PartResult } from '../../../src/harmony/judgement.ts';
import { limitUseText, percent, probability } from '../../../src/report/number-text.ts';
import type { Selection } from '../../../src/actions/selection.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import type { Desk } from '../../controllers/desk.ts';
import { askAction, askSelection } from '../../controllers/edit-events.ts';
import { JointTrial } from '../../controllers/joint-trial.ts';
import { standFor, standsFor } from '../../controllers/stands-for.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { standingSource } from '../../model/joint-filter.ts';
import { verdictWord } from '../../model/leading-check.ts';
import { findLight } from '../../model/light-groups.ts';
import type { Gamut } from '../../model/part-colours.ts';
import { base, controls } from '../../styles/shared.ts';
import '../../app/adjoin-action-fields.ts';
import '../../app/adjoin-term.ts';
import './adjoin-check-list.ts';
import './adjoin-joint-evidence.ts';
import './adjoin-joint-lights.ts';
import './adjoin-joint-plots.ts';
import type { PlottedSide } from './adjoin-joint-plots.ts';
import './adjoin-joint-stage.ts';
import type { StageSide } from './adjoin-joint-stage.ts';
import './adjoin-proposals.ts';
import './adjoin-what-if.ts';
import { trialAddress, trialOfAddress } from '../../model/trial-address.ts';
import { isNothing, trialText } from '../../model/trial-text.ts';
import type { Trial } from '../../../src/plan/proposal/proposed-cabin.ts';
import { styles } from './joint-view.styles.ts';

/** What the figures beside the checks are. */
const terms = html`<p class="terms">Beside each check: its <adjoin-term word="limit use">use of the limit</adjoin-term>, the <adjoin-term word="standard uncertainty, u">standard uncertainty u</adjoin-term> of its value and the
  <adjoin-term word="probability that it holds, p">probability p of being inside</adjoin-term>. Which checks decide is their <adjoin-term word="standing">standing</adjoin-term>; where a limit comes from, its <adjoin-term word="basis">basis</adjoin-term>.</p>`;

/**
 * One joint: what it looks like, whether it holds under each light and check, how sure that is, and what it stands on.
 * Shift with the left or right arrow key goes to the joint before or after it on the wall.
 * @fires adjoin-option - choices for the address
 */
export class AdjoinJointView extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, joint: { attribute: false }, listed: { attribute: false }, light: {}, gamut: {},
    back: {}, linkTo: { attribute: false }, options: { attribute: false }, desk: { attribute: false }, locked: { type: Boolean }, selection: { attribute: false },
  };

  declare cabin: Cabin;
  declare judgement: Judgement;
  declare joint: JointResult;
  /** The joints of the wall, worst first, with this one among them. */
  declare listed: readonly JointResult[];
  declare light: string;
  declare gamut: Gamut;
  declare back: string;
  declare linkTo: (joint: string) => string;
  /** What the address says of how the joint is shown and what is tried at it. */
  declare options: Readonly<Record<string, string>>;
  /** Absent where the view stands without a workbench. */
  declare desk: Desk | undefined;
  declare locked: boolean;
  declare selection: Selection;
  private readonly trial = new JointTrial(this);
  /** The joint itself is shown in the first frame, what stands below it in the next: both together keep the page too long. */
  private isWhole = false;
  private frame = 0;

  constructor() {
    super();
    this.listed = [];
    this.light = 'D65';
    this.gamut = 'srgb';
    this.back = '#/cabin';
    this.options = {};
    this.linkTo = () => '#/';
    this.locked = false;
    this.selection = {};
  }

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('keydown', this.key);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.key);
    cancelAnimationFrame(this.frame);
  }

  protected override firstUpdated(): void {
    this.frame = requestAnimationFrame(() => {
      this.isWhole = true;
      this.requestUpdate();
    });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    standFor(this, { selection: { joint: this.joint.id }, editable: false, byFocus: this.desk !== undefined });
    const before = changed.get('joint');
    const another = changed.has('joint') && before?.id !== this.joint.id;
    if (another && before !== undefined) this.trial.reset();
    if (another || (changed.has('options') && this.wanted !== this.told)) this.readTrial();
    else if ((changed.has('cabin') || changed.has('judgement')) && !isNothing(this.trial.trial)) this.tryOut(this.trial.trial);
  }

  /** What is tried, as the address has it. */
  private get wanted(): string {
    return this.options['try'] ?? '';
  }

  /** What of a trial was told to the address last. */
  private told = '';

  private readTrial(): void {
    this.told = this.wanted;
    const trial = trialOfAddress(this.wanted, this.joint.parts);
    if (!isNothing(trial) || !isNothing(this.trial.trial)) this.tryOut(trial);
  }

  /** The address follows what is tried. */
  private tell(trial: Trial): void {
    const text = trialAddress(trial);
    if (text === this.told) return;
    this.told = text;
    this.dispatchEvent(new CustomEvent('adjoin-option', { detail: { try: text } }));
  }

  private tryOut(trial: Trial): void {
    this.trial.set(trial, this.joint.id, this.cabin, this.judgement, this.desk);
  }

  private readonly keep = (): void => {
    askAction(this, 'proposal.add', { joint: this.joint.id, date: this.cabin.asOf, ...this.trial.trial }, {
      asks: ['date', 'note'], about: `${trialText(this.cabin, this.trial.trial)}.`, done: () => this.untry(),
    });
  };

  /** A new joint is read from its heading. */
  protected override updated(changed: PropertyValues<this>): void {
    const before = changed.get('joint');
    if (changed.has('joint') && this.desk !== undefined && this.selection.joint !== this.joint.id) askSelection(this, { joint: this.joint.id });
    if (!changed.has('joint') || before?.id === this.joint.id) return;
    this.renderRoot.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
    this.scrollIntoView({ block: 'start' });
  }

  private neighbour(by: number): JointResult | undefined {
    return this.listed[this.listed.findIndex((one) => one.id === this.joint.id) + by];
  }

  private readonly key = (event: KeyboardEvent): void => {
    if (!event.shiftKey || event.ctrlKey || event.altKey || event.metaKey) return;
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : 0;
    const next = by === 0 ? undefined : this.neighbour(by);
    if (next === undefined) return;
    event.preventDefault();
    location.hash = this.linkTo(next.id);
  };

  /** As tried where something is. */
  private partResult(id: string): PartResult | undefined {
    return (this.trial.judgement ?? this.judgement).parts.find((part) => part.id === id);
  }

  private plotted(id: string): PlottedSide {
    return { name: this.partName(id), appearance: this.partResult(id)?.appearance };
  }

  private partName(id: string): string {
    return this.cabin.parts.find((part) => part.id === id)?.name ?? id;
  }

  /** All that stands below the joint itself. */
  private body(joint: Joint, result: JointResult): TemplateResult {
    const { judgement } = this;
    const { trial, judgement: tried, together } = this.trial;
    const colour = result.checks.find((check) => check.check === 'colour');
    const partChecks = [result.standard, result.trial]
      .map((id) => ({ id, checks: this.partResult(id)?.checks ?? [] })).filter((part) => part.checks.length > 0);
    return html`
      ${this.desk === undefined ? nothing : html`
        <section>
          <h2>What if</h2>
          <adjoin-what-if
            .cabin=${this.cabin} .joint=${joint} .result=${this.joint} .judgement=${judgement} .trial=${trial} .tried=${tried} .together=${together}
            .locked=${this.locked} .linkTo=${this.linkTo} @adjoin-trial=${this.wished} @adjoin-keep=${this.keep}
          ></adjoin-what-if>
        </section>`}
      <section>
        <h2>Under each light</h2>
        <adjoin-joint-lights .cabin=${this.cabin} .joint=${joint} .check=${colour} .light=${this.light} .gamut=${this.gamut}></adjoin-joint-lights>
      </section>
      <section><h2>Checks</h2>${terms}<adjoin-check-list .checks=${result.checks}></adjoin-check-list></section>
      <adjoin-joint-plots .cabin=${this.cabin} .sides=${[this.plotted(result.standard), this.plotted(result.trial)]} .light=${this.light} .observer=${judgement.observer} .gamut=${this.gamut}></adjoin-joint-plots>
      ${partChecks.map((part) => html`
        <section><h2>${this.partName(part.id)} on its own</h2><adjoin-check-list .checks=${part.checks}></adjoin-check-list></section>`)}
      <section>
        <h2>What it stands on</h2>
        <adjoin-joint-evidence
          .cabin=${this.cabin} .joint=${joint} .result=${this.joint} .light=${this.light} .editable=${this.desk !== undefined && !this.locked}
        ></adjoin-joint-evidence>
      </section>
      <section>
        <h2><adjoin-term word="proposal">Proposals</adjoin-term></h2>
        <adjoin-proposals .cabin=${this.cabin} .joint=${joint} .locked=${this.locked || this.desk === undefined} .linkTo=${this.linkTo} @adjoin-trial=${this.wished}></adjoin-proposals>
      </section>
      ${this.desk === undefined ? nothing : html`
        <section>
          <h2>The joint itself</h2>
          ${this.fields('joint.set', ['kind', 'gapMm', 'stepMm', 'lengthMm', 'viewMm', 'tiltDeg', 'weight', 'reference', 'note'], { reference: 'by the rule', weight: '1' })}
          <h3>Intent</h3>
          ${this.fields('joint.set-intent', ['colour', 'gloss', 'texture'], this.restOfIntent(joint))}
          <p class="do"><button type="button" ?disabled=${this.locked} @click=${() => askAction(this, 'joint.set-id', { joint: joint.id })}>Change its id</button>
            <button type="button" ?disabled=${this.locked} @click=${() => askAction(this, 'joint.remove', { joint: joint.id })}>Remove joint</button></p>
        </section>`}
    `;
  }

  override render(): TemplateResult {
    const { judgement } = this;
    const { trial, judgement: tried } = this.trial;
    const result = tried?.joints.find((one) => one.id === this.joint.id) ?? this.joint;
    const joint = this.cabin.joints.find((one) => one.id === result.id);
    const light = findLight(this.light, this.cabin.lights);
    if (joint === undefined || light === undefined) return html`<p>Nothing to show.</p>`;
    const side = (id: string): StageSide => {
      const source = standingSource(this.cabin.parts.find((part) => part.id === id));
      const supplier = this.cabin.suppliers.find((one) => one.id === source?.supplier)?.name ?? source?.supplier;
      const about = [source?.material, supplier].filter(Boolean).join(', ');
      return { part: id, name: this.partName(id), about, appearance: this.partResult(id)?.appearance, ...(source === undefined ? {} : { material: source.material }) };
    };
    const sides = [side(result.standard), side(result.trial)] as const;
    const until = result.accepted && result.acceptedUntil ? ` until ${result.acceptedUntil}` : '';
    return html`
      ${this.navigation()}
      <header class="lead" ${standsFor({ joint: this.joint.id }, this.desk !== undefined && !this.locked)}>
        <div>
          <div class="verdict">
            ${scene(verdictSample(result, 56, 16, paperInk))}<span class="word ${result.verdict}">${verdictWord(result)}${until}</span>
            ${tried === undefined ? nothing : html`<span class="tried">as tried; measured: ${verdictWord(this.joint)}</span>`}
          </div>
          <h1 tabindex="-1">${sides[0].name} <span>meets</span> ${sides[1].name}</h1>
          <p class="sentence">${result.sentence}</p>
        </div>
        <dl class="keys">
          <div><dt><adjoin-term word="limit use">limit use</adjoin-term></dt><dd>${limitUseText(result.limitUse)}</dd></div>
          <div><dt><adjoin-term word="probability that it holds, p">probability that it holds</adjoin-term></dt><dd>${probability(result.totalProbability)}</dd></div>
          <div><dt><adjoin-term word="coverage">coverage</adjoin-term></dt><dd>${percent(result.coverage.withData / Math.max(1, result.coverage.wanted))}</dd></div>
        </dl>
      </header>
      <adjoin-joint-stage .joint=${tried === undefined ? joint : { ...joint, gapMm: trial.gapMm ?? joint.gapMm, viewMm: trial.viewMm ?? joint.viewMm }} .sides=${sides} .light=${light} .observer=${judgement.observer} .gamut=${this.gamut} .options=${this.options}
        @adjoin-option=${(event: CustomEvent<object>) => this.dispatchEvent(new CustomEvent('adjoin-option', { detail: event.detail }))}></adjoin-joint-stage>
      <div class="body">${this.isWhole ? this.body(joint, result) : nothing}</div>
      ${tried === undefined ? nothing : html`
        <div class="trial" role="note">
          <p><b>Tried, not in the document.</b> ${trialText(this.cabin, trial)}.</p>
          <button type="button" @click=${() => this.untry()}>Back to as measured</button>
        </div>`}
    `;
  }

  private readonly wished = (event: CustomEvent<Trial>): void => {
    this.tryOut(event.detail);
    this.tell(event.detail);
  };

  private untry(): void {
    this.trial.reset();
    this.tell({});
  }

  private fields(action: string, keys: readonly string[], rest: Readonly<Record<string, string | undefined>>): TemplateResult {
    return html`<adjoin-action-fields
      .cabin=${this.cabin} .action=${action} .of=${{ joint: this.joint.id }} .keys=${keys} .rest=${rest} .locked=${this.locked}
    ></adjoin-action-fields>`;
  }

  /** What the rule wants where the joint says nothing. */
  private restOfIntent({ intent }: Joint): Readonly<Record<string, string>> {
    const { colour, gloss, texture } = this.joint.intent;
    return Object.fromEntries(Object.entries({ colour, gloss, texture }).map(([key, value]) => [key, intent?.[key as 'colour'] === undefined ? `by the rule: ${value}` : 'by the rule']));
  }

  private navigation(): TemplateResult {
    const here = this.listed.findIndex((one) => one.id === this.joint.id);
    const link = (by: number, text: string): TemplateResult => {
      const next = this.neighbour(by);
      return next === undefined
        ? html`<span class="button" aria-disabled="true">${text}</span>`
        : html`<a
            class="button" href=${this.linkTo(next.id)} aria-keyshortcuts=${by < 0 ? 'Shift+ArrowLeft' : 'Shift+ArrowRight'}
            title=${next.parts.map((id) => this.partName(id)).join(' / ')}
          >${text}</a>`;
    };
    return html`
      <nav aria-label="Joints">
        <a class="button" href=${this.back}>All joints</a>
        ${link(-1, 'Previous')}${link(1, 'Next')}
        <span class="place">${here + 1} of ${this.listed.length}<span class="how">, worst first. Shift with an arrow key steps.</span></span>
      </nav>
    `;
  }
}

customElements.define('adjoin-joint-view', AdjoinJointView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-joint-view': AdjoinJointView;
  }
}
