import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { along, cubic, down, inset, mirrored, quadratic, ring, rounded, toTenths, withoutLoops } from './polygon.ts';

/** The unfolded cabin: windscreen side up, the driver's side at the left, millimetres, y down. */
export const mapWidth = 3600;
export const mapHeight = 1960;
/** Every part gives way by half of this, so that neighbours stand this far apart. */
export const mapGap = 6;

const centre = mapWidth / 2;
const bow = (atCentre: number, atEdge: number, halfSpan: number, power = 2) => (x: number): number =>
  atCentre + (atEdge - atCentre) * Math.abs((x - centre) / halfSpan) ** power;

// Lines of the roof.
const roofCrown = bow(46, 214, 1560, 2.4);
const roofHeader = bow(292, 372, 1060);
const visorTop = (x: number): number => roofHeader(x) - 112;
const railUnder = (x: number): number => 372 + (x - 740) * 0.012 - ((740 - x) / 600) ** 2 * 10;

// Lines of the instrument panel, from the windscreen down.
const dashTop = bow(478, 580, 930);
const skinEnd = bow(648, 700, 930);
const stripEnd = (x: number): number => skinEnd(x) + 58;
const beadEnd = (x: number): number => skinEnd(x) + 78;
const middleEnd = bow(866, 890, 930);
const lowerEnd = bow(1012, 960, 930, 3);
const dashLeft = (y: number): number => 868 - 0.04 * (y - 580) + 0.16 * Math.max(0, y - 690);

// Lines of the left door.
const beltLine = (x: number): number => 652 - 71 * ((x - 180) / 690) ** 1.6;
const rollEnd = (x: number): number => 756 - 62 * (Math.max(0, x - 60) / 810) ** 1.3;
const decorEnd = (x: number): number => rollEnd(x) + 44 + 14 * ((870 - x) / 810);
const restTop = (x: number): number => 1010 - 62 * (Math.max(0, x - 60) / 810) ** 1.2;
const restEnd = (x: number): number => restTop(x) + 104 - 14 * (x / 800);
const doorEnd = (x: number): number => 1516 + 26 * ((x - 400) / 400);
const doorFront = (y: number): number => 868 - 4 * ((y - 580) / 100) - 92 * (Math.max(0, y - 1000) / 520) ** 2;
const doorRear = (y: number): number => 58 + 46 * (Math.max(0, y - 700) / 840) ** 2;
const sillEnd = (x: number): number => doorEnd(x) + 76;

// Lines of the console and the floor.
const consoleTop = 912;
const cushionEnd = 1656;
const floorTop = (x: number): number => {
  const share = Math.min(1, Math.max(0, (x - 872) / 92));
  return sillEnd(Math.min(x, 872)) + (cushionEnd - sillEnd(872)) * share * share * (3 - 2 * share);
};
const floorEnd = bow(1932, 1772, 1690, 2.6);

const reversed = (points: readonly MapPoint[]): MapPoint[] => [...points].reverse();

function roof(): Record<string, MapPoint[]> {
  const visorFrom = 872;
  const visorTo = 1596;
  const consoleHalf = 176;
  const consoleTop = 172;
  const visor = ring(along(visorTop, visorFrom + 26, visorTo), along(roofHeader, visorTo, visorFrom));
  const half = ring(
    [[centre, consoleTop]],
    quadratic([centre - consoleHalf + 40, consoleTop], [centre - consoleHalf - 4, consoleTop], [centre - consoleHalf - 18, roofHeader(centre - consoleHalf - 18)], 6),
    along(roofHeader, centre - consoleHalf - 18, visorTo),
    reversed(along(visorTop, visorFrom + 26, visorTo)),
    along(roofHeader, visorFrom, 740),
    along(railUnder, 740, 92),
    cubic([92, railUnder(92)], [66, 318], [120, 245], [240, roofCrown(240)], 14),
    along(roofCrown, 240, centre),
  );
  const overheadHalf = ring(
    quadratic([centre - consoleHalf + 40, consoleTop], [centre - consoleHalf - 4, consoleTop], [centre - consoleHalf - 18, roofHeader(centre - consoleHalf - 18)], 6),
    quadratic([centre - consoleHalf - 18, roofHeader(centre - consoleHalf - 18)], [centre - 120, 330], [centre, 330], 8),
  );
  const pillarFront = cubic([740, 372], [812, 430], [878, 500], [934, dashTop(934)], 12);
  const pillarRear = cubic([586, railUnder(586)], [690, 446], [760, 534], [800, beltLine(800)], 12);
  const aPillar = ring(pillarFront, along(dashTop, 934, 868), along(beltLine, 866, 800), reversed(pillarRear), along(railUnder, 586, 740));
  const bPillar = ring(
    [[96, railUnder(96)]],
    along(railUnder, 96, 236),
    quadratic([236, railUnder(236)], [196, 520], [184, beltLine(184)], 8),
    quadratic([184, beltLine(184)], [182, 700], [180, rollEnd(180)], 4),
    along(rollEnd, 180, 60),
    quadratic([60, rollEnd(60)], [62, 560], [96, railUnder(96)], 10),
  );
  return {
    headliner: bothHalves(half),
    'visor-left': visor,
    'overhead-console': bothHalves(overheadHalf),
    'a-pillar-left': aPillar,
    'b-pillar-left': bPillar,
  };
}

/** A ring across the centre line from its left half, which must start and end on it or near it. */
function bothHalves(half: readonly MapPoint[]): MapPoint[] {
  return ring(half, mirrored(half, mapWidth));
}

const hoodFrom = 1046;
const hoodTo = 1452;
const hoodOuter = cubic([hoodFrom, skinEnd(hoodFrom)], [1096, 534], [1402, 524], [hoodTo, skinEnd(hoodTo)], 22);
const hoodInner = cubic([hoodFrom + 40, skinEnd(hoodFrom + 40)], [1126, 574], [1372, 566], [hoodTo - 40, skinEnd(hoodTo - 40)], 20);
const displayHalf = 238;
const displayTop = 616;
const displayEnd = 800;
const ventTo = 1010;
const ventEnd = (x: number): number => beadEnd(x) + 16;

function dash(): Record<string, MapPoint[]> {
  const right = (x: number): number => mapWidth - x;
  const grilleHalf = 420;
  const grilleEnd = (x: number): number => dashTop(x) + 34;
  const displayLeft = (y: number): number => centre - displayHalf + (y - displayTop) * 0.1;
  const displaySide = down(displayLeft, displayTop, displayEnd);
  const ventFront = quadratic([ventTo, skinEnd(ventTo)], [ventTo + 12, ventEnd(ventTo) - 60], [ventTo - 8, ventEnd(ventTo - 8)], 6);
  const ventLeft = ring(down(dashLeft, ventEnd(880), skinEnd(880)), along(skinEnd, dashLeft(700), ventTo), ventFront, along(ventEnd, ventTo - 8, dashLeft(790)));
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
      down(dashLeft, middleEnd(890), ventEnd(880)),
      along(ventEnd, dashLeft(790), ventTo - 8),
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
    along(middleEnd, shroudMeetsLeft, dashLeft(890)),
  );
  const middleRight = ring(middleTop(right), along(middleEnd, right(middleFrom), right(dashLeft(890))));
  const lowerLeftEnd = quadratic([dashLeft(890), middleEnd(890)], [906, 940], [980, lowerEnd(980)], 6);
  const kneeSide = quadratic([middleFrom, middleEnd(middleFrom)], [1578, 940], [1570, lowerEnd(1570)], 4);
  const knee = ring(
    along(middleEnd, dashLeft(890), shroudMeetsLeft),
    shroudFloor,
    along(middleEnd, shroudMeetsRight, middleFrom),
    kneeSide,
    along(lowerEnd, 1570, 980),
    reversed(lowerLeftEnd),
  );
  const glovebox = mirrored(ring(along(middleEnd, dashLeft(890), middleFrom), kneeSide, along(lowerEnd, 1570, 980), reversed(lowerLeftEnd)), mapWidth);
  const upperHalf = (withHood: boolean): MapPoint[] => ring(
    [[centre, displayTop]],
    [[centre - displayHalf, displayTop]],
    down(displayLeft, displayTop, skinEnd(1566)),
    withHood
      ? [...along(skinEnd, displayLeft(skinEnd(1566)), hoodTo), ...reversed(hoodOuter), ...along(skinEnd, hoodFrom, dashLeft(700))]
      : along(skinEnd, displayLeft(skinEnd(1566)), dashLeft(700)),
    down(dashLeft, skinEnd(880), dashTop(868)),
    along(dashTop, 868, centre - grilleHalf),
    quadratic([centre - grilleHalf, dashTop(centre - grilleHalf)], [centre - grilleHalf + 8, grilleEnd(centre - grilleHalf)], [centre - grilleHalf + 40, grilleEnd(centre - grilleHalf + 40)], 4),
    along(grilleEnd, centre - grilleHalf + 40, centre),
  );
  const grilleHalfRing = ring(
    [[centre, grilleEnd(centre)]],
    along(grilleEnd, centre, centre - grilleHalf + 40),
    quadratic([centre - grilleHalf + 40, grilleEnd(centre - grilleHalf + 40)], [centre - grilleHalf + 8, grilleEnd(centre - grilleHalf)], [centre - grilleHalf, dashTop(centre - grilleHalf)], 4),
    along(dashTop, centre - grilleHalf, centre),
  );
  const display = ring(
    [[centre, displayTop], [centre - displayHalf, displayTop]],
    displaySide,
    along(() => displayEnd, displayLeft(displayEnd), centre),
  );
  const climate = ring(
    [[centre, displayEnd], [displayLeft(displayEnd), displayEnd], [middleFrom, middleEnd(1580)]],
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

/** Angle of a point seen from another, for sorting along an arc. */
const angleRound = (point: MapPoint, from: MapPoint): number => Math.atan2(point[1] - from[1], point[0] - from[0]);

/** The left door; without a switch panel its armrest fills the place. */
function door(withSwitch: boolean): Record<string, MapPoint[]> {
  const front = (line: (x: number) => number): number => {
    let x = 860;
    for (let turn = 0; turn < 12; turn += 1) x = doorFront(line(x));
    return x;
  };
  const rear = (line: (x: number) => number): number => {
    let x = 60;
    for (let turn = 0; turn < 12; turn += 1) x = doorRear(line(x));
    return x;
  };
  const roll = ring(
    along(beltLine, 184, front(beltLine)),
    down(doorFront, beltLine(868), rollEnd(868)),
    along(rollEnd, front(rollEnd), 180),
    quadratic([180, rollEnd(180)], [182, 700], [184, beltLine(184)], 4),
  );
  const decor = ring(
    along(rollEnd, rear(rollEnd), front(rollEnd)),
    down(doorFront, rollEnd(868), decorEnd(868)),
    along(decorEnd, front(decorEnd), rear(decorEnd)),
    down(doorRear, decorEnd(60), rollEnd(60)),
  );
  const restFront = quadratic([792, restTop(792)], [812, 1010], [742, restEnd(742)], 8);
  const switchFrom = 520;
  const switchEnd = (x: number): number => restTop(x) + 46;
  const switchFront = restFront.filter(([x, y]) => y <= switchEnd(x));
  const insert = ring(
    along(decorEnd, rear(decorEnd), front(decorEnd)),
    down(doorFront, decorEnd(868), restTop(868)),
    along(restTop, front(restTop), rear(restTop)),
    down(doorRear, restTop(60), decorEnd(60)),
  );
  const panel = ring(
    along(switchEnd, switchFrom + 14, switchFront.at(-1)?.[0] ?? 790),
    reversed(switchFront),
    along(restTop, 792, switchFrom),
    quadratic([switchFrom, restTop(switchFrom)], [switchFrom, switchEnd(switchFrom)], [switchFrom + 14, switchEnd(switchFrom + 14)], 4),
  );
  const armrest = withSwitch ? ring(
    along(restTop, rear(restTop), switchFrom),
    quadratic([switchFrom, restTop(switchFrom)], [switchFrom, switchEnd(switchFrom)], [switchFrom + 14, switchEnd(switchFrom + 14)], 4),
    along(switchEnd, switchFrom + 14, switchFront.at(-1)?.[0] ?? 790),
    restFront.slice(switchFront.length),
    along(restEnd, 742, rear(restEnd)),
    down(doorRear, restEnd(60), restTop(60)),
  ) : ring(along(restTop, rear(restTop), 792), restFront, along(restEnd, 742, rear(restEnd)), down(doorRear, restEnd(60), restTop(60)));
  const frontCorner = doorFront(1440);
  const pocket = ring(
    along(restEnd, rear(restEnd), 742),
    reversed(restFront),
    along(restTop, 792, front(restTop)),
    down(doorFront, restTop(868), 1440),
    quadratic([frontCorner, 1440], [frontCorner - 24, doorEnd(700)], [frontCorner - 110, doorEnd(frontCorner - 110)], 8),
    along(doorEnd, frontCorner - 110, rear(doorEnd)),
    down(doorRear, doorEnd(104), restEnd(60)),
  );
  const sill = ring(
    along(doorEnd, rear(doorEnd), frontCorner - 110),
    quadratic([frontCorner - 110, doorEnd(frontCorner - 110)], [frontCorner + 10, doorEnd(frontCorner) + 4], [898, 1552], 8),
    quadratic([898, 1552], [930, 1556], [900, sillEnd(900)], 4),
    along(sillEnd, 900, 116),
    [[rear(doorEnd), doorEnd(104)]],
  );
  return {
    'door-roll-left': roll,
    'door-decor-left': decor,
    'door-insert-left': insert,
    'door-armrest-left': armrest,
    ...(withSwitch ? { 'door-switch-left': panel } : {}),
    'map-pocket-left': pocket,
    'sill-left': sill,
  };
}

function seat(): Record<string, MapPoint[]> {
  const middle = 1226;
  const symmetric = (half: readonly MapPoint[]): MapPoint[] => ring(half, [...half].reverse().map(([x, y]) => [2 * middle - x, y] as const));
  const cushionTop = (x: number): number => 1474 + 10 * ((x - middle) / 270) ** 2;
  const headrest = symmetric([
    ...quadratic([middle, 1186], [middle - 90, 1186], [middle - 108, 1176], 4),
    ...cubic([middle - 108, 1176], [middle - 150, 1160], [middle - 142, 1064], [middle - 88, 1050], 10),
    ...quadratic([middle - 88, 1050], [middle - 40, 1042], [middle, 1042], 4),
  ]);
  const shoulders = cubic([middle - 232, cushionTop(middle - 232)], [middle - 300, 1380], [middle - 232, 1236], [middle - 176, 1206], 14);
  const innerSide = cubic([middle - 136, cushionTop(middle - 136)], [middle - 176, 1400], [middle - 146, 1290], [middle - 112, 1264], 12);
  const neck = [...quadratic([middle - 176, 1206], [middle - 140, 1188], [middle - 108, 1176], 4), ...quadratic([middle - 108, 1176], [middle - 90, 1186], [middle, 1186], 4)];
  const innerTop = quadratic([middle - 112, 1264], [middle - 60, 1244], [middle, 1244], 5);
  const mirror = (points: readonly MapPoint[]): MapPoint[] => points.map(([x, y]) => [2 * middle - x, y] as const);
  const bolster = ring(
    shoulders, neck, reversed(mirror(neck)), reversed(mirror(shoulders)),
    along(cushionTop, middle + 232, middle + 136),
    mirror(innerSide), mirror(innerTop), reversed(innerTop), reversed(innerSide),
    along(cushionTop, middle - 136, middle - 232),
  );
  const backCentre = ring(innerSide, innerTop, reversed(mirror(innerTop)), reversed(mirror(innerSide)), along(cushionTop, middle + 136, middle - 136));
  const cushionSide = cubic([middle - 232, cushionTop(middle - 232)], [middle - 292, 1500], [middle - 290, 1600], [middle - 262, cushionEnd], 12);
  const cushion = ring(
    along(cushionTop, middle - 232, middle + 232),
    mirror(cushionSide),
    along(() => cushionEnd, middle + 262, middle - 262),
    reversed(cushionSide),
  );
  return { 'headrest-left': headrest, 'seat-bolster-left': bolster, 'seat-back-left': backCentre, 'seat-cushion-left': cushion };
}

function consoleAndFloor(): Record<string, MapPoint[]> {
  const outer = (y: number): number => 1578 + 26 * ((y - consoleTop) / 760) ** 2;
  const innerEdge = (y: number): number => outer(y) + 60;
  const end = cushionEnd;
  const selector: MapPoint[] = ring(
    [[centre, consoleTop], [1676, consoleTop]],
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
  const side = ring(down(outer, consoleTop, end), along(() => end, outer(end), innerEdge(end)), down(innerEdge, end, consoleTop));
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

function stitches(): Record<string, MapPoint[]> {
  const middle = 1226;
  const seatStitch = ring(
    cubic([middle - 152, 1466], [middle - 192, 1396], [middle - 162, 1282], [middle - 120, 1250], 12),
    quadratic([middle - 120, 1250], [middle - 60, 1228], [middle, 1228], 6),
  );
  return {
    'dash-stitch': along((x) => skinEnd(x) - 18, 2066, 2690),
    'roll-stitch-left': along((x) => rollEnd(x) - 20, 200, 846),
    'seat-stitch-left': ring(seatStitch, seatStitch.map(([x, y]) => [2 * middle - x, y] as const).reverse()),
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

const cornerRadius: Readonly<Record<string, number>> = {
  'headliner': 26, 'display-surround': 20, 'climate-panel': 12, 'door-switch-left': 14, 'bead-left': 4, 'demister-grille': 8,
  'carpet-left': 30, 'sill-left': 20, 'instrument-hood': 6, 'seat-back-left': 10, 'seat-bolster-left': 10,
};

/** A part as it is drawn: half the gap given way, corners rounded. */
const drawn = (id: string, points: readonly MapPoint[]): MapPoint[] =>
  withoutLoops(rounded(withoutLoops(ring(inset(points, mapGap / 2))), cornerRadius[id] ?? 9));

/** A left door alone, moved to the corner of its own small map. */
export function doorOutlines(): Readonly<Record<string, readonly MapPoint[]>> {
  return Object.fromEntries(Object.entries(door(false)).map(([id, points]) =>
    [id, toTenths(drawn(id, points).map(([x, y]) => [x - 20, y - 540] as const))]));
}

/** Outlines by part id, gaps drawn and corners rounded; thread is an open line. Right hands mirror the left ones. */
export function cabinOutlines(): Readonly<Record<string, readonly MapPoint[]>> {
  const rings = { ...roof(), ...dash(), ...door(true), ...seat(), ...consoleAndFloor() };
  const outlines: Record<string, MapPoint[]> = {};
  const add = (id: string, points: readonly MapPoint[]): void => {
    outlines[id] = toTenths(points);
    if (id.endsWith('-left') && !(id.replace(/-left$/, '-right') in rings)) outlines[id.replace(/-left$/, '-right')] = toTenths(mirrored(points, mapWidth));
  };
  for (const [id, points] of Object.entries(rings)) add(id, drawn(id, points));
  for (const [id, points] of Object.entries(stitches())) add(id, points);
  return outlines;
}
