import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { PlanRun } from '../../controllers/plan-run.ts';
import { percent } from '../../../src/report/number-text.ts';
import type { PlanOf } from '../../../src/workers/plan-protocol.ts';

/** How far a plan is, with a way to stop it; or why there is none. */
export function planState<K extends keyof PlanOf>(run: PlanRun<K>, again: () => void): TemplateResult | typeof nothing {
  if (run.running !== undefined) {
    const { share, doing } = run.running;
    return html`<div class="running">
      <span>${doing[0]?.toUpperCase()}${doing.slice(1)} <span class="quiet">${percent(share)}</span></span>
      <progress max="1" value=${share} aria-label="How far the plan is"></progress>
      <button type="button" @click=${() => run.cancel()}>Stop</button>
    </div>`;
  }
  if (run.issues.length > 0) {
    return html`<div class="notice bad" role="alert"><div><b>These terms cannot be planned with.</b>
      ${run.issues.map((issue) => html`<p>${issue.path === undefined ? nothing : html`<b>${issue.path}</b>: `}found ${issue.found ?? 'nothing'}, expected ${issue.expected ?? 'something else'}.${issue.hint === undefined ? nothing : ` ${issue.hint}`}</p>`)}
    </div><button type="button" @click=${again}>Try again</button></div>`;
  }
  if (run.ended === undefined) return nothing;
  return html`<div class="notice" role="status"><div><b>${run.ended === 'stopped' ? 'Stopped.' : 'The plan could not be made.'}</b>
    ${run.made === undefined ? nothing : html`<p>What is shown below was planned before.</p>`}</div>
    <button type="button" @click=${again}>Plan again</button></div>`;
}
