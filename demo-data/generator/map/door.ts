import type { MapPoint } from '../../../src/cabin/cabin.ts';
import { beltLine, decorEnd, doorEnd, doorFront, doorRear, restEnd, restTop, reversed, rollEnd, sillEnd } from './lines.ts';
import { along, down, quadratic, ring } from './polygon.ts';

/** The left door; without a switch panel its armrest fills the place. */
export function doorRings(withSwitch: boolean): Record<string, MapPoint[]> {
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
  const atFront = (line: (x: number) => number): number => line(front(line));
  const atRear = (line: (x: number) => number): number => line(rear(line));
  const roll = ring(
    along(beltLine, 184, front(beltLine)),
    down(doorFront, atFront(beltLine), atFront(rollEnd)),
    along(rollEnd, front(rollEnd), 180),
    quadratic([180, rollEnd(180)], [182, 700], [184, beltLine(184)], 4),
  );
  const decor = ring(
    along(rollEnd, rear(rollEnd), front(rollEnd)),
    down(doorFront, atFront(rollEnd), atFront(decorEnd)),
    along(decorEnd, front(decorEnd), rear(decorEnd)),
    down(doorRear, atRear(decorEnd), atRear(rollEnd)),
  );
  const restFront = quadratic([792, restTop(792)], [812, 1010], [742, restEnd(742)], 16);
  const switchFrom = 520;
  const switchEnd = (x: number): number => restTop(x) + 46;
  const switchFront = restFront.filter(([x, y]) => y <= switchEnd(x));
  const insert = ring(
    along(decorEnd, rear(decorEnd), front(decorEnd)),
    down(doorFront, atFront(decorEnd), atFront(restTop)),
    along(restTop, front(restTop), rear(restTop)),
    down(doorRear, atRear(restTop), atRear(decorEnd)),
  );
  const panel = ring(
    along(switchEnd, switchFrom + 14, switchFront.at(-1)?.[0] ?? 790),
    reversed(switchFront),
    along(restTop, 792, switchFrom),
    quadratic([switchFrom, restTop(switchFrom)], [switchFrom, switchEnd(switchFrom)], [switchFrom + 14, switchEnd(switchFrom + 14)], 4),
  );
  const armrest = withSwitch
    ? ring(
        along(restTop, rear(restTop), switchFrom),
        quadratic([switchFrom, restTop(switchFrom)], [switchFrom, switchEnd(switchFrom)], [switchFrom + 14, switchEnd(switchFrom + 14)], 4),
        along(switchEnd, switchFrom + 14, switchFront.at(-1)?.[0] ?? 790),
        restFront.slice(switchFront.length),
        along(restEnd, 742, rear(restEnd)),
        down(doorRear, atRear(restEnd), atRear(restTop)),
      )
    : ring(
        along(restTop, rear(restTop), 792),
        restFront,
        along(restEnd, 742, rear(restEnd)),
        down(doorRear, atRear(restEnd), atRear(restTop)),
      );
  const frontCorner = doorFront(1440);
  const pocket = ring(
    along(restEnd, rear(restEnd), 742),
    reversed(restFront),
    along(restTop, 792, front(restTop)),
    down(doorFront, atFront(restTop), 1440),
    quadratic([frontCorner, 1440], [frontCorner - 24, doorEnd(700)], [frontCorner - 110, doorEnd(frontCorner - 110)], 8),
    along(doorEnd, frontCorner - 110, rear(doorEnd)),
    down(doorRear, atRear(doorEnd), atRear(restEnd)),
  );
  const sill = ring(
    along(doorEnd, rear(doorEnd), frontCorner - 110),
    quadratic([frontCorner - 110, doorEnd(frontCorner - 110)], [frontCorner + 10, doorEnd(frontCorner) + 4], [898, 1552], 8),
    quadratic([898, 1552], [930, 1556], [900, sillEnd(900)], 4),
    along(sillEnd, 900, 116),
    [[rear(doorEnd), atRear(doorEnd)]],
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
