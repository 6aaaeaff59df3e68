import type { CheckResult, JudgedOn, LightResult } from '../../harmony/judgement.ts';
import type { Content, Markup } from '../markup.ts';
import type { ReportJoint } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { decimalsOf, fixed, limitUseText, probability, signed } from '../number-text.ts';
import { jointAnchor, table, verdictWord } from '../pieces.ts';
import { spectraPicture, stripPicture, usePicture } from '../pictures.ts';
import { sidesTable } from './sides-table.ts';

/** One joint on one block: what it is, the sentence, both sides under the worst light and D65, spectra, every check and light, what it was judged on. */
export function jointBlock(page: Page, entry: ReportJoint, ...more: readonly Content[]): Markup {
  const { result, joint, leading } = entry;
  const anchor = jointAnchor(page.place(entry.id));
  const facts = [joint.gapMm !== undefined && joint.gapMm > 0 ? `${joint.kind === 'gap' ? 'gap' : `${joint.kind}, gap`} of ${joint.gapMm} mm` : joint.kind, joint.stepMm !== undefined && `${joint.stepMm} mm step`,
    joint.viewMm !== undefined && `seen from ${joint.viewMm} mm`, `colour intent ${result.intent.colour}`].filter((fact) => fact !== false);
  const others = result.checks.filter((check) => check !== leading && (check.verdict === 'clashes' || check.verdict === 'open'));
  const tables = result.checks.filter((check) => check.lights.length > 0 && (check === leading || check.verdict === 'clashes' || check.verdict === 'open'));
  return html('article', { class: `joint ${result.verdict}`, id: anchor, 'aria-labelledby': `${anchor}-title` },
    html('header', {},
      html('h3', { id: `${anchor}-title` }, named(entry.names[0]), html('span', { class: 'against' }, ' and '), named(entry.names[1])),
      html('p', { class: 'big' }, leading?.value !== undefined && [data(result.limitUse, limitUseText(result.limitUse)), html('span', { class: 'quiet' }, ' of the limit')]),
      html('p', { class: 'facts' }, verdictWord(result), ' · ', named(entry.id), ' · ', facts.join(' · '))),
    html('p', { class: 'sentence' }, result.sentence),
    others.map((check) => html('p', { class: 'further' }, check.sentence)),
    html('div', { class: 'evidence' }, strips(page, entry), spectra(page, entry)),
    more,
    checksTable(result.checks),
    tables.map((check) => lightsTable(check)),
    sidesTable(page, entry),
    html('p', { class: 'judged' }, html('span', { class: 'quiet' }, 'Judged on: '), result.judgedOn.map((side, index) => [index > 0 && '; ', judgedOn(page, side)]), '. ',
      html('span', { class: 'quiet' }, 'Rule: '), result.ruleWhy, result.lotProbability !== undefined && [' A random pair of parts of these lots holds with a probability of ', data(result.lotProbability, probability(result.lotProbability)), '.']),
    cautionList(result.checks));
}

function strips(page: Page, entry: ReportJoint): Content {
  const light = entry.leading?.light;
  const lights = light === undefined || light === 'D65' ? ['D65'] : [light, 'D65'];
  const size = { width: 300, height: lights.length === 1 ? 150 : 70 };
  const result = (name: string): LightResult | undefined => entry.result.checks.flatMap((check) => check.lights).find((candidate) => candidate.light === name);
  return html('div', { class: 'strips' }, lights.map((name) => {
    const under = result(name);
    return html('figure', {}, html('div', { class: 'mat' }, stripPicture(page, entry, name, size)),
      html('figcaption', {}, html('strong', {}, name), name === light && name !== 'D65' && ', the worst light', under && [': ', under.words.length > 0 ? under.words.join(', ') : 'no direction stands out'],
        [entry.result.standard, entry.result.trial].some((part) => page.sample(part, name)?.inGamut === false) && '; outside sRGB, nearest colour shown'));
  }));
}

function spectra(page: Page, entry: ReportJoint): Content {
  const picture = spectraPicture(page, entry, { width: 410, height: 226 });
  return picture && html('figure', { class: 'spectra' }, picture,
    html('figcaption', {}, 'Standard solid, trial dashed; below, their difference on its own scale.'));
}

/** What the value of a check is: the formula, or the criterion where that decides. */
export const quantityOf = ({ formula, criterion }: CheckResult): string => (criterion !== undefined && criterion !== 'ΔE' ? criterion : formula ?? '');

const amount = (check: CheckResult, value: number | undefined): Content => [data(value, fixed(value, decimalsOf(check.unit))), value !== undefined && check.unit !== '' && html('span', { class: 'quiet' }, ` ${check.unit}`)];

/** Every check of a joint or a part: its value and limit, what the value uses of the limit, how sure, its verdict. */
export function checksTable(checks: readonly CheckResult[], caption: Content = ['Checks', html('span', { class: 'quiet' }, ' u: standard uncertainty of the value. Within: probability that the true value is inside the limit.')]): Markup {
  return table<CheckResult>(caption, [
    { title: 'Check', cell: (check) => [check.check, check.subject !== undefined && [' ', named(check.subject)], check.standing !== 'required' && html('span', { class: 'quiet' }, ` ${check.standing}`)] },
    { title: 'Verdict', cell: (check) => [verdictWord(check), check.acceptedUntil !== undefined && html('span', { class: 'quiet steady' }, ` until ${check.acceptedUntil}`)] },
    { title: 'Value', number: true, cell: (check) => amount(check, check.value) },
    { title: 'Limit', number: true, cell: (check) => amount(check, check.limit) },
    { title: 'Limit use', number: true, cell: (check) => [usePicture(check), data(check.limitUse, limitUseText(check.limitUse))] },
    { title: 'u', number: true, cell: (check) => data(check.uncertainty, fixed(check.uncertainty, decimalsOf(check.unit))) },
    { title: 'Within', number: true, cell: (check) => data(check.withinProbability, probability(check.withinProbability)) },
    { title: 'By', cell: (check) => [quantityOf(check), check.light !== undefined && [quantityOf(check) !== '' && ', ', check.light], check.indicative && ' (indicative)'] },
  ], checks.filter((check) => check.verdict !== 'not applicable'), 'checks compact');
}

function lightsTable(check: CheckResult): Markup {
  const observer = check.lights[0].observer;
  return table<LightResult>([`By light: ${check.check}, ${check.formula ?? check.unit}, ${observer}° observer; trial minus standard`], [
    { title: 'Light', cell: (light) => [light.light, light.light === check.light && light.standing === 'required' && html('span', { class: 'quiet' }, ' worst'), light.standing === 'shown' && html('span', { class: 'quiet' }, ' shown only')] },
    { title: 'Value', number: true, cell: (light) => data(light.value, fixed(light.value, 2)) },
    { title: 'Limit', number: true, cell: (light) => data(light.limit, fixed(light.limit, 2)) },
    { title: 'Use', number: true, cell: (light) => data(light.limitUse, limitUseText(light.limitUse)) },
    { title: 'u', number: true, cell: (light) => data(light.uncertainty, fixed(light.uncertainty, 2)) },
    { title: 'Within', number: true, cell: (light) => data(light.withinProbability, probability(light.withinProbability)) },
    ...(['dL', 'da', 'db', 'dC', 'dH'] as const).map((component) => ({
      title: componentNames[component], number: true, cell: (light: LightResult) => data(light.difference[component], signed(light.difference[component], 2)),
    })),
    ...(check.lights.some((light) => light.criteria.some((criterion) => criterion.name !== 'ΔE')) ? [{ title: 'Also limited', cell: criteria }] : []),
    { title: 'The trial is', cell: (light: LightResult) => light.words.join(', ') },
  ], check.lights, 'lights compact');
}

/** Limits beside the formula's under one light: on components, or those of another intent than a match. */
function criteria(light: LightResult): Content {
  return light.criteria.filter((criterion) => criterion.name !== 'ΔE').map((criterion, index) => [
    index > 0 && '; ', criterion.name, ' ', data(criterion.value, signed(criterion.value, 2)), html('span', { class: 'quiet' }, ` ${band(criterion)}, `), data(criterion.limitUse, limitUseText(criterion.limitUse)),
  ]);
}

/** What a criterion allows: `±0.70`, `at least 5.00`, `5.00 to 15.00`. */
function band({ min, max }: LightResult['criteria'][number]): string {
  if (min !== undefined && max !== undefined) return -min === max ? `±${fixed(max, 2)}` : `${signed(min, 2)} to ${signed(max, 2)}`;
  return min === undefined ? `at most ${fixed(max, 2)}` : `at least ${fixed(min, 2)}`;
}

const componentNames = { dL: 'ΔL*', da: 'Δa*', db: 'Δb*', dC: 'ΔC*', dH: 'ΔH*' } as const;

/** What one side was judged on, as a phrase. */
export function judgedOn(page: Page, side: JudgedOn): Content {
  return [named(page.part(side.part)?.name ?? side.part), ' on ', side.kind, ' ', named(side.specimen), side.lot !== undefined && [', lot ', named(side.lot)],
    `, ${side.spots} ${side.spots === 1 ? 'spot' : 'spots'}, `, named(page.model.instruments.find((instrument) => instrument.id === side.instrument)?.name ?? side.instrument), `, ${side.geometry}`,
    side.borrowedFrom !== undefined && [', readings borrowed from its mirror part ', named(page.part(side.borrowedFrom)?.name ?? side.borrowedFrom)]];
}

function cautionList(checks: readonly CheckResult[]): Content {
  const cautions = [...new Set(checks.flatMap((check) => [...check.cautions, ...check.factorNotes ?? []]))];
  return cautions.length > 0 && html('ul', { class: 'caution' }, cautions.map((caution) => html('li', {}, caution)));
}
