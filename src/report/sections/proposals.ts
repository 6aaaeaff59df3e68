import type { ProposedShift } from '../../cabin/cabin.ts';
import type { ProposedChange } from '../model/proposed-changes.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { counted, limitUseText, signed } from '../number-text.ts';
import { jointAnchor, jointNames, verdictWord } from '../pieces.ts';

/** The changes that were proposed at a joint, with the verdict that the ordinary check gives them. */
export function proposalNotes(page: Page, joint: string): Content {
  const rows = page.model.proposals.filter((row) => row.joint === joint);
  return rows.length > 0 && html('ul', { class: 'notes' }, rows.map((row) => html('li', {}, proposalNote(page, row))));
}

function proposalNote(page: Page, change: ProposedChange): Content {
  const { proposal, verdict, limitUse, nowClashing, noLongerClashing, together, joint } = change;
  const others = { worse: nowClashing.filter((id) => id !== joint), better: noLongerClashing.filter((id) => id !== joint) };
  const asked = [
    ...(proposal.shifts ?? []).map((shift): Content => [named(page.part(shift.part)?.name ?? shift.part), ' ', shiftText(shift)]),
    ...(proposal.gapMm === undefined ? [] : [[`a gap of ${proposal.gapMm} mm`]]), ...(proposal.viewMm === undefined ? [] : [[`seen from ${proposal.viewMm} mm`]]),
  ];
  return [
    html('strong', {}, 'Proposed mend'), ` (${proposal.date}): `, asked.map((one, index) => [index > 0 && '; ', one]), '. The joint then ', verdictWord({ verdict, accepted: false }),
    limitUse !== undefined && [' at ', data(limitUse, limitUseText(limitUse)), ' of the limit'], '.',
    others.worse.length > 0 && [' Then also ', jointList(page, others.worse), ` ${others.worse.length === 1 ? 'clashes' : 'clash'}.`],
    others.better.length > 0 && [' ', jointList(page, others.better), ` ${others.better.length === 1 ? 'clashes' : 'clash'} no more.`],
    together.length > 0 && [' ', together.map((id, index) => [index > 0 && ', ', named(page.part(id)?.name ?? id)]), ` ${together.length === 1 ? 'changes' : 'change'} with it.`],
    proposal.note !== undefined && [' ', named(proposal.note)],
  ];
}

const symbols = { dL: ['ΔL*', 2], da: ['Δa*', 2], db: ['Δb*', 2], dGloss: ['gloss', 1] } as const;

const shiftText = (shift: ProposedShift): Content => (['dL', 'da', 'db', 'dGloss'] as const)
  .filter((axis) => shift[axis] !== undefined)
  .map((axis, index) => [index > 0 && ', ', `${symbols[axis][0]} `, data(shift[axis], signed(shift[axis], symbols[axis][1])), axis === 'dGloss' && ' GU']);

const jointList = (page: Page, ids: readonly string[]): Content => [
  ids.slice(0, 4).map((id, index) => [index > 0 && '; ', html('a', { href: `#${jointAnchor(page.place(id))}` }, jointNames(page.joint(id)))]),
  ids.length > 4 && ` and ${counted(ids.length - 4, 'other')}`,
];
