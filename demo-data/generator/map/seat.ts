import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { cushionEnd, reversed } from './lines.ts';
import { along, cubic, quadratic, ring } from './polygon.ts';

/** The left seat from the front: headrest, bolster, backrest centre, cushion. */
export function seatRings(): Record<string, MapPoint[]> {
  const middle = 1226;
  const symmetric = (half: readonly MapPoint[]): MapPoint[] =>
    ring(
      half,
      half.toReversed().map(([x, y]) => [2 * middle - x, y] as const),
    );
  const cushionTop = (x: number): number => 1474 + 10 * ((x - middle) / 270) ** 2;
  const headrest = symmetric([
    ...quadratic([middle, 1186], [middle - 90, 1186], [middle - 108, 1176], 4),
    ...cubic([middle - 108, 1176], [middle - 150, 1160], [middle - 142, 1064], [middle - 88, 1050], 10),
    ...quadratic([middle - 88, 1050], [middle - 40, 1042], [middle, 1042], 4),
  ]);
  const shoulders = cubic([middle - 232, cushionTop(middle - 232)], [middle - 300, 1380], [middle - 232, 1236], [middle - 176, 1206], 14);
  const innerSide = cubic([middle - 136, cushionTop(middle - 136)], [middle - 176, 1400], [middle - 146, 1290], [middle - 112, 1264], 12);
  const neck = [
    ...quadratic([middle - 176, 1206], [middle - 140, 1188], [middle - 108, 1176], 4),
    ...quadratic([middle - 108, 1176], [middle - 90, 1186], [middle, 1186], 4),
  ];
  const innerTop = quadratic([middle - 112, 1264], [middle - 60, 1244], [middle, 1244], 5);
  const mirror = (points: readonly MapPoint[]): MapPoint[] => points.map(([x, y]) => [2 * middle - x, y] as const);
  const bolster = ring(
    shoulders,
    neck,
    reversed(mirror(neck)),
    reversed(mirror(shoulders)),
    along(cushionTop, middle + 232, middle + 136),
    mirror(innerSide),
    mirror(innerTop),
    reversed(innerTop),
    reversed(innerSide),
    along(cushionTop, middle - 136, middle - 232),
  );
  const backCentre = ring(
    innerSide,
    innerTop,
    reversed(mirror(innerTop)),
    reversed(mirror(innerSide)),
    along(cushionTop, middle + 136, middle - 136),
  );
  const cushionSide = cubic(
    [middle - 232, cushionTop(middle - 232)],
    [middle - 292, 1500],
    [middle - 290, 1600],
    [middle - 262, cushionEnd],
    12,
  );
  const cushion = ring(
    along(cushionTop, middle - 232, middle + 232),
    mirror(cushionSide),
    along(() => cushionEnd, middle + 262, middle - 262),
    reversed(cushionSide),
  );
  return { 'headrest-left': headrest, 'seat-bolster-left': bolster, 'seat-back-left': backCentre, 'seat-cushion-left': cushion };
}
