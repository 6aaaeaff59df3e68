import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { GlossRule } from '../../../src/rules/index.ts';
import '../../app/adjoin-action-fields.ts';
import './adjoin-formula-field.ts';
import type { RulesContext } from './rules-context.ts';

/** The fields of a gloss rule, those that its kind has. */
export function glossFields(at: RulesContext, action: string, of: Readonly<Record<string, string>>, rule: GlossRule | undefined, rest: string): TemplateResult {
  const simple = (keys: readonly string[]): TemplateResult => html`<adjoin-action-fields .cabin=${at.open.cabin} .action=${action} .of=${of} .keys=${keys} .rest=${{ kind: rest }} .locked=${at.open.locked}></adjoin-action-fields>`;
  return html`
    ${simple(['kind'])}
    ${rule?.kind === 'limit' ? html`<adjoin-formula-field .at=${at} .action=${action} .of=${of} .key=${'limit'} .says=${'GU'}></adjoin-formula-field>${simple(['angle', 'haze'])}` : nothing}
    ${rule?.kind === 'level' ? html`<p class="small quiet">The larger of the least limit and the share of the mean at 60°, up to a level; above that a limit at 20°.</p>${simple(['floor', 'share', 'switchGu60', 'limit20'])}` : nothing}
    ${rule?.kind === 'not applicable' ? simple(['reason']) : nothing}
    ${rule === undefined ? nothing : simple(['basis'])}`;
}
