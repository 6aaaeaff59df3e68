import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { beltLine, bothHalves, centre, dashTop, railUnder, reversed, rollEnd, roofCrown, roofHeader, visorTop } from './lines.ts';
import { along, cubic, quadratic, ring } from './polygon.ts';

/** Headliner, visors, overhead console and pillars; left hands only. */
export function roofRings(): Record<string, MapPoint[]> {
  const visorFrom = 872;
  const visorTo = 1596;
  const consoleHalf = 176;
  const consoleTop = 172;
  const visor = ring(along(visorTop, visorFrom + 26, visorTo), along(roofHeader, visorTo, visorFrom));
  const half = ring(
    [[centre, consoleTop]],
    quadratic(
      [centre - consoleHalf + 40, consoleTop],
      [centre - consoleHalf - 4, consoleTop],
      [centre - consoleHalf - 18, roofHeader(centre - consoleHalf - 18)],
      6,
    ),
    along(roofHeader, centre - consoleHalf - 18, visorTo),
    reversed(along(visorTop, visorFrom + 26, visorTo)),
    along(roofHeader, visorFrom, 740),
    along(railUnder, 740, 92),
    cubic([92, railUnder(92)], [66, 318], [120, 245], [240, roofCrown(240)], 14),
    along(roofCrown, 240, centre),
  );
  const overheadHalf = ring(
    quadratic(
      [centre - consoleHalf + 40, consoleTop],
      [centre - consoleHalf - 4, consoleTop],
      [centre - consoleHalf - 18, roofHeader(centre - consoleHalf - 18)],
      6,
    ),
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
