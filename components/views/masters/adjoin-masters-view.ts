import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { MasterEntry, MasterOverview, WithinYetClashing } from '../../../src/harmony/master-overview.ts';
import { limitScale } from '../../../src/report/figures/limit-scale.ts';
import { counted, limitUseText } from '../../../src/report/number-text.ts';
import { drawing } from '../../../src/report/scene.ts';
import { askAction } from '../../controllers/edit-events.ts';
import { Looking } from '../../controllers/looking.ts';
import { roveFocus } from '../../controllers/roving-focus.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { swatch } from '../../figures/swatch.ts';
import { findLight } from '../../model/light-groups.ts';
import { partColour } from '../../model/part-colours.ts';
import type { PartColour } from '../../model/part-colours.ts';
import '../../app/adjoin-ways.ts';
import { base, controls } from '../../styles/shared.ts';
import { ViewElement } from '../view-element.ts';
import './adjoin-master-panel.ts';
import { stateWord } from './master-state.ts';
import { styles } from './masters-view.styles.ts';

/** The recorded masters: their state and drift, the parts held to them, and joints that clash although both sides are within their masters. */
export class AdjoinMastersView extends ViewElement {
  static override styles = [base, controls, styles];

  private readonly looking = new Looking(this, 'masters');

  override render(): TemplateResult {
    const { value: overview, failed } = this.looking;
    const { cabin } = this.open;
    const chosen = overview?.masters.find(({ master }) => master === this.route.item);
    return html`
      <header>
        <h1>Masters</h1>
        <button type="button" ?disabled=${this.open.locked} @click=${() => askAction(this, 'master.add')}>Add a master</button>
      </header>
      ${failed ? html`<p class="note">This could not be reckoned. Change or open the cabin again.</p>`
        : overview === undefined ? html`<p class="note" role="status">Being reckoned.</p>`
        : overview.masters.length === 0 ? this.empty() : html`
          <div class="desk ${chosen === undefined ? '' : 'chosen'}">
            ${this.list(cabin, overview, chosen)}
            ${chosen === undefined
              ? html`<div class="page">${this.clashing(cabin, overview)}${this.without(cabin, overview)}</div>`
              : html`<adjoin-master-panel .cabin=${this.desk.present ?? cabin} .entry=${chosen} .judgement=${this.open.judgement} .colour=${this.colourOf(chosen)} .light=${this.light} .desk=${this.desk} .locked=${this.open.locked} .linkTo=${this.linkTo}
                .wanted=${this.route.options?.['for']} @adjoin-supplier=${(event: CustomEvent<string>) => this.go({ options: { ...this.route.options, for: event.detail } }, true)}></adjoin-master-panel>`}
          </div>`}`;
  }

  private colourOf(entry: MasterEntry): PartColour | undefined {
    const light = findLight(this.light, this.open.cabin.lights);
    if (light === undefined) return undefined;
    return partColour({ part: '', source: '', specimen: entry.master, colourSpots: entry.spots, gloss: [], ...(entry.spectrum === undefined ? {} : { spectrum: entry.spectrum }), ...(entry.lab === undefined ? {} : { cielab: entry.lab }) },
      light, this.open.judgement.observer, this.gamut);
  }

  private empty(): TemplateResult {
    return html`<div class="note"><p class="lead">No <adjoin-term word="master">master</adjoin-term> is recorded. A master is the piece that a material is held to: its spectrum, gloss and texture, with issue and expiry. Add one here, or import a file in which a row is of the kind “master”; then set it as the target of the parts.</p>
      <adjoin-ways .cabin=${this.open.cabin} .linkTo=${this.linkTo}></adjoin-ways></div>`;
  }

  private readonly key = (event: KeyboardEvent): void => {
    roveFocus(event, [...this.renderRoot.querySelectorAll<HTMLElement>('.list a.card')]);
  };

  private list(cabin: Cabin, { masters, withinYetClashing }: MasterOverview, chosen: MasterEntry | undefined): TemplateResult {
    return html`
      <div class="list" @keydown=${this.key}>
        <a class="card first ${chosen === undefined ? 'here' : ''}" href=${this.linkTo({ view: 'masters', item: undefined })} aria-current=${chosen === undefined ? 'true' : nothing} tabindex=${chosen === undefined ? 0 : -1}>
          <span><b>In tolerance, yet clashing</b><span class="about">${withinYetClashing.length === 0 ? 'no joint' : counted(withinYetClashing.length, 'joint')}</span></span></a>
        ${masters.map((entry) => {
          const here = entry === chosen;
          const within = entry.parts.filter((part) => part.withinYetClashing).length;
          const { word, mark } = stateWord(entry);
          return html`<a class="card ${here ? 'here' : ''}" href=${this.linkTo({ view: 'masters', item: entry.master })} aria-current=${here ? 'true' : nothing} tabindex=${here ? 0 : -1}>
            ${swatch(this.colourOf(entry), 36)}
            <span><b>${entry.name}</b><span class="about">${[entry.name === entry.master ? undefined : entry.master, entry.issue === undefined ? undefined : `issue ${entry.issue}`, counted(entry.parts.length, 'part')].filter(Boolean).join(', ')}</span>
              <span class="state ${mark}">${word}</span>${within === 0 ? nothing : html`<span class="state open">${counted(within, 'part')} within it and clashing</span>`}</span></a>`;
        })}
        ${cabin.masters?.length === masters.length ? nothing : html`<p class="about">Masters under a source are shown with those of the register.</p>`}
      </div>`;
  }

  private clashing(cabin: Cabin, { withinYetClashing, masters }: MasterOverview): TemplateResult {
    return html`
      <section>
        <h2><adjoin-term word="in tolerance, yet clashing">In tolerance, yet clashing</adjoin-term></h2>
        ${withinYetClashing.length === 0 ? html`<p class="lead">No joint clashes while both of its parts are within their masters.</p>` : html`
          <p class="lead">Each part is inside the limit to its own <adjoin-term word="master">master</adjoin-term>, and the two clash where they meet: the limits to the masters leave more room than the joint has.</p>
          <ul class="pairs">${withinYetClashing.map((pair) => this.pair(cabin, pair, masters))}</ul>`}
      </section>`;
  }

  private pair(cabin: Cabin, pair: WithinYetClashing, masters: readonly MasterEntry[]): TemplateResult {
    const masterName = (id: string | undefined): string => masters.find(({ master }) => master === id)?.name ?? id ?? '';
    const name = (id: string): string => cabin.parts.find((part) => part.id === id)?.name ?? id;
    const scale = (use: number, verdict: 'holds' | 'clashes'): TemplateResult => html`${scene(drawing(260, 18, undefined, limitScale({ verdict, limitUse: use }, { width: 260, height: 18 }, paperInk)))}`;
    return html`
      <li>
        <h3><a href=${this.linkTo({ view: 'joint', joint: pair.joint, item: undefined })}>${name(pair.parts[0])} and ${name(pair.parts[1])}</a> <span class="about">${pair.check}${pair.accepted ? ', accepted' : ''}</span></h3>
        <dl>
          ${pair.parts.map((part, at) => html`<dt>${name(part)} <span class="about">against <a href=${this.linkTo({ view: 'masters', item: pair.masters[at] })}>${masterName(pair.masters[at])}</a></span></dt><dd>${scale(pair.masterUses[at] ?? 0, 'holds')}</dd><dd class="number">${limitUseText(pair.masterUses[at])}</dd>`)}
          <dt><b>the joint</b> <span class="about">of its limit</span></dt><dd>${scale(pair.jointUse, 'clashes')}</dd><dd class="number"><b>${limitUseText(pair.jointUse)}</b></dd>
        </dl>
        <p class="about">${pair.sentence}</p>
      </li>`;
  }

  private without(cabin: Cabin, { partsWithoutMaster }: MasterOverview): TemplateResult | typeof nothing {
    if (partsWithoutMaster.length === 0) return nothing;
    return html`<section><h2>Held to no master</h2><p class="about">Parts with colour readings of their own that have no <adjoin-term word="target">target</adjoin-term>:</p>
      <ul class="plain">${partsWithoutMaster.map((id) => html`<li><a href=${this.linkTo({ view: 'parts', item: id })}>${cabin.parts.find((part) => part.id === id)?.name ?? id}</a></li>`)}</ul></section>`;
  }
}

customElements.define('adjoin-masters-view', AdjoinMastersView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-masters-view': AdjoinMastersView;
  }
}
