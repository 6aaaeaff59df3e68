import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { mendProposalNote, withMendProposals } from '../../../src/actions/mend-proposals.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { partNames } from '../../../src/harmony/names.ts';
import type { MendCard, MendedJoint, MendPlan, PartChange } from '../../../src/plan/index.ts';
import type { CabinMapInput } from '../../../src/report/figures/cabin-map.ts';
import { mendCardText, mendCaution, mendCsv } from '../../../src/report/mend-card-text.ts';
import { counted, limitUseText, signed } from '../../../src/report/number-text.ts';
import { announce } from '../../controllers/announcer.ts';
import { PlanRun } from '../../controllers/plan-run.ts';
import { unfolds } from '../../controllers/sections.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { bareRows } from '../../controllers/windowed-rows.ts';
import { findLight } from '../../model/light-groups.ts';
import { jointNames } from '../../model/joint-names.ts';
import { mapInput } from '../../model/map-input.ts';
import { mendTerms, planStands, toggled, withAskedTerms } from '../../model/mend-terms.ts';
import { partColour } from '../../model/part-colours.ts';
import type { PartColour } from '../../model/part-colours.ts';
import type { Options } from '../../model/source-terms.ts';
import '../../app/adjoin-long-list.ts';
import '../../app/adjoin-ways.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import { base, controls } from '../../styles/shared.ts';
import { fields } from '../../styles/fields.ts';
import { narrow, planStyles } from '../plan/plan.styles.ts';
import { planState } from '../plan/plan-state.ts';
import '../plan/adjoin-plan-map.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-mend-card.ts';
import './adjoin-mend-terms.ts';

/** Cards that are drawn at once, and those of a group where there are more. */
const mostAtOnce = 24;
const inGroup = 6;

/** The fewest parts to change so that every joint holds: cards for the suppliers, the map before and after, kept as proposals in one step. */
export class AdjoinMendView extends ViewElement {
  static override styles = [base, controls, fields, planStyles, bareRows, css`
    adjoin-long-list table { table-layout: fixed; } adjoin-long-list .of { width: 46%; } adjoin-long-list .does { width: 150px; } @media (max-width: 760px) { adjoin-long-list .of { width: 36%; } adjoin-long-list th { white-space: normal; } }
    .maps { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 1px; background: var(--line); border: 1px solid var(--line); }
    .maps.single { grid-template-columns: minmax(0, 1fr); }
    .send { display: flex; flex-wrap: wrap; gap: 6px 8px; align-items: center; margin-bottom: 12px; } .send button { min-height: 26px; max-width: 100%; overflow-wrap: anywhere; text-align: start; font-size: var(--small); } @media print { .send { display: none; } }
    .cards { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(420px, 100%), 1fr)); gap: 16px; align-items: start; }
    .bar { display: flex; flex-wrap: wrap; gap: 8px 16px; justify-content: space-between; align-items: flex-end; border-bottom: 1px solid var(--line); padding-bottom: 6px; margin-bottom: 12px; } .bar h2 { border: 0; padding: 0; margin: 0; } .tools { display: flex; gap: 8px; } .group { padding-bottom: 16px; }
    @media print { .tools { display: none; } }
    @media (max-width: 900px) { .maps { grid-template-columns: minmax(0, 1fr); } }
  `];

  private readonly mending = new PlanRun<'mend'>(this, () => (this.open.judging || this.open.cabin.joints.length === 0 ? undefined
    : { cabin: this.open.cabin, task: { kind: 'mend', options: mendTerms(this.options, this.open.cabin) } }), (plan) => announce(this, plan.words[0] ?? 'Planned.'));
  /** The document as the proposals were put into it. */
  private applied: Cabin | undefined;

  private mapped: { readonly of: readonly unknown[]; readonly now: CabinMapInput; readonly met: CabinMapInput } | undefined;

  private get options(): Options {
    return this.route.options ?? {};
  }

  private choose(options: Options): void {
    this.go({ options }, true);
  }

  private keep(changes: readonly PartChange[], mended: readonly string[]): void {
    const present = this.desk.present ?? this.open.cabin;
    const after = withMendProposals(present, changes, mended, mendProposalNote);
    const result = this.desk.commit(after, `Keep the mend of ${counted(changes.length, 'part')} as proposals`);
    if (result.done) this.applied = this.desk.present;
    announce(this, result.done ? 'Kept as proposals at the joints. Readings and verdicts stay as they are; Undo takes it back.' : `Not done: ${result.issues[0]?.hint ?? 'the cabin cannot be changed here'}`);
    this.requestUpdate();
  }

  override render(): TemplateResult {
    const { cabin } = this.open;
    if (cabin.parts.length === 0 || cabin.joints.length === 0) {
      return html`<div class="body"><h1>Mend</h1><div class="teach"><p>Where joints clash, the fewest parts to change are found here, and by how much, so that every joint holds under every light of its rule.</p>
        <p>${cabin.parts.length === 0 ? 'This cabin has no parts yet.' : 'No two parts of this cabin are joined yet.'} Once it has joints with readings, come back.</p><adjoin-ways .cabin=${cabin} .linkTo=${this.linkTo}></adjoin-ways></div></div>`;
    }
    const plan = this.mending.made?.cabin.id === cabin.id ? this.mending.made.plan : undefined;
    return html`
      <aside aria-label="Terms of the mend"><details class="terms" ${unfolds('terms', !matchMedia(narrow).matches)}><summary>Terms of the mend</summary>${this.terms()}</details></aside>
      <div class="body">${plan === undefined
        ? html`<div><h1>Mend</h1><div class="teach"><p>A <adjoin-term word="mend">mend</adjoin-term>: the fewest parts to change, and the least shifts, so that every joint that a change can mend holds under every light of its rule. The ordinary check judges the cabin with the changes met before the plan is shown.</p></div></div>${planState(this.mending, () => this.mending.again())}`
        : this.planned(plan)}</div>
    `;
  }

  private terms(): TemplateResult {
    const { cabin, judgement, locked } = this.open;
    return html`<adjoin-mend-terms .cabin=${cabin} .options=${this.options} .locked=${locked} .failing=${judgement.joints.filter(({ verdict }) => verdict !== 'holds').map(({ id }) => id)}
      @adjoin-terms=${(event: CustomEvent<Options>) => this.choose(event.detail)} @adjoin-keep-terms=${() => this.keepTerms()}></adjoin-mend-terms>`;
  }

  /** What the address asks for goes into the cabin, and out of the address. */
  private keepTerms(): void {
    const present = this.desk.present ?? this.open.cabin;
    const result = this.desk.commit(withAskedTerms(this.options, present), 'Keep the terms of a mend');
    announce(this, result.done ? 'Kept in the cabin. Undo takes it back.' : `Not done: ${result.issues[0]?.hint ?? 'the cabin cannot be changed here'}`);
    if (result.done) this.choose({ ...this.options, lock: '', reach: '', cost: '', time: '' });
  }

  private planned(plan: MendPlan): TemplateResult {
    const partial = plan.withoutBlockers;
    const { changes, cards } = plan.feasible ? plan : partial ?? { changes: [], cards: [] };
    const outcome = plan.feasible ? plan.outcome : partial?.outcome ?? [];
    const after = plan.feasible ? plan.after : partial?.after;
    const before = this.mending.made?.cabin ?? this.open.cabin;
    const running = this.mending.running !== undefined;
    const stale = !planStands(before, this.open.cabin) && this.open.cabin !== this.applied;
    const held = new Set(this.open.judgement.joints.filter(({ verdict }) => verdict === 'holds').map(({ id }) => id));
    const mended = plan.feasible ? plan.mended : outcome.filter(({ id, verdict }) => verdict === 'holds' && !held.has(id)).map(({ id }) => id);
    return html`
      <div class="lead">
        <div><h1>${plan.feasible ? 'Mend' : plan.blockers.length > 0 ? 'No plan within reach' : 'No plan found'}</h1><div class="said">${plan.words.map((word) => html`<p>${word}</p>`)}</div></div>
        ${changes.length === 0 ? nothing : this.applying(changes, mended, running || stale)}
      </div>
      ${planState(this.mending, () => this.mending.again())}
      ${stale && !running ? html`<div class="notice" role="status"><div><b>The cabin has changed since this was planned.</b></div><button type="button" @click=${() => this.mending.again()}>Plan again</button></div>` : nothing}
      ${plan.feasible || plan.blockers.length === 0 ? nothing : this.blockers(plan)}
      ${changes.length === 0 ? nothing : html`
        <section class=${running ? 'old' : ''}><h2>${plan.feasible ? 'Before and after' : 'What can be done for the others'}</h2>${this.maps(cards, outcome, plan, after)}</section>
        <section class=${running ? 'old' : ''}><header class="bar"><h2>Cards for the suppliers: a <adjoin-term word="target">target</adjoin-term> each</h2><span class="tools"><button type="button" @click=${() => this.saveTable(cards)}>Save all as CSV</button><button type="button" @click=${() => print()}>Print</button></span></header>
          ${this.bySupplier(cards)}
          ${this.cards(cards)}</section>
        ${this.tables(changes, outcome)}`}
      <p class="small quiet">${mendCaution}</p>
    `;
  }

  /** Very many cards are a long list of groups, each of as many as fill its rows in one, two or three columns. */
  private cards(cards: readonly MendCard[]): TemplateResult {
    const one = (card: MendCard): TemplateResult => html`<adjoin-mend-card .cabin=${this.open.cabin} .card=${card} .reaches=${this.mending.made?.task.options.reach ?? {}} .partReaches=${this.mending.made?.task.options.partReach ?? {}} .now=${this.colours.get(card.parts[0] ?? '')} .target=${this.target(card)} .locked=${this.open.locked} .toPart=${this.toPart} .linkTo=${this.toJoint}></adjoin-mend-card>`;
    if (cards.length <= mostAtOnce) return html`<div class="cards">${cards.map(one)}</div>`;
    const groups = Array.from({ length: Math.ceil(cards.length / inGroup) }, (_, place) => cards.slice(inGroup * place, inGroup * (place + 1)));
    return html`<adjoin-long-list .usual=${1300} .whole=${0} .ids=${groups.map(([first]) => first?.parts.join(' ') ?? '')} .row=${(place: number) => html`<div class="cards group" data-place=${place}>${groups[place]?.map(one)}</div>`}></adjoin-long-list>`;
  }

  /** One file for each supplier, with all that it is asked for. */
  private bySupplier(cards: readonly MendCard[]): TemplateResult {
    const { cabin } = this.open;
    const suppliers = [...new Set(cards.map(({ supplier }) => supplier))];
    const name = (id: string): string => cabin.suppliers.find((one) => one.id === id)?.name ?? id;
    return html`<div class="send"><span class="small quiet">To send, a file each:</span>${suppliers.map((id) => { const own = cards.filter(({ supplier }) => supplier === id); return html`<button type="button" aria-label=${`${name(id)}: ${counted(own.length, 'card')}, save as a file`} @click=${() => this.saveFor(id, name(id), own)}>${name(id)}: ${counted(own.length, 'card')}</button>`; })}</div>`;
  }

  private saveFor(supplier: string, name: string, cards: readonly MendCard[]): void {
    const cabin = this.mending.made?.cabin ?? this.open.cabin;
    downloadText(`${fileName(cabin.id, 'mend', supplier)}.txt`, cards.map((card) => mendCardText(cabin, card)).join(`\n${'-'.repeat(72)}\n\n`), 'text/plain');
    announce(this, `What ${name} is asked for went to your downloads.`);
  }

  private saveTable(cards: readonly MendCard[]): void {
    const cabin = this.mending.made?.cabin ?? this.open.cabin;
    downloadText(`${fileName(cabin.id, 'mend')}.csv`, mendCsv(cabin, cards), 'text/csv');
    announce(this, 'The cards went to your downloads as a table.');
  }

  private readonly toPart = (part: string): string => this.linkTo({ view: 'parts', item: part, joint: undefined, options: {} });

  private readonly toJoint = (joint: string): string => this.linkTo({ view: 'joint', joint, item: undefined, options: {} });

  private applying(changes: readonly PartChange[], mended: readonly string[], off: boolean): TemplateResult {
    const kept = this.applied !== undefined && this.applied === this.open.cabin;
    const disabled = off || this.open.locked || kept;
    return html`<div class="apply">
      <button class=${disabled ? '' : 'strong'} type="button" aria-disabled=${disabled} @click=${() => { if (!disabled) this.keep(changes, mended); }}>${kept ? 'Kept as proposals' : `Keep as proposals: ${counted(changes.length, 'part')}`}</button>
      <span class="note">${this.open.locked ? 'Another tab owns this cabin.' : html`One step, which Undo takes back. A <adjoin-term word="proposal">proposal</adjoin-term> is no reading: verdicts stay until new plaques are measured.`}</span></div>`;
  }

  /** The colour a part would have, under the light of the workbench. */
  private target(card: MendCard): PartColour | undefined {
    const light = findLight(this.light, this.open.cabin.lights);
    const now = this.colours.get(card.parts[0] ?? '');
    if (light === undefined) return undefined;
    const { observer } = this.open.judgement;
    const bare = { part: card.parts[0] ?? '', source: card.source, specimen: undefined, colourSpots: 1, gloss: [] };
    if (card.spectrum !== undefined) return partColour({ ...bare, spectrum: { startNm: card.spectrum.startNm, stepNm: card.spectrum.stepNm, values: card.spectrum.to } }, light, observer, this.gamut);
    const { dL, da, db } = card.shift;
    return dL === 0 && da === 0 && db === 0 ? now : partColour(card.to === undefined ? undefined : { ...bare, cielab: { lab: card.to, light: 'D65', observer } }, light, observer, this.gamut);
  }

  /** What the two maps show: the same as long as nothing of it changes, so that they are not drawn anew for every step of a plan. */
  private mapInputs(cards: readonly MendCard[], outcome: readonly MendedJoint[], plan: MendPlan): { readonly now: CabinMapInput; readonly met: CabinMapInput } {
    const of = [plan, this.open.cabin, this.open.judgement, this.open.paths, this.colours, this.light, this.gamut];
    if (this.mapped !== undefined && of.every((item, place) => item === this.mapped?.of[place])) return this.mapped;
    const { cabin, judgement, paths } = this.open;
    const marked = new Set(cards.flatMap(({ parts }) => parts));
    const colours = new Map(this.colours);
    for (const card of cards) for (const part of card.parts) colours.set(part, this.target(card) ?? colours.get(part) ?? { css: undefined, why: 'no colour' });
    const results = new Map(outcome.map((joint) => [joint.id, joint]));
    const now: CabinMapInput = { ...mapInput(cabin, judgement, this.colours, paths), marked };
    const met: CabinMapInput = { ...mapInput(cabin, { ...judgement, joints: judgement.joints.map((joint) => ({ ...joint, ...results.get(joint.id) })) }, colours, paths), marked };
    this.mapped = { of, now, met };
    return this.mapped;
  }

  private maps(cards: readonly MendCard[], outcome: readonly MendedJoint[], plan: MendPlan, after: MendPlan['after']): TemplateResult {
    const { now, met } = this.mapInputs(cards, outcome, plan);
    const counts = ({ holds, open, clashes }: MendPlan['before']): string => `${counted(clashes, 'clash', 'clashes')}, ${open} open, ${holds} hold`;
    return html`<div class="maps"><adjoin-plan-map .input=${now} .caption=${'Now'} .about=${counts(plan.before)}></adjoin-plan-map>
      <adjoin-plan-map .input=${met} .caption=${'With all cards met'} .about=${after === undefined ? '' : counts(after)}></adjoin-plan-map></div>
      <p class="small quiet">Parts that change have a light edge; a saw is a joint that <adjoin-term word="clashes">clashes</adjoin-term>.</p>`;
  }

  private blockers(plan: MendPlan): TemplateResult {
    const { cabin, judgement, paths } = this.open;
    const standing = new Set(plan.blockers);
    const input: CabinMapInput = { ...mapInput(cabin, judgement, this.colours, paths), rested: new Set(judgement.joints.map(({ id }) => id).filter((id) => !standing.has(id))) };
    const names = jointNames(cabin);
    const now = new Map(judgement.joints.map((joint) => [joint.id, joint]));
    return html`<section><h2>${plan.blockers.length === 1 ? 'The joint that makes it so' : 'The joints that make it so together'}</h2>
      <div class="maps single"><adjoin-plan-map .input=${input} .caption=${'What stands in the way'} .about=${''}></adjoin-plan-map></div>
      <adjoin-long-list class="scroll" .usual=${37} .ids=${plan.blockers} .head=${html`<thead><tr aria-rowindex="1"><th scope="col" class="of">joint</th><th scope="col">verdict now</th><th scope="col" class="n">limit use</th><th scope="col" class="does"><span class="unseen">leave it out</span></th></tr></thead>`}
        .row=${(place: number) => { const id = plan.blockers[place]!; const joint = now.get(id); return html`<tr data-place=${place} aria-rowindex=${place + 2} ${standsFor({ joint: id }, !this.open.locked)}><th scope="row"><a href=${this.toJoint(id)}>${names.get(id) ?? id}</a></th><td>${joint?.verdict}</td><td class="n">${limitUseText(joint?.limitUse)}</td>
          <td><button type="button" @click=${() => this.choose(toggled(this.options, 'except', id))}>Leave it as it is</button></td></tr>`; }}></adjoin-long-list></section>`;
  }

  private tables(changes: readonly PartChange[], outcome: readonly MendedJoint[]): TemplateResult {
    const { cabin, judgement } = this.open;
    const names = partNames(cabin.parts);
    const now = new Map(judgement.joints.map((joint) => [joint.id, joint]));
    const moved = outcome.filter(({ id, verdict, limitUse }) => { const before = now.get(id); return before !== undefined && (before.verdict !== verdict || Math.abs((before.limitUse ?? 0) - (limitUse ?? 0)) > 0.005); });
    const between = jointNames(cabin);
    return html`
      <section><h2>In numbers</h2>
        <adjoin-long-list class="scroll" .usual=${31} .ids=${changes.map(({ part }) => part)} .head=${html`<caption>Shifts, now to <adjoin-term word="target">target</adjoin-term>, under D65</caption><thead><tr aria-rowindex="1"><th scope="col" class="of">part</th><th scope="col" class="n"><adjoin-term word="dL*, da*, db*">dL*</adjoin-term></th><th scope="col" class="n">da*</th><th scope="col" class="n">db*</th><th scope="col" class="n">dGloss GU</th></tr></thead>`}
          .row=${(place: number) => { const { part, dL, da, db, dGloss } = changes[place]!; return html`<tr data-place=${place} aria-rowindex=${place + 2} ${standsFor({ parts: [part] }, !this.open.locked)}><th scope="row"><a href=${this.toPart(part)}>${names.get(part) ?? part}</a></th><td class="n">${signed(dL, 2)}</td><td class="n">${signed(da, 2)}</td><td class="n">${signed(db, 2)}</td><td class="n">${signed(dGloss, 2)}</td></tr>`; }}></adjoin-long-list>
      </section>
      <section><adjoin-long-list class="scroll" .usual=${35} .ids=${moved.map(({ id }) => id)} .head=${html`<caption>Joints that become other</caption><thead><tr aria-rowindex="1"><th scope="col" class="of">joint</th><th scope="col">now</th><th scope="col" class="n"><adjoin-term word="limit use">limit use</adjoin-term></th><th scope="col">after</th><th scope="col" class="n">limit use</th></tr></thead>`}
        .row=${(place: number) => { const joint = moved[place]!; const before = now.get(joint.id)!; return html`<tr data-place=${place} aria-rowindex=${place + 2} ${standsFor({ joint: joint.id }, !this.open.locked)}><th scope="row"><a href=${this.toJoint(joint.id)}>${between.get(joint.id)}</a></th>
          <td><span class="word ${before.verdict}">${before.verdict}</span></td><td class="n">${limitUseText(before.limitUse)}</td><td><span class="word ${joint.verdict}">${joint.verdict}</span></td><td class="n">${limitUseText(joint.limitUse)}</td></tr>`; }}></adjoin-long-list></section>`;
  }
}

customElements.define('adjoin-mend-view', AdjoinMendView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-mend-view': AdjoinMendView;
  }
}
