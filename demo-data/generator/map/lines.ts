import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { mirrored, ring } from './polygon.ts';

/** The unfolded cabin: windscreen side up, the driver's side at the left, millimetres, y down. */
export const mapWidth = 3600;
export const mapHeight = 1960;
/** Every part gives way by half of this, so that neighbours stand this far apart. */
export const mapGap = 6;

export const centre = mapWidth / 2;
export const bow =
  (atCentre: number, atEdge: number, halfSpan: number, power = 2) =>
  (x: number): number =>
    atCentre + (atEdge - atCentre) * Math.abs((x - centre) / halfSpan) ** power;

// Lines of the roof.
export const roofCrown = bow(46, 214, 1560, 2.4);
export const roofHeader = bow(292, 372, 1060);
export const visorTop = (x: number): number => roofHeader(x) - 112;
export const railUnder = (x: number): number => 372 + (x - 740) * 0.012 - ((740 - x) / 600) ** 2 * 10;

// Lines of the instrument panel, from the windscreen down.
export const dashTop = bow(478, 580, 930);
export const skinEnd = bow(648, 700, 930);
export const stripEnd = (x: number): number => skinEnd(x) + 58;
export const beadEnd = (x: number): number => skinEnd(x) + 78;
export const middleEnd = bow(866, 890, 930);
export const lowerEnd = bow(1012, 960, 930, 3);
export const dashLeft = (y: number): number => 868 - 0.04 * (y - 580) + 0.16 * Math.max(0, y - 690);

// Lines of the left door.
export const beltLine = (x: number): number => 652 - 71 * ((x - 180) / 690) ** 1.6;
export const rollEnd = (x: number): number => 756 - 62 * (Math.max(0, x - 60) / 810) ** 1.3;
export const decorEnd = (x: number): number => rollEnd(x) + 44 + 14 * ((870 - x) / 810);
export const restTop = (x: number): number => 1010 - 62 * (Math.max(0, x - 60) / 810) ** 1.2;
export const restEnd = (x: number): number => restTop(x) + 104 - 14 * (x / 800);
export const doorEnd = (x: number): number => 1516 + 26 * ((x - 400) / 400);
export const doorFront = (y: number): number => 868 - 4 * ((y - 580) / 100) - 92 * (Math.max(0, y - 1000) / 520) ** 2;
export const doorRear = (y: number): number => 58 + 46 * (Math.max(0, y - 700) / 840) ** 2;
export const sillEnd = (x: number): number => doorEnd(x) + 76;

// Lines of the console and the floor.
export const consoleTop = 912;
export const cushionEnd = 1656;
export const floorTop = (x: number): number => {
  const share = Math.min(1, Math.max(0, (x - 872) / 92));
  return sillEnd(Math.min(x, 872)) + (cushionEnd - sillEnd(872)) * share * share * (3 - 2 * share);
};
export const floorEnd = bow(1932, 1772, 1690, 2.6);

export const reversed = (points: readonly MapPoint[]): MapPoint[] => points.toReversed();

/** A ring across the centre line from its left half, which must start and end on it or near it. */
export function bothHalves(half: readonly MapPoint[]): MapPoint[] {
  return ring(half, mirrored(half, mapWidth));
}
