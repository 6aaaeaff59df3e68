import { formulaLabel } from '../colour/index.ts';
import { basisOf } from './combine-classes.ts';
import { glossRuleText } from './gloss-rule-text.ts';
import { plainNumber } from './plain-number.ts';
import type { BookValue, Expression, GlossRule, MaterialClass, PairRule, RuleBook } from './rule-book.ts';
import { ruleReach } from './select-rule.ts';

/** One value of a book as a report prints it. */
export interface BookRow {
  readonly group: 'method' | 'lights' | 'materials' | 'combination' | 'texture' | 'intents' | 'kinds' | 'caps' | 'assumed' | 'readings' | 'rules' | 'reachability';
  /** What the value belongs to: a light, a material, a rule. */
  readonly subject: string;
  readonly name: string;
  readonly value: string;
  readonly unit: string;
  readonly basis: string;
  /** A caution that goes with the value. */
  readonly caution?: string;
}

const unstated = 'no basis given';
const written = (expression: Expression): string => (typeof expression === 'number' ? plainNumber(expression) : expression);
const triple = (values: readonly number[]): string => values.map(plainNumber).join(', ');

export const bookFormulaLabel = (book: RuleBook): string =>
  formulaLabel({ name: book.formula, ...(book.formula === 'cmc' && book.cmc !== undefined ? book.cmc : {}) });

function methodRows(book: RuleBook): BookRow[] {
  const basis = (value: BookValue): string => book.bases?.[value] ?? unstated;
  const row = (name: string, value: string, unit: string, why: string): BookRow => ({ group: 'method', subject: 'the book', name, value, unit, basis: why });
  return [
    row('formula', bookFormulaLabel(book), '', basis('formula')),
    row('observer', plainNumber(book.observer), '°', basis('observer')),
    row('decision rule', book.decision.rule, '', book.decision.basis),
    row('confidence', plainNumber(book.decision.confidence), '', book.decision.basis),
    row('geometries, first that both sides have', book.geometryOrder.join(', '), '', basis('geometryOrder')),
    ...Object.entries(book.standing).map(([check, standing]) => row(`standing of ${check}`, standing, '', basis('standing'))),
  ];
}

const glossBasis = (rule: GlossRule): string => (rule.kind === 'limit' && rule.haze !== undefined ? `${rule.basis}; haze: ${rule.haze.basis}` : rule.basis);

function wantedText({ spots, rotations, specimens }: MaterialClass['wanted']): string {
  return [`${spots} spots`, ...(rotations === undefined ? [] : [`${rotations} rotations each`]), ...(specimens === undefined ? [] : [`${specimens} specimens`])].join(', ');
}

function materialRows(row: MaterialClass): BookRow[] {
  const make = (name: string, value: string, unit: string, basis: string): BookRow => ({ group: 'materials', subject: row.material, name, value, unit, basis });
  return [
    make('family', row.family, '', basisOf(row, 'family')),
    make('colour limit', plainNumber(row.colourLimit), '', basisOf(row, 'colourLimit')),
    make('kL', plainNumber(row.kL), '', basisOf(row, 'kL')),
    ...(row.lightnessCap === undefined ? [] : [make('cap on |dL*| in the dark', plainNumber(row.lightnessCap), '', basisOf(row, 'lightnessCap'))]),
    make('gloss', glossRuleText(row.gloss), '', glossBasis(row.gloss)),
    make('sd of one reading, L*, a*, b*', triple(row.readingSd), '', basisOf(row, 'readingSd')),
    ...(row.gloss.kind === 'not applicable' && row.masterGlossLimit === undefined && row.advisory !== true ? []
      : [make('sd of one gloss reading', plainNumber(row.glossSd), 'GU', basisOf(row, 'glossSd'))]),
    make('readings wanted', wantedText(row.wanted), '', basisOf(row, 'wanted')),
    make('limit to the master', plainNumber(row.masterColourLimit), '', basisOf(row, 'masterColourLimit')),
    ...(row.masterGlossLimit === undefined ? [] : [make('gloss limit to the master', plainNumber(row.masterGlossLimit), 'GU', basisOf(row, 'masterGlossLimit'))]),
    ...(row.advisory === true ? [make('standing', 'advisory', '', basisOf(row, 'advisory'))] : []),
    ...(row.sameGeometryOnly === true ? [make('compared', 'in the same geometry only', '', basisOf(row, 'sameGeometryOnly'))] : []),
  ];
}

function assumedRows({ assumed }: RuleBook): BookRow[] {
  const row = (name: string, value: string, unit = ''): BookRow => ({ group: 'assumed', subject: 'spreads', name, value, unit, basis: assumed.basis });
  return [
    row('weight of the assumed spread, as readings', plainNumber(assumed.priorReadings)),
    row('sd of an instrument without agreement set, L*, a*, b*', triple(assumed.agreementSd)),
    row('sd of a glossmeter without agreement set', plainNumber(assumed.agreementGlossSd), 'GU'),
    row('relative sd of one texture reading', plainNumber(assumed.textureRelativeSd * 100), '%'),
    row('relative sd of a texture instrument', plainNumber(assumed.textureAgreementRelativeSd * 100), '%'),
    row('correlation, same instrument and session', plainNumber(assumed.correlation.sameSession)),
    row('correlation, same instrument otherwise', plainNumber(assumed.correlation.sameInstrument)),
    row('correlation, different or unknown instruments', plainNumber(assumed.correlation.different)),
    row('most spots that are asked for', plainNumber(assumed.maximumSpots)),
  ];
}

function ruleRows(rule: PairRule): BookRow[] {
  const make = (name: string, value: string, basis = rule.basis): BookRow => ({ group: 'rules', subject: rule.id, name, value, unit: '', basis });
  const { colour = {} } = rule;
  const values = (['formula', 'limit', 'kL', 'kC', 'kH'] as const).flatMap((name) => {
    const value = colour[name];
    return value === undefined ? [] : [make(`colour ${name}`, written(value))];
  });
  return [
    make('speaks of', `${rule.pair.map((material) => (material === '*' ? 'any' : material)).join(' + ')}: ${ruleReach(rule)}`),
    ...values,
    ...(colour.lights ?? []).map((light) => make(`light ${light.light}`, light.standing === 'shown' ? 'shown only' : `limit times ${plainNumber(light.factor)}`, light.basis)),
    ...(colour.components ?? []).map(({ component, min, max, belowL, basis }) => make(
      `component ${component}${belowL === undefined ? '' : ` below L* ${plainNumber(belowL)}`}`,
      [...(min === undefined ? [] : [`from ${written(min)}`]), ...(max === undefined ? [] : [`to ${written(max)}`])].join(' '), basis,
    )),
    ...(rule.gloss === undefined ? [] : [make('gloss', glossRuleText(rule.gloss), glossBasis(rule.gloss))]),
    ...(rule.metamerismLimit === undefined ? [] : [make('metamerism limit', written(rule.metamerismLimit))]),
    ...Object.entries(rule.defaultIntent ?? {}).map(([check, intent]) => make(`intent of ${check}`, intent)),
    ...Object.entries(rule.standing ?? {}).map(([check, standing]) => make(`standing of ${check}`, standing)),
  ];
}

/** Every value of a book with its unit and its basis, in the order in which a report prints them. Empty units are pure numbers or words. */
export function describeBook(book: RuleBook): readonly BookRow[] {
  const { texture, toneStep, contrast, combination, gapFactor, visibleTexture, textureLightness } = book;
  const row = (group: BookRow['group'], subject: string, name: string, value: string, unit: string, basis: string): BookRow => ({ group, subject, name, value, unit, basis });
  return [
    ...methodRows(book),
    ...book.lights.map(({ light, factor, standing, basis }) =>
      row('lights', light, standing, standing === 'required' ? `limit times ${plainNumber(factor)}` : 'shown, not judged', '', basis)),
    ...book.materials.flatMap(materialRows),
    row('combination', 'unlike materials', 'colour limit', 'the larger of the two', '', combination.basis),
    row('combination', 'unlike materials', 'allowance for unlike families', plainNumber(combination.unlikeFamilyAllowance), '', combination.basis),
    row('combination', 'unlike materials', 'kL and cap on |dL*|', 'the smaller of the two', '', combination.basis),
    row('combination', 'unlike materials', 'caps on |dL*| act below a mean L* of', plainNumber(combination.lightnessCapBelowL ?? 35), '', combination.basis),
    row('combination', 'unlike materials', 'gloss limit', 'the larger of the two; not applicable where it is for either', '', combination.basis),
    row('intents', 'colour', 'by default', 'match; free where an advisory or patterned surface meets another', '', book.bases?.defaultIntents ?? unstated),
    row('intents', 'gloss', 'by default', 'match; free where a shiny material meets another family', '', book.bases?.defaultIntents ?? unstated),
    row('intents', 'texture', 'by default', 'match where both sides have the same grain, else free', '', book.bases?.defaultIntents ?? unstated),
    row('intents', 'tone-step', '|dL*|', `${plainNumber(toneStep.minDL)} to ${plainNumber(toneStep.maxDL)}`, '', toneStep.basis),
    row('intents', 'tone-step', '|dH*| at most', plainNumber(toneStep.maxDH), '', toneStep.basis),
    row('intents', 'contrast', 'difference at least', plainNumber(contrast.minDifference), '', contrast.basis),
    row('texture', 'same grain', 'ratio of Sa and of Sal', `${plainNumber(texture.ratio[0])} to ${plainNumber(texture.ratio[1])}`, '', texture.basis),
    row('texture', 'same grain', '|dStr| at most', plainNumber(texture.strDifference), '', texture.basis),
    row('texture', 'same grain', 'class of VDI 3400 within', plainNumber(texture.vdiClass), '', texture.basis),
    row('texture', 'visible texture', 'illuminance on the parts', plainNumber(visibleTexture.illuminanceLx), 'lx', visibleTexture.basis),
    row('texture', 'visible texture', 'side of the field that is looked at', plainNumber(visibleTexture.fieldMm), 'mm', visibleTexture.basis),
    row('texture', 'visible texture', 'visible difference at most', written(visibleTexture.limit), 'thresholds', visibleTexture.basis),
    row('texture', 'smoother side', textureLightness.enabled ? 'kL from texture' : 'kL from texture (switched off)', written(textureLightness.formula), '', textureLightness.basis),
    ...Object.entries(book.kinds).map(([kind, factor]) => row('kinds', kind, 'colour limit times', plainNumber(factor), '', book.bases?.kinds ?? unstated)),
    row('kinds', 'visible gap', gapFactor.enabled ? 'colour limit times' : 'colour limit times (switched off)', written(gapFactor.formula), '', gapFactor.basis),
    ...book.caps.map((cap): BookRow => ({
      ...row('caps', cap.zone, `${cap.quantity} at most`, plainNumber(cap.max), cap.quantity === 'gloss' ? `GU at ${cap.angle ?? 60}°` : 'L*', cap.basis),
      ...(cap.caution === undefined ? {} : { caution: cap.caution }),
    })),
    ...(book.readingsWanted ?? []).map(({ occasion, wanted, basis }) => row('readings', occasion, 'wanted', wanted, '', basis)),
    ...assumedRows(book),
    ...book.rules.flatMap(ruleRows),
  ];
}
