import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { bothHalves, centre, consoleTop, cushionEnd, floorEnd, floorTop, reversed } from './lines.ts';
import { along, cubic, down, quadratic, ring } from './polygon.ts';

/** The centre console and the left half of the floor. */
export function consoleAndFloorRings(): Record<string, MapPoint[]> {
  const outer = (y: number): number => 1578 + 26 * ((y - consoleTop) / 760) ** 2;
  const innerEdge = (y: number): number => outer(y) + 60;
  const end = cushionEnd;
  const selector: MapPoint[] = ring(
    [
      [centre, consoleTop],
      [1676, consoleTop],
    ],
    quadratic([1676, consoleTop], [1672, 1090], [1704, 1150], 8),
    quadratic([1704, 1150], [1740, 1180], [centre, 1180], 6),
  );
  const lid: MapPoint[] = ring(
    [[centre, 1232]],
    quadratic([centre, 1232], [1740, 1232], [1704, 1246], 5),
    quadratic([1704, 1246], [1680, 1262], [1684, 1420], 8),
    quadratic([1684, 1420], [1690, 1560], [1696, end], 5),
    [[centre, end]],
  );
  const side = ring(
    down(outer, consoleTop, end),
    along(() => end, outer(end), innerEdge(end)),
    down(innerEdge, end, consoleTop),
  );
  const frameHalf = ring(
    reversed(quadratic([1704, 1150], [1740, 1180], [centre, 1180], 6)),
    reversed(quadratic([1676, consoleTop], [1672, 1090], [1704, 1150], 8)),
    [[innerEdge(consoleTop), consoleTop]],
    down(innerEdge, consoleTop, end),
    [[1696, end]],
    reversed(quadratic([1684, 1420], [1690, 1560], [1696, end], 5)),
    reversed(quadratic([1704, 1246], [1680, 1262], [1684, 1420], 8)),
    reversed(quadratic([centre, 1232], [1740, 1232], [1704, 1246], 5)),
  );
  const carpet = ring(
    along(floorTop, 116, 872),
    along(floorTop, 872, 964, 12),
    [[centre, cushionEnd]],
    [[centre, floorEnd(centre)]],
    along(floorEnd, centre, 210),
    cubic([210, floorEnd(210)], [150, floorEnd(210) - 14], [112, 1720], [116, floorTop(116)], 12),
  );
  return {
    'console-frame': bothHalves(frameHalf),
    'selector-surround': bothHalves(reversed(selector)),
    'console-lid': bothHalves(reversed(lid)),
    'console-side-left': side,
    'carpet-left': carpet,
  };
}
