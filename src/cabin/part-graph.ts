import type { Cabin, Joint } from './cabin.ts';

export type JointPredicate = (joint: Joint) => boolean;

/** The cabin as a graph: parts are its nodes, joints its edges. Every order is the document's, so results never depend on chance. */
export interface PartGraph {
  readonly parts: readonly string[];
  jointsOf(part: string): readonly Joint[];
  jointsBetween(a: string, b: string): readonly Joint[];
  /** Parts joined to this one by a joint that passes, each once. */
  neighbours(part: string, passes?: JointPredicate): string[];
  /** Sets of two parts or more that hang together by joints that pass, among the parts given. */
  connectedSets(passes: JointPredicate, among?: readonly string[]): string[][];
  /** The same within each zone: a joint counts where both its parts lie in the zone. */
  zoneSets(passes: JointPredicate): { readonly zone: string; readonly parts: string[] }[];
  /** Fewest joints from one part to another, both ends included; undefined where none leads there. */
  shortestPath(from: string, to: string, passes?: JointPredicate, among?: readonly string[]): string[] | undefined;
}

const all: JointPredicate = () => true;

export function partGraph(cabin: Cabin): PartGraph {
  const parts = cabin.parts.map((part) => part.id);
  const joints = new Map<string, Joint[]>(parts.map((id) => [id, []]));
  for (const joint of cabin.joints) {
    for (const part of new Set(joint.parts)) joints.get(part)?.push(joint);
  }
  const jointsOf = (part: string): readonly Joint[] => joints.get(part) ?? [];
  const other = (joint: Joint, part: string): string => (joint.parts[0] === part ? joint.parts[1] : joint.parts[0]);
  const neighbours = (part: string, passes: JointPredicate = all): string[] =>
    [...new Set(jointsOf(part).filter(passes).map((joint) => other(joint, part)))];

  /** Breadth first from a part; gives each part reached with the one before it. */
  const reach = (from: string, passes: JointPredicate, among: ReadonlySet<string>): Map<string, string | undefined> => {
    const before = new Map<string, string | undefined>([[from, undefined]]);
    for (const part of before.keys()) {
      for (const next of neighbours(part, passes)) if (among.has(next) && !before.has(next)) before.set(next, part);
    }
    return before;
  };

  const connectedSets = (passes: JointPredicate, among: readonly string[] = parts): string[][] => {
    const allowed = new Set(among);
    const seen = new Set<string>();
    const sets: string[][] = [];
    for (const part of among) {
      if (seen.has(part)) continue;
      const reached = new Set(reach(part, passes, allowed).keys());
      for (const member of reached) seen.add(member);
      if (reached.size > 1) sets.push(among.filter((member) => reached.has(member)));
    }
    return sets;
  };

  return {
    parts,
    jointsOf,
    jointsBetween: (a, b) => (a === b ? [] : jointsOf(a).filter((joint) => other(joint, a) === b)),
    neighbours,
    connectedSets,
    zoneSets: (passes) => [...new Set(cabin.parts.map((part) => part.zone))].flatMap((zone) =>
      connectedSets(passes, cabin.parts.filter((part) => part.zone === zone).map((part) => part.id)).map((members) => ({ zone, parts: members }))),
    shortestPath: (from, to, passes = all, among = parts) => {
      const allowed = new Set(among);
      if (!allowed.has(from) || !allowed.has(to)) return undefined;
      const before = reach(from, passes, allowed);
      if (!before.has(to)) return undefined;
      const path: string[] = [];
      for (let part: string | undefined = to; part !== undefined; part = before.get(part)) path.unshift(part);
      return path;
    },
  };
}

/** The two members that are farthest apart by a distance; the first such pair in the order given, none where no distance is known. */
export function farthestPair(members: readonly string[], distance: (a: string, b: string) => number | undefined): readonly [string, string] | undefined {
  let pair: readonly [string, string] | undefined;
  let largest = -Infinity;
  members.forEach((a, index) => {
    for (const b of members.slice(index + 1)) {
      const value = distance(a, b);
      if (value !== undefined && value > largest) {
        largest = value;
        pair = [a, b];
      }
    }
  });
  return pair;
}
