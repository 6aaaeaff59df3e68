import { maxListedIssues } from '../cabin/schema/faults.ts';
import type { TextPosition } from '../cabin/text-position.ts';
import type { Issue, Severity } from '../issue.ts';

/** Collects the faults of a text file, each at an offset of the text. */
export interface TableFaults {
  add(code: string, offset: number, text: { readonly expected?: string; readonly found?: string; readonly hint?: string; readonly severity?: Severity }): void;
  /** In the order of the text's places within each pass; at most 1,000 and a closing note. */
  list(): Issue[];
  errors(): number;
}

export function collectTableFaults(position: (offset: number) => TextPosition, file?: string, before: readonly Issue[] = []): TableFaults {
  const issues: Issue[] = before.slice();
  let errors = before.filter((issue) => issue.severity === 'error').length;
  let unlisted = 0;
  return {
    add(code, offset, { severity = 'error', expected, found, hint }) {
      if (severity === 'error') errors += 1;
      if (issues.length >= maxListedIssues) {
        unlisted += 1;
        return;
      }
      issues.push({
        code, severity,
        ...(file === undefined ? {} : { file }),
        ...position(offset),
        ...(expected === undefined ? {} : { expected }),
        ...(found === undefined ? {} : { found }),
        ...(hint === undefined ? {} : { hint }),
      });
    },
    list: () => (unlisted === 0 ? issues.slice() : [...issues, {
      code: 'more-issues', severity: 'note', ...(file === undefined ? {} : { file }),
      found: `${unlisted} more issues`, hint: `The first ${maxListedIssues} are listed; mend these and read the file again.`,
    }]),
    errors: () => errors,
  };
}
