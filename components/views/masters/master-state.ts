import type { MasterEntry } from '../../../src/harmony/master-overview.ts';
import { counted } from '../../../src/report/number-text.ts';

const left = (days: number): string => (days >= 0 ? `in ${counted(days, 'day')}` : `${counted(-days, 'day')} ago`);

/** The state of a master in words, and the verdict whose ink it bears. */
export function stateWord({ state, expires, remeasure }: MasterEntry): { readonly word: string; readonly mark: 'holds' | 'open' | 'clashes' | 'quiet' } {
  switch (state) {
    case 'expired': return { word: `expired ${expires === undefined ? '' : left(expires.days)}`.trim(), mark: 'clashes' };
    case 'remeasure due': return { word: `to be measured again since ${remeasure?.on ?? ''}`, mark: 'open' };
    case 'replaced': return { word: 'replaced by a later one', mark: 'quiet' };
    case 'in force': return { word: ['in force', expires === undefined ? undefined : `expires ${left(expires.days)}`].filter(Boolean).join(', '), mark: 'holds' };
  }
}
