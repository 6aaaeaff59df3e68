import type { Issue } from '../issue.ts';
import type { Arguments } from './verb.ts';
import { lastValue, usageIssue } from './verb.ts';

export interface NumberBounds {
  /** Exclusive where `openBelow`. */
  readonly least: number;
  readonly most: number;
  readonly openBelow?: boolean;
}

/** Any length, time or amount above zero. */
export const aboveZero: NumberBounds = { least: 0, most: Infinity, openBelow: true };

/** The number of an option, or undefined where it is not given; what is no number within the bounds is added to the issues. */
export function boundedNumber(args: Arguments, name: string, bounds: NumberBounds, issues: Issue[]): number | undefined {
  const text = lastValue(args, name);
  if (text === undefined) return undefined;
  const value = text.trim() === '' ? NaN : Number(text);
  const inside = Number.isFinite(value) && value <= bounds.most && (bounds.openBelow === true ? value > bounds.least : value >= bounds.least);
  if (inside) return value;
  const range = bounds.most === Infinity ? `${bounds.openBelow === true ? 'above' : 'of at least'} ${bounds.least}` : `${bounds.openBelow === true ? 'above' : 'from'} ${bounds.least} to ${bounds.most}`;
  issues.push(usageIssue('bad-number', `--${name}`, text, `a number ${range}`));
  return undefined;
}
