import type { Issue } from '../issue.ts';
import type { CommandResult, ExitCode, OutputFile } from './verb.ts';
import { issueText } from '../issue.ts';
import { printable } from './printable.ts';

/** One JSON document and its line end, numbers in full double precision. */
export const jsonText = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;

/** Bad input or bad usage: nothing is written; the issues go to stdout as JSON if that was asked for, else to stderr, one a line. */
export function refused(issues: readonly Issue[], json: boolean): CommandResult {
  return {
    exit: 2,
    stdout: json ? jsonText({ issues }) : '',
    stderr: json ? '' : issueLines(issues),
    files: [],
  };
}

/** The issues as lines for a person; every severity but `error` is named. */
export function issueLines(issues: readonly Issue[]): string {
  return issues.map((issue) => `${issue.severity}: ${printable(issueText(issue))}\n`).join('');
}

/** Something was done: text or JSON on stdout, warnings and notes on stderr. */
export function done(
  stdout: string, more: { readonly exit?: ExitCode; readonly stderr?: string; readonly files?: readonly OutputFile[] } = {},
): CommandResult {
  return { exit: more.exit ?? 0, stdout, stderr: more.stderr ?? '', files: more.files ?? [] };
}
