import type { Point } from '../../src/report/figures/polyline.ts';
import { nearestTowards } from '../model/map-gestures.ts';
import { middleOf } from '../model/part-middle.ts';
import type { MapHost } from './map-host.ts';
import type { MapLooking } from './map-looking.ts';
import type { MapPicks, MapThing } from './map-picks.ts';

const stepOf: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

/** Arrow keys on the map go through the joints, worst first, or from part to part; what they come to is pointed at and brought into sight. */
export class MapWalk {
  constructor(host: MapHost, looking: MapLooking, picks: MapPicks) {
    this.host = host;
    this.looking = looking;
    this.picks = picks;
  }

  private readonly host: MapHost;
  private readonly looking: MapLooking;
  private readonly picks: MapPicks;
  private way: 'joints' | 'parts' = 'joints';

  /** What the keys go along. */
  get along(): 'joints' | 'parts' {
    return this.way;
  }

  set along(way: 'joints' | 'parts') {
    this.way = way;
    this.host.requestUpdate();
  }

  turn(): void {
    this.along = this.way === 'parts' ? 'joints' : 'parts';
  }

  /** Returns whether the key led anywhere. */
  step(key: string): boolean {
    return this.way === 'joints' ? this.alongJoints(key) : this.alongParts(key);
  }

  private alongJoints(key: string): boolean {
    const step = stepOf[key];
    const { listed, pointed, input } = this.host;
    if (step === undefined || listed.length === 0) return false;
    const here = listed.findIndex(({ id }) => id === pointed);
    const next = listed[Math.max(0, Math.min(listed.length - 1, here < 0 ? 0 : here + step))];
    this.picks.point(next?.id);
    const path = input?.joints.find(({ id }) => id === next?.id)?.path;
    if (path?.[0] !== undefined) this.looking.reveal(path[Math.floor(path.length / 2)] ?? path[0]);
    return true;
  }

  private alongParts(key: string): boolean {
    const { host } = this;
    const parts = host.input?.parts ?? [];
    const here = parts.find(({ id }) => id === (host.pointedPart ?? host.selection.parts?.at(-1)));
    const stops = parts.filter((part) => part !== here).map((part) => ({ part, at: middleOf(part) }));
    const next = here === undefined ? parts[0] : nearestTowards(middleOf(here), key, stops)?.part;
    if (next !== undefined) {
      host.pointedPart = next.id;
      this.looking.reveal(middleOf(next));
    }
    return true;
  }

  /** The joint or the part one has come to, with a point of it, mm; undefined where one has come to none. */
  get here(): (MapThing & { readonly spot: Point }) | undefined {
    const { input, pointed, pointedPart } = this.host;
    const joint = this.way === 'joints' ? input?.joints.find(({ id }) => id === pointed) : undefined;
    const part = input?.parts.find(({ id }) => id === pointedPart);
    const spot = joint?.path[0] ?? (part === undefined ? undefined : middleOf(part));
    return spot === undefined ? undefined : { part: part?.id, joint: joint?.id, spot };
  }

  /** The name of the map, which tells what the keys do. */
  get label(): string {
    return this.way === 'joints'
      ? 'Map of the cabin. Arrow keys go through the joints, worst first; Enter opens one. P goes along parts instead.'
      : 'Map of the cabin. Arrow keys go from part to part; Enter chooses one, with Shift one more. P goes along joints instead.';
  }
}
