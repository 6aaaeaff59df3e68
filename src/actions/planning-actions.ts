import type { Cabin, Part, PartMend, Planning, Reach } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { currencyText } from '../cabin/shapes/planning-shape.ts';
import { assumedReach } from '../plan/mend/material-reach.ts';
import { defineAction } from './action.ts';
import type { Asked } from './argument.ts';
import { aFlag, aName, aNumber, aReference, clearable, needed } from './argument.ts';
import type { Changes } from './edit.ts';
import { editPart, sameValue, setFields } from './edit.ts';
import { changedFields, partName } from './wording.ts';

const aCurrency = (label: string): Asked<string> => ({ label, kind: 'name', schema: currencyText });
const span = { min: 0, max: 200 };
const reachFields = {
  L: clearable(aNumber('Reach in L*', span)),
  a: clearable(aNumber('Reach in a*', span)),
  b: clearable(aNumber('Reach in b*', span)),
  gloss: clearable(aNumber('Reach in gloss', { ...span, unit: 'GU' })),
};

/** An object without its members that say nothing; `null` where none is left, so that the field goes. */
const orNothing = <T extends object>(value: T): T | null => (Object.keys(value).length === 0 ? null : value);

const planned = (cabin: Cabin, changes: Changes<Planning>): Cabin => setFields<Cabin>(cabin, { planning: orNothing(setFields<Planning>(cabin.planning ?? {}, changes)) });

/** A reach with some of its axes set, those set to nothing as in `base`; `null` where it is that of `base` again. */
function reachWith(own: Reach | undefined, base: Reach, changes: Changes<Reach>): Reach | null {
  const axes = Object.entries(changes).map(([axis, value]) => [axis, value ?? base[axis as keyof Reach]] as const).filter(([, value]) => value !== undefined);
  const made: Reach = { ...(own ?? base), ...Object.fromEntries(axes) };
  return sameValue(made, base) ? null : made;
}

const given = (changes: Changes<Reach>): Changes<Reach> => Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));

/** What a part of that material can be taken by where nothing is said at the part itself. */
const reachOfMaterial = (cabin: Cabin, material: string): Reach => {
  const own = cabin.planning?.reach;
  return (own !== undefined && Object.hasOwn(own, material) ? own[material] : undefined) ?? assumedReach(material);
};

export const setReach = defineAction({
  id: 'planning.set-reach', title: 'Set reach of a material', keywords: ['mend', 'how far', 'pigment', 'gloss', 'supplier says'], group: 'Plans', context: 'none',
  arguments: { material: needed(aName('Material')), ...reachFields },
  label: ({ material, ...changes }) => (Object.values(changes).every((value) => value === null) ? `Take ${material} to the assumed reach again` : `Change the ${changedFields(reachFields, changes, [])} of ${material}`),
  edit: (cabin, { material, ...changes }) => {
    const known = cabin.planning?.reach ?? {};
    const own = reachWith(Object.hasOwn(known, material) ? known[material] : undefined, assumedReach(material), given(changes));
    return planned(cabin, { reach: orNothing(setFields<Record<string, Reach>>(known, { [material]: own })) });
  },
  subject: (cabin, { material }) => (material === undefined ? undefined : cabin.planning?.reach?.[material]),
});

export const setMend = defineAction({
  id: 'part.set-mend', title: 'Set what a mend keeps to', keywords: ['lock', 'cost of a change', 'reach', 'mend'], group: 'Plans', context: 'part',
  arguments: {
    part: needed(aReference('Part', 'part')),
    locked: clearable(aFlag('A mend leaves it as it is')),
    cost: clearable(aNumber('Cost of a change', { min: 0, max: 1e12 })),
    ...reachFields,
  },
  label: ({ part, ...changes }, cabin) => {
    const { locked, ...others } = changes;
    if (locked !== undefined && Object.values(others).every((value) => value === undefined)) return `${locked === true ? 'Lock' : 'Let'} ${partName(cabin, part)}${locked === true ? ' against a mend' : ' be mended'}`;
    return `Change what a mend of ${partName(cabin, part)} keeps to`;
  },
  edit: (cabin, { part, locked, cost, ...reach }) => editPart(cabin, part, (of) => {
    const material = (of.sources.find(({ id }) => id === of.source) ?? of.sources[0])?.material ?? '';
    const own = Object.values(reach).every((value) => value === undefined) ? undefined : reachWith(of.mend?.reach, reachOfMaterial(cabin, material), given(reach));
    const mend = setFields<PartMend>(of.mend ?? {}, { locked: locked === false ? null : locked, cost, reach: own });
    return setFields<Part>(of, { mend: orNothing(mend) });
  }),
  subject: (cabin, { part }) => {
    const mend = cabinIndex(cabin).parts.get(part ?? '')?.mend;
    return mend === undefined ? undefined : { ...mend, ...mend.reach };
  },
});

export const setPlanningTime = defineAction({
  id: 'planning.set-time', title: 'Set the time a plan may take', keywords: ['limit', 'seconds', 'mend', 'choose'], group: 'Plans', context: 'none',
  arguments: { timeLimitS: clearable(aNumber('Time allowed for a plan', { above: 0, max: 86_400, unit: 's' })) },
  label: ({ timeLimitS }) => (typeof timeLimitS === 'number' ? `Allow a plan ${timeLimitS} s` : 'Allow a plan the usual time'),
  edit: (cabin, { timeLimitS }) => planned(cabin, { timeLimitS }),
  subject: (cabin) => cabin.planning,
});

export const setPlanningCurrency = defineAction({
  id: 'planning.set-currency', title: 'Set the money that plans are reckoned in', keywords: ['currency', 'EUR', 'exchange'], group: 'Plans', context: 'none',
  arguments: { currency: clearable(aCurrency('Currency')) },
  label: ({ currency }) => (typeof currency === 'string' ? `Reckon plans in ${currency}` : 'Reckon plans in the currency of the prices'),
  edit: (cabin, { currency }) => planned(cabin, { currency }),
  subject: (cabin) => cabin.planning,
});

export const setRate = defineAction({
  id: 'planning.set-rate', title: 'Set an exchange rate', keywords: ['currency', 'convert', 'money', 'price'], group: 'Plans', context: 'none',
  arguments: { currency: needed(aCurrency('Currency')), rate: clearable(aNumber('Worth of one unit', { above: 0, max: 1e9 })) },
  label: ({ currency, rate }) => (typeof rate === 'number' ? `Reckon one ${currency} as ${rate}` : `Take out the rate of ${currency}`),
  edit: (cabin, { currency, rate }) => planned(cabin, { rates: orNothing(setFields<Record<string, number>>(cabin.planning?.rates ?? {}, { [currency]: rate })) }),
  subject: (cabin, { currency }) => {
    const rate = currency === undefined ? undefined : cabin.planning?.rates?.[currency];
    return rate === undefined ? undefined : { currency, rate };
  },
});

export const planningActions = [setReach, setMend, setPlanningTime, setPlanningCurrency, setRate] as const;
