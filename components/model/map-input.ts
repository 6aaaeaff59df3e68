import type { Cabin, Joint, MapPoint, Part } from '../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../src/harmony/judgement.ts';
import type { CabinMapInput, MapJoint, MapPart } from '../../src/report/figures/cabin-map.ts';
import type { JointPaths } from '../../src/workers/session-protocol.ts';
import { assumedOutlines } from './assumed-outlines.ts';
import { isDrawn } from './is-drawn.ts';
import { standingSource } from './joint-filter.ts';
import { verdictWord } from './leading-check.ts';
import type { Tinted } from './map-tints.ts';
import type { PartColour } from './part-colours.ts';

const madeParts = new WeakMap<Part, MapPart>();
const madeJoints = new WeakMap<JointResult, MapJoint>();

/** The object made before where it says the same, so that what is drawn of it can stand. */
function same<T extends object>(before: T | undefined, made: T): T {
  return before !== undefined && (Object.keys({ ...before, ...made }) as (keyof T)[]).every((key) => before[key] === made[key]) ? before : made;
}

/**
 * What the map draws that does not change with the pointer; faces are filled by their colours or by a tint. Parts without an outline get a place by assumption; their joints run straight.
 * Parts and joints that stay as they were are the same objects again.
 */
export function mapInput(cabin: Cabin, judgement: Judgement, fills: ReadonlyMap<string, PartColour | Tinted>, paths: JointPaths): CabinMapInput {
  const names = new Map(cabin.parts.map((part) => [part.id, part.name]));
  const results = new Map(judgement.joints.map((joint) => [joint.id, joint]));
  const assumed = assumedOutlines(cabin);
  const parts = cabin.parts.flatMap((part): MapPart[] => {
    const drawn = isDrawn(part);
    const outline = drawn ? part.outline : assumed.get(part.id);
    if (outline === undefined) return [];
    const given = fills.get(part.id) ?? {};
    const { fill, hatch } = 'css' in given ? { fill: given.css, hatch: undefined } : given as Tinted;
    const made = same<MapPart>(madeParts.get(part), { id: part.id, name: part.name, outline, line: drawn && standingSource(part)?.material === 'thread', fill, hatch });
    madeParts.set(part, made);
    return [made];
  });
  const joints = cabin.joints.flatMap((joint): MapJoint[] => {
    const result = results.get(joint.id);
    const known = paths.get(joint.id);
    const path = known?.points ?? straight(joint, cabin, assumed);
    if (result === undefined || path === undefined || path.length < 2) return [];
    const label = `${joint.parts.map((id) => names.get(id) ?? id).join(' and ')}: ${verdictWord(result)}`;
    const made = same<MapJoint>(madeJoints.get(result), { id: joint.id, lead: known?.kind === 'lead', path, verdict: result.verdict, accepted: result.accepted, label });
    madeJoints.set(result, made);
    return [made];
  });
  const zones = cabin.zones.map(({ id, name }) => ({ id, name, parts: cabin.parts.filter((part) => part.zone === id).map((part) => part.id) }));
  return { title: `Map of ${cabin.name}`, parts, joints, zones };
}

const straights = new WeakMap<readonly MapPoint[], WeakMap<readonly MapPoint[], readonly MapPoint[]>>();

/** From middle to middle, as far as it lies between the two boxes. */
function straight(joint: Joint, cabin: Cabin, assumed: ReadonlyMap<string, readonly MapPoint[]>): readonly MapPoint[] | undefined {
  const outlineOf = (id: string): readonly MapPoint[] | undefined => assumed.get(id) ?? cabin.parts.find((part) => part.id === id && isDrawn(part))?.outline;
  if (!joint.parts.some((id) => assumed.has(id))) return undefined;
  const [first, second] = [outlineOf(joint.parts[0]), outlineOf(joint.parts[1])];
  if (first === undefined || second === undefined) return undefined;
  const from = straights.get(first) ?? new WeakMap<readonly MapPoint[], readonly MapPoint[]>();
  straights.set(first, from);
  const known = from.get(second) ?? between(boxOf(first), boxOf(second));
  from.set(second, known);
  return known;
}

interface Box { readonly middle: MapPoint; readonly half: MapPoint }

function boxOf(points: readonly MapPoint[]): Box {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return { middle: [(left + right) / 2, (top + bottom) / 2], half: [(right - left) / 2, (bottom - top) / 2] };
}

function between(a: Box, b: Box): readonly MapPoint[] {
  const [dx, dy] = [b.middle[0] - a.middle[0], b.middle[1] - a.middle[1]];
  const leaves = ({ half }: Box): number => Math.min(0.45, 1 / Math.max(1e-9, Math.abs(dx) / half[0], Math.abs(dy) / half[1]));
  const at = (share: number): MapPoint => [a.middle[0] + dx * share, a.middle[1] + dy * share];
  return [at(leaves(a)), at(1 - leaves(b))];
}
