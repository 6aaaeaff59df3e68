import type { MapJoint } from './cabin-map.ts';
import type { Extent } from './map-place.ts';

/** A field of the map: its joints in cells, those that lie together in one. */
export interface JointField {
  readonly key: string;
  readonly cells: readonly (readonly MapJoint[])[];
}

/** Joints that one field, and one cell, has where they are spread evenly. */
const [jointsOfField, jointsOfCell] = [512, 24];
const fields = new WeakMap<readonly MapJoint[], readonly JointField[]>();

/**
 * Joints by where their middles lie in the extent of all. A browser that paints a piece of the map goes through every path whose box touches
 * it, whole: paths of neighbours keep these boxes small. A list of joints always has the same extent.
 */
export function jointFields(joints: readonly MapJoint[], extent: Extent): readonly JointField[] {
  const known = fields.get(joints) ?? inFields(joints, extent);
  fields.set(joints, known);
  return known;
}

function inFields(joints: readonly MapJoint[], { left, top, right, bottom }: Extent): readonly JointField[] {
  const fieldsOfSide = Math.max(1, Math.round(Math.sqrt(joints.length / jointsOfField)));
  const cellsOfFieldSide = Math.max(1, Math.round(Math.sqrt(joints.length / jointsOfCell) / fieldsOfSide));
  const cellsOfSide = fieldsOfSide * cellsOfFieldSide;
  const step = (value: number, from: number, to: number): number => Math.max(0, Math.min(cellsOfSide - 1, Math.floor(((value - from) / (to - from || 1)) * cellsOfSide)));
  const made = new Map<number, Map<number, MapJoint[]>>();
  for (const joint of joints) {
    const [x, y] = joint.path[Math.floor(joint.path.length / 2)] ?? [left, top];
    const [column, row] = [step(x, left, right), step(y, top, bottom)];
    const field = Math.floor(row / cellsOfFieldSide) * fieldsOfSide + Math.floor(column / cellsOfFieldSide);
    const cells = made.get(field) ?? new Map<number, MapJoint[]>();
    made.set(field, cells);
    const cell = cells.get(row * cellsOfSide + column) ?? [];
    cells.set(row * cellsOfSide + column, cell);
    cell.push(joint);
  }
  return [...made].sort(([a], [b]) => a - b).map(([field, cells]) => ({ key: String(field), cells: [...cells].sort(([a], [b]) => a - b).map(([, cell]) => cell) }));
}
