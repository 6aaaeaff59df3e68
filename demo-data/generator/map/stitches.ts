import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { centre, rollEnd, skinEnd } from './lines.ts';
import { along, cubic, quadratic, ring } from './polygon.ts';

/** Stitches as open lines. */
export function stitchLines(): Record<string, MapPoint[]> {
  const middle = 1226;
  const seatStitch = ring(
    cubic([middle - 152, 1466], [middle - 192, 1396], [middle - 162, 1282], [middle - 120, 1250], 12),
    quadratic([middle - 120, 1250], [middle - 60, 1228], [middle, 1228], 6),
  );
  return {
    'dash-stitch': along((x) => skinEnd(x) - 18, 2066, 2690),
    'roll-stitch-left': along((x) => rollEnd(x) - 20, 200, 846),
    'seat-stitch-left': ring(seatStitch, seatStitch.map(([x, y]) => [2 * middle - x, y] as const).toReversed()),
    'lid-stitch': ring(
      quadratic([1712, 1640], [1704, 1540], [1700, 1420], 5),
      quadratic([1700, 1420], [1698, 1286], [1714, 1264], 6),
      quadratic([1714, 1264], [1744, 1250], [centre, 1250], 5),
      quadratic([centre, 1250], [1856, 1250], [1886, 1264], 5),
      quadratic([1886, 1264], [1902, 1286], [1900, 1420], 6),
      quadratic([1900, 1420], [1896, 1540], [1888, 1640], 5),
    ),
  };
}
