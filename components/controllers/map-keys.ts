import { mapBox } from './map-host.ts';
import type { MapHost } from './map-host.ts';
import type { MapLooking } from './map-looking.ts';
import type { MapPicks } from './map-picks.ts';
import type { MapToolInHand } from './map-tool-in-hand.ts';
import type { MapWalk } from './map-walk.ts';

/** What the keys do on the map: first one looks about, then a tool is taken up, then the tool in hand has its keys, and then one walks on. */
export class MapKeys {
  constructor(host: MapHost, looking: MapLooking, picks: MapPicks, walk: MapWalk, inHand: MapToolInHand) {
    this.host = host;
    this.looking = looking;
    this.picks = picks;
    this.walk = walk;
    this.inHand = inHand;
  }

  private readonly host: MapHost;
  private readonly looking: MapLooking;
  private readonly picks: MapPicks;
  private readonly walk: MapWalk;
  private readonly inHand: MapToolInHand;

  readonly down = (event: KeyboardEvent): void => {
    if (event.defaultPrevented) return;
    const taken = this.looking.key(event) || this.toolKey(event)
      || (this.inHand.tool === 'outline' && this.inHand.outlining.key(event, () => this.inHand.take('look'))) || this.walkKey(event);
    if (!taken) return;
    event.preventDefault();
    event.stopPropagation();
  };

  private toolKey({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
    if (ctrlKey || metaKey || altKey) return false;
    const { editable } = this.host;
    switch (key) {
      case 'p': case 'P': this.walk.turn(); return true;
      case 'o': case 'O': if (editable) this.inHand.takeUp('outline'); return editable;
      case 'j': case 'J': if (editable) this.inHand.takeUp('join'); return editable;
      default: return false;
    }
  }

  private walkKey({ key, shiftKey }: KeyboardEvent): boolean {
    if (key === 'Escape') return this.leave();
    if (key === 'ContextMenu' || (key === 'F10' && shiftKey)) return this.menu();
    if (key === 'Enter') return this.enter(shiftKey);
    return !shiftKey && key.startsWith('Arrow') && this.walk.step(key);
  }

  private leave(): boolean {
    if (this.inHand.tool !== 'look') this.inHand.take('look');
    this.host.pointedPart = undefined;
    this.picks.point(undefined);
    return true;
  }

  private enter(more: boolean): boolean {
    const { pointed, pointedPart } = this.host;
    if (this.walk.along === 'joints' && pointed !== undefined) this.picks.open(pointed);
    else if (pointedPart !== undefined && this.inHand.tool === 'join') this.inHand.joining.pick(pointedPart);
    else if (pointedPart !== undefined) this.picks.select(pointedPart, more);
    else return false;
    return true;
  }

  private menu(): boolean {
    const box = mapBox(this.host);
    const { editable, place } = this.host;
    const { here } = this.walk;
    if (!editable || box === undefined || place === undefined || here === undefined) return false;
    const [x, y] = place.toScreen(here.spot);
    this.picks.menu(box.left + x, box.top + y, here);
    return true;
  }
}
