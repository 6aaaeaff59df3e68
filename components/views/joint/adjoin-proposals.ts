import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin, Joint, Proposal } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { doAction } from '../../controllers/edit-events.ts';
import { standsFor } from '../../controllers/stands-for.ts';
import { trialText } from '../../model/trial-text.ts';
import { base, controls } from '../../styles/shared.ts';
import { styles } from './joint-evidence.styles.ts';

/**
 * The proposals kept at a joint, and where else in the cabin there are some.
 * @fires adjoin-trial - a proposal that is to be tried again
 */
export class AdjoinProposals extends InTurnElement {
  static override styles = [base, controls, styles];
  static override properties = { cabin: { attribute: false }, joint: { attribute: false }, locked: { type: Boolean }, linkTo: { attribute: false } };

  declare cabin: Cabin;
  declare joint: Joint;
  declare locked: boolean;
  declare linkTo: (joint: string) => string;

  constructor() {
    super();
    this.locked = false;
    this.linkTo = () => '#/';
  }

  override render(): TemplateResult {
    const own = this.joint.proposals ?? [];
    const elsewhere = this.cabin.joints.filter(({ id, proposals }) => id !== this.joint.id && (proposals?.length ?? 0) > 0);
    const name = (id: string): string => cabinIndex(this.cabin).parts.get(id)?.name ?? id;
    return html`
      <section>
        <h3>At this joint</h3>
        ${own.length === 0 ? html`<p class="quiet">None yet. Try a change above and keep it.</p>` : html`<ul>${own.map((proposal) => this.proposal(proposal))}</ul>`}
      </section>
      ${elsewhere.length === 0 ? nothing : html`
        <section>
          <h3>At other joints</h3>
          <ul>${elsewhere.map(({ id, parts, proposals = [] }) => html`
            <li><a href=${this.linkTo(id)}>${parts.map(name).join(' / ')}</a>${proposals.map((proposal) => html`<p class="quiet">${trialText(this.cabin, proposal)}</p>`)}</li>`)}</ul>
        </section>`}
    `;
  }

  private proposal(proposal: Proposal): TemplateResult {
    const { id, date, note, shifts, gapMm, viewMm } = proposal;
    const trial = { ...(shifts === undefined ? {} : { shifts }), ...(gapMm === undefined ? {} : { gapMm }), ...(viewMm === undefined ? {} : { viewMm }) };
    return html`
      <li ${standsFor({ joint: this.joint.id, proposal: id }, !this.locked)}>
        <b>${trialText(this.cabin, proposal)}</b>
        ${note ? html`<p>${note}</p>` : nothing}
        <p class="quiet">${id}, ${date}</p>
        <p class="do">
          <button type="button" @click=${() => this.dispatchEvent(new CustomEvent('adjoin-trial', { detail: trial, bubbles: true, composed: true }))}>Try it again</button>
          ${this.locked ? nothing : html`<button type="button" aria-label=${`Remove ${id}`} @click=${() => doAction(this, 'proposal.remove', { proposal: id })}>Remove</button>`}
        </p>
      </li>`;
  }
}

customElements.define('adjoin-proposals', AdjoinProposals);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-proposals': AdjoinProposals;
  }
}
