import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { Judgement } from '../../../src/harmony/judgement.ts';
import { counted, fixed, percent } from '../../../src/report/number-text.ts';
import '../../app/adjoin-term.ts';

/** How many joints hold, clash and are open, how far that can be relied on, and by which rule it was decided. */
export function wallSummary(cabin: Cabin, { summary, joints, decisionRule }: Judgement, judging: boolean): TemplateResult {
  if (cabin.joints.length === 0) return html`<b>Nothing to judge yet.</b> ${ruleWords(decisionRule)}.`;
  const { holds, nothingJudged, clashes, accepted, open, expectedWrongHolds, coverage } = summary;
  return html`${judging ? html`${joints.length} of ${counted(cabin.joints.length, 'joint')} judged so far: ` : nothing}<b>${holds} hold${nothingJudged > 0 ? ` (${nothingJudged} with nothing to judge)` : ''}, ${clashes + accepted} clash${accepted > 0 ? ` (${accepted} accepted)` : ''}, ${open} open.</b>
      <adjoin-term word="wrong holds">Expected number of holds that in truth do not</adjoin-term>: ${fixed(expectedWrongHolds, 1)}. <adjoin-term word="coverage">Coverage</adjoin-term> ${percent(coverage)}. ${ruleWords(decisionRule)}.`;
}

/** The rule by which verdicts are made, its first word explained. */
function ruleWords(decisionRule: string): TemplateResult {
  const [name = '', ...rest] = decisionRule.split(':');
  return html`<adjoin-term word="decision rule">${name}</adjoin-term>${rest.length === 0 ? nothing : `:${rest.join(':')}`}`;
}
