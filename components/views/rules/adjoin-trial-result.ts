import { css, html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { JointFigures } from '../../../src/harmony/compare/joint-figures.ts';
import { jointFigures, standingWord } from '../../../src/harmony/compare/joint-figures.ts';
import { counted, limitUseText } from '../../../src/report/number-text.ts';
import { useChange } from '../../../src/report/figures/use-change.ts';
import { paperInk } from '../../figures/inks.ts';
import { scene } from '../../figures/scene.ts';
import { verdictSample } from '../../figures/verdict-sample.ts';
import { base } from '../../styles/shared.ts';
import type { RulesContext } from './rules-context.ts';
import { jointWords } from './rules-context.ts';

const named = 4;

/** What an edit that is not applied yet would do: to the chosen joint, before and after, and to how many others. */
export class AdjoinTrialResult extends LitElement {
  static override styles = [base, css`
    :host { display: block; }
    .trial { display: grid; gap: 6px; padding: 10px 12px; border: 1px dashed var(--line); background: var(--raised); font-size: var(--small); }
    .here { display: flex; flex-wrap: wrap; gap: 2px 8px; align-items: center; } .here svg { flex: none; }
    .quiet { color: var(--quiet); } b { font-weight: 600; }
    progress { appearance: none; width: 100%; height: 8px; border: 1px solid var(--line); background: var(--field); }
    progress::-webkit-progress-bar { background: var(--field); } progress::-webkit-progress-value { background: var(--ink); } progress::-moz-progress-bar { background: var(--ink); }
    ul { display: grid; gap: 3px; } li { display: flex; flex-wrap: wrap; gap: 0 8px; justify-content: space-between; } .use svg { width: 100%; height: auto; max-width: 320px; }
  `];
  static override properties = { at: { attribute: false }, mine: { type: Boolean } };

  declare at: RulesContext;
  /** The trial that runs is of the field that this stands under. */
  declare mine: boolean;

  override render(): TemplateResult | typeof nothing {
    const { trial, open, joint } = this.at;
    if (!this.mine) return nothing;
    if (trial.result === undefined) {
      return html`<div class="trial" role="status">${trial.share === undefined ? html`<span class="quiet">Judging what it would change.</span>`
        : html`<label for="share">Judging what it would change: ${Math.round(trial.share * 100)} %</label><progress id="share" max="1" .value=${trial.share}></progress>`}</div>`;
    }
    const { judgement, changes } = trial.result;
    const verdicts = changes.filter(({ kind }) => kind === 'verdict');
    const after = judgement.joints.find(({ id }) => id === joint?.id);
    return html`<div class="trial" role="status">
      ${joint === undefined || after === undefined ? nothing : this.here(jointFigures(joint), jointFigures(after))}
      <p><b>${verdicts.length === 0 ? 'No joint would change its verdict' : `${counted(verdicts.length, 'joint')} of ${open.judgement.joints.length} would change ${verdicts.length === 1 ? 'its' : 'their'} verdict`}</b>${
        changes.length > verdicts.length ? `; ${changes.length - verdicts.length} more would use more or less of the limit.` : '.'}</p>
      ${verdicts.length === 0 ? nothing : html`<ul>${verdicts.slice(0, named).map((change) => html`<li><span>${change.names.join(' / ')}</span><span>${this.step(change.before, change.after)}</span></li>`)}
        ${verdicts.length > named ? html`<li class="quiet">and ${verdicts.length - named} more</li>` : nothing}</ul>`}
    </div>`;
  }

  private here(before: JointFigures, after: JointFigures): TemplateResult {
    return html`<div>
      <div class="here"><b>${this.at.joint === undefined ? '' : jointWords(this.at, this.at.joint)}</b><span>${this.step(before, after)}</span></div>
      <div class="here">${this.mark(before)}<span>${limitUseText(before.limitUse)}</span><span class="quiet">then</span>${this.mark(after)}<b>${limitUseText(after.limitUse)}</b><span class="quiet">of the limit</span></div>
      <div class="use">${scene(useChange({ before: before.limitUse, after: after.limitUse }, { width: 320, height: 14 }, paperInk))}</div>
    </div>`;
  }

  private mark(side: JointFigures): TemplateResult {
    return html`${scene(verdictSample({ verdict: side.verdict, accepted: side.accepted }, 26, 12, paperInk))}`;
  }

  private step(before: JointFigures | undefined, after: JointFigures | undefined): TemplateResult {
    const word = (side: JointFigures | undefined): TemplateResult | string => (side === undefined ? '–' : html`<span class="word ${side.verdict}">${standingWord(side)}</span>`);
    return html`${word(before)} <span class="quiet">then</span> ${word(after)}`;
  }
}

customElements.define('adjoin-trial-result', AdjoinTrialResult);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-trial-result': AdjoinTrialResult;
  }
}
