import type { Outcome } from '../issue.ts';
import { hasErrors } from '../issue.ts';
import type { Cabin } from './cabin.ts';
import { parseLocatedJson } from './located-json.ts';
import { restoreCabin } from './restore-cabin.ts';

/** Reads the text of a cabin file. Every issue has its line and column, and its path where the text is JSON at all. */
export function parseCabin(text: string, file?: string): Outcome<Cabin> {
  const json = parseLocatedJson(text, file);
  if (json.value === undefined) return { value: undefined, issues: json.issues };
  const restored = restoreCabin(json.value);
  const known = new Set(json.issues.map(({ code, path }) => `${code} ${path ?? ''}`));
  const issues = [...json.issues, ...json.locate(restored.issues.filter(({ code, path }) => !known.has(`${code} ${path ?? ''}`)))];
  return { value: hasErrors(issues) ? undefined : restored.value, issues };
}
