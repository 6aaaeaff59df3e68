import { css, html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { JointResult } from '../../../src/harmony/judgement.ts';
import { limitUseText } from '../../../src/report/number-text.ts';
import { worstFirst } from '../../../src/report/worst-first.ts';
import { jointStrip } from '../../../src/report/figures/joint-strip.ts';
import { drawing } from '../../../src/report/scene.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { orderedJoints } from '../../model/joint-order.ts';
import { fields } from '../../styles/fields.ts';
import { base, controls } from '../../styles/shared.ts';
import type { RulesContext } from './rules-context.ts';
import { jointWords } from './rules-context.ts';

const offeredAtMost = 40;

/** The joint that formulas are tried on: a search over all joints, those that the rule touches first. */
export class AdjoinJointChoice extends InTurnElement {
  static override styles = [base, controls, fields, css`
    :host { display: block; }
    .chosen { display: grid; grid-template-columns: 84px minmax(0, 1fr) auto; gap: 4px 12px; align-items: center; padding: 10px 12px; background: var(--raised); border: 1px solid var(--faint); }
    .chosen > svg { width: 84px; height: 40px; } .name { font-weight: 600; line-height: 1.2; } .name a { text-decoration-color: var(--faint); }
    .how { display: flex; gap: 6px; align-items: center; font-size: var(--small); flex-wrap: wrap; } .quiet { color: var(--quiet); } .none { padding: 10px 12px; background: var(--raised); font-size: var(--small); }
    .search { margin-top: 8px; } .search input { width: 100%; } ul { max-height: 260px; overflow-y: auto; border: 1px solid var(--line); border-top: 0; }
    li button { width: 100%; justify-content: space-between; border: 0; border-bottom: 1px solid var(--faint); border-radius: 0; background: var(--field); text-align: left; }
    li .what { min-width: 0; overflow: hidden; text-overflow: ellipsis; } li .use { display: inline-flex; gap: 6px; align-items: center; font-size: var(--small); flex: none; }
    @media (max-width: 480px) { .chosen { grid-template-columns: 64px minmax(0, 1fr); } .chosen > svg { width: 64px; } .chosen button { grid-column: 1 / -1; } }
  `];
  static override properties = { at: { attribute: false }, touched: { attribute: false }, searching: { state: true }, words: { state: true } };

  declare at: RulesContext;
  /** Joints of what is edited: they are offered first. */
  declare touched: readonly JointResult[];
  declare searching: boolean;
  declare words: string;

  constructor() {
    super();
    this.touched = [];
    this.searching = false;
    this.words = '';
  }

  private get offered(): readonly JointResult[] {
    const words = this.words.toLowerCase().split(/\s+/).filter(Boolean);
    const fits = (joint: JointResult): boolean => {
      const text = `${jointWords(this.at, joint)} ${joint.id} ${joint.verdict} ${joint.kind}`.toLowerCase();
      return words.every((word) => text.includes(word));
    };
    const own = new Set(this.touched);
    return [...worstFirst(this.touched), ...orderedJoints(this.at.open.judgement.joints).filter((joint) => !own.has(joint))].filter(fits).slice(0, offeredAtMost);
  }

  private pick(joint: JointResult): void {
    this.searching = false;
    this.words = '';
    this.at.set({ joint: joint.id }, true);
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.chosen button')?.focus());
  }

  private start(): void {
    this.searching = !this.searching;
    if (this.searching) void this.updateComplete.then(() => this.renderRoot.querySelector('input')?.focus());
  }

  private keyed(event: KeyboardEvent): void {
    if (event.key === 'Escape') this.start();
    else if (event.key === 'Enter' && event.target instanceof HTMLInputElement) {
      const [first] = this.offered;
      if (first !== undefined) this.pick(first);
    } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      const stops = [...this.renderRoot.querySelectorAll<HTMLElement>('.search input, .search li button')];
      const here = stops.indexOf(event.composedPath()[0] as HTMLElement);
      stops[here + (event.key === 'ArrowDown' ? 1 : -1)]?.focus();
    } else return;
    event.preventDefault();
    event.stopPropagation();
  }

  override render(): TemplateResult {
    const { joint, open, colours } = this.at;
    if (joint === undefined) return html`<p class="none">${open.judgement.joints.length === 0 ? 'The cabin has no joint yet that a formula could be tried on.' : 'No joint meets this; choose one below to try formulas on.'}</p>${this.search()}`;
    const of = open.cabin.joints.find(({ id }) => id === joint.id);
    const [first, second] = joint.parts.map((part) => colours.get(part)?.css);
    return html`
      <div class="chosen">
        ${scene(drawing(84, 40, undefined, jointStrip({ fills: [first, second], kind: joint.kind, gapMm: of?.gapMm, stepMm: of?.stepMm, viewMm: of?.viewMm }, { width: 84, height: 40 }, paperInk)))}
        <div><p class="name"><span class="unseen">Tried on </span><a href=${this.at.linkTo({ view: 'joint', joint: joint.id, item: undefined, options: {} })}>${jointWords(this.at, joint)}</a></p>
          <p class="how">${scene(verdictSample({ verdict: joint.verdict, accepted: joint.accepted }, 26, 12, paperInk))}<span class="word ${joint.verdict}">${joint.verdict}</span><span>${limitUseText(joint.limitUse)} of the limit</span><span class="quiet">by ${joint.rule}</span></p></div>
        <button type="button" aria-expanded=${this.searching} @click=${() => this.start()}>Another joint</button>
      </div>
      ${this.searching ? this.search() : nothing}`;
  }

  private search(): TemplateResult {
    const { offered } = this;
    return html`<div class="search" @keydown=${(event: KeyboardEvent) => this.keyed(event)}>
      <input type="search" aria-label="Find the joint to try on" placeholder="Name of a part, verdict, kind" .value=${this.words} @input=${(event: Event) => { this.words = (event.target as HTMLInputElement).value; }} />
      <ul>${offered.map((joint) => html`<li><button type="button" @click=${() => this.pick(joint)}><span class="what">${jointWords(this.at, joint)}</span>
        <span class="use">${scene(verdictSample({ verdict: joint.verdict, accepted: joint.accepted }, 22, 10, paperInk))}<span class="unseen">${joint.verdict}, </span>${limitUseText(joint.limitUse)}</span></button></li>`)}</ul></div>`;
  }
}

customElements.define('adjoin-joint-choice', AdjoinJointChoice);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-joint-choice': AdjoinJointChoice;
  }
}
