import { css, html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { partsWithToleranceTargets, withToleranceTargets } from '../../../src/actions/tolerance-targets.ts';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { partNames } from '../../../src/harmony/names.ts';
import { quantileSource, usualShare } from '../../../src/plan/apportion/statistical-law.ts';
import type { ApportionPlan, PartTolerance } from '../../../src/plan/index.ts';
import type { CabinMapInput } from '../../../src/report/figures/cabin-map.ts';
import { counted, fixed } from '../../../src/report/number-text.ts';
import { toleranceCsv } from '../../../src/report/tolerance-csv.ts';
import { announce } from '../../controllers/announcer.ts';
import { PlanRun } from '../../controllers/plan-run.ts';
import { unfolds } from '../../controllers/sections.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { bareRows } from '../../controllers/windowed-rows.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { apportionTerms, sharesOf, withShare } from '../../model/apportion-terms.ts';
import { jointNames } from '../../model/joint-names.ts';
import { mapInput } from '../../model/map-input.ts';
import type { Options } from '../../model/source-terms.ts';
import { downloadText, fileName } from '../../platform/download.ts';
import '../../app/adjoin-long-list.ts';
import '../../app/adjoin-ways.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { fields } from '../../styles/fields.ts';
import { colourChip } from '../plan/colour-chip.ts';
import { narrow, planStyles } from '../plan/plan.styles.ts';
import { planState } from '../plan/plan-state.ts';
import '../plan/adjoin-plan-map.ts';
import { ViewElement } from '../view-element.ts';
import { toleranceExtent, toleranceGlyph } from './tolerance-glyph.ts';

/** Tightest joints that the map shows and the list begins with. */
const mostTight = 8;

/** A tolerance for each part so that any two in tolerance hold at their joint: sheets for the suppliers, the joints that are tightest, and a trial by drawing. */
export class AdjoinApportionView extends ViewElement {
  static override styles = [base, controls, fields, planStyles, stacked, bareRows, css`
    td a { display: inline-block; min-height: 24px; line-height: 24px; }
    .terms > div { display: grid; gap: 20px; grid-template-columns: minmax(0, 1fr); }
    .picture { display: grid; grid-template-columns: minmax(0, 3fr) minmax(280px, 2fr); gap: 16px 32px; align-items: start; } .picture > * { min-width: 0; }
    .drawn { font-size: var(--huge); font-weight: 600; letter-spacing: -0.01em; line-height: 1.1; padding-bottom: 4px; } .drawn span { display: block; line-height: 1.45; font-size: var(--small); font-weight: 400; color: var(--quiet); letter-spacing: 0; }
    .side { display: grid; gap: 20px; }
    .tolerances header { display: flex; flex-wrap: wrap; gap: 8px; justify-content: space-between; align-items: end; border-bottom: 1px solid var(--line); padding-bottom: 6px; }
    .tolerances + .tolerances { margin-top: 28px; }
    .tolerances header h3 { font-size: var(--large); }
    .tolerances { break-inside: avoid; } .tolerances td { vertical-align: middle; } .tolerances tbody th { vertical-align: middle; }
    .tolerances table { table-layout: fixed; min-width: 1090px; } .chips { width: 40px; } .name { width: 180px; } .radius { width: 148px; } .bars { width: 118px; } .glyphs { width: 76px; } .target { width: 144px; } .axes { width: 116px; } .band { width: 76px; }
    .tolerances .bar { width: 110px; height: 12px; }
    @media (max-width: 760px) { .tolerances + .tolerances thead { display: none; } .tolerances .stacked > table { min-width: 0; } .tolerances .broad { display: none; } .tolerances tr { position: relative; padding-right: 76px; } .tolerances .bare-rows { padding: 0; } .tolerances .glyph { position: absolute; right: 0; top: 8px; width: 64px; } }
    .tools { display: flex; gap: 8px; } .apply .save { min-height: 28px; font-weight: 400; font-size: var(--small); }
    .two { display: grid; grid-template-columns: 1fr 1fr; gap: 12px; margin: 8px 0 4px; align-items: end; }
    .share { display: grid; grid-template-columns: minmax(0, 1fr) 72px; gap: 8px; align-items: center; font-size: var(--small); padding: 2px 0; }
    @media (max-width: 1200px) { .picture { grid-template-columns: minmax(0, 1fr); } }
    @media (min-width: 761px) and (max-width: 1080px) { .terms > div { grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 20px 40px; } }
    @media print { .tools { display: none; } }
  `];

  private readonly apportioning = new PlanRun<'apportion'>(this, () => (this.open.judging || this.open.cabin.joints.length === 0 ? undefined
    : { cabin: this.open.cabin, task: { kind: 'apportion', options: apportionTerms(this.options, this.open.cabin) } }), (plan) => announce(this, plan.words[0] ?? 'Planned.'));

  /** The document as the tolerances were put into it. */
  private applied: Cabin | undefined;

  private get options(): Options {
    return this.route.options ?? {};
  }

  private choose(options: Options): void {
    this.go({ options }, true);
  }

  private readonly toJoint = (joint: string): string => this.linkTo({ view: 'joint', joint, item: undefined, options: {} });

  private jointName(id: string): string {
    return jointNames(this.open.cabin).get(id) ?? id;
  }

  override render(): TemplateResult {
    const { cabin } = this.open;
    if (cabin.parts.length === 0 || cabin.joints.length === 0) {
      return html`<div class="body"><h1>Apportion</h1><div class="teach"><p>The limit of a joint is shared out between its two parts, so that each supplier gets a tolerance of its own and any two parts in tolerance hold.</p>
        <p>${cabin.parts.length === 0 ? 'This cabin has no parts yet.' : 'No two parts of this cabin are joined yet.'} Once it has joints with readings or masters, come back.</p><adjoin-ways .cabin=${cabin} .linkTo=${this.linkTo}></adjoin-ways></div></div>`;
    }
    const plan = this.apportioning.made?.cabin.id === cabin.id ? this.apportioning.made.plan : undefined;
    return html`
      <aside aria-label="Terms of the tolerances"><details class="terms" ${unfolds('terms', !matchMedia(narrow).matches)}><summary>Terms of the tolerances</summary>${this.terms()}</details></aside>
      <div class="body">${plan === undefined
        ? html`<div><h1>Apportion</h1><div class="teach"><p>Every part is <adjoin-term word="apportion">given</adjoin-term> a tolerance about its target, as large and as even as can be, so that any two parts in tolerance hold at their joint under every light of its rule.</p></div></div>${planState(this.apportioning, () => this.apportioning.again())}`
        : this.planned(plan)}</div>
    `;
  }

  private terms(): TemplateResult {
    const { cabin } = this.open;
    const { options } = this;
    const radio = (name: string, value: string, usual: string, label: string): TemplateResult => html`<label class="check"><input type="radio" name=${name} value=${value} .checked=${(options[name] || usual) === value}
      @change=${() => this.choose({ ...options, [name]: value === usual ? '' : value })} /><span>${label}</span></label>`;
    const suppliers = [...new Set(cabin.parts.flatMap((part) => part.sources.map(({ supplier }) => supplier)))];
    const shares = sharesOf(options);
    return html`<div>
      <fieldset><legend>How tolerances <adjoin-term word="worst case, statistical">add</adjoin-term></legend>${radio('rule', 'worst', 'worst', 'worst case: any two parts in tolerance hold')}${radio('rule', 'statistical', 'worst', 'statistical, by squares: most parts in tolerance, joints hold at least as often as asked')}
        ${options['rule'] === 'statistical' ? html`<div class="two">${this.share('confidence', 'Joints that hold')}${this.share('kept', 'Parts in tolerance')}</div>
          <p class="small quiet">Of normal laws: ${quantileSource}.</p>` : nothing}</fieldset>
      <fieldset><legend>Laid about a <adjoin-term word="target">target</adjoin-term></legend>${radio('about', 'master', 'master', 'the masters, where recorded')}${radio('about', 'present', 'master', 'the parts as they are')}</fieldset>
      <label class="field"><span class="label">Largest <adjoin-term word="radius">radius</adjoin-term> <span class="unit">units of the formula</span></span><input type="number" name="radius" min="0" step="any" placeholder="3" .value=${options['radius'] ?? ''}
        @change=${(event: Event) => this.choose({ ...options, radius: (event.target as HTMLInputElement).value })} /></label>
      <fieldset><legend>What suppliers need beside the others</legend>${suppliers.map((id) => html`<label class="share"><span>${cabin.suppliers.find((one) => one.id === id)?.name ?? id}</span>
        <input type="number" name="share" data-supplier=${id} min="0.1" step="0.1" placeholder="1" .value=${shares[id] === undefined ? '' : String(shares[id])} @change=${(event: Event) => this.choose(withShare(options, id, Number((event.target as HTMLInputElement).value || '1')))} /></label>`)}
        <p class="small quiet">1 is as much as the others, 2 twice as much.</p></fieldset>
    </div>`;
  }

  private share(name: string, label: string): TemplateResult {
    return html`<label class="field"><span class="label">${label} <span class="unit">%</span></span><input type="number" name=${name} min="50" max="99.99" step="any" placeholder=${String(100 * usualShare)} .value=${this.options[name] ?? ''}
      @change=${(event: Event) => this.choose({ ...this.options, [name]: (event.target as HTMLInputElement).value })} /></label>`;
  }

  private planned(plan: ApportionPlan): TemplateResult {
    const { cabin } = this.open;
    const made = this.apportioning.made?.cabin;
    const running = this.apportioning.running !== undefined;
    const stale = made !== cabin && cabin !== this.applied;
    const old = running ? 'old' : '';
    const largest = Math.max(...plan.parts.map(({ radius }) => radius ?? 0), 1e-6);
    // Glyphs share one scale, that of the parts that joints hold tight: a few loose ones fill theirs.
    const halves = plan.parts.flatMap((one) => one.halfAxes.slice(0, 1)).sort((a, b) => a - b);
    const scale = halves[Math.floor(0.85 * (halves.length - 1))] ?? 1;
    return html`
      <div class="lead"><div><h1>Apportion</h1><div class="said">${plan.words.map((word) => html`<p>${word}</p>`)}</div></div>
        ${this.applying(plan, running || stale)}</div>
      ${planState(this.apportioning, () => this.apportioning.again())}
      ${stale && !running ? html`<div class="notice" role="status"><div><b>The cabin has changed since this was planned.</b></div><button type="button" @click=${() => this.apportioning.again()}>Plan again</button></div>` : nothing}
      <section class="picture ${old}" aria-label="Where it is tightest">${this.map(plan)}${this.side(plan)}</section>
      <section class=${old}><h2>Sheets for the suppliers</h2>${plan.sheets.map((sheet) => this.sheet(plan, sheet.supplier, sheet.name, largest, scale))}</section>
      <p class="small quiet">Radius in units of the formula about the target; the picture shows the tolerance from above (a* to the right, b* upward) and beside it in L*; a dashed one is larger than its frame and drawn smaller. Tolerances are of true colours: what measuring adds comes on top, and the parties agree on them.</p>
    `;
  }

  private applying(plan: ApportionPlan, off: boolean): TemplateResult {
    const { cabin } = this.open;
    const count = partsWithToleranceTargets(cabin, plan);
    const kept = this.applied !== undefined && this.applied === cabin;
    const disabled = off || this.open.locked || count === 0;
    const recorded = plan.parts.some(({ about, radius, glossBand }) => about === 'master' && (radius !== undefined || glossBand !== undefined));
    return html`<div class="apply">
      <button class=${disabled ? '' : 'strong'} type="button" aria-disabled=${disabled} @click=${() => { if (!disabled) this.keep(plan, count); }}>${count === 0 ? kept || recorded ? 'The parts are held as tightly' : 'No part has a recorded master' : `Hold to these tolerances: ${counted(count, 'part')}`}</button>
      <span class="note">${this.open.locked ? 'Another tab owns this cabin.' : count === 0 ? nothing : 'As the limits against their masters where that is tighter than now. One step, which Undo takes back.'}</span>
      <div class="tools"><button class="save" type="button" @click=${() => this.save(plan)}>Save all as CSV</button><button class="save" type="button" @click=${() => print()}>Print</button></div></div>`;
  }

  private keep(plan: ApportionPlan, count: number): void {
    const result = this.desk.commit(withToleranceTargets(this.desk.present ?? this.open.cabin, plan), `Hold ${counted(count, 'part')} to their tolerances`);
    if (result.done) this.applied = this.desk.present;
    announce(this, result.done ? `${counted(count, 'part')} ${count === 1 ? 'is' : 'are'} held to these tolerances now. Undo takes it back.` : `Not done: ${result.issues[0]?.hint ?? 'the cabin cannot be changed here'}`);
    this.requestUpdate();
  }

  private map(plan: ApportionPlan): TemplateResult {
    const { cabin, judgement, paths } = this.open;
    const tight = new Set(plan.bottlenecks.slice(0, mostTight));
    const shown = new Set([...tight, ...plan.targetsClash]);
    const drawn = mapInput(cabin, judgement, this.colours, paths);
    const input: CabinMapInput = {
      ...drawn, rested: new Set(judgement.joints.map(({ id }) => id).filter((id) => !shown.has(id))),
      joints: drawn.joints.map((joint) => (tight.has(joint.id) ? { ...joint, verdict: 'holds', accepted: false } : shown.has(joint.id) ? { ...joint, verdict: 'clashes', accepted: false } : joint)),
    };
    return html`<div><adjoin-plan-map .input=${input} .caption=${'The tightest joints'} .about=${plan.targetsClash.length === 0 ? '' : `saw: the targets themselves clash`}></adjoin-plan-map></div>`;
  }

  private jointLink(id: string): TemplateResult {
    return html`<a ${standsFor({ joint: id }, !this.open.locked)} href=${this.toJoint(id)}>${this.jointName(id)}</a>`;
  }

  private side(plan: ApportionPlan): TemplateResult {
    const { simulated, confirmed } = plan;
    const link = (id: string): TemplateResult => this.jointLink(id);
    return html`<div class="side">
      <div><h2><adjoin-term word="tried by drawing">Tried by drawing</adjoin-term></h2><p class="drawn">${simulated.clashes} of ${simulated.draws} <span>cabins drawn have a joint outside its limits; ${simulated.law}</span></p>
        ${simulated.joints.length === 0 ? nothing : html`<table><thead><tr><th scope="col">joint</th><th scope="col" class="n">share of cabins</th></tr></thead><tbody>${simulated.joints.slice(0, 6).map(({ joint, share }) => html`<tr><th scope="row">${link(joint)}</th><td class="n">${fixed(100 * share, 1)} %</td></tr>`)}</tbody></table>`}
        ${confirmed === undefined ? nothing : html`<p class="small quiet">${confirmed.worstExcess <= 1e-3 ? `A search on the boundaries of ${counted(confirmed.joints, 'joint')} found no pair outside.` : `A search on the boundaries still finds a pair ${fixed(confirmed.worstExcess, 3)} outside a limit.`}</p>`}</div>
      <div><h2><adjoin-term word="tightest joint">Tightest joints</adjoin-term></h2>${plan.bottlenecks.length === 0 ? html`<p>No joint limits a colour.</p>` : html`<p class="joints small">${plan.bottlenecks.slice(0, mostTight).map(link)}</p>`}
        ${plan.bottlenecks.length > mostTight ? html`<details ${unfolds('bottlenecks')}><summary>${plan.bottlenecks.length - mostTight} more</summary><p class="joints small">${plan.bottlenecks.slice(mostTight).map(link)}</p></details>` : nothing}
        ${plan.targetsClash.length === 0 ? nothing : html`<p class="small"><b>Targets that clash by themselves</b></p><p class="joints small">${plan.targetsClash.map(link)}</p><p><a class="button" href=${this.linkTo({ view: 'mend', joint: undefined, item: undefined, options: {} })}>Mend them first</a></p>`}</div>
    </div>`;
  }

  private sheet(plan: ApportionPlan, supplier: string, name: string, largest: number, scale: number): TemplateResult {
    const own = plan.parts.filter((part) => part.supplier === supplier);
    const names = partNames(this.open.cabin.parts);
    const bar = (one: PartTolerance): TemplateResult => html`<svg class="bar" viewBox="0 0 110 12" preserveAspectRatio="none" aria-hidden="true">${svg`<rect x="0" y="2" width=${(110 * (one.radius ?? 0)) / largest} height="8" fill="currentColor" />`}</svg>`;
    return html`<div class="tolerances"><header><h3>${name}</h3><span class="tools"><button type="button" aria-label=${`Save as CSV: ${name}`} @click=${() => this.save(plan, supplier)}>Save as CSV</button></span></header>
      <adjoin-long-list class="scroll stacked" tabindex="0" role="group" aria-label=${`Tolerances of ${name}`} .usual=${60} .ids=${own.map(({ id }) => id)}
        .head=${html`<caption class="unseen">Tolerances of ${name}</caption>
        <colgroup><col class="chips" /><col class="name" /><col class="radius" /><col class="bars" /><col class="glyphs" /><col class="target" /><col class="axes" /><col class="band" /><col /></colgroup>
        <thead><tr aria-rowindex="1"><th scope="col" colspan="2">part</th><th scope="col" colspan="2" class="n"><adjoin-term word="radius">radius</adjoin-term></th><th scope="col"><span class="unseen">picture</span></th><th scope="col"><adjoin-term word="target">target</adjoin-term> <adjoin-term word="L*, a*, b*">L*, a*, b*</adjoin-term></th><th scope="col" class="n"><adjoin-term word="half axes">half axes</adjoin-term></th><th scope="col" class="n">gloss ± <adjoin-term word="gloss unit, GU">GU</adjoin-term></th><th scope="col">held by</th></tr></thead>`}
        .row=${(place: number) => { const one = own[place]!; return html`<tr data-place=${place} aria-rowindex=${place + 2} ${standsFor({ parts: [one.id] }, !this.open.locked)}>
          <td class="first">${colourChip(this.colours.get(one.id))}</td><th scope="row"><a href=${this.linkTo({ view: 'parts', item: one.id, joint: undefined, options: {} })}>${names.get(one.id) ?? one.id}</a></th>
          <td class="n" data-name="radius"><b>${fixed(one.radius, 2)}</b> <span class="small quiet">${one.radius === undefined ? '' : one.formula}</span></td><td class="broad">${bar(one)}</td>
          <td class="glyph">${one.radius === undefined || one.metric === undefined ? nothing : scene(toleranceGlyph(toleranceExtent(one.metric, one.radius), scale, paperInk))}</td>
          <td class="small" data-name="target">${one.target === undefined ? '–' : one.target.map((value) => fixed(value, 2)).join(', ')}<br class="broad" /> <span class="quiet">${one.about === 'no colour' ? 'no colour' : one.about === 'master' ? 'master' : 'as it is'}</span></td>
          <td class="n small" data-name="half axes">${one.halfAxes.length === 0 ? '–' : one.halfAxes.map((axis) => fixed(axis, 2)).join(', ')}</td><td class="n" data-name="gloss ± GU">${fixed(one.glossBand, 2)}</td>
          <td class="small whole" data-name="held by">${one.heldBy.length === 0 ? (one.radius === undefined ? 'no joint limits it' : 'the largest radius given out') : one.heldBy.slice(0, 2).map((id) => html`${this.jointLink(id)}<br />`)}</td></tr>`; }}></adjoin-long-list></div>`;
  }

  private save(plan: ApportionPlan, supplier?: string): void {
    const cabin = this.apportioning.made?.cabin ?? this.open.cabin;
    const name = supplier === undefined ? undefined : cabin.suppliers.find(({ id }) => id === supplier)?.name ?? supplier;
    downloadText(`${fileName(cabin.id, 'tolerances', ...(name === undefined ? [] : [name]))}.csv`, toleranceCsv(cabin, plan, supplier), 'text/csv');
    announce(this, `The sheet ${name === undefined ? 'of all suppliers' : `of ${name}`} went to your downloads.`);
  }
}

customElements.define('adjoin-apportion-view', AdjoinApportionView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-apportion-view': AdjoinApportionView;
  }
}
