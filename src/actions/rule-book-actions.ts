import type { CheckName } from '../cabin/cabin.ts';
import { number, tuple } from '../cabin/schema/index.ts';
import { formulaNames } from '../colour/difference-formula.ts';
import { builtInRuleBooks, ruleBookById } from '../rules/built-in-rule-books.ts';
import { bookCaps, geometryOrder, readingsWanted } from '../rules/rule-book-schema.ts';
import { lightRules } from '../rules/rule-schema.ts';
import { bookValues } from '../rules/rule-book.ts';
import { standardDeviations } from '../rules/material-schema.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { defineAction } from './action.ts';
import { aChoice, aFlag, aFormula, aName, aNumber, aText, clearable, needed, optional, structure } from './argument.ts';
import type { Asked } from './argument.ts';
import { bookOfCabin, editBook } from './carried-book.ts';
import { refuse, setFields } from './edit.ts';
import { freeId, idOfName, idsOf } from './next-id.ts';
import { argumentsOf, at, readAtPaths, setAtPaths } from './path-fields.ts';
import { standings } from './rule-actions.ts';
import { changedFields } from './wording.ts';

const positive = (label: string, max = 1000, unit?: string): Asked<number> => aNumber(label, { above: 0, max, ...(unit === undefined ? {} : { unit }) });
const factor = (label: string): Asked<number> => positive(label, 100);
const share = (label: string): Asked<number> => aNumber(label, { min: 0, max: 1 });
const standing = (check: CheckName): Asked<(typeof standings)[number]> => aChoice(`${check.charAt(0).toUpperCase()}${check.slice(1)} is`, standings);
const agreementSd: Asked<readonly [number, number, number]> = { label: 'Sd of an instrument without agreement set, L*, a*, b*', kind: 'numbers', schema: standardDeviations() };

const ratios = tuple<readonly [number, number]>('the lowest and highest ratio', number({ above: 0, max: 1 }), number({ min: 1, max: 100 }));

/** Everything of the book that is one value, by the name an action asks for it. */
const bookFields = {
  name: at(optional(aName('Name')), 'name'),
  note: at(optional(aText('Note')), 'note'),
  observer: at(optional(aChoice('Observer, °', [2, 10])), 'observer'),
  formula: at(optional(aChoice('Difference formula', formulaNames)), 'formula'),
  cmcL: at(optional(factor('l of CMC(l:c)')), 'cmc', 'l'),
  cmcC: at(optional(factor('c of CMC(l:c)')), 'cmc', 'c'),
  decision: at(optional(aChoice('Decision rule', ['guarded', 'simple'])), 'decision', 'rule'),
  confidence: at(optional(aNumber('Confidence', { above: 0.5, max: 0.9999 })), 'decision', 'confidence'),
  decisionBasis: at(optional(aText('Basis of the decision rule')), 'decision', 'basis'),
  colourStanding: at(optional(standing('colour')), 'standing', 'colour'),
  metamerismStanding: at(optional(standing('metamerism')), 'standing', 'metamerism'),
  glossStanding: at(optional(standing('gloss')), 'standing', 'gloss'),
  textureStanding: at(optional(standing('texture')), 'standing', 'texture'),
  nearMissStanding: at(optional(standing('near-miss')), 'standing', 'near-miss'),
  conditionsStanding: at(optional(standing('conditions')), 'standing', 'conditions'),
  masterStanding: at(optional(standing('master')), 'standing', 'master'),
  capStanding: at(optional(standing('cap')), 'standing', 'cap'),
  unlikeFamilyAllowance: at(optional(aNumber('Allowance for unlike families', { min: 0, max: 100 })), 'combination', 'unlikeFamilyAllowance'),
  lightnessCapBelowL: at(clearable(aNumber('Caps on |dL*| act below a mean L* of', { min: 0, max: 100 })), 'combination', 'lightnessCapBelowL'),
  combinationBasis: at(optional(aText('Basis of the combination')), 'combination', 'basis'),
  ratio: at(optional({ label: 'Ratio of Sa and of Sal, low and high', kind: 'numbers', schema: ratios }), 'texture', 'ratio'),
  strDifference: at(optional(positive('|dStr| at most', 1)), 'texture', 'strDifference'),
  vdiClass: at(optional(aNumber('VDI 3400 class within', { min: 0, max: 45 })), 'texture', 'vdiClass'),
  textureBasis: at(optional(aText('Basis of the texture limits')), 'texture', 'basis'),
  illuminance: at(optional(positive('Illuminance on the parts', 200_000, 'lx')), 'visibleTexture', 'illuminanceLx'),
  field: at(optional(positive('Side of the field that is looked at', 10_000, 'mm')), 'visibleTexture', 'fieldMm'),
  visibleLimit: at(optional(aFormula('Visible difference at most', { positive: true })), 'visibleTexture', 'limit'),
  visibleBasis: at(optional(aText('Basis of the visible texture')), 'visibleTexture', 'basis'),
  lightnessFromTexture: at(optional(aFlag('kL from texture is switched on')), 'textureLightness', 'enabled'),
  lightnessFormula: at(optional(aFormula('kL from texture', { positive: true })), 'textureLightness', 'formula'),
  lightnessBasis: at(optional(aText('Basis of kL from texture')), 'textureLightness', 'basis'),
  stepMinDL: at(optional(positive('Tone step, |dL*| from', 100)), 'toneStep', 'minDL'),
  stepMaxDL: at(optional(positive('to', 100)), 'toneStep', 'maxDL'),
  stepMaxDH: at(optional(positive('|dH*| at most', 100)), 'toneStep', 'maxDH'),
  stepBasis: at(optional(aText('Basis of the tone step')), 'toneStep', 'basis'),
  contrast: at(optional(positive('Contrast, difference at least')), 'contrast', 'minDifference'),
  contrastBasis: at(optional(aText('Basis of the contrast')), 'contrast', 'basis'),
  edge: at(optional(factor('Edge: colour limit times')), 'kinds', 'edge'),
  gap: at(optional(factor('Gap: colour limit times')), 'kinds', 'gap'),
  step: at(optional(factor('Step: colour limit times')), 'kinds', 'step'),
  seam: at(optional(factor('Seam: colour limit times')), 'kinds', 'seam'),
  sightline: at(optional(factor('Sightline: colour limit times')), 'kinds', 'sightline'),
  gapFactor: at(optional(aFlag('The factor of a visible gap is switched on')), 'gapFactor', 'enabled'),
  gapFormula: at(optional(aFormula('Factor of a visible gap', { positive: true })), 'gapFactor', 'formula'),
  gapBasis: at(optional(aText('Basis of the factor of a visible gap')), 'gapFactor', 'basis'),
  priorReadings: at(optional(positive('Weight of the assumed spread, as readings', 10_000)), 'assumed', 'priorReadings'),
  agreementSd: at(optional(agreementSd), 'assumed', 'agreementSd'),
  agreementGlossSd: at(optional(positive('Sd of a glossmeter without agreement set', 1000, 'GU')), 'assumed', 'agreementGlossSd'),
  textureSd: at(optional(positive('Relative sd of one texture reading', 1)), 'assumed', 'textureRelativeSd'),
  textureAgreementSd: at(optional(positive('Relative sd of a texture instrument', 1)), 'assumed', 'textureAgreementRelativeSd'),
  sameSession: at(optional(share('Correlation, same instrument and session')), 'assumed', 'correlation', 'sameSession'),
  sameInstrument: at(optional(share('Correlation, same instrument otherwise')), 'assumed', 'correlation', 'sameInstrument'),
  different: at(optional(share('Correlation, unlike or unknown instruments')), 'assumed', 'correlation', 'different'),
  maximumSpots: at(optional(aNumber('Most spots that are asked for', { min: 1, max: 10_000, whole: true })), 'assumed', 'maximumSpots'),
  assumedBasis: at(optional(aText('Basis of the assumed spreads')), 'assumed', 'basis'),
} as const;

const bookArguments = argumentsOf(bookFields);

export const setRuleBook = defineAction({
  id: 'rule-book.set', title: 'Edit rule book', keywords: ['decision', 'confidence', 'formula', 'observer', 'near miss', 'texture', 'factor', 'standing', 'name'], group: 'Rules', context: 'none',
  arguments: bookArguments,
  label: (values) => `Change ${changedFields(bookArguments, values, [])} of the rule book`,
  // The factors of CMC(l:c) come in a pair; where the book had none, the other one is the usual.
  edit: (cabin, changes) => editBook(cabin, (book) => setAtPaths(
    book.cmc === undefined && (changes.cmcL !== undefined || changes.cmcC !== undefined) ? { ...book, cmc: { l: 2, c: 1 } } : book, bookFields, changes)),
  subject: (cabin) => {
    const book = bookOfCabin(cabin);
    return book === undefined ? undefined : readAtPaths(book, bookFields);
  },
});

export const setBookLights = defineAction({
  id: 'rule-book.set-lights', title: 'Set lights of rule book', keywords: ['light', 'factor', 'required', 'shown', 'order'], group: 'Rules', context: 'none',
  arguments: { lights: needed(structure('Lights', lightRules())) },
  label: () => 'Change the lights of the rule book',
  edit: (cabin, { lights }) => editBook(cabin, (book) => setFields(book, { lights })),
  subject: (cabin) => bookOfCabin(cabin),
});

export const setBookCaps = defineAction({
  id: 'rule-book.set-caps', title: 'Set caps of rule book', keywords: ['gloss', 'lightness', 'zone', 'windscreen'], group: 'Rules', context: 'none',
  arguments: { caps: needed(structure('Caps', bookCaps())) },
  label: () => 'Change the caps of the rule book',
  edit: (cabin, { caps }) => editBook(cabin, (book) => setFields(book, { caps })),
  subject: (cabin) => bookOfCabin(cabin),
});

export const setReadingsWanted = defineAction({
  id: 'rule-book.set-readings-wanted', title: 'Set readings wanted by rule book', keywords: ['spots', 'parts', 'lot', 'approval', 'how many'], group: 'Rules', context: 'none',
  arguments: { readingsWanted: needed(structure('Readings wanted', readingsWanted())) },
  label: () => 'Change the readings wanted by the rule book',
  edit: (cabin, { readingsWanted: wanted }) => editBook(cabin, (book) => setFields(book, { readingsWanted: wanted.length === 0 ? null : wanted })),
  subject: (cabin) => bookOfCabin(cabin),
});

export const setGeometryOrder = defineAction({
  id: 'rule-book.set-geometry-order', title: 'Set order of geometries', keywords: ['45:0', 'di:8', 'de:8', 'rule book'], group: 'Rules', context: 'none',
  arguments: { geometryOrder: needed(structure('Geometries, the preferred one first', geometryOrder())) },
  label: ({ geometryOrder: order }) => `Prefer readings in the order ${order.join(', ')}`,
  edit: (cabin, { geometryOrder: order }) => editBook(cabin, (book) => setFields(book, { geometryOrder: order })),
  subject: (cabin) => bookOfCabin(cabin),
});

export const setBookBasis = defineAction({
  id: 'rule-book.set-basis', title: 'Set basis of a value of the rule book', keywords: ['source', 'practice'], group: 'Rules', context: 'none',
  arguments: { value: needed(aChoice('Value', bookValues)), basis: clearable(aText('Basis')) },
  label: ({ value }) => `Change the basis of ${value} of the rule book`,
  edit: (cabin, { value, basis }) => editBook(cabin, (book) => setAtPaths(book, { basis: at(clearable(aText('Basis')), 'bases', value) }, { basis })),
  subject: (cabin, values) => ({ basis: values.value === undefined ? undefined : bookOfCabin(cabin)?.bases?.[values.value] }),
});

export const beginRuleBook = defineAction({
  id: 'rule-book.begin', title: 'Begin a rule book from a built-in one', keywords: ['new', 'copy', 'own', 'rules'], group: 'Rules', context: 'none',
  arguments: { from: needed(aChoice('Built-in book', builtInRuleBooks.map(({ id }) => id))), name: needed(aName('Name')) },
  label: ({ name }) => `Begin the rule book ${name}`,
  edit: (cabin, { from, name }) => {
    const book = ruleBookById(from);
    if (book === undefined) return refuse('unknown-rule-book', JSON.stringify(from), 'a built-in rule book');
    return setFields<Cabin>(cabin, { ruleBook: { ...book, id: freeId(idOfName(name, 'book'), idsOf(builtInRuleBooks)), name } });
  },
});

export const ruleBookActions = [beginRuleBook, setRuleBook, setBookLights, setBookCaps, setReadingsWanted, setGeometryOrder, setBookBasis] as const;
