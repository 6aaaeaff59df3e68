import type { Cabin } from '../../src/cabin/cabin.ts';
import type { MaterialReach, MendOptions } from '../../src/plan/index.ts';
import type { Options } from './source-terms.ts';

const listOf = (text: string | undefined): readonly string[] => (text === undefined || text === '' ? [] : text.split(','));
const atLeastNought = (text: string | undefined): number | undefined => {
  const value = text === undefined || text.trim() === '' ? NaN : Number(text);
  return Number.isFinite(value) && value >= 0 ? value : undefined;
};

/** Seconds for each program where the address asks for nothing else. */
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

/** The options with one axis of a material's reach set; back to what is assumed where it is the same. */
export function withReach(options: Options, material: string, axis: ReachAxis, value: number | undefined, assumed: MaterialReach): Options {
  const { [material]: known, ...others } = reachesOf(options);
  const own = { ...(known ?? assumed), [axis]: value ?? assumed[axis] };
  const reaches = reachAxes.every((each) => own[each] === assumed[each]) ? others : { ...others, [material]: own };
  return { ...options, reach: Object.entries(reaches).map(([name, reach]) => [name, ...reachAxes.map((each) => reach[each])].join(':')).join(',') };
}

/** What a change of a part costs, where it is another than its source states, by the part's id. */
export const costsOf = (options: Options): Readonly<Record<string, number>> => Object.fromEntries(listOf(options['cost']).flatMap((pair) => {
  const [part = '', text] = pair.split('=', 2);
  const cost = atLeastNought(text);
  return part === '' || cost === undefined ? [] : [[part, cost] as const];
}));

export function withCost(options: Options, part: string, cost: number | undefined): Options {
  const { [part]: _, ...others } = costsOf(options);
  return { ...options, cost: Object.entries(cost === undefined ? others : { ...others, [part]: cost }).map((pair) => pair.join('=')).join(',') };
}

/** The terms of a mend that an address asks for; what the cabin does not have is left out. */
export function mendTerms(options: Options, cabin: Cabin): MendOptions {
  const parts = new Set(cabin.parts.map(({ id }) => id));
  const joints = new Set(cabin.joints.map(({ id }) => id));
  const materials = new Set<string>(cabin.parts.flatMap(({ sources }) => sources.map(({ material }) => material)));
  const locked = lockedOf(options).filter((part) => parts.has(part));
  const except = exceptOf(options).filter((joint) => joints.has(joint));
  const reach = Object.entries(reachesOf(options)).filter(([material]) => materials.has(material));
  const cheapest = options['aim'] === 'cheapest';
  const costs = cheapest ? Object.entries(costsOf(options)).filter(([part]) => parts.has(part)) : [];
  return {
    aim: cheapest ? 'cheapest' : 'fewest', timeLimitS: atLeastNought(options['time']) || usualSeconds,
    ...(locked.length === 0 ? {} : { locked }), ...(except.length === 0 ? {} : { except }), ...(options['frozen'] === 'free' ? { releaseFrozen: true } : {}),
    ...(reach.length === 0 ? {} : { reach: Object.fromEntries(reach) }), ...(costs.length === 0 ? {} : { costs: Object.fromEntries(costs) }),
  };
}
