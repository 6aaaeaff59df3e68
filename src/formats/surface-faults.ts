import { maxListedIssues } from '../cabin/schema/faults.ts';
import type { Issue } from '../issue.ts';
import type { SurfaceIssueCode } from './surface-issue-codes.ts';

/** Collects the faults of a surface file. */
export interface SurfaceFaults {
  add(code: SurfaceIssueCode, fault: Omit<Issue, 'code' | 'severity' | 'file'> & Partial<Pick<Issue, 'severity'>>): void;
  /** In the order they were met; at most 1,000 and a closing note. */
  list(): Issue[];
  errors(): number;
}

export function collectSurfaceFaults(file?: string): SurfaceFaults {
  const issues: Issue[] = [];
  const named = file === undefined ? {} : { file };
  let errors = 0;
  let unlisted = 0;
  return {
    add(code, { severity = 'error', ...rest }) {
      if (severity === 'error') errors += 1;
      if (issues.length >= maxListedIssues) unlisted += 1;
      else issues.push({ code, severity, ...named, ...rest });
    },
    list: () => (unlisted === 0 ? issues.slice() : [...issues, {
      code: 'more-issues', severity: 'note', ...named, found: `${unlisted} more issues`,
      hint: `The first ${maxListedIssues} are listed; mend these and read the file again.`,
    }]),
    errors: () => errors,
  };
}
