import type { Colourway } from './colourways.ts';
import { consoleParts } from './parts/console.ts';
import { dashParts } from './parts/dash.ts';
import { doorParts } from './parts/door.ts';
import { floorParts } from './parts/floor.ts';
import { roofParts } from './parts/roof.ts';
import { seatParts } from './parts/seat.ts';
import type { PartPlan } from './types.ts';

/** Paint order: a part that lies on another comes after it. */
export function partPlans(way: Colourway): PartPlan[] {
  const troubled = way.id === 'slate';
  return [
    ...roofParts(way),
    ...dashParts(way, troubled),
    ...doorParts(way, troubled),
    ...consoleParts(way, troubled),
    ...seatParts(way, troubled),
    ...floorParts(way),
  ].map((part) => (way.id === 'chalk' && carriedOver.has(part.id) ? { ...part, frozen: true } : part));
}

/** Parts that the light colourway takes over from the dark one as they are. */
export const carriedOver: ReadonlySet<string> = new Set([
  'headliner',
  'visor-left',
  'visor-right',
  'overhead-console',
  'a-pillar-left',
  'a-pillar-right',
  'b-pillar-left',
  'b-pillar-right',
  'upper-dash',
  'demister-grille',
  'instrument-hood',
  'instrument-surround',
  'display-surround',
  'vent-left',
  'vent-right',
  'climate-panel',
  'door-roll-left',
  'door-roll-right',
  'door-switch-left',
  'door-switch-right',
  'console-frame',
  'selector-surround',
  'bead-left',
  'bead-right',
  'decor-dash-left',
  'decor-dash-right',
  'carpet-left',
  'carpet-right',
  'dash-stitch',
  'roll-stitch-left',
  'roll-stitch-right',
]);
