import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import { pathAddress, pathOfAddress } from '../model/path-address.ts';
import { askMenu, askSelection } from './edit-events.ts';
import type { MapHost } from './map-host.ts';
import { tell } from './tell.ts';

/** What lies at a place of the map. */
export interface MapThing {
  readonly part: string | undefined;
  readonly joint: string | undefined;
}

/** What is done with parts and joints of the map alike by pointer and by keys: they are pointed at, picked, opened, and asked for their menu. */
export class MapPicks {
  constructor(host: MapHost) {
    this.host = host;
  }

  private readonly host: MapHost;

  /** Parts that were picked one after the other, two or more. */
  get path(): readonly string[] {
    return pathOfAddress(this.host.options['path'], (part) => cabinIndex(this.host.cabin).parts.has(part));
  }

  point(joint: string | undefined): void {
    tell(this.host, 'adjoin-point', joint);
  }

  open(joint: string): void {
    tell(this.host, 'adjoin-open-joint', joint);
  }

  /** Picks a part instead of what was picked, or `more`: besides, and back again where it was. */
  select(part: string, more: boolean): void {
    const before = this.host.selection.parts ?? this.path;
    this.choose(!more ? [part] : before.includes(part) ? before.filter((id) => id !== part) : [...before, part]);
  }

  /** Nothing is picked any more. */
  clear(): void {
    if (this.host.selection.parts !== undefined || this.path.length > 0) this.choose([]);
  }

  /** What is picked stands in the address as far as it is a path. */
  private choose(parts: readonly string[]): void {
    askSelection(this.host, parts.length === 0 ? {} : { parts });
    const path = pathAddress(parts);
    if (path !== (this.host.options['path'] ?? '')) tell(this.host, 'adjoin-option', { path });
  }

  /** Opens the menu of a joint, or of a part and what is picked with it, at a place of the window. */
  menu(x: number, y: number, { part, joint }: MapThing): void {
    if (joint !== undefined) askMenu(this.host, { x, y, selection: { joint } });
    else if (part !== undefined) {
      const parts = this.host.selection.parts ?? [];
      askMenu(this.host, { x, y, selection: { parts: parts.includes(part) ? [...parts.filter((id) => id !== part), part] : [part] } });
    }
  }
}
