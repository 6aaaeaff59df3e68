import { colourIntents, jointKinds, surfaceIntents } from '../cabin/cabin.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { formulaNames } from '../colour/difference-formula.ts';
import { componentRules, idPattern, lightRules } from '../rules/rule-schema.ts';
import type { PairRule, RuleBook } from '../rules/rule-book.ts';
import { defineAction } from './action.ts';
import { aChoice, aFormula, aName, aPlace, aReference, aText, clearable, needed, optional, structure } from './argument.ts';
import { bookOfCabin, editBook } from './carried-book.ts';
import { editById, isRefusal, refuse, setFields, without } from './edit.ts';
import type { Edited } from './edit.ts';
import { glossRuleFields, glossRuleValues, withGlossRule } from './gloss-rule-fields.ts';
import { freeId, idsOf } from './next-id.ts';
import { argumentsOf, at, readAtPaths, setAtPaths } from './path-fields.ts';
import { changedFields } from './wording.ts';

export const standings = ['required', 'if-measured', 'advisory'] as const;

const rule = needed(aReference('Rule', 'rule'));
const ruleOf = (cabin: Cabin, id: string | undefined): PairRule | undefined => bookOfCabin(cabin)?.rules.find((one) => one.id === id);

const editRules = (cabin: Cabin, edit: (rules: RuleBook['rules'], book: RuleBook) => Edited<RuleBook['rules']>): Edited<Cabin> => editBook(cabin, (book) => {
  const rules = edit(book.rules, book);
  return isRefusal(rules) ? rules : rules === book.rules ? book : { ...book, rules };
});

const editRule = (cabin: Cabin, id: string, edit: (of: PairRule) => PairRule): Edited<Cabin> => editRules(cabin, (rules) => editById(rules, id, edit));

/** `moulded-painted-gap`, free in the book. */
function newRuleId(rules: RuleBook['rules'], { pair, intent, kind, zone }: Pick<PairRule, 'pair' | 'intent' | 'kind' | 'zone'>): string {
  const words = [...[...pair].sort().map((material) => (material === '*' ? 'any' : material)), intent, kind, zone].filter((word) => word !== undefined);
  return freeId(words.join('-').replaceAll(/[^\w.-]+/g, '-').replace(/^[^A-Za-z0-9]+/, '') || 'rule', idsOf(rules));
}

const reachFields = { intent: clearable(aChoice('Only for the intent', colourIntents)), kind: clearable(aChoice('Only for the kind of joint', jointKinds)), zone: clearable(aName('Only in the zone')) };

export const addRule = defineAction({
  id: 'rule.add', title: 'Add rule for a pair of materials', keywords: ['rule book', 'limit', 'pairing', 'new'], group: 'Rules', context: 'none',
  arguments: {
    one: needed(aReference('One material', 'paired material')), other: needed(aReference('The other', 'paired material')), ...reachFields,
    limit: optional(aFormula('Colour limit', { positive: true })), basis: needed(aText('Basis')),
  },
  label: ({ one, other }) => `Add a rule for ${pairText([one, other])}`,
  edit: (cabin, { one, other, intent, kind, zone, limit, basis }) => editRules(cabin, (rules) => {
    const reach = { pair: [one, other] as const, ...(intent ? { intent } : {}), ...(kind ? { kind } : {}), ...(zone ? { zone } : {}) };
    return [...rules, { id: newRuleId(rules, reach), ...reach, ...(limit === undefined ? {} : { colour: { limit } }), basis }];
  }),
});

export const pairText = (pair: PairRule['pair']): string => {
  const [one, other] = pair.map((material) => (material === '*' ? 'any material' : material));
  return one === other ? `${one} against its like` : `${one} and ${other}`;
};

export const duplicateRule = defineAction({
  id: 'rule.duplicate', title: 'Duplicate rule', keywords: ['copy', 'rule book'], group: 'Rules', context: 'rule',
  arguments: { rule },
  label: ({ rule: id }) => `Duplicate the rule ${id}`,
  edit: (cabin, { rule: id }) => editRules(cabin, (rules) => {
    const place = rules.findIndex((one) => one.id === id);
    const of = rules[place];
    return of === undefined ? refuse('unknown-rule', JSON.stringify(id), 'a rule of the rule book') : rules.toSpliced(place + 1, 0, { ...of, id: freeId(of.id, idsOf(rules)) });
  }),
});

export const removeRule = defineAction({
  id: 'rule.remove', title: 'Remove rule', keywords: ['delete', 'rule book'], keys: ['Delete'], group: 'Rules', context: 'rule',
  arguments: { rule },
  label: ({ rule: id }) => `Remove the rule ${id}`,
  edit: (cabin, { rule: id }) => editRules(cabin, (rules) => without(rules, (one) => one.id === id)),
});

export const moveRule = defineAction({
  id: 'rule.move', title: 'Move rule in the book', keywords: ['order', 'before', 'after', 'rule book'], group: 'Rules', context: 'rule',
  arguments: { rule, place: needed(aPlace('Place in the book')) },
  label: ({ rule: id, place }) => `Make ${id} rule ${place + 1} of the book`,
  edit: (cabin, { rule: id, place }) => editRules(cabin, (rules) => {
    const from = rules.findIndex((one) => one.id === id);
    const of = rules[from];
    const to = Math.min(place, rules.length - 1);
    return of === undefined || from === to ? rules : rules.toSpliced(from, 1).toSpliced(to, 0, of);
  }),
});

export const setRuleId = defineAction({
  id: 'rule.set-id', title: 'Change id of rule', keywords: ['rename', 'name', 'rule book'], keys: ['F2'], group: 'Rules', context: 'rule',
  arguments: { rule, id: needed(aName('Id')) },
  label: ({ rule: before, id }) => `Call the rule ${before} ${id}`,
  edit: (cabin, { rule: before, id }) => (idPattern.test(id) ? editRule(cabin, before, (of) => setFields(of, { id }))
    : refuse('bad-id', JSON.stringify(id), 'an id of letters, digits, points, hyphens and underscores')),
  subject: (cabin, values) => ruleOf(cabin, values.rule),
});

/** How a rule changes the standing of the checks of a joint. */
const standingOfRule = {
  colourStanding: at(clearable(aChoice('Colour is', standings)), 'standing', 'colour'),
  metamerismStanding: at(clearable(aChoice('Metamerism is', standings)), 'standing', 'metamerism'),
  glossStanding: at(clearable(aChoice('Gloss is', standings)), 'standing', 'gloss'),
  textureStanding: at(clearable(aChoice('Texture is', standings)), 'standing', 'texture'),
  nearMissStanding: at(clearable(aChoice('Near miss is', standings)), 'standing', 'near-miss'),
  conditionsStanding: at(clearable(aChoice('Conditions are', standings)), 'standing', 'conditions'),
} as const;

const valueFields = {
  intent: at(reachFields.intent, 'intent'), kind: at(reachFields.kind, 'kind'), zone: at(reachFields.zone, 'zone'),
  colourIntent: at(clearable(aChoice('Colour, where the joint says nothing', colourIntents)), 'defaultIntent', 'colour'),
  glossIntent: at(clearable(aChoice('Gloss, where the joint says nothing', surfaceIntents)), 'defaultIntent', 'gloss'),
  textureIntent: at(clearable(aChoice('Texture, where the joint says nothing', surfaceIntents)), 'defaultIntent', 'texture'),
  formula: at(clearable(aChoice('Difference formula', formulaNames)), 'colour', 'formula'),
  limit: at(clearable(aFormula('Colour limit', { positive: true })), 'colour', 'limit'),
  kL: at(clearable(aFormula('kL', { positive: true })), 'colour', 'kL'),
  kC: at(clearable(aFormula('kC', { positive: true })), 'colour', 'kC'),
  kH: at(clearable(aFormula('kH', { positive: true })), 'colour', 'kH'),
  metamerismLimit: at(clearable(aFormula('Metamerism limit', { positive: true })), 'metamerismLimit'),
  ...standingOfRule,
  basis: at(optional(aText('Basis')), 'basis'),
} as const;

const ruleArguments = {
  rule, one: optional(aReference('One material', 'paired material')), other: optional(aReference('The other', 'paired material')), ...argumentsOf(valueFields),
};

export const setRule = defineAction({
  id: 'rule.set', title: 'Edit rule', keywords: ['limit', 'formula', 'kL', 'intent', 'standing', 'basis', 'rule book'], group: 'Rules', context: 'rule',
  arguments: ruleArguments,
  label: (values) => `Change ${changedFields(ruleArguments, values, ['rule'])} of the rule ${values.rule}`,
  edit: (cabin, { rule: id, one, other, ...changes }) => editRule(cabin, id, (of) =>
    setAtPaths(setFields(of, { pair: [one ?? of.pair[0], other ?? of.pair[1]] as const }), valueFields, changes)),
  subject: (cabin, values) => {
    const of = ruleOf(cabin, values.rule);
    return of === undefined ? undefined : { one: of.pair[0], other: of.pair[1], ...readAtPaths(of, valueFields) };
  },
});

const ruleGlossArguments = { rule, ...glossRuleFields, kind: clearable(glossRuleFields.kind) };

export const setRuleGloss = defineAction({
  id: 'rule.set-gloss', title: 'Set gloss limit of rule', keywords: ['gloss', 'angle', 'haze', 'rule book'], group: 'Rules', context: 'rule',
  arguments: ruleGlossArguments,
  label: (values) => (values.kind === null ? `Leave the gloss of the rule ${values.rule} to the classes` : `Change ${changedFields(ruleGlossArguments, values, ['rule'])} of the rule ${values.rule}`),
  edit: (cabin, { rule: id, kind, ...values }) => editRule(cabin, id, (of) => setFields(of, { gloss: kind === null ? null : withGlossRule(of.gloss, { ...values, kind }) })),
  subject: (cabin, values) => glossRuleValues(ruleOf(cabin, values.rule)?.gloss),
});

export const setRuleLights = defineAction({
  id: 'rule.set-lights', title: 'Set lights of rule', keywords: ['light', 'factor', 'required', 'shown', 'rule book'], group: 'Rules', context: 'rule',
  arguments: { rule, lights: clearable(structure('Lights', lightRules())) },
  label: ({ rule: id, lights }) => (lights === null ? `Leave the lights of the rule ${id} to the book` : `Change the lights of the rule ${id}`),
  edit: (cabin, { rule: id, lights }) => editRule(cabin, id, (of) => setAtPaths(of, { lights: at(clearable(structure('Lights', lightRules())), 'colour', 'lights') }, { lights })),
  subject: (cabin, values) => ruleOf(cabin, values.rule)?.colour,
});

export const setRuleComponents = defineAction({
  id: 'rule.set-components', title: 'Set component limits of rule', keywords: ['dL*', 'da*', 'db*', 'dC*', 'dH*', 'rule book'], group: 'Rules', context: 'rule',
  arguments: { rule, components: clearable(structure('Component limits', componentRules())) },
  label: ({ rule: id, components }) => (components === null ? `Leave the component limits of the rule ${id} to the classes` : `Change the component limits of the rule ${id}`),
  edit: (cabin, { rule: id, components }) => editRule(cabin, id, (of) => setAtPaths(of, { components: at(clearable(structure('Component limits', componentRules())), 'colour', 'components') }, { components })),
  subject: (cabin, values) => ruleOf(cabin, values.rule)?.colour,
});

export const ruleActions = [addRule, setRule, setRuleGloss, setRuleLights, setRuleComponents, setRuleId, duplicateRule, moveRule, removeRule] as const;
