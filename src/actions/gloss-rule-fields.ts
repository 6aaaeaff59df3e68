import { commonPractice } from '../rules/book-bases.ts';
import { glossByLevel } from '../rules/material-table.ts';
import type { GlossRule } from '../rules/rule-book.ts';
import { aChoice, aFormula, aName, aNumber, aText, clearable, optional } from './argument.ts';
import type { ValuesOf } from './argument.ts';

export const glossKinds = ['limit', 'level', 'not applicable'] as const;

/** What a gloss rule is made of, one level deep. `kind` picks which of the others count. */
export const glossRuleFields = {
  kind: optional(aChoice('How gloss is limited', glossKinds)),
  limit: optional(aFormula('Gloss limit, GU', { positive: true })),
  angle: optional(aChoice('Angle, °', [20, 60, 85])),
  haze: clearable(aNumber('Haze limit', { above: 0, max: 1000 })),
  floor: optional(aNumber('Least limit', { above: 0, max: 1000, unit: 'GU' })),
  share: optional(aNumber('Share of the mean', { min: 0, max: 1 })),
  switchGu60: optional(aNumber('By level up to', { above: 0, max: 1000, unit: 'GU' })),
  limit20: optional(aNumber('Limit at 20° above that', { above: 0, max: 1000, unit: 'GU' })),
  reason: optional(aName('Reason')),
  basis: optional(aText('Basis of the gloss rule')),
} as const;

export type GlossRuleValues = ValuesOf<typeof glossRuleFields>;

/** Where a class says nothing else, moulded parts: 0.5 GU at 60 degrees. Common practice, no source. */
const usualLimit: GlossRule = { kind: 'limit', limit: 0.5, angle: 60, basis: commonPractice };

function begin(kind: GlossRule['kind'], basis: string): GlossRule {
  switch (kind) {
    case 'limit': return { ...usualLimit, basis };
    case 'level': return { ...glossByLevel, basis };
    case 'not applicable': return { kind, reason: 'not judged between these parts', basis };
  }
}

/** The gloss rule with fields set; another kind begins with usual figures. Fields of other kinds are passed over. */
export function withGlossRule(rule: GlossRule | undefined, values: Omit<GlossRuleValues, 'kind'> & { readonly kind?: GlossRule['kind'] | undefined }): GlossRule {
  const kind = values.kind ?? rule?.kind ?? 'limit';
  const basis = values.basis ?? rule?.basis ?? commonPractice;
  const old = rule?.kind === kind ? { ...rule, basis } : begin(kind, basis);
  const { limit, angle, haze, floor, share, switchGu60, limit20, reason } = values;
  const given = <T extends object>(fields: T): T => Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as T;
  switch (old.kind) {
    case 'limit': {
      const { haze: before, ...rest } = { ...old, ...given({ limit, angle }) } as typeof old;
      const now = haze === null ? undefined : haze === undefined ? before : { limit: haze, basis: before?.basis ?? basis };
      return now === undefined ? rest : { ...rest, haze: now };
    }
    case 'level': return { ...old, ...given({ floor, share, switchGu60, limit20 }) } as typeof old;
    case 'not applicable': return { ...old, ...given({ reason }) } as typeof old;
  }
}

/** The fields of a gloss rule as they stand, for a form. */
export function glossRuleValues(rule: GlossRule | undefined): Readonly<Record<string, unknown>> {
  if (rule === undefined) return {};
  return rule.kind === 'limit' ? { ...rule, haze: rule.haze?.limit } : { ...rule };
}
