import { lampRange } from './lamp.ts';
import type { LampSetting } from './lamp.ts';

/** Pixels that move the lamp from the middle over the sample to grazing. */
const reach = 220;
/** Pixels that turn the sample by a degree. */
const perDegree = 4;

const radians = Math.PI / 180;
const within = (value: number, [low, high]: readonly [number, number]): number => Math.min(high, Math.max(low, value));

/** The lamp after a pull on the picture: it follows as if seen from above, nearer to the edge the lower it stands; a pull that tilts turns the sample instead. */
export function draggedLamp({ fromDeg, elevationDeg, tiltDeg }: LampSetting, dx: number, dy: number, tilts: boolean): LampSetting {
  if (tilts) return { fromDeg, elevationDeg, tiltDeg: within(tiltDeg - dy / perDegree, lampRange.tiltDeg) };
  const out = Math.cos(elevationDeg * radians);
  const x = out * Math.sin(fromDeg * radians) + dx / reach;
  const y = -out * Math.cos(fromDeg * radians) + dy / reach;
  const distance = Math.min(1, Math.hypot(x, y));
  return { tiltDeg, fromDeg: Math.atan2(x, -y) / radians, elevationDeg: within(Math.acos(distance) / radians, lampRange.elevationDeg) };
}

const directions = ['above', 'above right', 'the right', 'below right', 'below', 'below left', 'the left', 'above left'] as const;

/** Where the lamp's light comes from, in words. */
export const lampDirection = (fromDeg: number): string => `from ${directions[((Math.round(fromDeg / 45) % 8) + 8) % 8]}`;
