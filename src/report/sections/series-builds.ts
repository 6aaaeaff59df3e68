import type { BuildPlan, BuiltSet, CabinSeries } from '../../series/index.ts';
import { buildWords } from '../../series/index.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { buildLinks } from '../figures/build-links.ts';
import { printTheme } from '../figures/theme.ts';
import { data, figure, html, named } from '../markup.ts';
import { counted, fixed } from '../number-text.ts';
import { pagedTable } from '../pieces.ts';
import { lotHex, partName } from './series-lots.ts';

/** Plans that get a picture and a table each. */
const mostPlans = 4;
/** Parts that the picture of one plan can hold side by side. */
const mostColumns = 6;

/** Which lots to build together: for parts that hang together by their joints one plan for all of them, since a lot is built only once. */
export function seriesBuilds(page: Page, found: CabinSeries): Content {
  const { pairs, sets, notMatched = [] } = found;
  const whole = new Set(sets.flatMap(({ joints }) => joints));
  const plans = [...sets, ...pairs.filter(({ joints }) => !joints.every((joint) => whole.has(joint)))];
  if (plans.length === 0 && notMatched.length === 0) return undefined;
  const gained = plans.filter(gains).sort((first, second) => (second.asProduced.clashes - second.best.clashes) - (first.asProduced.clashes - first.best.clashes));
  const [shown, rest] = [gained.slice(0, mostPlans), [...gained.slice(mostPlans), ...plans.filter((plan) => !gains(plan))]];
  return [
    html('h3', {}, 'Lots to build together'),
    html('p', { class: 'lead' }, 'Each lot is built once. Lots are matched so that the fewest clashes are to be expected, an open joint counting by its probability, then the least over-use of limits.'),
    shown.map((plan) => planBlock(page, found, plan)),
    rest.length > 0 && html('ul', { class: 'notes' }, rest.slice(0, 40).map((plan) => html('li', {}, buildWords(plan, (part) => partName(page, part)))),
      rest.length > 40 && html('li', {}, `${rest.length - 40} more are in the JSON and CSV of this report.`)),
    notMatched.length > 0 && html('p', { class: 'further' }, `The lots of ${counted(notMatched.length, 'further joint')} were not matched for this report: they come to too many pairs of lots.`),
  ];
}

const gains = ({ asProduced, best }: BuildPlan): boolean => asProduced.clashes - best.clashes > 5e-6 || asProduced.overUse - best.overUse > 5e-4;

function planBlock(page: Page, found: CabinSeries, plan: BuildPlan): Content {
  const names = plan.parts.map((part) => partName(page, part));
  const lots = plan.parts.map((part, at) => lotsOf(page, found, plan, part, at));
  const picture = (caption: string, sets: readonly BuiltSet[], cost: BuildPlan['best']): Content => html('figure', {},
    html('figcaption', {}, html('strong', {}, caption), ': ', data(cost.clashes, fixed(cost.clashes, 2)), ` clashes to be expected in ${counted(sets.length, 'set')}`),
    html('div', { class: 'mat' }, figure(buildLinks({ parts: names, lots, sides: plan.sides, sets }, beside ? 332 : 680, { ...printTheme, quiet: printTheme.ink }))));
  const leftOver = plan.leftOver.flatMap((own, at) => (own.length === 0 ? [] : [`${names[at]}: ${own.join(', ')}`]));
  const few = plan.parts.length <= mostColumns;
  const beside = plan.parts.length <= 3;
  return html('div', { class: 'lots' },
    html('p', { class: 'sentence' }, buildWords(plan, (part) => partName(page, part)), leftOver.length > 0 && ` Left over: ${leftOver.join('; ')}.`),
    few && html('div', { class: beside ? 'pair' : undefined }, picture('In order of production', plan.inOrder, plan.asProduced), picture('Built together', plan.sets, plan.best)),
    few && html('p', { class: 'judged quiet' }, 'Thin: the joint between them holds. Dashed: not certain. Saw: expected to clash.'),
    pagedTable<{ readonly set: BuiltSet; readonly order: BuiltSet; readonly index: number }>('Sets of lots, built together and in order of production', [
      { title: 'Set', cell: ({ index }) => String(index + 1) },
      ...(few ? names.map((name, at) => ({ title: named(name), word: true, cell: ({ set }: { readonly set: BuiltSet }): Content => named(set.lots[at]) }))
        : [{ title: 'Lots', wide: true, cell: ({ set }: { readonly set: BuiltSet }): Content => named(set.lots.join(', ')) }]),
      { title: 'Clashes', number: true, cell: ({ set }) => data(set.clashes, fixed(set.clashes, 2)) },
      { title: 'Over-use', unit: 'limits', number: true, cell: ({ set }) => data(set.overUse, fixed(set.overUse, 2)) },
      { title: 'In order of production', cell: ({ order }) => named(order.lots.join(', ')) },
      { title: 'Clashes', number: true, cell: ({ order }) => data(order.clashes, fixed(order.clashes, 2)) },
    ], plan.sets.map((set, index) => ({ set, order: plan.inOrder[index], index })), 'compact'));
}

/** Lots of a part in order of production: those of its series, then what was read otherwise. */
function lotsOf(page: Page, found: CabinSeries, plan: BuildPlan, part: string, at: number): readonly { readonly id: string; readonly css: string | undefined }[] {
  const own = found.parts.find((one) => one.part === part);
  const used = new Set([...plan.sets, ...plan.inOrder].map(({ lots }) => lots[at]).concat(plan.leftOver[at] ?? []));
  const known = (own?.lots ?? []).filter(({ id }) => used.has(id)).map((lot) => ({ id: lot.id, css: own && lotHex(page, own, lot) }));
  return [...known, ...[...used].filter((id) => !known.some((lot) => lot.id === id)).map((id) => ({ id, css: undefined }))];
}
