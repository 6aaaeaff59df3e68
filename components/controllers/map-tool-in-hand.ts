import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import type { MapHost } from './map-host.ts';
import { MapJoining } from './map-joining.ts';
import type { MapLooking } from './map-looking.ts';
import { MapOutlining } from './map-outlining.ts';
import type { MapPicks } from './map-picks.ts';
import type { MapWalk } from './map-walk.ts';

export const mapTools = ['look', 'outline', 'join'] as const;
export type MapTool = (typeof mapTools)[number];

/** The tool that one has in hand on the map, and what is under way with it. */
export class MapToolInHand {
  constructor(host: MapHost, looking: MapLooking, picks: MapPicks, walk: MapWalk) {
    this.host = host;
    this.looking = looking;
    this.picks = picks;
    this.walk = walk;
    this.outlining = new MapOutlining(host);
    this.joining = new MapJoining(host);
  }

  readonly outlining: MapOutlining;
  readonly joining: MapJoining;
  private readonly host: MapHost;
  private readonly looking: MapLooking;
  private readonly picks: MapPicks;
  private readonly walk: MapWalk;
  private held: MapTool = 'look';

  get tool(): MapTool {
    return this.held;
  }

  take(tool: MapTool): void {
    this.held = tool;
    this.joining.begin(undefined);
    // The other tools work on parts.
    if (tool !== 'look') this.walk.along = 'parts';
    this.turnTo();
    if (tool === 'outline') this.looking.near(this.host.active?.outline ?? []);
  }

  /** Takes up a tool with the part that is pointed at. */
  takeUp(tool: MapTool): void {
    const at = this.host.pointedPart;
    if (tool === 'outline' && at !== undefined) this.picks.select(at, false);
    this.take(tool);
    if (tool === 'join') this.joining.begin(at ?? this.host.selection.parts?.at(-1));
  }

  /** The part in hand is another one. */
  turnTo(): void {
    this.outlining.begin(this.held === 'outline');
  }

  /** What can be done now. */
  get hint(): string | undefined {
    switch (this.held) {
      case 'join': return this.joining.hint((part) => cabinIndex(this.host.cabin).parts.get(part)?.name);
      case 'outline': return this.outlining.hint;
      case 'look': return undefined;
    }
  }

  /** Where the point of the outline in hand is, in words. */
  get words(): string | undefined {
    return this.held === 'outline' ? this.outlining.words : undefined;
  }
}
