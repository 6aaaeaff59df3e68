import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Part, Source } from '../../../src/cabin/cabin.ts';
import { sourceOf } from '../../../src/cabin/source-of.ts';
import { planCurrency } from '../../../src/plan/model/source-cost.ts';
import { withPicks } from '../../../src/plan/model/with-picks.ts';
import type { ChoicePlan, ChosenSet } from '../../../src/plan/index.ts';
import { counted, fixed, signed } from '../../../src/report/number-text.ts';
import { pickListCsv } from '../../../src/report/pick-list-csv.ts';
import { announce } from '../../controllers/announcer.ts';
import { FurtherCabins } from '../../controllers/further-cabins.ts';
import { PlanRun } from '../../controllers/plan-run.ts';
import type { WantedPlan } from '../../controllers/plan-run.ts';
import { unfolds } from '../../controllers/sections.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { findLight } from '../../model/light-groups.ts';
import { jointNames } from '../../model/joint-names.ts';
import { moneyText } from '../../model/money-text.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { sourceColour } from '../../model/source-colour.ts';
import { locksOf, sourceTerms, toggledLock } from '../../model/source-terms.ts';
import type { Options } from '../../model/source-terms.ts';
import '../../app/adjoin-ways.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { narrow, planStyles } from '../plan/plan.styles.ts';
import { planState } from '../plan/plan-state.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-free-mix.ts';
import './adjoin-front.ts';
import './adjoin-source-choice.ts';
import './adjoin-set-comparison.ts';
import './adjoin-source-terms.ts';

/** Joints that are named at once. */
const mostNamed = 40;

/** One source for each part: the front of cost and harmony to pick from, what every swap does, and one step that takes the set over. */
export class AdjoinSourcesView extends ViewElement {
  static override styles = [base, controls, planStyles, stacked, css`
    .picture { display: grid; grid-template-columns: minmax(0, 5fr) minmax(300px, 3fr); gap: 16px 40px; align-items: start; }
    .picture table td, .picture table th { padding-right: 0; padding-left: 12px; } .picture > * { min-width: 0; } .picture tbody th, .picture thead th:first-child { padding-left: 0; }
    .would { margin-top: 12px; } .beside { display: flex; gap: 8px; align-items: center; font-size: var(--small); color: var(--quiet); margin-bottom: 8px; } .apply .save { min-height: 28px; font-weight: 400; font-size: var(--small); }
    .mix { display: flex; flex-wrap: wrap; gap: 8px 24px; justify-content: space-between; align-items: flex-start; margin-bottom: 16px; } .mix p { max-width: 84ch; } .tools { display: flex; flex-wrap: wrap; gap: 8px; }
    .colourways { display: flex; flex-wrap: wrap; gap: 8px 24px; margin-bottom: 16px; } .colourways li { display: flex; gap: 10px; align-items: center; }
    .sets button { min-height: 26px; } .sets tbody th { white-space: nowrap; }
    @media (max-width: 1300px) { .picture { grid-template-columns: minmax(0, 1fr); } }
  `];

  private readonly choice = new PlanRun<'choose'>(this, () => (this.open.judging || this.open.cabin.parts.length === 0 ? undefined
    : { cabin: this.open.cabin, task: { kind: 'choose', options: this.terms() } }), (plan) => this.planned(plan));
  private readonly swaps = new PlanRun<'swaps'>(this, () => this.wantedSwaps());
  private readonly mix = new PlanRun<'mix'>(this, () => (this.options['mix'] !== 'yes' || this.choice.made === undefined || this.choice.running !== undefined || this.open.judging ? undefined
    : { cabin: this.open.cabin, task: { kind: 'mix', options: {}, ...(this.colourways.cabins.length === 0 ? {} : { further: this.colourways.cabins }) } }));
  private readonly colourways = new FurtherCabins(this);

  private get options(): Options {
    return this.route.options ?? {};
  }

  private terms() {
    return sourceTerms(this.options, this.open.cabin);
  }

  /** Swaps are told from the set that is picked, once it is known. */
  private wantedSwaps(): WantedPlan<'swaps'> | undefined {
    const { made } = this.choice;
    const picks = made === undefined ? undefined : this.pickedSet(made.plan)?.picks;
    return made === undefined || picks === undefined || this.choice.running !== undefined ? undefined : { cabin: made.cabin, task: { kind: 'swaps', picks, options: made.task.options } };
  }

  private planned(plan: ChoicePlan): void {
    const [best] = plan.sets;
    announce(this, best === undefined ? 'No set of sources keeps to these terms.' : `Planned: ${counted(best.clashing.length, 'joint')} clash, ${moneyText(best.cost, plan.currency)}.`);
  }

  private choose(change: Options): void {
    this.go({ options: change }, true);
  }

  /** The set that the address picks: a point of the front, one of the next best, else the best. */
  private pickedSet(plan: ChoicePlan): ChosenSet | undefined {
    const next = plan.sets[Number(this.options['next'])];
    return next ?? plan.front?.sets[this.point(plan)] ?? plan.sets[0];
  }

  private point(plan: ChoicePlan): number {
    const wanted = Number(this.options['point']);
    return Number.isInteger(wanted) && wanted >= 1 && wanted <= (plan.front?.sets.length ?? 0) ? wanted - 1 : 0;
  }

  private apply(set: ChosenSet): void {
    const present = this.desk.present ?? this.open.cabin;
    const after = withPicks(present, set.picks);
    const changes = present.parts.filter((part, index) => after.parts[index] !== part).length;
    const result = this.desk.commit(after, `Take the sources chosen for ${counted(changes, 'part')}`);
    announce(this, result.done ? `${counted(changes, 'part')} ${changes === 1 ? 'stands' : 'stand'} by another source now. Undo takes it back.` : `Not done: ${result.issues[0]?.hint ?? 'the cabin cannot be changed here'}`);
  }

  /** The cabin differs from what was planned with in more than the sources its parts stand by. */
  private get stale(): boolean {
    const { made } = this.choice;
    if (made === undefined || made.cabin === this.open.cabin) return false;
    const { cabin } = this.open;
    return made.cabin.joints !== cabin.joints || made.cabin.ruleBook !== cabin.ruleBook || made.cabin.suppliers !== cabin.suppliers || made.cabin.parts.length !== cabin.parts.length
      || made.cabin.parts.some((part, index) => part.id !== cabin.parts[index]?.id || part.sources !== cabin.parts[index]?.sources || part.module !== cabin.parts[index]?.module || part.frozen !== cabin.parts[index]?.frozen);
  }

  private readonly toJoint = (joint: string): string => this.linkTo({ view: 'joint', joint, item: undefined, options: {} });

  private readonly toPart = (part: string): string => this.linkTo({ view: 'parts', item: part, joint: undefined, options: {} });

  override render(): TemplateResult {
    const { cabin } = this.open;
    if (cabin.parts.length === 0) {
      return html`<div class="body"><h1>Sources</h1><div class="teach"><p>Where a part has several sources, the set that keeps the cabin in harmony at least cost is found here, with the proof that none is better.</p>
        <p>This cabin has no parts yet. Add parts and their sources, with prices and lead times, then come back.</p><adjoin-ways .cabin=${cabin} .linkTo=${this.linkTo}></adjoin-ways></div></div>`;
    }
    const plan = this.choice.made?.cabin.id === cabin.id ? this.choice.made.plan : undefined;
    return html`
      <aside aria-label="Terms of the choice">
        <details class="terms" ${unfolds('terms', !matchMedia(narrow).matches)}><summary>Terms of the choice</summary><adjoin-source-terms .cabin=${cabin} .options=${this.options} .locked=${this.open.locked} .dropOuts=${this.choice.running === undefined ? plan?.dropOuts ?? [] : []} .currency=${plan?.currency ?? planCurrency(cabin) ?? ''}
          @adjoin-terms=${(event: CustomEvent<Options>) => this.choose({ ...event.detail, point: '', next: '' })}></adjoin-source-terms></details>
      </aside>
      <div class="body">
        ${plan === undefined ? this.waiting() : this.planText(plan)}
      </div>
    `;
  }

  private waiting(): TemplateResult {
    return html`<div><h1>Sources</h1><div class="teach"><p>One source is <adjoin-term word="choose">chosen</adjoin-term> for each part: fewest joints that clash, then least over-use of limits, then least cost. Every joint is judged under every pair of sources that may meet in it, and that no set is better is proved.</p></div></div>
      ${planState(this.choice, () => this.choice.again())}`;
  }

  private planText(plan: ChoicePlan): TemplateResult {
    const set = this.pickedSet(plan);
    const state = planState(this.choice, () => this.choice.again());
    if (set === undefined) {
      return html`<div class="lead"><div><h1>No set of sources keeps to these terms</h1><div class="said">${plan.words.map((word) => html`<p>${word}</p>`)}</div></div></div>
        ${state}${plan.notPicked.length === 0 ? nothing : html`<details ${unfolds('ruled-out')}><summary>What the terms rule out: ${counted(plan.notPicked.length, 'source')}</summary><ul>${plan.notPicked.map(({ sentence }) => html`<li class="small">${sentence}</li>`)}</ul></details>`}`;
    }
    return html`
      <div class="lead">
        <div><h1>Sources</h1><div class="said">${plan.words.map((word) => html`<p>${word}</p>`)}</div></div>
        ${this.applying(plan, set)}
      </div>
      ${state}
      ${this.stale && this.choice.running === undefined ? html`<div class="notice" role="status"><div><b>The cabin has changed since this was planned.</b></div><button type="button" @click=${() => this.choice.again()}>Plan again</button></div>` : nothing}
      <section class="picture ${this.choice.running === undefined ? '' : 'old'}" aria-label="Cost and harmony">
        ${plan.front === undefined || plan.front.sets.length === 0 || (plan.front.sets.length === 1 && plan.front.sets[0]?.cost === plan.present.cost) ? nothing : html`<adjoin-front
          .front=${plan.front} .present=${plan.present} .picked=${this.options['next'] ? undefined : this.point(plan)} .currency=${plan.currency} .budget=${this.terms().budget}
          @adjoin-pick-set=${(event: CustomEvent<number>) => this.choose({ ...this.options, point: String(event.detail + 1), next: '' })}></adjoin-front>`}
        ${this.facts(plan, set)}
      </section>
      <section class=${this.choice.running === undefined ? '' : 'old'}><h2>Parts: what was <adjoin-term word="choose">chosen</adjoin-term>⁠, and why not another</h2>
        <adjoin-source-choice .locked=${this.open.locked}
          .cabin=${this.open.cabin} .plan=${plan} .picks=${set.picks} .swaps=${this.swaps.running === undefined && this.swaps.made?.task.picks === set.picks ? this.swaps.made.plan : undefined} .locks=${locksOf(this.options)} .terms=${this.choice.made?.task.options ?? {}}
          .colourOf=${(part: Part, source: Source) => this.colourOf(part, source)}
          @adjoin-lock=${(event: CustomEvent<{ part: string; source: string }>) => this.choose({ ...toggledLock(this.options, event.detail.part, event.detail.source), point: '', next: '' })}></adjoin-source-choice>
      </section>
      ${this.compared(plan, set)}
      ${this.sets(plan, set)}
      ${this.mixed()}
      <p class="small quiet">A swap of a source touches flammability, emissions, airbag cover and glare requirements that are not judged here: local codes and the responsible licensed engineer decide.</p>
    `;
  }

  private mixed(): TemplateResult {
    const made = this.mix.made?.cabin.id === this.open.cabin.id ? this.mix.made : undefined;
    const wanted = this.options['mix'] === 'yes';
    return html`<section><h2><adjoin-term word="free mix">Free mix</adjoin-term>: running all approved sources at once</h2>
      <div class="mix">
        <p class="small quiet">Where several approved sources run on the line, every combination of them is built sooner or later: how many of the cabins would have a clash? Other colourways join in with what they carry over: a source of such a part may be mixed freely only where it holds in all of them.</p>
        <div class="tools">
          ${wanted ? nothing : html`<button type="button" @click=${() => this.choose({ ...this.options, mix: 'yes' })}>Reckon the free mix</button>`}
          <button type="button" @click=${() => this.addColourway()}>${wanted ? 'Add a colourway' : 'Reckon it with another colourway'}</button>
        </div>
      </div>
      ${this.colourways.cabins.length === 0 ? nothing : html`<ul class="colourways">${this.colourways.cabins.map((cabin) => html`<li><span>with <b>${cabin.name}</b>${cabin.colourway === undefined ? nothing : ` · ${cabin.colourway}`} · ${counted(cabin.parts.filter(({ frozen }) => frozen === true).length, 'carry-over part')}</span>
        <button type="button" aria-label=${`Leave out ${cabin.name}`} @click=${() => this.colourways.remove(cabin.id)}>Leave out</button></li>`)}</ul>`}
      ${this.colourways.issues.length === 0 ? nothing : html`<div class="notice bad" role="alert"><div><b>That file was not taken.</b>${this.colourways.issues.slice(0, 4).map((issue) => html`<p>${issue.path === undefined ? nothing : html`<b>${issue.path}</b>: `}found ${issue.found ?? 'nothing'}, expected ${issue.expected ?? 'something else'}.${issue.hint === undefined ? nothing : ` ${issue.hint}`}</p>`)}</div></div>`}
      ${planState(this.mix, () => this.mix.again())}
      ${made === undefined || !wanted ? nothing : html`<adjoin-free-mix class=${this.mix.running === undefined ? '' : 'old'} .cabins=${[made.cabin, ...(made.task.further ?? [])]} .mix=${made.plan} .locked=${this.open.locked} .toPart=${this.toPart} .linkTo=${this.toJoint}></adjoin-free-mix>`}
    </section>`;
  }

  private async addColourway(): Promise<void> {
    if (await this.colourways.add(this.open.cabin)) {
      announce(this, 'The colourway is mixed with this one.');
      if (this.options['mix'] !== 'yes') this.choose({ ...this.options, mix: 'yes' });
    }
  }

  private colourOf(part: Part, source: Source): PartColour {
    const { cabin, judgement } = this.open;
    const light = findLight(this.light, cabin.lights);
    const known = sourceOf(part).id === source.id ? this.colours.get(part.id) : undefined;
    return known ?? (light === undefined ? { css: undefined, why: 'unknown light' } : sourceColour(source, judgement.stage, light, judgement.observer, this.gamut));
  }

  private applying(plan: ChoicePlan, set: ChosenSet): TemplateResult {
    const changes = this.open.cabin.parts.filter((part) => sourceOf(part).id !== set.picks[part.id]).length;
    const off = this.open.locked || changes === 0 || this.choice.running !== undefined || this.stale;
    return html`<div class="apply">
      <button class=${off ? '' : 'strong'} type="button" aria-disabled=${off} @click=${() => { if (!off) this.apply(set); }}>${changes === 0 ? 'The cabin stands by this set' : `Apply: ${counted(changes, 'part')} to another source`}</button>
      <span class="note">${this.open.locked ? 'Another tab owns this cabin.' : changes === 0 ? nothing : 'One step, which Undo takes back.'}</span>
      <div class="tools"><button class="save" type="button" @click=${() => this.savePicks(plan, set)}>Save the list as CSV</button></div>
    </div>`;
  }

  /** The set that the picked one is compared with, as the address says: the cabin as it is where it says none. */
  private beside(plan: ChoicePlan): { readonly key: string; readonly name: string; readonly set: ChosenSet } {
    return this.others(plan).find(({ key }) => key === this.options['beside']) ?? this.others(plan)[0]!;
  }

  private others(plan: ChoicePlan): readonly { readonly key: string; readonly name: string; readonly set: ChosenSet }[] {
    return [
      { key: '', name: 'as it is', set: plan.present },
      ...(plan.front?.sets ?? plan.sets.slice(0, 1)).map((set, index) => ({ key: `point-${index + 1}`, name: `point ${index + 1}`, set })),
      ...plan.sets.slice(1).map((set, index) => ({ key: `next-${index + 1}`, name: `next best ${index + 1}`, set })),
    ];
  }

  private compared(plan: ChoicePlan, set: ChosenSet): TemplateResult {
    const beside = this.beside(plan);
    if (beside.key === '' && this.open.cabin.parts.every(({ id }) => beside.set.picks[id] === set.picks[id])) return html``;
    return html`<section class=${this.choice.running === undefined ? '' : 'old'}><h2>Side by side: ${beside.name} and ${this.setName(plan, set).toLowerCase()}</h2>
      <adjoin-set-comparison .cabin=${this.open.cabin} .plan=${plan} .from=${beside.set} .to=${set} .names=${[beside.name, this.setName(plan, set).toLowerCase()]} .terms=${this.choice.made?.task.options ?? {}}
        .colourOf=${(part: Part, source: Source) => this.colourOf(part, source)} .locked=${this.open.locked} .toPart=${this.toPart} .linkTo=${this.toJoint}></adjoin-set-comparison></section>`;
  }

  private savePicks(plan: ChoicePlan, set: ChosenSet): void {
    const cabin = this.choice.made?.cabin ?? this.open.cabin;
    downloadText(`${fileName(cabin.id, 'sources', this.setName(plan, set).toLowerCase())}.csv`, pickListCsv(cabin, plan, set, this.choice.made?.task.options), 'text/csv');
    announce(this, 'The list of sources went to your downloads.');
  }

  private facts(plan: ChoicePlan, set: ChosenSet): TemplateResult {
    const beside = this.beside(plan);
    const present = beside.set;
    const money = (value: number): string => moneyText(value, '');
    const row = (name: string | TemplateResult, before: number, after: number, text: (value: number) => string, change: (value: number) => string): TemplateResult =>
      html`<tr><th scope="row">${name}</th><td class="n">${text(before)}</td><td class="n"><b>${text(after)}</b></td><td class="n">${Math.abs(after - before) < 0.005 ? '–' : change(after - before)}</td></tr>`;
    const whole = (value: number): string => fixed(value, 0);
    const names = jointNames(this.open.cabin);
    const link = (id: string): TemplateResult => html`<a ${standsFor({ joint: id }, !this.open.locked)} href=${this.linkTo({ view: 'joint', joint: id, item: undefined, options: {} })}>${names.get(id) ?? id}</a>`;
    return html`<div class="scroll">
      <label class="beside"><span>Compare with</span><span class="pick"><select name="beside" @change=${(event: Event) => this.choose({ ...this.options, beside: (event.target as HTMLSelectElement).value })}>
        ${this.others(plan).map(({ key, name }) => html`<option value=${key} .selected=${key === beside.key}>${name}</option>`)}</select></span></label>
      <table>
        <thead><tr><th scope="col">${this.setName(plan, set)}</th><th scope="col" class="n">${beside.name}</th><th scope="col" class="n">picked</th><th scope="col" class="n">change</th></tr></thead>
        <tbody>
          ${row(html`<adjoin-term word="expected clashes">joints that clash, open ones by chance</adjoin-term>`, present.clashes, set.clashes, (value) => fixed(value, 2), (value) => signed(value, 2))}
          ${row('clashing for certain', present.clashing.length, set.clashing.length, whole, (value) => signed(value, 0))}
          ${row(html`<adjoin-term word="open">open</adjoin-term>`, present.open.length, set.open.length, whole, (value) => signed(value, 0))}
          ${row(html`<adjoin-term word="over-use">over-use of limits</adjoin-term>`, present.overUse, set.overUse, (value) => fixed(value, 2), (value) => signed(value, 2))}
          ${row(`cost of a year${plan.currency === '' ? '' : `, ${plan.currency}`}`, present.cost, set.cost, money, (value) => `${value > 0 ? '+' : ''}${money(value)}`)}
          ${row('longest lead time, weeks', present.leadWeeks, set.leadWeeks, whole, (value) => signed(value, 0))}
          ${row('suppliers', present.suppliers.length, set.suppliers.length, whole, (value) => signed(value, 0))}
        </tbody>
      </table>
      ${set.clashing.length === 0 ? nothing : html`<p class="small would"><b>Joints that would clash</b></p><p class="joints small">${set.clashing.slice(0, mostNamed).map(link)}</p>
        ${set.clashing.length <= mostNamed ? nothing : html`<details ${unfolds('clashing')}><summary class="small">${set.clashing.length - mostNamed} more</summary><p class="joints small">${set.clashing.slice(mostNamed).map(link)}</p></details>`}`}
    </div>`;
  }

  private setName(plan: ChoicePlan, set: ChosenSet): string {
    const next = plan.sets.indexOf(set);
    if (this.options['next'] && next > 0) return `Next best ${next}`;
    const point = plan.front?.sets.findIndex((one) => one === set) ?? -1;
    return point < 0 ? 'Best set' : `Point ${point + 1} of ${plan.front?.sets.length}`;
  }

  private sets(plan: ChoicePlan, picked: ChosenSet): TemplateResult {
    const row = (name: string, set: ChosenSet, proof: string, pick: Options | undefined): TemplateResult => html`<tr class=${set === picked ? 'on' : ''}>
      <th scope="row">${name}</th><td>${pick === undefined ? nothing : html`<button type="button" aria-pressed=${set === picked} aria-label=${`Pick ${name}`} @click=${() => this.choose({ ...this.options, ...pick })}>Pick</button>`}</td><td class="n" data-name="clashes">${fixed(set.clashes, 2)}</td><td class="n" data-name="certain">${set.clashing.length}</td><td class="n" data-name="open">${set.open.length}</td><td class="n" data-name="over-use">${fixed(set.overUse, 2)}</td>
      <td class="n" data-name="cost">${moneyText(set.cost, '')}</td><td class="n" data-name="weeks">${set.leadWeeks}</td><td class="n" data-name="suppliers">${set.suppliers.length}</td><td class="n" data-name="changed">${set.changed.length}</td><td>${proof}</td></tr>`;
    const front = plan.front?.sets ?? [];
    const of = plan.front?.of;
    return html`<section class="sets"><h2>Sets of the <adjoin-term word="front">front</adjoin-term>, and the next best</h2><div class="scroll"><table class="stacked">
      <caption class="unseen">The cabin as it is, the front of cost and harmony, and the next best sets</caption>
      <thead><tr><th scope="col">set</th><th scope="col"><span class="unseen">pick</span></th><th scope="col" class="n"><adjoin-term word="expected clashes">clashes</adjoin-term></th><th scope="col" class="n">certain</th><th scope="col" class="n">open</th><th scope="col" class="n">over-use</th>
        <th scope="col" class="n">cost${plan.currency === '' ? '' : ` ${plan.currency}`}</th><th scope="col" class="n">weeks</th><th scope="col" class="n">suppliers</th><th scope="col" class="n">changed</th><th scope="col"><adjoin-term word="proved">proof</adjoin-term></th></tr></thead>
      <tbody>
        ${row('as it is', plan.present, '', undefined)}
        ${front.map((set, index) => row(`point ${index + 1}`, set, set.proved ? 'proved' : 'not proved', { point: String(index + 1), next: '' }))}
        ${plan.sets.slice(1).map((set, index) => row(`next best ${index + 1}`, set, '', { next: String(index + 1), point: '' }))}
      </tbody></table></div>
      <p class="small quiet">${of === undefined || of <= front.length ? 'The points are the whole front: no set is both cheaper and more harmonious than one of them.' : `${front.length} of the ${of} points of the front, spread evenly over the money.`}
        Next best sets are the most harmonious ones after the best. ${plan.proved ? '' : `Bound: no set has fewer than ${fixed(plan.bound.clashes, 2)} clashes; the gap is ${fixed(plan.gap, 2)}.`}</p></section>`;
  }
}

customElements.define('adjoin-sources-view', AdjoinSourcesView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-sources-view': AdjoinSourcesView;
  }
}
