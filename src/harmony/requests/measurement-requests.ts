import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { JudgedJoint } from '../judge-joint.ts';
import { counts } from '../judge-joint.ts';
import type { CheckResult, JointResult, MeasurementRequest, PartResult } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { colourRequests } from './colour-requests.ts';
import { partRequests } from './part-requests.ts';
import { surfaceRequests } from './surface-requests.ts';

/** A request with what it is sorted by: its chance, then the place of the joint or part it is for, then its place among theirs. */
export interface RankedRequest {
  readonly request: MeasurementRequest;
  /** 0 where nothing is known of it. */
  readonly chance: number;
  /** Joints before parts. */
  readonly place: number;
  readonly nth: number;
}

/** What the requests of a cabin are made from. */
export interface RequestGround {
  readonly context: JudgeContext;
  readonly joints: readonly JudgedJoint[];
  readonly parts: readonly PartResult[];
  readonly bases: ReadonlyMap<string, PartBasis>;
}

/**
 * Readings that would decide the open joints and the open checks of parts, the likeliest to decide first; ties in the order of the
 * document, joints before parts.
 */
export function measurementRequests(ground: RequestGround): readonly RankedRequest[] {
  const all: RankedRequest[] = [];
  for (const place of ground.joints.keys()) all.push(...ofJoint(ground, place));
  for (const place of ground.parts.keys()) all.push(...ofPart(ground, place));
  return all.sort(inRank);
}

/** The same after an edit that changed the results of some joints and parts and left all in their places. */
export function requestsAfter(ground: RequestGround, before: readonly RankedRequest[], joints: Iterable<number>, parts: Iterable<number>): readonly RankedRequest[] {
  const changed = new Set<number>();
  const fresh: RankedRequest[] = [];
  for (const place of joints) {
    changed.add(place);
    fresh.push(...ofJoint(ground, place));
  }
  for (const place of parts) {
    changed.add(ground.joints.length + place);
    fresh.push(...ofPart(ground, place));
  }
  fresh.sort(inRank);
  const merged: RankedRequest[] = [];
  let next = 0;
  for (const row of before) {
    if (changed.has(row.place)) continue;
    while (next < fresh.length && inRank(fresh[next], row) < 0) merged.push(fresh[next++]);
    merged.push(row);
  }
  return [...merged, ...fresh.slice(next)];
}

const inRank = (first: RankedRequest, second: RankedRequest): number =>
  second.chance - first.chance || first.place - second.place || first.nth - second.nth;

const ranked = (requests: readonly MeasurementRequest[], place: number): readonly RankedRequest[] =>
  requests.map((request, nth) => ({ request, chance: request.chance !== undefined && request.chance > 0 ? request.chance : 0, place, nth }));

const wanting = (check: CheckResult): boolean => counts(check) && (check.verdict === 'open' || check.verdict === 'no data');

/** The requests of what was judged before are those of before, as long as the suppliers have the same names. */
const asked = new WeakMap<JointResult | PartResult, { readonly suppliers: Cabin['suppliers']; readonly requests: readonly MeasurementRequest[] }>();

function remembered({ cabin: { suppliers } }: JudgeContext, result: JointResult | PartResult, place: number, make: () => readonly MeasurementRequest[]): readonly RankedRequest[] {
  const known = asked.get(result);
  const requests = known !== undefined && known.suppliers === suppliers ? known.requests : make();
  if (known?.requests !== requests) asked.set(result, { suppliers, requests });
  return ranked(requests, place);
}

function ofJoint({ context, joints }: RequestGround, place: number): readonly RankedRequest[] {
  const judged = joints[place];
  if (judged.result.verdict !== 'open') return [];
  return remembered(context, judged.result, place, () => judged.result.checks.filter(wanting).flatMap((check) => {
    if (check.check === 'colour' || check.check === 'near-miss') return colourRequests(context, judged, check);
    return check.check === 'gloss' || check.check === 'texture' ? surfaceRequests(context, judged, check) : [];
  }));
}

function ofPart({ context, parts, joints, bases }: RequestGround, place: number): readonly RankedRequest[] {
  const part = parts[place];
  if (!part.checks.some(wanting)) return [];
  return remembered(context, part, joints.length + place, () => {
    const basis = bases.get(part.id);
    return basis === undefined ? [] : part.checks.filter(wanting).flatMap((check) => partRequests(context, basis, check));
  });
}
