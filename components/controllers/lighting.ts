import type { ReactiveControllerHost } from 'lit';
import { findLight } from '../model/light-groups.ts';
import { partColours } from '../model/part-colours.ts';
import type { Gamut, PartColour } from '../model/part-colours.ts';
import { DisplayGamut } from '../platform/display-gamut.ts';
import type { Desk } from './desk.ts';
import type { OpenCabin } from './open-cabin.ts';
import type { Whereabouts } from './whereabouts.ts';

const usualLight = 'D65';

interface KnownColours {
  readonly parts: OpenCabin['judgement']['parts'];
  readonly light: string;
  readonly gamut: Gamut;
  readonly colours: ReadonlyMap<string, PartColour>;
}

/** The light of the whole workbench, the colours that the screen can show, and what the parts look like so. */
export class Lighting {
  constructor(host: ReactiveControllerHost, desk: Desk, whereabouts: Whereabouts) {
    this.desk = desk;
    this.whereabouts = whereabouts;
    this.display = new DisplayGamut(host);
  }

  private readonly desk: Desk;
  private readonly whereabouts: Whereabouts;
  private readonly display: DisplayGamut;
  private known: KnownColours | undefined;

  /** Name of the light that the address asks for, where there is such a one. */
  get light(): string {
    const wanted = this.whereabouts.route.light;
    return wanted !== undefined && findLight(wanted, this.desk.open?.cabin.lights) !== undefined ? wanted : usualLight;
  }

  get gamut(): Gamut {
    return this.display.gamut;
  }

  /** Kept from one drawing to the next, since most of them change neither the cabin nor the light. */
  colours({ cabin, judgement }: OpenCabin): ReadonlyMap<string, PartColour> {
    const { light: name, gamut, known } = this;
    if (known !== undefined && known.parts === judgement.parts && known.light === name && known.gamut === gamut) return known.colours;
    const light = findLight(name, cabin.lights);
    const colours = light === undefined ? new Map<string, PartColour>() : partColours(judgement, light, gamut);
    this.known = { parts: judgement.parts, light: name, gamut, colours };
    return colours;
  }
}
