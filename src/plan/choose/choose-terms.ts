import type { Cabin } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';
import type { ModelTerms } from '../model/plan-model.ts';

/** What is wrong with the terms of a choice: names that the cabin does not have, numbers that mean nothing. */
export function termIssues(cabin: Cabin, terms: ModelTerms): readonly Issue[] {
  const issues: Issue[] = [];
  const parts = new Map(cabin.parts.map((part) => [part.id, part]));
  const unknown = (code: string, path: string, found: string, known: readonly string[]): void => {
    issues.push({ code, severity: 'error', path, found, expected: known.length === 0 ? 'none: there are none' : `one of ${known.slice(0, 12).join(', ')}${known.length > 12 ? ' ...' : ''}` });
  };
  for (const [part, source] of Object.entries(terms.locked ?? {})) {
    const own = parts.get(part);
    if (own === undefined) unknown('unknown-part', `lock ${part}`, part, [...parts.keys()]);
    else if (!own.sources.some((each) => each.id === source)) unknown('unknown-source', `lock ${part}`, source, own.sources.map((each) => each.id));
  }
  for (const { parts: shared } of terms.shares ?? []) {
    for (const part of shared) if (!parts.has(part)) unknown('unknown-part', 'share', part, [...parts.keys()]);
  }
  const suppliers = [...new Set(cabin.parts.flatMap((part) => part.sources.map((source) => source.supplier)))].sort();
  for (const supplier of terms.without ?? []) if (!suppliers.includes(supplier)) unknown('unknown-supplier', 'without', supplier, suppliers);
  const least = (path: string, value: number | undefined, smallest: number, whole: boolean): void => {
    if (value === undefined || (value >= smallest && (!whole || Number.isInteger(value)))) return;
    issues.push({ code: 'bad-number', severity: 'error', path, found: String(value), expected: `${whole ? 'a whole number' : 'a number'} of at least ${smallest}` });
  };
  least('budget', terms.budget, 0, false);
  least('max-lead', terms.maxLeadWeeks, 0, false);
  least('max-suppliers', terms.maxSuppliers, 1, true);
  least('volume', terms.volume, 0, false);
  return issues;
}
