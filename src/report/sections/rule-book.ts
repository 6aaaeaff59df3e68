import type { MaterialClass, PairRule } from '../../rules/rule-book.ts';
import type { Content, Markup } from '../markup.ts';
import type { Page } from '../page.ts';
import { formulaLabel } from '../../colour/index.ts';
import { data, html, named } from '../markup.ts';
import { section, table, terms } from '../pieces.ts';
import { basis } from './method.ts';

const given = (value: number | undefined): Content => (value === undefined ? '–' : data(value, String(value)));

/** The limits that were applied, each with its basis. */
export function ruleBookSection(page: Page): Markup {
  const { ruleBook: book } = page.model;
  const used = new Set(page.model.parts.map((part) => part.material));
  return section('rule-book', 'Rule book',
    html('p', { class: 'lead' }, html('strong', {}, named(book.name)), '. ', book.note),
    table<MaterialClass>('Materials: limit of a match between two parts of the same material', [
      { title: 'Material', cell: (row) => [named(row.material), !used.has(row.material) && html('span', { class: 'quiet' }, ' not in this cabin')] },
      { title: 'Family', cell: (row) => named(row.family) },
      { title: 'Colour', number: true, cell: (row) => [given(row.colourLimit), row.advisory === true && html('span', { class: 'quiet' }, ' advisory')] },
      { title: 'kL', number: true, cell: (row) => given(row.kL) },
      { title: '|ΔL*| cap, dark', number: true, cell: (row) => given(row.lightnessCap) },
      { title: 'Gloss', cell: (row) => glossText(row) },
      { title: 'To its master', number: true, cell: (row) => given(row.masterColourLimit) },
      { title: 'Reading sd', unit: 'L* a* b*', cell: (row) => row.readingSd.map(String).join(' ') },
      { title: 'Spots', number: true, cell: (row) => given(row.wanted.spots) },
      { title: 'Basis', wide: true, cell: (row) => basis(row.basis) },
    ], book.materials),
    terms([
      ['Unlike materials', `The larger of both colour limits, plus ${book.combination.unlikeFamilyAllowance} where the families differ; the smaller kL and lightness cap. `, basis(book.combination.basis)],
      ['Same grain', `Ratios of Sa and Sal ${book.texture.ratio.join(' to ')}, Str within ${book.texture.strDifference}, VDI 3400 class within ${book.texture.vdiClass}. `, basis(book.texture.basis)],
      ['Tone step', `|ΔL*| ${book.toneStep.minDL} to ${book.toneStep.maxDL} and |ΔH*| at most ${book.toneStep.maxDH}. `, basis(book.toneStep.basis)],
      ['Contrast', `At least ${book.contrast.minDifference} in ${formulaLabel({ name: 'ciede2000' })}. `, basis(book.contrast.basis)],
      ['Kinds of joint', Object.entries(book.kinds).map(([kind, factor]) => `${kind} × ${factor}`).join(', ')],
      ['Visible gap', book.gapFactor.enabled ? `limit × ${book.gapFactor.formula} ` : 'no factor for a visible gap ', basis(book.gapFactor.basis)],
      book.caps.length === 0 ? undefined : ['Caps', book.caps.map((cap, index) => [index > 0 && '; ', named(cap.zone), `: ${cap.quantity} at most ${cap.max}${cap.quantity === 'gloss' ? ` GU at ${cap.angle ?? 60}°` : ''} `, basis(cap.basis)])],
    ]),
    pairRules(book.rules));
}

function glossText({ gloss }: MaterialClass): string {
  if (gloss.kind === 'not applicable') return 'not applicable';
  if (gloss.kind === 'limit') return `${gloss.limit} GU at ${gloss.angle}°`;
  return `larger of ${gloss.floor} GU and ${gloss.share * 100} % of mean GU60; above ${gloss.switchGu60} GU60 ${gloss.limit20} GU at 20°`;
}

function pairRules(rules: readonly PairRule[]): Content {
  return rules.length > 0 && table<PairRule>('Rules for pairs, on top of the materials', [
    { title: 'Rule', cell: (rule) => named(rule.id) },
    { title: 'Pair', cell: (rule) => rule.pair.map((material) => (material === '*' ? 'any' : material)).join(' with ') },
    { title: 'Where', cell: (rule) => [rule.intent, rule.kind, rule.zone && `zone ${rule.zone}`].filter(Boolean).join(', ') || 'everywhere' },
    { title: 'Says', wide: true, cell: (rule) => named(ruleText(rule)) },
    { title: 'Basis', wide: true, cell: (rule) => basis(rule.basis) },
  ], rules);
}

function ruleText(rule: PairRule): string {
  const { colour } = rule;
  return [
    colour?.limit !== undefined && `colour limit ${colour.limit}`,
    colour?.formula !== undefined && formulaLabel({ name: colour.formula }),
    colour?.kL !== undefined && `kL ${colour.kL}`, colour?.kC !== undefined && `kC ${colour.kC}`, colour?.kH !== undefined && `kH ${colour.kH}`,
    colour?.lights !== undefined && `lights ${colour.lights.map((light) => `${light.light} × ${light.factor}`).join(', ')}`,
    ...(colour?.components ?? []).map((component) => `${component.component} ${component.min ?? ''} to ${component.max ?? ''}${component.belowL === undefined ? '' : ` below L* ${component.belowL}`}`),
    rule.gloss && (rule.gloss.kind === 'not applicable' ? `gloss not applicable: ${rule.gloss.reason}` : rule.gloss.kind === 'limit' ? `gloss ${rule.gloss.limit} GU at ${rule.gloss.angle}°` : 'gloss by level'),
    rule.metamerismLimit !== undefined && `metamerism ${rule.metamerismLimit}`,
    rule.defaultIntent && `intent ${Object.entries(rule.defaultIntent).map(([check, intent]) => `${check} ${intent}`).join(', ')}`,
    rule.standing && Object.entries(rule.standing).map(([check, standing]) => `${check} ${standing}`).join(', '),
  ].filter((words) => words !== false && words !== undefined && words !== '').join('; ');
}
