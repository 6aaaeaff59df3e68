import { forceCollide, forceLink, forceManyBody, forceSimulation, forceX, forceY } from 'd3';
import type { Cabin, Joint, MapPoint, Part } from '../../src/cabin/cabin.ts';
import { isDrawn } from './is-drawn.ts';

const box = { width: 150, height: 90, apart: 210 } as const;
/** Above this number parts are set in rows by their zones: forces would take too long. */
const mostByForces = 300;
const steps = 240;

interface Node { readonly id: string; readonly zone: number; x: number; y: number; vx?: number; vy?: number; index?: number }

let last: { readonly parts: readonly Part[]; readonly joints: readonly Joint[]; readonly key: string; readonly outlines: ReadonlyMap<string, readonly MapPoint[]> } | undefined;

/**
 * Boxes for parts that have no outline, by id, below those that have: joined parts near each other, zones together. Nothing is drawn by
 * chance: the same parts and joints give the same places at every load. Empty where every part has an outline.
 */
export function assumedOutlines(cabin: Cabin): ReadonlyMap<string, readonly MapPoint[]> {
  if (last?.parts === cabin.parts && last.joints === cabin.joints) return last.outlines;
  const parts = cabin.parts.filter((part) => !isDrawn(part));
  const missing = new Set(parts.map(({ id }) => id));
  const joints = parts.length === 0 ? [] : cabin.joints.filter(({ parts: [first, second] }) => missing.has(first) && missing.has(second));
  const bottom = cabin.parts.reduce((low, part) => (isDrawn(part) ? Math.max(low, ...(part.outline ?? []).map(([, y]) => y)) : low), 0);
  const key = JSON.stringify([bottom, parts.map(({ id, zone }) => [id, zone]), joints.map((joint) => joint.parts)]);
  const outlines = last?.key === key ? last.outlines : outlinesOf(parts, joints, bottom);
  last = { parts: cabin.parts, joints: cabin.joints, key, outlines };
  return outlines;
}

function outlinesOf(parts: readonly Part[], joints: readonly Joint[], bottom: number): ReadonlyMap<string, readonly MapPoint[]> {
  const zones = [...new Set(parts.map(({ zone }) => zone))];
  const nodes = inRows(parts, zones);
  if (parts.length <= mostByForces) pull(nodes, joints, zones.length);
  const top = Math.min(...nodes.map(({ y }) => y));
  const [w, h] = [box.width / 2, box.height / 2];
  const down = bottom === 0 ? 0 : bottom - top + box.apart;
  return new Map(nodes.map(({ id, x, y }) => {
    const at = (dx: number, dy: number): MapPoint => [Math.round(x + dx), Math.round(y + dy + down)];
    return [id, [at(-w, -h), at(w, -h), at(w, h), at(-w, h)]];
  }));
}

function inRows(parts: readonly Part[], zones: readonly string[]): Node[] {
  const across = Math.max(3, Math.ceil(Math.sqrt(parts.length * 1.6)));
  let row = 0;
  return zones.flatMap((zone, place) => {
    const own = parts.filter((part) => part.zone === zone);
    const first = row;
    row += Math.ceil(own.length / across) + 0.4;
    return own.map(({ id }, index): Node => ({ id, zone: place, x: (index % across) * box.apart, y: (first + Math.floor(index / across)) * box.apart * 0.7 }));
  });
}

/** Joined parts draw near, all others keep away; the forces of the library begin from where the nodes are and use no chance of their own. */
function pull(nodes: Node[], joints: readonly Joint[], zones: number): void {
  const columns = Math.max(1, Math.ceil(Math.sqrt(zones)));
  const reach = box.apart * Math.sqrt(nodes.length);
  forceSimulation(nodes)
    .stop()
    .force('joints', forceLink<Node, { source: string; target: string }>(joints.map(({ parts: [source, target] }) => ({ source, target }))).id(({ id }) => id).distance(box.apart).strength(0.5))
    .force('apart', forceManyBody<Node>().strength(-900).distanceMax(reach))
    .force('boxes', forceCollide<Node>(box.apart * 0.55).iterations(3))
    .force('x', forceX<Node>(({ zone }) => (zone % columns) * reach * 0.6).strength(0.06))
    .force('y', forceY<Node>(({ zone }) => Math.floor(zone / columns) * reach * 0.5).strength(0.09))
    .tick(steps);
}
