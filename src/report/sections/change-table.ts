import type { CheckName } from '../../cabin/cabin.ts';
import type { JointChange } from '../../harmony/compare/index.ts';
import type { Column } from '../pieces.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { printTheme } from '../figures/theme.ts';
import { useChange } from '../figures/use-change.ts';
import { data, figure, html, named } from '../markup.ts';
import { decimalsOf, fixed, limitUseText } from '../number-text.ts';
import { jointAnchor, pagedTable, verdictWord } from '../pieces.ts';

const words = { verdict: 'another verdict', worse: 'more of the limit', better: 'less of the limit', new: 'new', gone: 'gone', same: 'as it was' } as const;

/** What became of a joint, in few words. */
export const changeWord = ({ kind, worse }: JointChange): string => (kind === 'verdict' ? (worse ? 'worse verdict' : 'better verdict') : words[kind]);

/** Joints before and after: verdicts, the value of each check, how much of the limit is used. */
export const changeTable = (page: Page, caption: Content, changes: readonly JointChange[]): Content =>
  pagedTable(caption, [
    { title: 'Joint', cell: (change) => jointName(page, change) },
    { title: 'Before', cell: ({ before }) => (before === undefined ? html('span', { class: 'quiet' }, 'none') : verdictWord(before)) },
    { title: 'Now', cell: ({ after }) => (after === undefined ? html('span', { class: 'quiet' }, 'none') : verdictWord(after)) },
    ...(['colour', 'gloss', 'texture'] as const).map((check): Column<JointChange> => ({
      title: check.charAt(0).toUpperCase() + check.slice(1), unit: 'before, now', number: true, cell: (change) => values(change, check),
    })),
    { title: 'Limit use', unit: 'before, now', cell: uses },
  ], changes, 'compact');

function jointName(page: Page, change: JointChange): Content {
  const names: Content = [named(change.names[0]), ' and ', named(change.names[1])];
  const place = page.place(change.id);
  return [place < 0 || change.after === undefined ? names : html('a', { href: `#${jointAnchor(place)}` }, names), html('span', { class: 'quiet' }, ` ${changeWord(change)}`)];
}

/** "0.41 → 1.59 CIEDE2000"; the change is not subtracted here, since light or criterion may be another one. */
function values({ checks }: JointChange, name: CheckName): Content {
  const check = checks.find((candidate) => candidate.check === name);
  const [before, after] = [check?.before, check?.after];
  if (before?.value === undefined && after?.value === undefined) return html('span', { class: 'quiet' }, '–');
  const value = (side: typeof before): Content => data(side?.value, fixed(side?.value, decimalsOf(side?.unit ?? '')));
  return [value(before), html('span', { class: 'quiet' }, ' to '), value(after), lights(before?.light, after?.light)];
}

function lights(before: string | undefined, after: string | undefined): Content {
  if (before === undefined && after === undefined) return undefined;
  return html('span', { class: 'quiet' }, html('br', {}), before === after || before === undefined ? after : after === undefined ? before : `${before}, ${after}`);
}

const uses = ({ before, after }: JointChange): Content => [
  figure(useChange({ before: before?.limitUse, after: after?.limitUse }, { width: 92, height: 12 }, printTheme)),
  html('span', { class: 'steady' }, data(before?.limitUse, limitUseText(before?.limitUse)), html('span', { class: 'quiet' }, ' to '), data(after?.limitUse, limitUseText(after?.limitUse))),
];
