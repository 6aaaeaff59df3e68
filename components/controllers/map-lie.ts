import type { ReactiveController } from 'lit';
import type { MapPlace } from '../../src/report/figures/map-place.ts';
import { transformBetween } from '../model/map-gestures.ts';
import type { MapHost } from './map-host.ts';
import type { MapLooking } from './map-looking.ts';

/** Sheets are shown up to so many times as large or small as they are drawn, as a power of two. */
const mostEnlarged = 1.6;

/** Where the sheets of the map lie: while it moves they are moved as a whole, which a browser does without painting them. */
export class MapLie implements ReactiveController {
  constructor(host: MapHost, looking: MapLooking) {
    this.host = host;
    this.looking = looking;
    host.addController(this);
  }

  private readonly host: MapHost;
  private readonly looking: MapLooking;
  private lie: MapPlace | undefined;

  /** The place that the sheets are laid for: the one where one looks, or while that moves the one where one looked when it began. */
  at(place: MapPlace): MapPlace {
    if (!this.looking.settling || this.lie === undefined || !isNear(this.lie, place)) this.lie = place;
    return this.lie;
  }

  hostUpdated(): void {
    const sheets = this.host.shadowRoot?.querySelector<HTMLElement>('.lying');
    const { lie, host: { place } } = this;
    const moved = this.looking.settling && place !== undefined && lie !== undefined ? transformBetween(lie, place) : '';
    if (sheets !== null && sheets !== undefined && sheets.style.transform !== moved) sheets.style.transform = moved;
  }
}

/** Whether what was drawn at one place can be shown as at another without being told to be enlarged. */
const isNear = (drawn: MapPlace, now: MapPlace): boolean => Math.abs(Math.log2(now.scale / drawn.scale)) < mostEnlarged;
