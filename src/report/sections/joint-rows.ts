import type { CheckName } from '../../cabin/cabin.ts';
import type { Content } from '../markup.ts';
import type { ReportJoint } from '../model/report-model.ts';
import type { Column } from '../pieces.ts';
import type { Page } from '../page.ts';
import { data, html } from '../markup.ts';
import { decimalsOf, fixed, limitUseText, probability } from '../number-text.ts';
import { jointAnchor, jointNames, pagedTable } from '../pieces.ts';

/** Joints one row each: value and limit of colour, gloss and texture, the use of the limit, how sure. The anchors of the joints are here. */
export const jointRows = (page: Page, caption: Content, entries: readonly ReportJoint[]): Content => pagedTable<ReportJoint>(caption, [
  { title: 'Joint', cell: (entry) => html('span', { id: jointAnchor(page.place(entry.id)) }, jointNames(entry)) },
  { title: 'Kind', steady: true, cell: (entry) => entry.joint.kind },
  ...(['colour', 'gloss', 'texture'] as const).map((name): Column<ReportJoint> => ({ title: titles[name][0], unit: titles[name][1], number: true, cell: (entry) => checkValue(entry, name) })),
  { title: 'Decided by', steady: true, cell: ({ leading }) => [leading?.check, leading?.light !== undefined && html('span', { class: 'quiet' }, ` ${leading.light}`), leading?.cause !== undefined && html('span', { class: 'quiet' }, html('br', {}), leading.cause)] },
  { title: 'Limit use', number: true, cell: ({ result }) => data(result.limitUse, limitUseText(result.limitUse)) },
  { title: 'Holds', unit: 'with', number: true, cell: ({ result }) => data(result.totalProbability, probability(result.totalProbability)) },
  { title: 'Coverage', number: true, cell: ({ result }) => `${result.coverage.withData} of ${result.coverage.wanted}` },
], entries, 'compact');

const titles = { colour: ['Colour', 'of limit'], gloss: ['Gloss', 'GU'], texture: ['Texture', 'ratio or class'] } as const;

/** Value of its limit; for a step or a contrast in colour the distance that is asked for. */
function checkValue({ result }: ReportJoint, name: CheckName): Content {
  const check = result.checks.find((candidate) => candidate.check === name && candidate.value !== undefined)
    ?? (name === 'colour' ? result.checks.find((candidate) => candidate.check === 'near-miss' && candidate.value !== undefined) : undefined);
  if (check === undefined) {
    const why = result.checks.find((candidate) => candidate.check === name)?.verdict;
    return html('span', { class: 'quiet' }, why === 'no data' ? 'no data' : '–');
  }
  const decimals = decimalsOf(check.unit);
  return html('span', { class: 'steady' }, data(check.value, fixed(check.value, decimals)), check.limit !== undefined && html('span', { class: 'quiet' }, check.atLeast === true ? ' min ' : ' of ', data(check.limit, fixed(check.limit, decimals))));
}
