import { csvCell } from '../../src/report/csv.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';

/** What was done at a joint in a review. */
export interface ReviewStep {
  readonly joint: string;
  readonly kind: 'decision' | 'visual record' | 'note';
  readonly text: string;
}

/** What the form of a visual record keeps from one joint to the next: booth and observers seldom change within a review. */
export interface BoothSetting {
  readonly light: string;
  readonly illuminance: string;
  readonly observers: string;
  readonly roles: string;
  readonly scale: string;
}

/** A joint as it stands in the running list. */
export interface ReviewRow {
  readonly joint: string;
  readonly names: readonly [string, string];
  readonly verdict: string;
  readonly limitUse: number | undefined;
  readonly seen: boolean;
  readonly steps: readonly ReviewStep[];
}

/** The running list of a review, in the order it was gone through. */
export function reviewRows(cabin: Cabin, joints: readonly JointResult[], seen: ReadonlySet<string>, steps: readonly ReviewStep[]): readonly ReviewRow[] {
  const names = new Map(cabin.parts.map(({ id, name }) => [id, name]));
  return joints.map(({ id, standard, trial, verdict, accepted, limitUse }) => ({
    joint: id, names: [names.get(standard) ?? standard, names.get(trial) ?? trial], verdict: verdict === 'clashes' && accepted ? 'clashes, accepted' : verdict, limitUse,
    seen: seen.has(id), steps: steps.filter(({ joint }) => joint === id),
  }));
}

const heads = ['joint', 'standard', 'trial', 'verdict', 'limitUse', 'seen', 'decisions', 'visualRecords', 'notes'];

/** The running list as a table, RFC 4180; text that a spreadsheet would run as a formula is made inert. */
export function reviewCsv(rows: readonly ReviewRow[]): string {
  const texts = (row: ReviewRow, kind: ReviewStep['kind']): string => row.steps.filter((step) => step.kind === kind).map(({ text }) => text).join('; ');
  const cells = rows.map((row) => [row.joint, ...row.names, row.verdict, row.limitUse, row.seen, texts(row, 'decision'), texts(row, 'visual record'), texts(row, 'note')]);
  return [heads, ...cells].map((line) => `${line.map(csvCell).join(',')}\r\n`).join('');
}
