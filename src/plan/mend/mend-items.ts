import type { Cabin, Part } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { MaterialReach } from './material-reach.ts';
import { glossIsOfTool, reachOf, toolGlossStep } from './material-reach.ts';
import type { MendItem } from './mend-problem.ts';
import type { SpecimenShift } from './shifted-cabin.ts';

export interface MendTerms {
  /** Parts that stay as they are, beside the carry-over ones. */
  readonly locked?: readonly string[];
  readonly releaseFrozen?: boolean;
  /** `fewest` parts change, or the `cheapest` set of them by set-up and tool costs. */
  readonly aim?: 'fewest' | 'cheapest';
  /** Reach by material, in place of the assumed one. */
  readonly reach?: Readonly<Record<string, MaterialReach>>;
  /** Reach of single parts, which goes before that of their material. */
  readonly partReach?: Readonly<Record<string, MaterialReach>>;
  /** Parts that may change though the document locks them against a mend. */
  readonly released?: readonly string[];
  /** What a change of a part costs in all, in place of what its source states; looked at for the `cheapest` set. */
  readonly costs?: Readonly<Record<string, number>>;
  /** Joints that are left as they are. */
  readonly except?: readonly string[];
}

/** Parts that change together since they stand by the same specimen, with their numbers. */
export interface MendGroup {
  readonly parts: readonly string[];
  readonly item: MendItem;
  readonly specimens: Omit<SpecimenShift, 'shift'>;
  /** The gloss of it is set by the grain of a tool. */
  readonly tool: boolean;
}

/** Cost of a change where the source states no set-up: what makes the fewest parts the cheapest among such. */
export const unstatedCost = 1;

const ownCost = ({ costs }: MendTerms, part: string): number | undefined => (costs !== undefined && Object.hasOwn(costs, part) ? costs[part] : undefined);

/** Whether neither the terms nor the source say what a change of the part costs. */
export const costIsUnstated = (terms: MendTerms, { part, source }: PartBasis): boolean => ownCost(terms, part.id) === undefined && source.setupCost === undefined;

/** How far parts that change together can be taken: no axis further than any of them. */
function reachOfParts(own: readonly PartBasis[], { reach, partReach = {} }: MendTerms): MaterialReach {
  const each = own.map(({ part, source }) => (Object.hasOwn(partReach, part.id) ? partReach[part.id] : undefined) ?? reachOf(source, reach));
  const least = (axis: keyof MaterialReach): number => Math.min(...each.map((one) => one[axis]));
  return { L: least('L'), a: least('a'), b: least('b'), gloss: least('gloss') };
}

/** What may change, and how far. A part that borrows the readings of its other hand changes with it, and is locked with it. */
export function mendGroups(cabin: Cabin, context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, terms: MendTerms): readonly MendGroup[] {
  const groups = new Map<string, Part[]>();
  for (const part of cabin.parts) {
    const basis = bases.get(part.id);
    const key = basis?.colour?.specimen.id ?? basis?.gloss?.specimen.id ?? `part ${part.id}`;
    groups.set(key, [...(groups.get(key) ?? []), part]);
  }
  return [...groups.values()].map((parts) => mendGroup(context, parts, bases, terms));
}

function mendGroup(context: JudgeContext, parts: readonly Part[], bases: ReadonlyMap<string, PartBasis>, terms: MendTerms): MendGroup {
  const own = parts.map((part) => bases.get(part.id)).filter((basis) => basis !== undefined);
  const [first] = own;
  const source = first.source;
  const fixed = parts.some((part) => terms.locked?.includes(part.id) === true || (part.frozen === true && terms.releaseFrozen !== true));
  const reach = reachOfParts(own, terms);
  const group = first.colour?.groups.find((each) => context.sample(each, [])?.spectrum !== undefined);
  const spectrum = group === undefined ? undefined : context.sample(group, [])?.spectrum;
  const limits = [fixed || first.colour === undefined ? 0 : reach.L, fixed || first.colour === undefined ? 0 : reach.a, fixed || first.colour === undefined ? 0 : reach.b, fixed || first.gloss === undefined ? 0 : reach.gloss] as const;
  const lowestGloss = Math.min(...own.flatMap((basis) => basis.gloss?.samples.map((sample) => sample.mean) ?? []), Infinity);
  const tool = glossIsOfTool(source);
  const cheapest = terms.aim === 'cheapest';
  const stated = (basis: PartBasis): number => ownCost(terms, basis.part.id) ?? basis.source.setupCost ?? unstatedCost;
  return {
    parts: parts.map((part) => part.id),
    tool,
    specimens: {
      colour: new Set(own.flatMap((basis) => (basis.colour === undefined ? [] : [basis.colour.specimen.id]))),
      gloss: new Set(own.flatMap((basis) => (basis.gloss === undefined ? [] : [basis.gloss.specimen.id]))),
      ...(spectrum === undefined ? {} : { spectrum: { startNm: spectrum.startNm, stepNm: spectrum.stepNm, values: spectrum.values } }),
    },
    item: {
      up: limits,
      down: [limits[0], limits[1], limits[2], Math.min(limits[3], lowestGloss)],
      cost: cheapest ? own.reduce((sum, basis) => sum + stated(basis), 0) : parts.length,
      ...(tool ? { glossStep: toolGlossStep } : {}),
      glossCost: tool && cheapest ? own.reduce((sum, basis) => sum + (ownCost(terms, basis.part.id) === undefined ? basis.source.toolCost ?? unstatedCost : 0), 0) : 0,
    },
  };
}
