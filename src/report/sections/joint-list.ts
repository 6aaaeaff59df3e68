import type { Content } from '../markup.ts';
import type { ReportJoint } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { html } from '../markup.ts';
import { jointRows } from './joint-rows.ts';

/** Joints of one verdict that get a block of their own; the others follow as rows. */
const mostBlocks = 60;

/** The worst joints on a block each, the rest one row each, so that a very large cabin stays readable. */
export function jointList(page: Page, entries: readonly ReportJoint[], block: (entry: ReportJoint) => Content): Content {
  const [worst, rest] = [entries.slice(0, mostBlocks), entries.slice(mostBlocks)];
  return [
    worst.map(block),
    rest.length > 0 && [
      html('h3', { class: 'rest' }, `The other ${rest.length}`),
      html('p', { class: 'lead' }, `The worst ${mostBlocks} have a block each; the other ${rest.length} follow one row each, with all their numbers in the JSON and CSV of this report.`),
      jointRows(page, 'Further joints, the worst first', rest),
    ],
  ];
}
