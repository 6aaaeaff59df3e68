import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgedCabin } from '../../harmony/judge.ts';
import { grouped } from '../choose/plan-words.ts';
import type { Issue } from '../../issue.ts';
import { named } from '../named.ts';
import type { MendOptions, MendPlan, NotMendable } from './mend-cabin.ts';
import { costIsUnstated, unstatedCost } from './mend-items.ts';

const becauseWords: Readonly<Record<NotMendable['because'], string>> = {
  accepted: 'a decision in force accepts it',
  'left out': 'it is left out as asked',
  'needs readings': 'the readings cannot decide, even of sides that are alike: it takes readings, not changes',
  'judged by eye': 'they are judged by eye against boundary samples',
  'not judged by numbers': 'what it lacks is not a matter of colour or gloss in numbers',
  texture: 'its texture clashes, which is a matter of the tool and not planned here',
};

/** The plan in whole sentences; `unsettled` where the search for the least plan ended without one, and this is another. */
export function mendWords(plan: Omit<MendPlan, 'words'>, cabin: Cabin, judged: JudgedCabin, options: MendOptions, unsettled = false): readonly string[] {
  const name = (part: string): string => judged.context.names.get(part) ?? part;
  const joint = (id: string): string => {
    const own = cabin.joints.find((each) => each.id === id);
    return own === undefined ? id : `${name(own.parts[0])} to ${name(own.parts[1])}`;
  };
  if (cabin.parts.length === 0) return ['The cabin has no parts: there is nothing to mend.'];
  if (cabin.joints.length === 0) return ['No two parts are joined: there is nothing to mend.'];
  const others = [...new Set(plan.notMendable.map(({ because }) => because))].map((because) =>
    `Not mended by a change: ${named(plan.notMendable.filter((each) => each.because === because).map((each) => joint(each.joint)))}, since ${becauseWords[because]}.`);
  if (!plan.feasible) {
    return [
      plan.outOfTime && !plan.proved ? `No plan was found in the time allowed. That there is none is not proved${boundWords(plan, options)}.`
        : plan.blockers.length === 0 ? 'No plan was found: the changes kept missing what the ordinary check asks. That there is none is not proved.'
        : `There is no plan within reach: ${plan.blockers.length === 1 ? `the joint ${joint(plan.blockers[0])} cannot be made to hold` : `the joints ${named(plan.blockers.map(joint))} cannot all be made to hold together, though ${plan.irreducible === false ? 'fewer of them may make it so: the time allowed was over' : 'any one left out would do'}`}.`,
      ...(plan.withoutBlockers === undefined ? [] : [
        `Leaving ${named(plan.withoutBlockers.left.map(joint))} as ${plan.withoutBlockers.left.length === 1 ? 'it is' : 'they are'}, the others hold with ${plan.withoutBlockers.changes.length === 0 ? 'no change' : `${plan.withoutBlockers.changes.length} parts changed: ${named(plan.withoutBlockers.changes.map(({ part }) => name(part)))}`}.`,
      ]),
      ...others,
    ];
  }
  if (plan.changes.length === 0) return ['Every joint that a change could mend holds already: nothing is to change.', ...others];
  return [
    `${plan.changes.length === 1 ? 'One part changes' : `${plan.changes.length} parts change`}: ${named(plan.changes.map(({ part }) => name(part)))}. ${plan.mended.length === 1 ? 'One joint is' : `${plan.mended.length} joints are`} mended by it.`,
    ...costWords(plan, judged, options),
    plan.proved ? `That no ${options.aim === 'cheapest' ? 'cheaper' : 'smaller'} set will do is proved, in the linear model about the answer.`
      : `That no ${options.aim === 'cheapest' ? 'cheaper' : 'smaller'} set will do is not proved${plan.outOfTime ? ' in the time allowed' : unsettled ? ', since the search for it did not settle' : ', since some limits are not convex'}${boundWords(plan, options)}.`,
    plan.kept ? 'The ordinary check of the cabin with these changes met says that all of them hold.' : 'The ordinary check of the cabin with these changes met does not say that all of them hold.',
    'Each shift is a target to the supplier, not a forecast of a recipe.',
    ...others,
  ];
}

/** How far the proof has come. */
const boundWords = ({ bound, cost, feasible }: Pick<MendPlan, 'bound' | 'cost' | 'feasible'>, { aim }: MendOptions): string => {
  if (!(bound > 0) || !Number.isFinite(bound)) return '';
  if (aim === 'cheapest') return `: no plan costs less than ${grouped(bound)}${feasible ? `, this one costs ${grouped(cost)}` : ''}`;
  const least = Math.ceil(bound - 1e-6);
  return `: at least ${least === 1 ? 'one part' : `${least} parts`} must change${feasible ? `, with this plan ${cost} do` : ''}`;
};

/** What the cheapest set costs, and how many of its parts state no cost. */
function costWords({ changes, cost }: Pick<MendPlan, 'changes' | 'cost'>, judged: JudgedCabin, options: MendOptions): readonly string[] {
  if (options.aim !== 'cheapest') return [];
  const unstated = changes.filter(({ part }) => costIsUnstated(options, judged.bases.get(part)!)).length;
  return [`The changes cost ${grouped(cost)} in all${unstated === 0 ? '' : `, though ${unstated === 1 ? 'one of the parts states no cost and counts' : `${unstated} of the parts state no cost and count`} as ${unstatedCost}`}.`];
}

/** Names that the cabin does not have, and numbers that mean nothing. */
export function mendIssues(cabin: Cabin, options: MendOptions): readonly Issue[] {
  const parts = new Set(cabin.parts.map((part) => part.id));
  const joints = new Set(cabin.joints.map((joint) => joint.id));
  const materials = new Set(cabin.parts.flatMap((part) => part.sources.map((source) => source.material as string)));
  const notNumber = (path: string, found: number): Issue => ({ code: 'bad-number', severity: 'error', path, found: String(found), expected: 'a number of at least 0' });
  const unknown = (code: string, path: string, found: string, known: ReadonlySet<string>): Issue =>
    ({ code, severity: 'error', path, found, expected: `one of ${[...known].slice(0, 12).join(', ')}${known.size > 12 ? ' ...' : ''}` });
  return [
    ...(options.locked ?? []).filter((part) => !parts.has(part)).map((part) => unknown('unknown-part', 'lock', part, parts)),
    ...(options.released ?? []).filter((part) => !parts.has(part)).map((part) => unknown('unknown-part', 'release', part, parts)),
    ...(options.except ?? []).filter((joint) => !joints.has(joint)).map((joint) => unknown('unknown-joint', 'except', joint, joints)),
    ...Object.entries(options.costs ?? {}).flatMap(([part, cost]) => [
      ...(parts.has(part) ? [] : [unknown('unknown-part', 'cost', part, parts)]),
      ...(cost >= 0 && Number.isFinite(cost) ? [] : [notNumber(`cost ${part}`, cost)]),
    ]),
    ...Object.entries(options.partReach ?? {}).flatMap(([part, reach]) => [
      ...(parts.has(part) ? [] : [unknown('unknown-part', 'part-reach', part, parts)]),
      ...Object.values(reach).filter((value) => !(value >= 0 && Number.isFinite(value))).map((value) => notNumber(`part-reach ${part}`, value as number)),
    ]),
    ...Object.entries(options.reach ?? {}).flatMap(([material, reach]) => [
      ...(materials.has(material) ? [] : [unknown('unknown-material', 'reach', material, materials)]),
      ...Object.values(reach).filter((value) => !(value >= 0 && Number.isFinite(value))).map((value) => notNumber(`reach ${material}`, value as number)),
    ]),
  ];
}
