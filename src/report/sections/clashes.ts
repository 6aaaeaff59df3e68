import type { Content, Markup } from '../markup.ts';
import type { ReportDecision, ReportJoint } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { html, named } from '../markup.ts';
import { section } from '../pieces.ts';
import { jointBlock } from './joint-block.ts';
import { jointList } from './joint-list.ts';
import { proposalNotes } from './proposals.ts';

/** Clashes without a decision in force, the worst first, each on one block. */
export function clashes(page: Page): Markup {
  const entries = page.model.joints.filter(({ result }) => result.verdict === 'clashes' && !result.accepted);
  return section('clashes', 'Clashes',
    entries.length === 0
      ? html('p', {}, 'No joint clashes without a decision in force.')
      : html('p', { class: 'lead' }, 'A joint clashes where the data show, with the confidence asked for, that a limit of its rule is passed. The worst stands first. Samples are drawn from the measurements for a common screen and are no proof of colour; the numbers decide.'),
    jointList(page, entries, (entry) => jointBlock(page, entry, stepNotes(page, entry.id), proposalNotes(page, entry.id), decisionNotes(page, entry))));
}

/** Clashes that a decision in force covers. */
export function acceptedClashes(page: Page): Content {
  const entries = page.model.joints.filter(({ result }) => result.verdict === 'clashes' && result.accepted);
  return entries.length > 0 && section('accepted', 'Accepted clashes',
    html('p', { class: 'lead' }, 'These joints clash and are accepted by a decision in force. A worse value, another worst light or the end of its term voids a decision.'),
    jointList(page, entries, (entry) => jointBlock(page, entry, proposalNotes(page, entry.id), decisionNotes(page, entry))));
}

/** What is to be done, and by whom; a decision that fell stands in a note of its own. */
function stepNotes({ model }: Page, joint: string): Content {
  const step = model.nextSteps.find((one) => one.joint === joint);
  return step && html('ul', { class: 'notes' }, html('li', {}, html('strong', {}, 'To do: '), step.sentences.filter((sentence) => !sentence.startsWith('The decision that accepted it')).join(' ')));
}

function decisionNotes(page: Page, entry: ReportJoint): Content {
  const rows = page.model.decisions.filter((row) => row.joint === entry.id && row.status !== 'not needed');
  return rows.length > 0 && html('ul', { class: 'notes' }, rows.map((row) => html('li', {}, decisionNote(row))));
}

const decisionNote = ({ decision, status, why }: ReportDecision): Content => [
  html('strong', {}, status === 'in force' ? `Accepted until ${decision.expires}` : `Decision ${status}`), ` (${decision.check}, by `, named(decision.role), `, ${decision.date}): `, named(decision.reason),
  status !== 'in force' && ` ${why.charAt(0).toUpperCase()}${why.slice(1)}.`,
];
