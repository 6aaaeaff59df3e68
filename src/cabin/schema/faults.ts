import type { Issue, Severity } from '../../issue.ts';
import type { PathSegment } from '../json-path.ts';
import { pathText } from '../json-path.ts';

/** Most issues that are listed of one document; the rest is counted in a closing note. */
export const maxListedIssues = 1000;

export interface FaultText {
  readonly expected?: string;
  readonly found?: string;
  readonly hint?: string;
  readonly severity?: Severity;
}

/** Collects the faults of a document while it is walked; `path` is where the walk is. */
export interface Faults {
  readonly path: PathSegment[];
  /** Adds a fault at the walk's place, or at a path given. */
  add(code: string, text: FaultText, path?: string): void;
  /** The issues in the order they were met, at most `maxListedIssues` and the closing note. */
  list(): Issue[];
  /** How many errors were met, the unlisted ones included. */
  errors(): number;
}

export function collectFaults(): Faults {
  const issues: Issue[] = [];
  const path: PathSegment[] = [];
  let unlisted = 0;
  let unlistedErrors = 0;
  let errors = 0;
  return {
    path,
    add(code, text, at) {
      const severity = text.severity ?? 'error';
      if (severity === 'error') errors += 1;
      if (issues.length >= maxListedIssues) {
        unlisted += 1;
        if (severity === 'error') unlistedErrors += 1;
        return;
      }
      const place = at ?? pathText(path);
      const { expected, found, hint } = text;
      issues.push({
        code, severity,
        ...(place === '' ? {} : { path: place }),
        ...(expected === undefined ? {} : { expected }),
        ...(found === undefined ? {} : { found }),
        ...(hint === undefined ? {} : { hint }),
      });
    },
    list() {
      if (unlisted === 0) return issues.slice();
      return [...issues, {
        code: 'more-issues', severity: 'note', found: `${unlisted} more issues, ${unlistedErrors} of them errors`,
        hint: `The first ${maxListedIssues} are listed; mend these and read the file again.`,
      }];
    },
    errors: () => errors,
  };
}
