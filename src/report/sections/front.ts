import { max, min } from 'd3';
import type { Content, Markup } from '../markup.ts';
import type { ReportJoint } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { verdictBand } from '../figures/verdict-band.ts';
import { printTheme } from '../figures/theme.ts';
import { data, figure, html, named } from '../markup.ts';
import { counted, coverageText, fixed, limitUseText } from '../number-text.ts';
import { jointAnchor, jointNames, terms } from '../pieces.ts';
import { mapPicture, stripPicture } from '../pictures.ts';
import { summaryText } from './comparison.ts';
import { seriesShort } from './series.ts';

/** The first page: what cabin, what verdict, where on the map, and the few sentences that matter. */
export function front(page: Page): Markup {
  const { model } = page;
  const { cabin, summary } = model;
  const subtitle = [cabin.trimLevel, cabin.colourway, cabin.phase && `phase ${cabin.phase}`, cabin.revision && `revision ${cabin.revision}`]
    .filter((word) => word !== undefined && word !== '');
  return html('header', { class: 'front' },
    html('p', { class: 'kind' }, 'Harmony report'),
    html('h1', {}, named(cabin.name)),
    html('p', { class: 'subtitle' }, subtitle.map((word, index) => [index > 0 && ' · ', named(String(word))]),
      subtitle.length > 0 && html('br', {}),
      html('span', { class: 'quiet' }, `Stage “${model.stage}”, as of ${model.asOf}. ${counted(summary.parts, 'part')}, ${counted(summary.joints, 'joint')}. Rule book: `, named(model.ruleBook.name), '.')),
    html('figure', { class: 'band' }, figure(verdictBand([
      { verdict: 'clashes', count: summary.clashes, label: summary.clashes === 1 ? 'clashes' : 'clash' },
      { verdict: 'clashes', accepted: true, count: summary.accepted, label: 'accepted' },
      { verdict: 'open', count: summary.open, label: summary.open === 1 ? 'is open' : 'are open' },
      { verdict: 'holds', count: summary.holds, label: summary.holds === 1 ? 'joint holds' : 'joints hold' },
    ], { width: 680, height: 104 }, printTheme))),
    mapFigure(page),
    inShort(page));
}

function mapFigure(page: Page): Content {
  const { parts } = page.model;
  const map = mapPicture(page, { width: 680, height: mapHeight(page) });
  const outside = parts.filter((part) => part.sample !== undefined && !part.sample.inGamut).length;
  return map && html('figure', { class: 'map mat' }, map,
    html('figcaption', {}, 'The cabin unfolded, parts in their measured colour under D65. Saw: clashes; hollow saw: clashes, accepted; dashes: open; thin line: holds. Hatched: no colour to show. ',
      outside > 0 && `${counted(outside, 'part')} outside sRGB, shown by the nearest colour. `,
      'Screens and paper are no proof of colour.'));
}

/** Height that lets the cabin fill the width of the page, within what a first page can hold. */
function mapHeight(page: Page): number {
  const points = page.input.cabin.parts.flatMap((part) => part.outline ?? []);
  const extent = (axis: 0 | 1): number => (max(points, (point) => point[axis]) ?? 0) - (min(points, (point) => point[axis]) ?? 0);
  return points.length < 2 ? 200 : Math.round(Math.min(400, Math.max(200, (680 * extent(1)) / Math.max(1, extent(0)) + 24)));
}

function inShort(page: Page): Markup {
  const { model } = page;
  const { summary } = model;
  const clashing = model.joints.filter(({ result }) => result.verdict === 'clashes' && !result.accepted);
  return html('section', { class: 'short', 'aria-label': 'In short' }, terms([
    [clashing.length > 3 ? ['The worst three of ', html('a', { href: '#clashes' }, `${clashing.length} clashes`)] : 'What clashes',
      clashing.length === 0
        ? html('p', {}, summary.accepted > 0 ? 'No joint clashes beyond what was accepted.' : 'No joint is known to clash.')
        : clashing.slice(0, 3).map((entry) => worst(page, entry))],
    summary.open === 0 ? undefined : ['What is open', openShort(page)],
    ['How sure', html('p', {},
      counted(summary.holds, 'joint holds', 'joints hold'), '; the expected number of them that in truth do not is ', html('strong', {}, data(summary.expectedWrongHolds, fixed(summary.expectedWrongHolds, 1))),
      '. Of the checks that the rules want, ', html('strong', {}, data(summary.coverage, coverageText(summary.coverage))), ' had data.')],
    mendShort(page),
    acceptedShort(page),
    comparedShort(page),
    ageingShort(page),
    seriesShort(page),
    summary.visual.joints === 0 ? undefined : ['Seen in the booth', html('p', {},
      `Numbers and booth agree on ${summary.visual.agree} of ${counted(summary.visual.joints, 'joint')} that both have judged`,
      summary.visual.differ.length === 0 ? '.' : ['; they differ on ', joinedLinks(page, summary.visual.differ), '.'])],
  ], 'terms short-terms'));
}

/** The sentence without the rule and the number of spots, which stand in the joint's block. */
const withoutGrounds = (sentence: string): string => sentence.replace(/ By rule .*? spots(?: at [^.]*)?\./, '');

function worst(page: Page, entry: ReportJoint): Markup {
  const { leading, result } = entry;
  return html('div', { class: 'worst' },
    html('div', { class: 'mat' }, stripPicture(page, entry, leading?.light ?? 'D65', { width: 104, height: 52 })),
    html('p', {}, html('a', { class: 'title', href: `#${jointAnchor(page.place(entry.id))}` }, jointNames(entry)),
      ' ', html('span', { class: 'use' }, data(result.limitUse, limitUseText(result.limitUse)), ' of the limit'), html('br', {}),
      withoutGrounds(result.sentence)));
}

const causes: Readonly<Record<string, string>> = {
  'too few spots': 'with too few spots', 'instruments disagree': 'measured on instruments that may disagree', 'spread of the part': 'because the part itself scatters',
  conditions: 'measured under conditions that may not be compared', 'on the limit': 'on the limit', 'missing data': 'for want of data', 'judged by eye': 'to be judged by eye',
};

function openShort(page: Page): Markup {
  const { model } = page;
  const open = model.joints.filter(({ result }) => result.verdict === 'open');
  const count = new Map<string, number>();
  for (const { leading } of open) count.set(leading?.cause ?? 'missing data', (count.get(leading?.cause ?? 'missing data') ?? 0) + 1);
  const reasons = [...count].sort((first, second) => second[1] - first[1] || first[0].localeCompare(second[0])).map(([cause, joints]) => `${joints} ${causes[cause] ?? cause}`);
  const decidable = open.filter(({ requests }) => requests.length > 0).length;
  const suppliers = new Set(model.requests.map((request) => request.supplier)).size;
  return html('p', {}, `${counted(open.length, 'joint')}: ${reasons.join('; ')}. `,
    decidable === 0 ? 'No number of readings is known to decide them. ' : `Readings asked of ${counted(suppliers, 'supplier')} would decide ${decidable === open.length ? 'all of them' : `${decidable} of them`}; `,
    html('a', { href: '#open' }, decidable === 0 ? 'The open joints' : 'the request sheet'), '.');
}

function acceptedShort(page: Page): readonly [Content, Content] | undefined {
  const inForce = page.model.decisions.filter((row) => row.status === 'in force');
  const fallen = page.model.decisions.filter((row) => row.status === 'expired' || row.status === 'void').length;
  const ending = inForce.filter(({ expiring }) => expiring).length;
  if (inForce.length === 0 && fallen === 0) return undefined;
  return ['Accepted', html('p', {},
    inForce.length === 0 ? 'No decision is in force. ' : `${counted(inForce.length, 'decision')} in force, the next to end on ${inForce[0].decision.expires}. `,
    ending > 0 && `${counted(ending, 'ends', 'end')} within 90 days. `,
    fallen > 0 && `${counted(fallen, 'decision')} ${fallen === 1 ? 'has' : 'have'} expired or been voided. `,
    html('a', { href: '#decisions' }, 'Decisions'), '.')];
}

function mendShort({ model: { proposals, joints } }: Page): readonly [Content, Content] | undefined {
  if (proposals.length === 0) return undefined;
  const clashing = joints.filter(({ result }) => result.verdict === 'clashes' && !result.accepted).map(({ id }) => id);
  const mended = new Set(proposals.flatMap(({ noLongerClashing }) => noLongerClashing));
  const harmful = proposals.filter(({ nowClashing }) => nowClashing.length > 0).length;
  return ['Proposed', html('p', {},
    `${counted(proposals.length, 'change is', 'changes are')} on record; taken one by one they mend ${clashing.filter((id) => mended.has(id)).length} of ${counted(clashing.length, 'clash', 'clashes')}`,
    harmful > 0 ? `, ${harmful} of them at the cost of another.` : '.')];
}

function comparedShort({ model: { comparison: compared } }: Page): readonly [Content, Content] | undefined {
  return compared && ['Compared', html('p', {}, 'With ', named(compared.before.name), compared.before.stage !== compared.after.stage && ` at stage “${compared.before.stage}”`, ': ', summaryText(compared.summary), ' ', html('a', { href: '#compared' }, 'What changed'), '.')];
}

function ageingShort({ model: { ageing } }: Page): readonly [Content, Content] | undefined {
  if (ageing.length === 0) return undefined;
  return ['Aged', html('p', {}, ageing.map(({ to, parts, holdThenClash, wanted }) => {
    const weak = parts.filter(({ fast }) => !fast).length;
    return [`After “${to}” ${weak === 0 ? `no graded part is below grade ${wanted.grade}` : `${counted(weak, 'part is', 'parts are')} below grade ${wanted.grade}`}; ${counted(holdThenClash.length, 'joint that holds clashes', 'joints that hold clash')} then. `];
  }), html('a', { href: '#ageing' }, 'Ageing'), '.')];
}

function joinedLinks(page: Page, ids: readonly string[]): Content {
  const link = (id: string): Content => {
    const entry = page.joint(id);
    return html('a', { href: `#${jointAnchor(page.place(id))}` }, entry ? jointNames(entry) : named(id));
  };
  return [ids.slice(0, 6).map((id, index) => [index > 0 && '; ', link(id)]), ids.length > 6 && ` and ${ids.length - 6} more`];
}
