import { plainNumber } from './plain-number.ts';
import type { GlossRule } from './rule-book.ts';

/** A gloss rule in words: `0.5 GU at 60°`, `max(0.5, 10 % of the mean) GU at 60° up to 70 GU, above it 5 GU at 20°`. */
export function glossRuleText(rule: GlossRule): string {
  switch (rule.kind) {
    case 'limit':
      return `${typeof rule.limit === 'number' ? plainNumber(rule.limit) : rule.limit} GU at ${rule.angle}°${rule.haze === undefined ? '' : `, haze within ${plainNumber(rule.haze.limit)}`}`;
    case 'level':
      return `max(${plainNumber(rule.floor)}, ${plainNumber(rule.share * 100)} % of the mean) GU at 60° up to ${plainNumber(rule.switchGu60)} GU, above it ${plainNumber(rule.limit20)} GU at 20°`;
    case 'not applicable':
      return `not applicable: ${rule.reason}`;
  }
}
