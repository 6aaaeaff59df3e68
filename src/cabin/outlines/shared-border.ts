import type { MapPoint } from '../cabin.ts';
import type { Outline, OutlineEdges } from './outline-edges.ts';
import { outlineEdges } from './outline-edges.ts';
import { isInside, isInsideAt } from './polygon.ts';
import type { Segment } from './segment.ts';
import { between, distance, distanceFromSegment, nearestOnSegment, parallelism } from './segment.ts';
import { simplify } from './simplify.ts';

/** Widest angle between edges that still run alongside, as a cosine: 35 degrees. */
const leastParallelism = 0.819;
/** Steepest slant of the line across the gap against the edge, as a cosine. */
const mostSlant = 0.6;
/** Below this distance, mm, two edges touch and the line across has no direction. */
const touching = 0.5;
/** Shortest stretch that counts as a border, mm. */
const shortestBorder = 5;
const samplesRound = 400;

/** Where two outlines run alongside. */
interface Sample {
  readonly at: number;
  /** Point midway between the two outlines. */
  readonly middle: MapPoint;
}

/**
 * The longest stretch along which two outlines run beside each other closer than `tolerance` (mm), as the line midway between
 * them; breaks shorter than three tolerances, as at corners, are bridged. Where one outline is a thread, it counts also where it
 * lies on the other part. An outline that lies wholly within the other is a border all round.
 * Undefined where they nowhere run alongside for 5 mm.
 */
export function sharedBorder(a: Outline, b: Outline, tolerance: number): MapPoint[] | undefined {
  const [walker, other] = walkerFirst(a, b);
  const edges = outlineEdges(walker);
  const otherEdges = outlineEdges(other);
  if (edges.segments.length === 0 || otherEdges.segments.length === 0 || edges.length === 0) return undefined;
  const samples = sampleRound(edges, otherEdges, !walker.closed && other.closed ? other.points : undefined, tolerance);
  const [longest] = alongside(samples, walker.closed ? edges.length : undefined, 3 * tolerance).sort((one, two) => two.length - one.length);
  if (longest !== undefined && longest.length >= Math.min(shortestBorder, edges.length / 2)) return simplify(longest.points, 0.25);
  const [first] = walker.points;
  const lies = walker.closed && other.closed && walker.points.every((point) => isInside(point, other.points));
  return lies && first !== undefined ? [...walker.points, first] : undefined;
}

/** Thread is walked before faces, the shorter outline before the longer one, so that the order given hardly matters. */
function walkerFirst(a: Outline, b: Outline): [Outline, Outline] {
  if (a.closed !== b.closed) return a.closed ? [b, a] : [a, b];
  return outlineEdges(b).length < outlineEdges(a).length ? [b, a] : [a, b];
}

/** Walks along the edges of one outline; where a face is given, points that lie on it count as well. */
function sampleRound(edges: OutlineEdges, others: OutlineEdges, face: readonly MapPoint[] | undefined, tolerance: number): Sample[] {
  const step = Math.min(5, edges.length / samplesRound);
  const { left, right, top, bottom } = others.bounds;
  const samples: Sample[] = [];
  let walked = 0;
  for (let at = 0; at < edges.segments.length; at += 1) {
    const edge = edges.segments[at];
    const edgeLength = distance(edge.from, edge.to);
    const count = Math.max(1, Math.ceil(edgeLength / step));
    const away = edges.boxes[4 * at] - tolerance > right || edges.boxes[4 * at + 1] + tolerance < left
      || edges.boxes[4 * at + 2] - tolerance > bottom || edges.boxes[4 * at + 3] + tolerance < top;
    const candidates = away ? [] : alongsideEdge(edges, at, others, tolerance);
    for (let index = 0; index <= count && !away && (face !== undefined || candidates.length > 0); index += 1) {
      const x = edge.from[0] + (edge.to[0] - edge.from[0]) * (index / count);
      const y = edge.from[1] + (edge.to[1] - edge.from[1]) * (index / count);
      const middle = across(x, y, edge, candidates, tolerance) ?? (face !== undefined && isInsideAt(x, y, face) ? [x, y] : undefined);
      if (middle !== undefined) samples.push({ at: walked + (edgeLength * index) / count, middle });
    }
    walked += edgeLength;
  }
  return samples;
}

/** The edges of another outline that run beside an edge: their boxes lie within the tolerance, and they are nearly parallel. */
function alongsideEdge({ segments, boxes }: OutlineEdges, at: number, others: OutlineEdges, tolerance: number): Segment[] {
  const left = boxes[4 * at] - tolerance;
  const right = boxes[4 * at + 1] + tolerance;
  const top = boxes[4 * at + 2] - tolerance;
  const bottom = boxes[4 * at + 3] + tolerance;
  const found: Segment[] = [];
  for (let other = 0; other < others.segments.length; other += 1) {
    const box = 4 * other;
    if (others.boxes[box + 1] < left || others.boxes[box] > right || others.boxes[box + 3] < top || others.boxes[box + 2] > bottom) continue;
    if (parallelism(segments[at], others.segments[other]) >= leastParallelism) found.push(others.segments[other]);
  }
  return found;
}

/** The point midway between a point of one outline and the nearest one across on the other, where that is near enough. */
function across(x: number, y: number, edge: Segment, candidates: readonly Segment[], tolerance: number): MapPoint | undefined {
  let best: Segment | undefined;
  let shortest = tolerance;
  for (let index = 0; index < candidates.length; index += 1) {
    const gap = distanceFromSegment(x, y, candidates[index]);
    if (gap > shortest || (gap > touching && slant([x, y], nearestOnSegment([x, y], candidates[index]), edge) > mostSlant)) continue;
    shortest = gap;
    best = candidates[index];
  }
  return best === undefined ? undefined : between([x, y], nearestOnSegment([x, y], best), 0.5);
}

/** Cosine of the angle between the line across and the edge, 0..1. */
const slant = (point: MapPoint, foot: MapPoint, edge: Segment): number => parallelism({ from: point, to: foot }, edge);

interface Stretch {
  readonly points: MapPoint[];
  readonly length: number;
}

/** Stretches of samples alongside, breaks up to `bridge` closed; round a closed outline of `total` length, the first may join the last. */
function alongside(samples: readonly Sample[], total: number | undefined, bridge: number): Stretch[] {
  const runs: Sample[][] = [];
  for (const sample of samples) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run !== undefined && last !== undefined && sample.at - last.at <= bridge) run.push(sample);
    else runs.push([sample]);
  }
  const [first, last] = [runs[0], runs.at(-1)];
  if (total !== undefined && first !== undefined && last !== undefined && first !== last) {
    const [start, end] = [first[0], last.at(-1)];
    if (start !== undefined && end !== undefined && total - end.at + start.at <= bridge) {
      runs.pop();
      runs.shift();
      runs.push([...last, ...first]);
    }
  }
  return runs.map((run) => {
    const points = run.map((sample) => sample.middle);
    return { points, length: points.reduce((sum, point, index) => sum + distance(points[index - 1] ?? point, point), 0) };
  });
}
