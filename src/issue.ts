/** `error` refuses the input, `warning` takes it and says so, `note` informs. */
export type Severity = 'error' | 'warning' | 'note';

/** A fault of data, as data: never thrown, listed the same on every face of the product. */
export interface Issue {
  /** Stable machine word in kebab-case, for example `unknown-part`. */
  readonly code: string;
  readonly severity: Severity;
  /** Place in a document, for example `parts[3].sources[0].specimens[1].readings[4].values[7]`. */
  readonly path?: string;
  /** Name of the file, when several are read together. */
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  readonly expected?: string;
  readonly found?: string;
  /** What the user can do about it. */
  readonly hint?: string;
}

/** What every reader returns: a value if there is one that can be used, and all faults met on the way. */
export interface Outcome<T> {
  readonly value: T | undefined;
  readonly issues: readonly Issue[];
}

export const hasErrors = (issues: readonly Issue[]): boolean =>
  issues.some((issue) => issue.severity === 'error');

/** One line a person can read: where, what was found, what was expected, what to do. */
export function issueText(issue: Issue): string {
  const place = [
    issue.file,
    issue.path,
    issue.line === undefined ? undefined : `line ${issue.line}${issue.column === undefined ? '' : `, column ${issue.column}`}`,
  ].filter((part) => part !== undefined && part !== '');
  const found = issue.found === undefined ? '' : ` found ${issue.found}`;
  const expected = issue.expected === undefined ? '' : `${found ? ',' : ''} expected ${issue.expected}`;
  const hint = issue.hint === undefined ? '' : `. ${issue.hint}`;
  return `${place.length ? `${place.join(': ')}: ` : ''}${issue.code}:${found}${expected}${hint}`;
}
