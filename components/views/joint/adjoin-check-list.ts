import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { CheckResult } from '../../../src/harmony/judgement.ts';
import { limitScale } from '../../../src/report/figures/limit-scale.ts';
import { decimalsOf, fixed, limitUseText, probability } from '../../../src/report/number-text.ts';
import { drawing } from '../../../src/report/scene.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { uncertaintyUse } from '../../model/leading-check.ts';
import { base } from '../../styles/shared.ts';
import { styles } from './check-list.styles.ts';

const scaleSize = { width: 184, height: 18 } as const;

/** Checks whose names are terms of the glossary. */
const explained: ReadonlyMap<string, string> = new Map([['metamerism', 'metamerism'], ['near-miss', 'near miss'], ['gloss', 'gloss unit, GU'], ['texture', 'Sa, Sal, Str'], ['master', 'master'], ['cap', 'cap']]);

/** Every check of a joint or a part: its verdict, its place against the limit, its sentence, and what to know about it. */
export class AdjoinCheckList extends InTurnElement {
  static override styles = [base, styles];
  static override properties = { checks: { attribute: false } };

  declare checks: readonly CheckResult[];

  constructor() {
    super();
    this.checks = [];
  }

  override render(): TemplateResult {
    return html`<ul>${this.checks.map((check) => this.check(check))}</ul>`;
  }

  private check(check: CheckResult): TemplateResult {
    const decimals = decimalsOf(check.unit);
    const known = check.value !== undefined;
    const [size, scale] = [scaleSize, check.limitUse === undefined ? undefined : limitScale(this.scaled(check), scaleSize, paperInk)];
    const of = check.limit === undefined ? '' : ` of ${fixed(check.limit, decimals)}`;
    const where = [check.unit, check.criterion, check.light && `under ${check.light}`].filter(Boolean).join(', ');
    const spots = check.spotsNeeded === undefined ? '' : `; ${check.spotsNeeded} spots on each side would decide it`;
    const unlikeSimple = check.simple !== check.verdict && check.simple !== 'no data';
    const word = check.verdict === 'clashes' && check.accepted ? 'clashes, accepted' : check.verdict;
    return html`
      <li>
        <div>
          <div class="name">${explained.has(check.check) ? html`<adjoin-term word=${explained.get(check.check)}>${check.check.charAt(0).toUpperCase()}${check.check.slice(1)}</adjoin-term>` : check.check}</div>
          <div class="word ${check.verdict}">${word}</div>
          <div class="standing">${[check.subject, check.standing].filter(Boolean).join(', ')}</div>
        </div>
        <div class="figures">
          ${scale === undefined ? nothing : scene(drawing(size.width, size.height, undefined, scale))}
          ${known ? html`<div><b>${fixed(check.value, decimals)}</b>${of} ${where}</div>` : nothing}
          ${check.limitUse === undefined
            ? nothing
            : html`<div>use ${limitUseText(check.limitUse)}, u ${fixed(check.uncertainty, decimals)}, p ${probability(check.withinProbability)}</div>`}
        </div>
        <div>
          <p class="sentence">${check.sentence}</p>
          ${check.cause === undefined ? nothing : html`<p class="extra">Open because: ${check.cause}${spots}.</p>`}
          ${check.decisionVoid === undefined
            ? nothing
            : html`<p class="extra caution">A decision on record does not cover this: ${check.decisionVoid}.</p>`}
          ${unlikeSimple ? html`<p class="extra">By value against limit alone: ${check.simple}.</p>` : nothing}
          ${check.cautions.map((caution) => html`<p class="extra caution">${caution}</p>`)}
          ${(check.factorNotes ?? []).map((note) => html`<p class="extra">${note}</p>`)}
          <p class="extra">Basis: ${check.basis}</p>
        </div>
      </li>
    `;
  }

  private scaled(check: CheckResult): Parameters<typeof limitScale>[0] {
    const verdict = check.verdict === 'holds' || check.verdict === 'clashes' ? check.verdict : 'open';
    return { verdict, accepted: check.accepted, limitUse: check.limitUse, uncertaintyUse: uncertaintyUse(check), indicative: check.indicative };
  }
}

customElements.define('adjoin-check-list', AdjoinCheckList);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-check-list': AdjoinCheckList;
  }
}
