import type { Content } from '../markup.ts';
import type { ReportJoint } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { data, html } from '../markup.ts';
import { counted, decimalsOf, fixed, limitUseText, probability } from '../number-text.ts';
import { jointAnchor, jointNames, section, table } from '../pieces.ts';

/** Joints that hold, one row each; folded on a screen, whole in print. */
export function holding(page: Page): Content {
  const entries = page.model.joints.filter(({ result }) => result.verdict === 'holds');
  if (entries.length === 0) return undefined;
  return section('holding', 'Joints that hold',
    html('p', { class: 'lead' }, `${counted(entries.length, 'joint holds', 'joints hold')} with the confidence asked for. The value is that of the check nearest to its limit.`),
    html('details', {}, html('summary', {}, `Show the ${counted(entries.length, 'joint')}`),
      table<ReportJoint>('Joints that hold, nearest to the limit first', [
        { title: 'Joint', cell: (entry) => html('span', { id: jointAnchor(page.place(entry.id)) }, jointNames(entry)) },
        { title: 'Kind', cell: (entry) => entry.joint.kind },
        { title: 'Check', cell: ({ leading }) => [leading?.check, leading?.light !== undefined && html('span', { class: 'quiet' }, ` ${leading.light}`)] },
        { title: 'Value', number: true, cell: ({ leading }) => [data(leading?.value, fixed(leading?.value, decimalsOf(leading?.unit ?? ''))), html('span', { class: 'quiet' }, ` ${leading?.unit ?? ''}`)] },
        { title: 'Limit', number: true, cell: ({ leading }) => data(leading?.limit, fixed(leading?.limit, decimalsOf(leading?.unit ?? ''))) },
        { title: 'Limit use', number: true, cell: ({ result }) => data(result.limitUse, limitUseText(result.limitUse)) },
        { title: 'Holds', number: true, cell: ({ result }) => data(result.totalProbability, probability(result.totalProbability)) },
        { title: 'Coverage', number: true, cell: ({ result }) => `${result.coverage.withData} of ${result.coverage.wanted}` },
      ], entries, 'compact')));
}
