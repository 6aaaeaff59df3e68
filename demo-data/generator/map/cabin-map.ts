import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { consoleAndFloorRings } from './console-and-floor.ts';
import { dashRings } from './dash.ts';
import { doorRings } from './door.ts';
import { mapGap, mapWidth } from './lines.ts';
import { inset, mirrored, ring, rounded, toTenths, withoutLoops } from './polygon.ts';
import { roofRings } from './roof.ts';
import { seatRings } from './seat.ts';
import { stitchLines } from './stitches.ts';

const cornerRadius: Readonly<Record<string, number>> = {
  headliner: 26,
  'display-surround': 20,
  'climate-panel': 12,
  'door-switch-left': 14,
  'bead-left': 4,
  'demister-grille': 8,
  'carpet-left': 30,
  'sill-left': 20,
  'instrument-hood': 6,
  'seat-back-left': 10,
  'seat-bolster-left': 10,
};

/** A part as it is drawn: half the gap given way, corners rounded. */
const drawn = (id: string, points: readonly MapPoint[]): MapPoint[] =>
  withoutLoops(rounded(withoutLoops(ring(inset(points, mapGap / 2))), cornerRadius[id] ?? 9));

/** A left door alone, moved to the corner of its own small map. */
export function doorOutlines(): Readonly<Record<string, readonly MapPoint[]>> {
  return Object.fromEntries(
    Object.entries(doorRings(false)).map(([id, points]) => [id, toTenths(drawn(id, points).map(([x, y]) => [x - 20, y - 540] as const))]),
  );
}

/** Outlines by part id, gaps drawn and corners rounded; thread is an open line. Right hands mirror the left ones. */
export function cabinOutlines(): Readonly<Record<string, readonly MapPoint[]>> {
  const rings = { ...roofRings(), ...dashRings(), ...doorRings(true), ...seatRings(), ...consoleAndFloorRings() };
  const outlines: Record<string, MapPoint[]> = {};
  const add = (id: string, points: readonly MapPoint[]): void => {
    const left = toTenths(points);
    outlines[id] = left;
    const right = id.replace(/-left$/, '-right');
    if (right !== id && !(right in rings))
      outlines[right] = mirrored(left, mapWidth).map(([x, y]) => [Math.round(x * 10) / 10, y] as const);
  };
  for (const [id, points] of Object.entries(rings)) add(id, drawn(id, points));
  for (const [id, points] of Object.entries(stitchLines())) add(id, points);
  return outlines;
}
