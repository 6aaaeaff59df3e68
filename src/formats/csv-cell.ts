import { inertText } from './inert-text.ts';

/** What a cell of a written table holds. */
export type CsvValue = string | number | boolean | undefined;

/**
 * One cell as RFC 4180 text, quoted where it must be. Numbers in every digit of a double, empty where they are not finite; text that a spreadsheet would
 * run as a formula has an apostrophe in front (`inertText`).
 */
export function csvCell(value: CsvValue): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return Object.is(value, -0) ? '-0' : Number.isFinite(value) ? String(value) : '';
  if (typeof value === 'boolean') return String(value);
  const inert = inertText.add(value);
  return /[",\r\n;\t#]/u.test(inert) || inert !== inert.trim() ? `"${inert.replaceAll('"', '""')}"` : inert;
}
