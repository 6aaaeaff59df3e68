import type { Cabin } from '../../src/cabin/cabin.ts';
import { actionById } from '../../src/actions/registry.ts';
import type { MaterialReach, MendOptions } from '../../src/plan/index.ts';
import { ownTerms } from '../../src/plan/mend/own-terms.ts';
import type { Options } from './source-terms.ts';

const listOf = (text: string | undefined): readonly string[] => (text === undefined || text === '' ? [] : text.split(','));
const atLeastNought = (text: string | undefined): number | undefined => {
  const value = text === undefined || text.trim() === '' ? NaN : Number(text);
  return Number.isFinite(value) && value >= 0 ? value : undefined;
};

/** Seconds for a plan where neither the address nor the cabin says. */
export const usualSeconds = 20;

/** Parts that stay as they are, and joints that do. */
export const lockedOf = (options: Options): readonly string[] => listOf(options['lock']);
export const exceptOf = (options: Options): readonly string[] => listOf(options['except']);

/** The options with an entry of a list put in, or taken out where it is there. */
export function toggled(options: Options, list: 'lock' | 'except', entry: string): Options {
  const entries = listOf(options[list]);
  return { ...options, [list]: (entries.includes(entry) ? entries.filter((one) => one !== entry) : [...entries, entry]).join(',') };
}

export const reachAxes = ['L', 'a', 'b', 'gloss'] as const;
export type ReachAxis = (typeof reachAxes)[number];

/** Reach by material, where it is another than the assumed one: `material:L:a:b:gloss`, with commas between materials. */
export const reachesOf = (options: Options): Readonly<Record<string, MaterialReach>> => Object.fromEntries(listOf(options['reach']).flatMap((text) => {
  const [material = '', ...numbers] = text.split(':');
  const [L, a, b, gloss] = numbers.map(atLeastNought);
  return material === '' || L === undefined || a === undefined || b === undefined || gloss === undefined ? [] : [[material, { L, a, b, gloss }] as const];
}));

/** What a change of a part costs, where it is another than its source states, by the part's id. */
export const costsOf = (options: Options): Readonly<Record<string, number>> => Object.fromEntries(listOf(options['cost']).flatMap((pair) => {
  const [part = '', text] = pair.split('=', 2);
  const cost = atLeastNought(text);
  return part === '' || cost === undefined ? [] : [[part, cost] as const];
}));

/** What an address asks for beside the cabin; what the cabin does not have is left out. */
function askedTerms(options: Options, cabin: Cabin): MendOptions {
  const parts = new Set(cabin.parts.map(({ id }) => id));
  const joints = new Set(cabin.joints.map(({ id }) => id));
  const materials = new Set<string>(cabin.parts.flatMap(({ sources }) => sources.map(({ material }) => material)));
  const locked = lockedOf(options).filter((part) => parts.has(part));
  const except = exceptOf(options).filter((joint) => joints.has(joint));
  const reach = Object.entries(reachesOf(options)).filter(([material]) => materials.has(material));
  const costs = Object.entries(costsOf(options)).filter(([part]) => parts.has(part));
  const timeLimitS = atLeastNought(options['time']) || undefined;
  return {
    ...(timeLimitS === undefined ? {} : { timeLimitS }),
    ...(locked.length === 0 ? {} : { locked }), ...(except.length === 0 ? {} : { except }), ...(options['frozen'] === 'free' ? { releaseFrozen: true } : {}),
    ...(reach.length === 0 ? {} : { reach: Object.fromEntries(reach) }), ...(costs.length === 0 ? {} : { costs: Object.fromEntries(costs) }),
  };
}

/** The terms of a mend as the address and the cabin state them together: the address goes first. Costs count for the cheapest set alone. */
export function mendTerms(options: Options, cabin: Cabin): MendOptions {
  const aim = options['aim'] === 'cheapest' ? 'cheapest' as const : 'fewest' as const;
  const { costs, ...terms } = ownTerms(cabin, askedTerms(options, cabin));
  return { aim, ...terms, timeLimitS: terms.timeLimitS ?? usualSeconds, ...(aim === 'fewest' || costs === undefined ? {} : { costs }) };
}

/** What an address asks for that the cabin does not hold, in a few words each. */
export function asksBeside(options: Options, cabin: Cabin): readonly string[] {
  const { locked = [], reach = {}, costs = {}, timeLimitS } = askedTerms(options, cabin);
  const part = (id: string) => cabin.parts.find((one) => one.id === id);
  return [
    ...locked.filter((id) => part(id)?.mend?.locked !== true).map((id) => `${part(id)?.name ?? id} locked`),
    ...Object.entries(reach).filter(([material, own]) => { const held = cabin.planning?.reach?.[material]; return reachAxes.some((axis) => own[axis] !== held?.[axis]); }).map(([material, own]) => `reach of ${material}: ${reachAxes.map((axis) => own[axis]).join(', ')}`),
    ...Object.entries(costs).filter(([id, cost]) => part(id)?.mend?.cost !== cost).map(([id, cost]) => `a change of ${part(id)?.name ?? id} costs ${cost}`),
    ...(timeLimitS === undefined || timeLimitS === cabin.planning?.timeLimitS ? [] : [`${timeLimitS} s allowed`]),
  ];
}

/** The cabin with what the address asks for kept in it: one document, for one step of undo. */
export function withAskedTerms(options: Options, cabin: Cabin): Cabin {
  const { locked = [], reach = {}, costs = {}, timeLimitS } = askedTerms(options, cabin);
  const steps: readonly (readonly [string, Readonly<Record<string, unknown>>])[] = [
    ...locked.map((part) => ['part.set-mend', { part, locked: true }] as const),
    ...Object.entries(reach).map(([material, own]) => ['planning.set-reach', { material, ...own }] as const),
    ...Object.entries(costs).map(([part, cost]) => ['part.set-mend', { part, cost }] as const),
    ...(timeLimitS === undefined ? [] : [['planning.set-time', { timeLimitS }] as const]),
  ];
  return steps.reduce<Cabin>((made, [id, values]) => actionById(id)?.run(made, values).value ?? made, cabin);
}

/** Whether a plan of one document is a plan of another as well, as far as its terms are the same: whatever else is planned by is the same object. */
export function planStands(made: Cabin, now: Cabin): boolean {
  if (made === now) return true;
  const { parts, planning: _planning, name: _name, note: _note, ...rest } = made;
  const others = now as unknown as Readonly<Record<string, unknown>>;
  const alike = (a: object, b: object): boolean => Object.keys({ ...a, ...b }).every((key) => key === 'mend' || key === 'note' || (a as Readonly<Record<string, unknown>>)[key] === (b as Readonly<Record<string, unknown>>)[key]);
  return Object.entries(rest).every(([key, value]) => others[key] === value) && parts.length === now.parts.length && parts.every((part, place) => { const other = now.parts[place]; return other !== undefined && (part === other || alike(part, other)); });
}
