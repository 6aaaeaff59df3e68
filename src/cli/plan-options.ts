import type { Issue, Outcome } from '../issue.ts';
import type { Arguments } from './verb.ts';
import { lastValue, usageIssue } from './verb.ts';

/** A number given for an option; undefined where it was not given. Faults go to the list. */
export function numberOption(args: Arguments, option: string, issues: Issue[], least = 0, whole = false): number | undefined {
  const text = lastValue(args, option);
  if (text === undefined) return undefined;
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value) && value >= least && (!whole || Number.isInteger(value))) return value;
  issues.push(usageIssue('bad-number', `--${option}`, text, `${whole ? 'a whole number' : 'a number'} of at least ${least}`));
  return undefined;
}

/** `part=source`, any number of times. */
export function pairsOption(args: Arguments, option: string, issues: Issue[]): Readonly<Record<string, string>> {
  const pairs: [string, string][] = [];
  for (const text of args.values.get(option) ?? []) {
    const at = text.indexOf('=');
    if (at > 0 && at < text.length - 1) pairs.push([text.slice(0, at), text.slice(at + 1)]);
    else issues.push(usageIssue('bad-pair', `--${option}`, text, 'part=source'));
  }
  return Object.fromEntries(pairs);
}

/** Lists with commas, any number of times, each of at least two names. */
export function listsOption(args: Arguments, option: string, issues: Issue[]): readonly (readonly string[])[] {
  return (args.values.get(option) ?? []).flatMap((text) => {
    const names = text.split(',').map((name) => name.trim()).filter((name) => name !== '');
    if (names.length > 1) return [names];
    issues.push(usageIssue('bad-list', `--${option}`, text, 'two or more names with commas between them'));
    return [];
  });
}

/** The outcome of reading options: the value only where nothing was at fault. */
export const readOptions = <T>(value: T, issues: readonly Issue[]): Outcome<T> => ({ value: issues.length > 0 ? undefined : value, issues });
