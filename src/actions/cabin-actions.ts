import type { Cabin } from '../cabin/cabin.ts';
import { jsonObject } from '../cabin/schema/index.ts';
import { builtInRuleBooks, ruleBookById } from '../rules/built-in-rule-books.ts';
import { restoreRuleBook } from '../rules/restore-rule-book.ts';
import { defineAction } from './action.ts';
import { aDate, aName, aNumber, aText, clearable, needed, optional, structure } from './argument.ts';
import type { Refusal } from './edit.ts';
import { refuse, setFields } from './edit.ts';
import { changedFields } from './wording.ts';

const cabinFields = {
  name: optional(aName('Name')),
  trimLevel: clearable(aName('Trim level')),
  colourway: clearable(aName('Colourway')),
  phase: clearable(aName('Build phase')),
  revision: clearable(aName('Revision')),
  asOf: optional(aDate('Judged as of')),
  stage: clearable(aName('Stage that is judged')),
  volume: clearable(aNumber('Yearly volume', { min: 0, max: 1e9 })),
  note: clearable(aText('Note')),
};

export const setCabin = defineAction({
  id: 'cabin.set', title: 'Edit cabin', keywords: ['name', 'trim level', 'colourway', 'phase', 'revision', 'date', 'stage', 'volume', 'note'], group: 'Cabin', context: 'none',
  arguments: cabinFields,
  label: (values) => `Change ${changedFields(cabinFields, values, [])} of the cabin`,
  edit: (cabin, changes) => setFields<Cabin>(cabin, changes),
  subject: (cabin) => cabin,
});

export const renameCabin = defineAction({
  id: 'cabin.rename', title: 'Rename cabin', keywords: ['name'], group: 'Cabin', context: 'none',
  arguments: { name: needed(aName('Name')) },
  label: ({ name }) => `Rename the cabin to ${name}`,
  edit: (cabin, { name }) => setFields<Cabin>(cabin, { name }),
  subject: (cabin) => cabin,
});

export const setAsOf = defineAction({
  id: 'cabin.set-as-of', title: 'Judge as of another day', keywords: ['date', 'today', 'expiry'], group: 'Cabin', context: 'none',
  arguments: { asOf: needed(aDate('Judged as of')) },
  label: ({ asOf }) => `Judge as of ${asOf}`,
  edit: (cabin, { asOf }) => setFields<Cabin>(cabin, { asOf }),
  subject: (cabin) => cabin,
});

export const setStage = defineAction({
  id: 'cabin.set-stage', title: 'Judge at another stage', keywords: ['new', 'aged', 'light-exposed'], group: 'Cabin', context: 'none',
  arguments: { stage: clearable(aName('Stage that is judged')) },
  label: ({ stage }) => `Judge at stage ${stage ?? 'new'}`,
  edit: (cabin, { stage = null }) => setFields<Cabin>(cabin, { stage }),
  subject: (cabin) => cabin,
});

export const nameRuleBook = defineAction({
  id: 'cabin.name-rule-book', title: 'Judge by a built-in rule book', keywords: ['rules', 'limits', 'CMC', 'CIEDE2000'], group: 'Cabin', context: 'none',
  arguments: { ruleBook: needed(aName('Id of the rule book')) },
  label: ({ ruleBook }) => `Judge by the rule book ${ruleBookById(ruleBook)?.name ?? ruleBook}`,
  edit: (cabin, { ruleBook }): Cabin | Refusal => (ruleBookById(ruleBook) === undefined
    ? refuse('unknown-rule-book', JSON.stringify(ruleBook), `one of ${builtInRuleBooks.map(({ id }) => id).join(', ')}`)
    : setFields<Cabin>(cabin, { ruleBook })),
});

export const embedRuleBook = defineAction({
  id: 'cabin.embed-rule-book', title: 'Carry a rule book in the cabin', keywords: ['rules', 'own', 'limits', 'edit'], group: 'Cabin', context: 'none',
  arguments: { ruleBook: needed(structure('Rule book', jsonObject())) },
  label: ({ ruleBook }) => {
    const { name } = ruleBook as { readonly name?: unknown };
    return `Change the rule book${typeof name === 'string' ? ` ${name}` : ''}`;
  },
  edit: (cabin, { ruleBook }): Cabin | Refusal => {
    const { value, issues } = restoreRuleBook(ruleBook);
    const fault = issues.find(({ severity }) => severity === 'error');
    if (fault !== undefined) return { refused: { ...fault, path: ['ruleBook', fault.path].filter(Boolean).join('.') } };
    return value === undefined ? refuse('wrong-type', 'no rule book', 'a rule book') : setFields<Cabin>(cabin, { ruleBook });
  },
});

export const cabinActions = [setCabin, renameCabin, setAsOf, setStage, nameRuleBook, embedRuleBook] as const;
