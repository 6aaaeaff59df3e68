import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Selection } from '../../../src/actions/index.ts';
import { partNames } from '../../../src/harmony/names.ts';
import { percentOfLimit } from '../../../src/harmony/wording.ts';
import { fixed } from '../../../src/report/number-text.ts';
import { buildWords, forecastWords, hasLots, partWords, slopeScale } from '../../../src/series/index.ts';
import type { BuildPlan, BuiltSet, CabinSeries, ForecastPlace, JointForecast, PartSeries, SeriesLot } from '../../../src/series/index.ts';
import { announce } from '../../controllers/announcer.ts';
import { PlanRun } from '../../controllers/plan-run.ts';
import { unfolds } from '../../controllers/sections.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import '../../app/adjoin-choice.ts';
import { paperInk, tableInk } from '../../figures/inks.ts';
import { findLight } from '../../model/light-groups.ts';
import { mostInList } from '../../model/matching.ts';
import type { Choice } from '../../model/matching.ts';
import { partColour } from '../../model/part-colours.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { confidences, lotsOut, seriesTerms, withLot } from '../../model/series-terms.ts';
import type { Options } from '../../model/source-terms.ts';
import { base, controls } from '../../styles/shared.ts';
import { stacked } from '../../styles/stacked.ts';
import { fields } from '../../styles/fields.ts';
import { colourChip } from '../plan/colour-chip.ts';
import { narrow, planStyles } from '../plan/plan.styles.ts';
import { planState } from '../plan/plan-state.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-drawn.ts';
import { buildLinks } from '../../../src/report/figures/build-links.ts';
import { forecastLines } from '../../../src/report/figures/forecast-lines.ts';
import { lotPanels } from '../../../src/report/figures/lot-panels.ts';
import { lotPath } from './lot-path.ts';

const axes = ['L*', 'a*', 'b*'] as const;

/** Joints that the picture shows, the first to clash first. */
const mostRows = 10;

/** Lots over time: what they did, which joint will clash first if they go on, and which to build together. */
export class AdjoinSeriesView extends ViewElement {
  static override styles = [base, controls, fields, planStyles, stacked, css`
    td a, th a { display: inline-block; min-height: 24px; line-height: 24px; }
    .terms > div { display: grid; gap: 20px; grid-template-columns: minmax(0, 1fr); }
    .two { display: grid; grid-template-columns: minmax(0, 3fr) minmax(300px, 2fr); gap: 24px 32px; align-items: start; } .two > * { min-width: 0; }
    .halves { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 24px 32px; } .halves > * { min-width: 0; }
    .which { display: flex; flex-wrap: wrap; gap: 8px 16px; align-items: center; justify-content: space-between; border-bottom: 1px solid var(--line); padding-bottom: 6px; margin-bottom: 12px; }
    .which h2 { border: 0; margin: 0; padding: 0; }
    .which .pick { max-width: 100%; } .which .long { flex: 0 1 340px; }
    .row { display: flex; background: var(--table); padding: 14px; }
    .row span { flex: 1 1 0; min-width: 0; display: grid; gap: 4px; color: var(--table-ink); font-size: var(--tiny); }
    .row svg { width: 100%; height: 56px; forced-color-adjust: none; }
    .row b { font-weight: 400; overflow: hidden; text-overflow: clip; white-space: nowrap; padding: 0 2px; }
    .told { display: grid; gap: 4px; max-width: 88ch; margin: 12px 0 20px; text-wrap: pretty; } .told p:first-child { font-weight: 600; }
    .figure { background: var(--table); padding: 14px; }
    figure { margin: 0; display: grid; gap: 8px; } figcaption { font-weight: 600; font-size: var(--small); } figcaption span { font-weight: 400; color: var(--quiet); }
    td.out { font-weight: 600; } td.day { white-space: nowrap; }
    .stock { margin: -8px 0 16px; } .stock > div { display: flex; flex-wrap: wrap; gap: 12px 40px; padding: 4px 0 8px; } .stock fieldset { display: flex; flex-wrap: wrap; gap: 0 14px; align-items: center; }
    .rest { margin-top: 12px; } section > .scroll { margin-top: 20px; } .scroll table { min-width: 680px; } .of-set { display: none; }
    @media (max-width: 1200px) { .two { grid-template-columns: minmax(0, 1fr); } }
    @media (max-width: 760px) { .scroll table { min-width: 0; } .of-set { display: inline; } .halves { grid-template-columns: minmax(0, 1fr); } .row { padding: 8px; } .row b { font-size: 0.625rem; } }
  `];

  private readonly following = new PlanRun<'series'>(this, () => (this.open.judging || !hasLots(this.open.cabin) ? undefined
    : { cabin: this.open.cabin, task: { kind: 'series', options: seriesTerms(this.options, this.open.cabin) } }), (plan) => announce(this, plan.words.join(' ')));

  private get options(): Options {
    return this.route.options ?? {};
  }

  private choose(options: Options): void {
    this.go({ options }, true);
  }

  private name(part: string): string {
    return partNames(this.open.cabin.parts).get(part) ?? part;
  }

  private jointName(id: string): string {
    return this.open.cabin.joints.find((joint) => joint.id === id)?.parts.map((part) => this.name(part)).join(' / ') ?? id;
  }

  private toJoint(joint: string): string {
    return this.linkTo({ view: 'joint', joint, item: undefined, options: {} });
  }

  /** A lot is changed at its first specimen, unfolded below its part. */
  private toLot(part: PartSeries, { specimens: [specimen = ''] }: SeriesLot): string {
    return this.linkTo({ view: 'parts', item: part.borrowedFrom ?? part.part, joint: undefined, options: {}, folds: { [`specimen-${specimen}`]: true } });
  }

  private lotStands({ part, source, borrowedFrom }: PartSeries, { specimens: [specimen] }: SeriesLot): Selection {
    return { parts: [borrowedFrom ?? part], ...(borrowedFrom === undefined ? { source } : {}), ...(specimen === undefined ? {} : { specimen }) };
  }

  /** A lot under the light of the workbench. */
  private lotColour({ spectrum, lab }: SeriesLot, light: string): PartColour | undefined {
    const shown = findLight(this.light, this.open.cabin.lights);
    const { observer } = this.open.judgement;
    return shown === undefined ? undefined : partColour({
      part: '', source: '', specimen: undefined, colourSpots: 1, gloss: [], ...(spectrum === undefined ? { cielab: { lab, light, observer } } : { spectrum }),
    }, shown, observer, this.gamut);
  }

  override render(): TemplateResult {
    const { cabin } = this.open;
    if (!hasLots(cabin)) {
      return html`<div class="body"><h1>Series</h1><div class="teach">
        <p>No part has two lots yet.</p>
        <p>Once a part is in series its lots are read one after the other. Give each specimen its lot and the day it was made, in <a href=${this.linkTo({ view: 'parts', joint: undefined, item: undefined, options: {} })}>Parts</a> or by <a href=${this.linkTo({ view: 'import', joint: undefined, item: undefined, options: {} })}>Import</a>.
          From two lots on they are shown side by side and matched; from five on they are held to limits of their own, a trend can be told from chance, and the joint that clashes first is forecast.</p></div></div>`;
    }
    const made = this.following.made;
    const plan = made?.cabin.id === cabin.id ? made.plan : undefined;
    return html`
      <aside aria-label="Terms of the series"><details class="terms" ${unfolds('terms', !matchMedia(narrow).matches)}><summary>Terms of the series</summary>${this.terms(plan)}</details></aside>
      <div class="body">${plan === undefined
        ? html`<div><h1>Series</h1><div class="teach"><p>The lots of every part in order of production, their trend, and where it leads.</p></div></div>${planState(this.following, () => this.following.again())}`
        : this.shown(plan)}</div>
    `;
  }

  private terms(plan: CabinSeries | undefined): TemplateResult {
    const { options } = this;
    const radio = (value: string, label: string): TemplateResult => html`<label class="check"><input type="radio" name="against" value=${value} .checked=${(options['against'] ?? '') === value}
      @change=${() => this.choose({ ...options, against: value })} /><span>${label}</span></label>`;
    const number = (name: string, label: string, unit: string, placeholder: string): TemplateResult => html`<label class="field"><span class="label">${label} <span class="unit">${unit}</span></span>
      <input type="number" name=${name} min="1" step="1" placeholder=${placeholder} .value=${options[name] ?? ''} @change=${(event: Event) => this.choose({ ...options, [name]: (event.target as HTMLInputElement).value })} /></label>`;
    return html`<div>
      <label class="field"><span class="label">Confidence</span><span class="pick"><select name="confidence" @change=${(event: Event) => this.choose({ ...options, confidence: (event.target as HTMLSelectElement).value })}>
        ${confidences.map((one) => html`<option value=${one} ?selected=${one === (plan?.confidence ?? 0.95)}>${fixed(100 * one, one === 0.9973 ? 2 : 0)} %</option>`)}</select></span></label>
      <fieldset><legend>Lots are charted against</legend>${radio('', 'each other from five on, else the master')}${radio('lots', 'each other')}${radio('master', 'the master of their part')}</fieldset>
      ${number('first', 'Limits from the first', 'lots', 'all')}
      ${number('ahead', 'Look ahead', 'days', '365')}
      <p class="small quiet">Lots are those of the chosen source, of the kind of specimen that stands for the part, read under like conditions.</p>
    </div>`;
  }

  private shown(plan: CabinSeries): TemplateResult {
    const running = this.following.running !== undefined;
    const stale = this.following.made?.cabin !== this.open.cabin;
    const old = running ? 'old' : '';
    return html`
      <div class="lead"><div><h1>Series</h1><div class="said">${plan.words.map((word) => html`<p>${word}</p>`)}</div></div></div>
      ${planState(this.following, () => this.following.again())}
      ${stale && !running ? html`<div class="notice" role="status"><div><b>The cabin has changed since this was reckoned.</b></div><button type="button" @click=${() => this.following.again()}>Reckon again</button></div>` : nothing}
      ${plan.parts.length === 0 ? nothing : html`
        <section class=${old} aria-labelledby="forecast">${this.forecasts(plan)}</section>
        <section class=${old} aria-labelledby="lots">${this.lots(plan)}</section>
        <section class=${old} aria-labelledby="build">${this.builds(plan)}</section>
        <p class="small quiet">A forecast carries a straight line on; it knows nothing of a new batch of pigment or a mended tool. Ranges come from how well the lines are known, at the confidence chosen, without the scatter of a single lot. Colour is forecast, and gloss where a part has a trend in it, held to the limit of its present level; texture is not. Results support a judgement and replace no assessment of the parts themselves.</p>`}
    `;
  }

  private forecasts(plan: CabinSeries): TemplateResult {
    const told = plan.joints.filter(({ state }) => state === 'over its limit' || state === 'will clash' || state === 'stays within');
    const silent = plan.joints.filter((joint) => !told.includes(joint));
    const shade = (part: string): string | undefined => this.colours.get(part)?.css;
    const ahead = told[0]?.unit === 'lot' ? plan.aheadLots : plan.aheadDays;
    const rows = told.filter(({ unit }) => unit === told[0]?.unit).slice(0, mostRows)
      .map((forecast) => ({ forecast, name: `${this.jointName(forecast.joint)}${forecast.check === 'gloss' ? `, gloss at ${forecast.angle ?? ''}°` : ''}`, colours: [shade(forecast.sides[0]?.part ?? ''), shade(forecast.sides[1]?.part ?? '')] as const }));
    return html`<h2 id="forecast">Joints, if the lots go on as they went</h2>
      ${told.length === 0 ? html`<p>${plan.parts.some(({ trend }) => trend.state === 'trend') ? 'No joint with a trend on one of its sides is judged in colour.' : 'No part has a trend, so there is no day to give.'}</p>` : html`
        <div class="two"><adjoin-drawn .draw=${(width: number) => forecastLines(rows, ahead, width, paperInk)}></adjoin-drawn>
          <p class="small quiet">From the latest lot on. Thin: within the limit by the lines. Tick and sawtooth: over it. Bar: where the lines leave room for the day.</p></div>
        <div class="scroll" tabindex="0" role="group" aria-label="Forecast of the joints"><table class="stacked"><caption class="unseen">Forecast of the joints</caption>
          <thead><tr><th scope="col">joint</th><th scope="col" class="n"><adjoin-term word="limit use">use</adjoin-term> now</th><th scope="col">over its limit</th><th scope="col">earliest</th><th scope="col">latest</th><th scope="col">under</th><th scope="col">sides</th></tr></thead>
          <tbody>${told.map((joint) => this.forecastRow(plan, joint))}</tbody></table></div>`}
      ${silent.length === 0 ? nothing : html`<details class="rest" ${unfolds('without-forecast')}><summary>${silent.length} ${silent.length === 1 ? 'joint' : 'joints'} without a forecast</summary><ul class="small">${silent.map((joint) => html`<li ${standsFor({ joint: joint.joint }, !this.open.locked)}><a href=${this.toJoint(joint.joint)}>${forecastWords(joint, this.jointName(joint.joint), { days: plan.aheadDays, lots: plan.aheadLots })}</a></li>`)}</ul></details>`}`;
  }

  private forecastRow(plan: CabinSeries, joint: JointForecast): TemplateResult {
    const { state, now, when, there, earliest, latest, sides } = joint;
    const place = (at: ForecastPlace | undefined): string => (at === undefined ? '–' : at.day ?? `${at.ahead} lots on`);
    const word = state === 'over its limit' ? html`<span class="word clashes">already</span>` : state === 'will clash' ? html`<b>${place(when)}</b>` : html`<span class="quiet">not in ${joint.unit === 'day' ? `${plan.aheadDays} days` : `${plan.aheadLots} lots`}</span>`;
    return html`<tr ${standsFor({ joint: joint.joint }, !this.open.locked)}><th scope="row"><a href=${this.toJoint(joint.joint)}>${this.jointName(joint.joint)}</a>${joint.check === 'gloss' ? html` <span class="small quiet">gloss</span>` : nothing}</th>
      <td class="n" data-name="use now">${now === undefined ? '–' : percentOfLimit(now.use)}</td><td data-name="over its limit">${word}${joint.beyondLots === true ? html` <span class="small quiet">farther than its lots look back</span>` : nothing}</td>
      <td data-name="earliest">${place(earliest)}</td><td data-name="latest">${state === 'will clash' && latest === undefined ? 'open' : place(latest)}</td><td data-name="under">${there?.light ?? now?.light ?? ''} ${there?.criterion ?? now?.criterion ?? ''}</td>
      <td class="small whole">${sides.map(({ part, course, lots }, index) => html`${index === 0 ? '' : html`<br />`}${this.name(part)}: ${course === 'trend' ? `trend of ${lots} lots` : course === 'mean of lots' ? `mean of ${lots} lots` : 'as it stands'}`)}</td></tr>`;
  }

  private offer({ part, lots, trend, chart }: CabinSeries['parts'][number]): Choice {
    return { id: part, name: `${this.name(part)} (${lots.length}${trend.state === 'trend' ? ', trend' : ''}${chart.outside.length > 0 ? `, ${chart.outside.length} outside` : ''})` };
  }

  private lots(plan: CabinSeries): TemplateResult {
    const wanted = this.options['part'];
    const part = plan.parts.find((one) => one.part === wanted) ?? plan.parts.find(({ trend }) => trend.state === 'trend') ?? plan.parts.find(({ chart }) => chart.outside.length > 0) ?? plan.parts[0]!;
    const told = part.lots.map((lot) => this.lotColour(lot, part.light));
    const colours = told.map((colour) => colour?.css);
    const [title, ...rest] = partWords(part);
    return html`<div class="which"><h2 id="lots">Lots of ${this.name(part.part)}</h2>
        ${plan.parts.length > mostInList ? html`<adjoin-choice class="long" keeps label="Part" name="part" .count=${plan.parts.length} .choices=${() => plan.parts.map((one) => this.offer(one))} .given=${this.offer(part)}
          @adjoin-chosen=${(event: CustomEvent<string>) => this.choose({ ...this.options, part: event.detail })}></adjoin-choice>` : html`<label class="pick"><span class="unseen">Part</span><select name="part" @change=${(event: Event) => this.choose({ ...this.options, part: (event.target as HTMLSelectElement).value })}>
          ${plan.parts.map((one) => html`<option value=${one.part} ?selected=${one === part}>${this.offer(one).name}</option>`)}</select></label>`}</div>
      <div class="row" aria-hidden="true">${part.lots.map((lot, index) => html`<span>${sampleOf(told[index])}<b>${lot.id}</b></span>`)}</div>
      <div class="told"><p>${title}</p>${rest.map((sentence) => html`<p>${sentence}</p>`)}</div>
      <div class="two">
        <figure><figcaption><adjoin-term word="T²">T²</adjoin-term> of the lots, and their colour${part.gloss === undefined ? '' : ' and gloss'} <span>under ${part.light}; band: the line at ${fixed(100 * plan.confidence, plan.confidence === 0.9973 ? 2 : 0)} %</span></figcaption><adjoin-drawn .draw=${(width: number) => lotPanels(part, colours, width, paperInk)}></adjoin-drawn></figure>
        <figure><figcaption>The way of the lots <span>in a*, b* and L*, the latest largest</span></figcaption><adjoin-drawn .draw=${(width: number) => lotPath(part, colours, width, paperInk)}></adjoin-drawn></figure>
      </div>
      ${this.lotTable(part, told)}`;
  }

  private lotTable(part: PartSeries, told: readonly (PartColour | undefined)[]): TemplateResult {
    const { factor, per } = slopeScale(part.unit);
    const { slope, reach, state } = part.trend;
    const gloss = new Map((part.gloss?.lots ?? []).map(({ id, mean }) => [id, mean]));
    return html`<div class="scroll" tabindex="0" role="group" aria-label=${`Lots of ${this.name(part.part)}`}><table class="stacked"><caption class="unseen">Lots of ${this.name(part.part)}</caption>
      <thead><tr><th scope="col" colspan="2"><adjoin-term word="lot">lot</adjoin-term></th><th scope="col">made on</th><th scope="col" class="n">L*</th><th scope="col" class="n">a*</th><th scope="col" class="n">b*</th>${gloss.size === 0 ? nothing : html`<th scope="col" class="n">GU ${part.gloss?.angle}°</th>`}<th scope="col" class="n">spots</th><th scope="col" class="n">T²</th><th scope="col" class="n">limit</th><th scope="col">held as</th></tr></thead>
      <tbody>${part.lots.map((lot, index) => html`<tr ${standsFor(this.lotStands(part, lot), !this.open.locked)}><td class="first">${colourChip(told[index])}</td><th scope="row"><a href=${this.toLot(part, lot)}>${lot.id}</a></th><td class="day" data-name="made on">${lot.producedOn ?? '–'}</td>${lot.lab.map((value, axis) => html`<td class="n" data-name=${axes[axis] ?? ''}>${fixed(value, 2)}</td>`)}
        ${gloss.size === 0 ? nothing : html`<td class="n" data-name="GU">${fixed(gloss.get(lot.id), 2)}</td>`}<td class="n" data-name="spots">${lot.spots}</td><td class="n" data-name="T²">${fixed(lot.charted?.statistic, 1)}</td><td class="n" data-name="limit">${fixed(lot.charted?.limit, 1)}</td>
        <td class=${lot.charted?.outside === true ? 'out' : ''} data-name="held as">${lot.charted === undefined ? '–' : held[lot.charted.against]}${lot.charted?.outside === true ? html`, <span class="word clashes">outside</span>` : nothing}</td></tr>`)}
        ${slope === undefined || reach === undefined ? nothing : html`<tr><td></td><th scope="row">${state === 'trend' ? html`<adjoin-term word="trend">trend</adjoin-term>` : html`slope, no <adjoin-term word="trend">trend</adjoin-term>`}</th><td>${per}</td>${slope.map((value, axis) => html`<td class="n" data-name=${axes[axis] ?? ''}>${signed(value * factor)}<br /><span class="small quiet">± ${fixed((reach[axis] ?? 0) * factor, 2)}</span></td>`)}
          ${gloss.size === 0 ? nothing : html`<td class="n">${part.gloss?.slope === undefined ? '–' : html`${signed((part.gloss.slope[0] ?? 0) * factor)}<br /><span class="small quiet">± ${fixed((part.gloss.reach?.[0] ?? 0) * factor, 2)}</span>`}</td>`}<td></td><td></td><td></td><td></td></tr>`}</tbody></table></div>`;
  }

  private builds(plan: CabinSeries): TemplateResult {
    const plans = [...plan.pairs, ...plan.sets];
    if (plans.length === 0) {
      return html`<h2 id="build">Lots to build together</h2><p>No two parts that meet have two lots each that can be built: there is nothing to choose.</p>
        ${this.options['out'] ? html`<p><button type="button" @click=${() => this.choose({ ...this.options, out: '' })}>Take all lots again</button></p>` : nothing}`;
    }
    const chosen = plans.find((one) => keyOf(one) === this.options['build']) ?? plans[0]!;
    const label = (one: BuildPlan): string => (one.parts.length > 2 ? `${one.parts.length} parts: ${one.parts.map((part) => this.name(part)).join(', ')}` : one.parts.map((part) => this.name(part)).join(' / '));
    const lots = chosen.parts.map((part) => this.lotsOf(plan, part, chosen));
    const names = chosen.parts.map((part) => this.name(part));
    const leftOver = chosen.leftOver.flatMap((own, part) => (own.length === 0 ? [] : [`${names[part]}: ${own.join(', ')}`]));
    const picture = (caption: string, sets: readonly BuiltSet[], cost: BuildPlan['best']): TemplateResult => html`<figure><figcaption>${caption} <span>${fixed(cost.clashes, 2)} clashes to be expected in ${sets.length} sets</span></figcaption>
      <div class="figure"><adjoin-drawn .draw=${(width: number) => buildLinks({ parts: names, lots, sides: chosen.sides, sets }, width, tableInk)}></adjoin-drawn></div></figure>`;
    return html`<div class="which"><h2 id="build">Lots to build together</h2>
        <label class="pick"><span class="unseen">Parts that meet</span><select name="build" @change=${(event: Event) => this.choose({ ...this.options, build: (event.target as HTMLSelectElement).value })}>
          ${plans.map((one) => html`<option value=${keyOf(one)} ?selected=${one === chosen}>${label(one)}</option>`)}</select></label></div>
      <div class="told"><p>${buildWords(chosen, (part) => this.name(part))}</p><p class="small quiet">Every lot counts the same, whatever its size. What was not read of a lot is taken from the specimen that stands for its part.${leftOver.length === 0 ? '' : ` Left over: ${leftOver.join('; ')}.`}</p></div>
      ${this.stock(plan, chosen)}
      <div class="halves">${picture('In order of production', chosen.inOrder, chosen.asProduced)}${picture('Built together', chosen.sets, chosen.best)}</div>
      <div class="scroll" tabindex="0" role="group" aria-label="Sets of lots"><table class="stacked"><caption class="unseen">Sets of lots, built together and in order of production</caption>
        <thead><tr><th scope="col" class="n">set</th>${names.map((name) => html`<th scope="col">${name}</th>`)}<th scope="col" class="n">clashes</th><th scope="col" class="n">over-use</th><th scope="col">in order of production</th><th scope="col" class="n">clashes</th></tr></thead>
        <tbody>${chosen.sets.map((set, index) => html`<tr><th scope="row" class="n"><span class="of-set">set </span>${index + 1}</th>${set.lots.map((lot, at) => html`<td data-name=${names[at] ?? ''}>${lot}</td>`)}<td class="n" data-name="clashes">${fixed(set.clashes, 2)}</td><td class="n" data-name="over-use">${fixed(set.overUse, 2)}</td>
          <td data-name="in order of production">${chosen.inOrder[index]?.lots.join(', ')}</td><td class="n" data-name="clashes there">${fixed(chosen.inOrder[index]?.clashes, 2)}</td></tr>`)}</tbody></table></div>`;
  }

  /** Which lots can be built: all of them, or those that are in stock. */
  private stock(plan: CabinSeries, { parts }: BuildPlan): TemplateResult {
    const out = lotsOut(this.options);
    const gone = parts.reduce((sum, part) => sum + (out.get(part)?.size ?? 0), 0);
    return html`<details class="stock" ${unfolds('stock')}><summary>Lots that can be built: ${gone === 0 ? 'all' : `all but ${gone}`}</summary><div>${parts.map((part) => html`<fieldset><legend>${this.name(part)}</legend>
      ${(plan.parts.find((one) => one.part === part)?.lots ?? []).map(({ id }) => html`<label class="check"><input type="checkbox" name="lot" data-part=${part} value=${id} .checked=${out.get(part)?.has(id) !== true}
        @change=${(event: Event) => this.choose(withLot(this.options, part, id, (event.target as HTMLInputElement).checked))} /><span>${id}</span></label>`)}</fieldset>`)}</div></details>`;
  }

  /** Lots of a part in order of production: those of its series, then what was read otherwise. */
  private lotsOf(plan: CabinSeries, part: string, build: BuildPlan): readonly { readonly id: string; readonly css: string | undefined }[] {
    const at = build.parts.indexOf(part);
    const series = plan.parts.find((one) => one.part === part);
    const named = new Set([...build.sets, ...build.inOrder].flatMap(({ lots }) => lots.slice(at, at + 1)).concat(build.leftOver[at] ?? []));
    const known = (series?.lots ?? []).filter(({ id }) => named.has(id)).map((lot) => ({ id: lot.id, css: this.lotColour(lot, series?.light ?? '')?.css }));
    return [...known, ...[...named].filter((id) => !known.some((lot) => lot.id === id)).map((id) => ({ id, css: undefined }))];
  }
}

const held = { 'own lot': 'one of these lots', 'new lot': 'a further lot', known: 'by what readings leave uncertain' } as const;

/** A change with its sign, none where it rounds to nothing. */
const signed = (value: number): string => `${value >= 0.005 ? '+' : ''}${fixed(value, 2)}`;

const keyOf = ({ joints }: BuildPlan): string => (joints.length === 1 ? joints[0]! : joints.toSorted().join(' ').slice(0, 200));

/** A large sample of a lot; left empty where it cannot be shown. */
const sampleOf = (colour: PartColour | undefined): TemplateResult => html`<svg class="sample" viewBox="0 0 10 10" preserveAspectRatio="none" aria-hidden="true">
  <rect width="10" height="10" fill=${colour?.css ?? 'none'} /></svg>`;

customElements.define('adjoin-series-view', AdjoinSeriesView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-series-view': AdjoinSeriesView;
  }
}
