import type { Content, Markup } from '../markup.ts';
import type { ReportJoint, ReportModel } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import type { VerdictCount } from '../figures/verdict-band.ts';
import { narrowestBand, verdictBand } from '../figures/verdict-band.ts';
import { printTheme } from '../figures/theme.ts';
import { causeSentence, listed } from '../../harmony/wording.ts';
import { data, figure, html, named } from '../markup.ts';
import { mendCaution } from '../mend-card-text.ts';
import { confidenceText, counted, coverageText, decimalsOf, fixed, limitUseText, probability } from '../number-text.ts';
import { jointAnchor, jointNames, terms } from '../pieces.ts';
import { mapHeight, mapPicture, stripPicture } from '../pictures.ts';
import { summaryText } from './comparison.ts';
import { quantityOf } from './joint-block.ts';
import { seriesShort } from './series.ts';

/** Joints that the first page names and numbers; the rest follow in their sections. */
const mostNamed = 5;
/** Letters from which a name is set smaller. */
const longName = 48;
/** With fewer clashes than this, open joints are named after them. */
const fewNamed = 4;

/** The first page: what cabin, what verdict, which joints and where, what is to be done, and the few sentences that matter. */
export function front(page: Page): Markup {
  const { model } = page;
  const { cabin, summary, ruleBook } = model;
  const subtitle = [cabin.trimLevel, cabin.colourway, cabin.phase && `phase ${cabin.phase}`, cabin.revision && `revision ${cabin.revision}`]
    .filter((word) => word !== undefined && word !== '');
  const required = ruleBook.lights.filter(({ standing }) => standing === 'required').map(({ light }) => light);
  const unaccepted = model.joints.filter(({ result }) => result.verdict === 'clashes' && !result.accepted);
  const clashing = unaccepted.length > 0 ? unaccepted : model.joints.filter(({ result }) => result.verdict === 'clashes');
  const shown = [...clashing.slice(0, mostNamed), ...model.joints.filter(({ result }) => result.verdict === 'open').slice(0, Math.max(0, fewNamed - clashing.length))];
  const map = mapFigure(page, shown);
  return html('header', { class: 'front' },
    html('p', { class: 'kind' }, 'Harmony report'),
    html('h1', { class: cabin.name.length > longName ? 'long' : undefined }, named(cabin.name)),
    html('p', { class: 'subtitle' }, subtitle.map((word, index) => [index > 0 && ' · ', named(String(word))]),
      subtitle.length > 0 && html('br', {}),
      html('span', { class: 'quiet' }, `Stage “${model.stage}”, as of ${model.asOf}. ${counted(summary.parts, 'part')}, ${counted(summary.joints, 'joint')}. Rule book: `, named(ruleBook.name),
        `; lights ${required.join(', ')}, ${model.observer}° observer, ${ruleBook.decision.rule === 'guarded' ? `verdicts at ${confidenceText(ruleBook.decision.confidence)} confidence` : 'verdicts by value against limit'}.`)),
    summary.joints > 0 && band(summary),
    html('div', { class: map === undefined || map === false ? undefined : 'start' }, found(page, shown, clashing.length, unaccepted.length > 0), map),
    inShort(page));
}

/** Once for paper and broad screens, once for narrow ones, whose words would be too small else; the style shows one of them. */
function band(summary: ReportModel['summary']): Content {
  const counts: readonly VerdictCount[] = [
    { verdict: 'clashes', count: summary.clashes, label: summary.clashes === 1 ? 'clashes' : 'clash' },
    { verdict: 'clashes', accepted: true, count: summary.accepted, label: 'accepted' },
    { verdict: 'open', count: summary.open, label: summary.open === 1 ? 'is open' : 'are open' },
    { verdict: 'holds', count: summary.holds, label: summary.holds === 1 ? 'joint holds' : 'joints hold' },
  ];
  const drawn = (width: number): Content => figure(verdictBand(counts, { width, height: 92 }, printTheme));
  return [html('figure', { class: 'band' }, drawn(680)), html('figure', { class: 'band slim' }, drawn(Math.max(300, narrowestBand(counts))))];
}

function mapFigure(page: Page, numbered: readonly ReportJoint[]): Content {
  const { parts } = page.model;
  const map = mapPicture(page, { width: 500, height: mapHeight(page, 500, [180, 360]) }, { numbered: numbered.map(({ id }) => id) });
  const outside = parts.filter((part) => part.sample !== undefined && !part.sample.inGamut).length;
  return map && html('figure', { class: 'map mat' }, map,
    html('figcaption', {}, `The cabin unfolded, parts in their measured colour under D65, ${page.model.observer}° observer. Saw: clashes; hollow saw: clashes, accepted; dashes: open; thin line: holds. Hatched: no colour to show. ${numbered.length > 0 ? 'Numbers as in the list. ' : ''}`,
      outside > 0 && `${counted(outside, 'part')} outside sRGB, shown by the nearest colour. `,
      'Screens and paper are no proof of colour.'));
}

/** The joints that clash, by name, with what is wrong, under which light and how sure; the numbers are those of the map. */
function found(page: Page, entries: readonly ReportJoint[], clashing: number, unaccepted: boolean): Markup {
  const { summary, joints } = page.model;
  const more = clashing - mostNamed;
  return html('section', { class: 'found', 'aria-label': clashing === 0 ? 'What is open' : unaccepted ? 'What clashes' : 'What clashes and is accepted' },
    clashing === 0 && html('p', { class: 'none' }, joints.length === 0 ? page.model.parts.length === 0 ? 'The cabin has no parts yet: there is nothing to judge.' : 'The parts have no joints yet: there is nothing to judge.' : 'No joint is known to clash.'),
    clashing > 0 && !unaccepted && html('p', { class: 'none' }, `No joint clashes beyond ${summary.accepted === 1 ? 'the one that was' : `the ${summary.accepted} that were`} accepted.`),
    entries.length > 0 && html('ol', {}, entries.map((entry) => html('li', {}, stripPicture(page, entry, entry.leading?.light ?? 'D65', { width: 46, height: 40 }),
      html('div', {}, html('a', { class: 'title', href: `#${jointAnchor(page.place(entry.id))}` }, jointNames(entry)), ' ', used(entry),
        html('p', { class: 'what' }, entries.length <= 2 ? withoutGrounds(entry.result.sentence) : inFew(entry)))))),
    more > 0 && html('p', { class: 'more' }, `and ${more} more in `, html('a', { href: unaccepted ? '#clashes' : '#accepted' }, unaccepted ? 'Clashes' : 'Accepted clashes'), '.'));
}

/** "146 % of the limit", or that it is open. */
const used = ({ result }: ReportJoint): Markup => html('span', { class: result.verdict === 'open' ? 'use open' : 'use' }, result.verdict === 'open' && 'open',
  result.limitUse !== undefined && [result.verdict === 'open' && ', ', data(result.limitUse, limitUseText(result.limitUse)), ' of the limit']);

/** The sentence without the rule and the number of spots, which stand in the joint's block. */
const withoutGrounds = (sentence: string): string => sentence.replace(/ By rule .*? spots(?: at [^.]*)?\./, '');

/** "Colour under FL11: CIEDE2000 1.95, 1.40 allowed; within its limits with < 1 %." */
function inFew({ leading }: ReportJoint): Content {
  if (leading === undefined) return undefined;
  if (leading.value === undefined) return leading.sentence;
  const decimals = decimalsOf(leading.unit);
  const unit = leading.unit === '' || /ratio/.test(leading.unit) ? '' : ` ${leading.unit}`;
  return [`${leading.check === 'near-miss' ? 'Near miss' : capital(leading.check)}${leading.light === undefined ? '' : ` under ${leading.light}`}: ${leading.check === 'gloss' ? `at ${quantityOf(leading)}` : quantityOf(leading)} `,
    data(leading.value, fixed(leading.value, decimals)), unit, leading.limit !== undefined && [leading.atLeast === true || leading.check === 'near-miss' ? ', at least ' : ', ', data(leading.limit, fixed(leading.limit, decimals)), unit, leading.atLeast === true || leading.check === 'near-miss' ? ' asked' : ' allowed'],
    leading.verdict === 'open' && leading.cause !== undefined && `; open: ${causeSentence(leading.cause)}`,
    leading.withinProbability !== undefined && ['; inside with ', data(leading.withinProbability, probability(leading.withinProbability)), ' probability'],
    leading.acceptedUntil !== undefined && `; accepted until ${leading.acceptedUntil}`, '.'];
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;

function inShort(page: Page): Markup {
  const { model } = page;
  const { summary } = model;
  return html('section', { class: 'short', 'aria-label': 'In short' }, terms([
    stepsShort(page),
    summary.open === 0 ? undefined : ['What is open', openShort(page)],
    summary.joints === 0 ? undefined : ['How sure', html('p', {},
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

/** Who is to act on the clashes that are named, under the same numbers. */
function stepsShort({ model: { nextSteps } }: Page): readonly [Content, ...Content[]] | undefined {
  if (nextSteps.length === 0) return undefined;
  return ['Who acts', html('ol', { class: 'steps' }, nextSteps.slice(0, mostNamed).map(({ sentences }) => html('li', {}, html('p', {}, html('strong', {}, sentences[0]), sentences.length > 1 && ` ${sentences.slice(1).join(' ')}`)))), html('p', { class: 'quiet small' }, mendCaution)];
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
  const names = new Map(page.input.cabin.suppliers.map((supplier) => [supplier.id, supplier.name]));
  const suppliers = [...new Set(model.requests.map((request) => names.get(request.supplier) ?? request.supplier))];
  const asked = suppliers.length > 4 ? `${suppliers.length} suppliers` : listed(suppliers);
  return html('p', {}, `${counted(open.length, 'joint')}: ${reasons.join('; ')}. `,
    decidable === 0 ? 'No number of readings is known to decide them. ' : `Readings asked of ${asked} would decide ${decidable === open.length ? 'all of them' : `${decidable} of them`}; `,
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
