import type { Cabin, Joint, MapPoint, Part, Zone } from '../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../src/harmony/judgement.ts';
import type { CabinMapInput, MapJoint, MapPart } from '../../src/report/figures/cabin-map.ts';
import type { JointPaths } from '../../src/workers/session-protocol.ts';
import { assumedOutlines } from './assumed-outlines.ts';
import { isDrawn } from './is-drawn.ts';
import { partsById, standingSource } from './joint-filter.ts';
import { verdictWord } from './leading-check.ts';
import type { Tinted } from './map-tints.ts';
import type { PartColour } from './part-colours.ts';
import { remembered } from './remembered.ts';

type Outline = readonly MapPoint[];

interface MadeJoint {
  readonly path: Outline;
  readonly lead: boolean;
  readonly names: readonly (string | undefined)[];
  readonly made: MapJoint;
}

const madeParts = new WeakMap<Part, MapPart>();
const madeJoints = new WeakMap<JointResult, MadeJoint>();
let last: CabinMapInput | undefined;

/**
 * What the map draws that does not change with the pointer; faces are filled by their colours or by a tint. Parts without an outline get a place by assumption; their joints run straight.
 * Parts and joints that stay as they were are the same objects again, and so are lists of them.
 */
export function mapInput(cabin: Cabin, judgement: Judgement, fills: ReadonlyMap<string, PartColour | Tinted>, paths: JointPaths): CabinMapInput {
  const byId = partsById(cabin);
  const assumed = assumedOutlines(cabin);
  const parts: MapPart[] = [];
  for (const part of cabin.parts) {
    const made = mapPart(part, assumed, fills.get(part.id));
    if (made !== undefined) parts.push(made);
  }
  const results = resultsInOrder(judgement.joints);
  const joints: MapJoint[] = [];
  cabin.joints.forEach((joint, place) => {
    const result = results(joint, place);
    const made = result === undefined ? undefined : mapJoint(joint, result, byId, assumed, paths);
    if (made !== undefined) joints.push(made);
  });
  last = {
    title: `Map of ${cabin.name}`, parts: sameList(last?.parts, parts), joints: sameList(last?.joints, joints), zones: zonesOf(cabin.parts)(cabin.zones),
  };
  return last;
}

const sameList = <T>(before: readonly T[] | undefined, made: readonly T[]): readonly T[] =>
  (before !== undefined && before.length === made.length && made.every((item, place) => item === before[place]) ? before : made);

const zonesOf = remembered((parts: readonly Part[]) => remembered((zones: readonly Zone[]) => {
  const members = new Map<string, string[]>(zones.map(({ id }) => [id, []]));
  for (const part of parts) members.get(part.zone)?.push(part.id);
  return zones.map(({ id, name }) => ({ id, name, parts: members.get(id) ?? [] }));
}));

/** Results by joint: they lie in the order of the joints unless one of the lists is newer. */
function resultsInOrder(results: readonly JointResult[]): (joint: Joint, place: number) => JointResult | undefined {
  let byId: ReadonlyMap<string, JointResult> | undefined;
  return (joint, place) => {
    const here = results[place];
    if (here?.id === joint.id) return here;
    return (byId ??= new Map(results.map((result) => [result.id, result]))).get(joint.id);
  };
}

function mapPart(part: Part, assumed: ReadonlyMap<string, Outline>, given: PartColour | Tinted | undefined): MapPart | undefined {
  const drawn = isDrawn(part);
  const outline = drawn ? part.outline : assumed.get(part.id);
  if (outline === undefined) return undefined;
  const [fill, hatch] = given === undefined ? [undefined, undefined] : 'css' in given ? [given.css, undefined] : [(given as Tinted).fill, (given as Tinted).hatch];
  const before = madeParts.get(part);
  if (before !== undefined && before.outline === outline && before.fill === fill && before.hatch === hatch) return before;
  const made: MapPart = { id: part.id, name: part.name, outline, line: drawn && standingSource(part)?.material === 'thread', fill, hatch };
  madeParts.set(part, made);
  return made;
}

function mapJoint(joint: Joint, result: JointResult, parts: ReadonlyMap<string, Part>, assumed: ReadonlyMap<string, Outline>, paths: JointPaths): MapJoint | undefined {
  const known = paths.get(joint.id);
  const path = known?.points ?? straight(joint, parts, assumed);
  if (path === undefined || path.length < 2) return undefined;
  const lead = known?.kind === 'lead';
  const names = joint.parts.map((id) => parts.get(id)?.name);
  const before = madeJoints.get(result);
  if (before !== undefined && before.path === path && before.lead === lead && before.names[0] === names[0] && before.names[1] === names[1]) return before.made;
  const label = `${joint.parts.map((id, side) => names[side] ?? id).join(' and ')}: ${verdictWord(result)}`;
  const made: MapJoint = { id: joint.id, lead, path, verdict: result.verdict, accepted: result.accepted, label };
  madeJoints.set(result, { path, lead, names, made });
  return made;
}

const straights = new WeakMap<Outline, WeakMap<Outline, Outline>>();

/** From middle to middle, as far as it lies between the two boxes. */
function straight(joint: Joint, parts: ReadonlyMap<string, Part>, assumed: ReadonlyMap<string, Outline>): Outline | undefined {
  if (!joint.parts.some((id) => assumed.has(id))) return undefined;
  const outlineOf = (id: string): Outline | undefined => {
    const part = parts.get(id);
    return assumed.get(id) ?? (part !== undefined && isDrawn(part) ? part.outline : undefined);
  };
  const [first, second] = [outlineOf(joint.parts[0]), outlineOf(joint.parts[1])];
  if (first === undefined || second === undefined) return undefined;
  const from = straights.get(first) ?? new WeakMap<Outline, Outline>();
  straights.set(first, from);
  const known = from.get(second) ?? between(boxOf(first), boxOf(second));
  from.set(second, known);
  return known;
}

interface Box { readonly middle: MapPoint; readonly half: MapPoint }

function boxOf(points: Outline): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { middle: [(left + right) / 2, (top + bottom) / 2], half: [(right - left) / 2, (bottom - top) / 2] };
}

function between(a: Box, b: Box): Outline {
  const [dx, dy] = [b.middle[0] - a.middle[0], b.middle[1] - a.middle[1]];
  const leaves = ({ half }: Box): number => Math.min(0.45, 1 / Math.max(1e-9, Math.abs(dx) / half[0], Math.abs(dy) / half[1]));
  const at = (share: number): MapPoint => [a.middle[0] + dx * share, a.middle[1] + dy * share];
  return [at(leaves(a)), at(1 - leaves(b))];
}
