import type { MapPoint } from '../../../src/cabin/cabin.ts';
import {
  beadEnd,
  bothHalves,
  centre,
  consoleTop,
  dashLeft,
  dashTop,
  lowerEnd,
  mapWidth,
  middleEnd,
  reversed,
  skinEnd,
  stripEnd,
} from './lines.ts';
import { along, cubic, down, mirrored, quadratic, ring } from './polygon.ts';

/** Angle of a point seen from another, for sorting along an arc. */
const angleRound = (point: MapPoint, from: MapPoint): number => Math.atan2(point[1] - from[1], point[0] - from[0]);

const hoodFrom = 1046;
const hoodTo = 1452;
const hoodOuter = cubic([hoodFrom, skinEnd(hoodFrom)], [1096, 534], [1402, 524], [hoodTo, skinEnd(hoodTo)], 22);
const hoodInner = cubic([hoodFrom + 40, skinEnd(hoodFrom + 40)], [1126, 574], [1372, 566], [hoodTo - 40, skinEnd(hoodTo - 40)], 20);
const displayHalf = 238;
const displayTop = 616;
const displayEnd = 800;
const ventTo = 1010;
const ventEnd = (x: number): number => beadEnd(x) + 16;

/** Height at which a line of the panel meets its left end. */
function atLeft(line: (x: number) => number): number {
  let x = 868;
  for (let turn = 0; turn < 12; turn += 1) x = dashLeft(line(x));
  return line(x);
}

/** The instrument panel between windscreen and knees; left hands only where both mirror. */
export function dashRings(): Record<string, MapPoint[]> {
  const right = (x: number): number => mapWidth - x;
  const grilleHalf = 420;
  const grilleEnd = (x: number): number => dashTop(x) + 34;
  const displayLeft = (y: number): number => centre - displayHalf + (y - displayTop) * 0.1;
  const displaySide = down(displayLeft, displayTop, displayEnd);
  const ventFront = quadratic([ventTo, skinEnd(ventTo)], [ventTo + 12, ventEnd(ventTo) - 60], [ventTo - 8, ventEnd(ventTo - 8)], 6);
  const ventLeft = ring(
    down(dashLeft, atLeft(ventEnd), atLeft(skinEnd)),
    along(skinEnd, dashLeft(atLeft(skinEnd)), ventTo),
    ventFront,
    along(ventEnd, ventTo - 8, dashLeft(atLeft(ventEnd))),
  );
  const decor = ring(
    along(skinEnd, ventTo, displayLeft(skinEnd(1570))),
    down(displayLeft, skinEnd(1570), stripEnd(1570)),
    along(stripEnd, displayLeft(stripEnd(1570)), ventTo + 4),
    reversed(ventFront.slice(0, 4)),
  );
  const bead = ring(
    along(stripEnd, ventTo + 4, displayLeft(stripEnd(1570))),
    down(displayLeft, stripEnd(1570), beadEnd(1570), 10),
    along(beadEnd, displayLeft(beadEnd(1570)), ventTo + 1),
  );
  const shroudTop = 812;
  const shroud = ring(
    quadratic([1126, shroudTop + 12], [1250, shroudTop - 22], [1374, shroudTop + 6], 8),
    quadratic([1374, shroudTop + 6], [1366, 880], [1330, 938], 6),
    quadratic([1330, 938], [1250, 956], [1170, 940], 6),
    quadratic([1170, 940], [1134, 880], [1126, shroudTop + 12], 6),
  );
  const shroudCut = (y: number, side: 'left' | 'right'): number => {
    const candidates = shroud.filter(([x]) => (side === 'left' ? x < 1250 : x > 1250));
    const sorted = candidates.filter(([, py]) => py > shroudTop + 2).sort((a, b) => a[1] - b[1]);
    const above = sorted.filter(([, py]) => py <= y).at(-1) ?? sorted[0];
    const below = sorted.find(([, py]) => py > y) ?? above;
    return below === above ? above[0] : above[0] + ((below[0] - above[0]) * (y - above[1])) / (below[1] - above[1]);
  };
  const shroudMeetsLeft = shroudCut(middleEnd(1130), 'left');
  const shroudMeetsRight = shroudCut(middleEnd(1360), 'right');
  const aboveMiddle = shroud.filter(([x, y]) => y < middleEnd(x) - 4);
  const belowMiddle = shroud.filter(([x, y]) => y > middleEnd(x) + 4);
  const shroudRoof = [...aboveMiddle].sort((a, b) => angleRound(a, [1250, 950]) - angleRound(b, [1250, 950]));
  const shroudFloor = [...belowMiddle].sort((a, b) => angleRound(b, [1250, 760]) - angleRound(a, [1250, 760]));
  const middleTop = (flip: (x: number) => number): MapPoint[] =>
    ring(
      down(dashLeft, atLeft(middleEnd), atLeft(ventEnd)),
      along(ventEnd, dashLeft(atLeft(ventEnd)), ventTo - 8),
      reversed(ventFront.slice(4)),
      along(beadEnd, ventTo + 1, displayLeft(beadEnd(1570))),
      down(displayLeft, beadEnd(1570), displayEnd),
      [[displayLeft(displayEnd) + 2, middleEnd(1580)]],
    ).map(([x, y]) => [flip(x), y] as const);
  const same = (x: number): number => x;
  const middleFrom = displayLeft(displayEnd) + 2;
  const middleLeft = ring(
    middleTop(same),
    along(middleEnd, middleFrom, shroudMeetsRight),
    reversed(shroudRoof),
    along(middleEnd, shroudMeetsLeft, dashLeft(atLeft(middleEnd))),
  );
  const middleRight = ring(middleTop(right), along(middleEnd, right(middleFrom), right(dashLeft(atLeft(middleEnd)))));
  const lowerLeftEnd = quadratic([dashLeft(atLeft(middleEnd)), atLeft(middleEnd)], [906, 940], [980, lowerEnd(980)], 6);
  const kneeSide = quadratic([middleFrom, middleEnd(middleFrom)], [1578, 940], [1570, lowerEnd(1570)], 4);
  const knee = ring(
    along(middleEnd, dashLeft(atLeft(middleEnd)), shroudMeetsLeft),
    shroudFloor,
    along(middleEnd, shroudMeetsRight, middleFrom),
    kneeSide,
    along(lowerEnd, 1570, 980),
    reversed(lowerLeftEnd),
  );
  const glovebox = mirrored(
    ring(along(middleEnd, dashLeft(atLeft(middleEnd)), middleFrom), kneeSide, along(lowerEnd, 1570, 980), reversed(lowerLeftEnd)),
    mapWidth,
  );
  const upperHalf = (withHood: boolean): MapPoint[] =>
    ring(
      [[centre, displayTop]],
      [[centre - displayHalf, displayTop]],
      down(displayLeft, displayTop, skinEnd(1566)),
      withHood
        ? [
            ...along(skinEnd, displayLeft(skinEnd(1566)), hoodTo),
            ...reversed(hoodOuter),
            ...along(skinEnd, hoodFrom, dashLeft(atLeft(skinEnd))),
          ]
        : along(skinEnd, displayLeft(skinEnd(1566)), dashLeft(atLeft(skinEnd))),
      down(dashLeft, atLeft(skinEnd), atLeft(dashTop)),
      along(dashTop, dashLeft(atLeft(dashTop)), centre - grilleHalf),
      quadratic(
        [centre - grilleHalf, dashTop(centre - grilleHalf)],
        [centre - grilleHalf + 8, grilleEnd(centre - grilleHalf)],
        [centre - grilleHalf + 40, grilleEnd(centre - grilleHalf + 40)],
        4,
      ),
      along(grilleEnd, centre - grilleHalf + 40, centre),
    );
  const grilleHalfRing = ring(
    [[centre, grilleEnd(centre)]],
    along(grilleEnd, centre, centre - grilleHalf + 40),
    quadratic(
      [centre - grilleHalf + 40, grilleEnd(centre - grilleHalf + 40)],
      [centre - grilleHalf + 8, grilleEnd(centre - grilleHalf)],
      [centre - grilleHalf, dashTop(centre - grilleHalf)],
      4,
    ),
    along(dashTop, centre - grilleHalf, centre),
  );
  const display = ring(
    [
      [centre, displayTop],
      [centre - displayHalf, displayTop],
    ],
    displaySide,
    along(() => displayEnd, displayLeft(displayEnd), centre),
  );
  const climate = ring(
    [
      [centre, displayEnd],
      [displayLeft(displayEnd), displayEnd],
      [middleFrom, middleEnd(1580)],
    ],
    [[1580, consoleTop]],
    [[centre, consoleTop]],
  );
  return {
    'upper-dash': ring(upperHalf(true), mirrored(upperHalf(false), mapWidth)),
    'demister-grille': bothHalves(grilleHalfRing),
    'instrument-hood': ring(hoodOuter, along(skinEnd, hoodTo, hoodTo - 40), reversed(hoodInner), along(skinEnd, hoodFrom + 40, hoodFrom)),
    'instrument-surround': ring(hoodInner, along(skinEnd, hoodTo - 40, hoodFrom + 40)),
    'display-surround': bothHalves(reversed(display)),
    'decor-dash-left': decor,
    'bead-left': bead,
    'mid-dash-left': middleLeft,
    'mid-dash-right': middleRight,
    'vent-left': ventLeft,
    'climate-panel': bothHalves(reversed(climate)),
    'knee-panel': knee,
    'glovebox-lid': glovebox,
    'column-shroud': shroud,
  };
}
