import type { PropertyDeclarations } from 'lit';
import type { AdjoinLongList } from '../app/adjoin-long-list.ts';
import type { Desk } from '../controllers/desk.ts';
import { InTurnElement } from '../controllers/in-turn-element.ts';
import type { OpenCabin } from '../controllers/open-cabin.ts';
import type { Route } from '../controllers/route.ts';
import { deepElements } from '../model/focus-path.ts';
import type { Gamut, PartColour } from '../model/part-colours.ts';

/** What the shell gives to every view. The view reads `open`, edits through `desk` or the events of `edit-events.ts`, and links through `linkTo`. */
export interface ViewProperties {
  open: OpenCabin;
  desk: Desk;
  route: Route;
  /** Name of the light of the whole workbench. */
  light: string;
  gamut: Gamut;
  /** Colour of every part under that light. */
  colours: ReadonlyMap<string, PartColour>;
  /** Address of the present place with some of it changed. */
  linkTo: (change: Partial<Route>) => string;
  /** Goes there: a new step for the back button, or with `refine` the same step refined. */
  go: (change: Partial<Route>, refine?: boolean) => void;
}

/** A view, with what the shell gives it; a view adds its own properties to these. */
export abstract class ViewElement extends InTurnElement implements ViewProperties {
  static override properties: PropertyDeclarations = {
    open: { attribute: false }, desk: { attribute: false }, route: { attribute: false }, light: {}, gamut: {}, colours: { attribute: false },
    linkTo: { attribute: false }, go: { attribute: false },
  };

  declare open: OpenCabin;
  declare desk: Desk;
  declare route: Route;
  declare light: string;
  declare gamut: Gamut;
  declare colours: ReadonlyMap<string, PartColour>;
  declare linkTo: (change: Partial<Route>) => string;
  declare go: (change: Partial<Route>, refine?: boolean) => void;

  /** Lies over the whole page as a dialog. */
  readonly covers: boolean = false;

  /** Brings into being what leads to a place, where the view draws only a part of what it has: items of long lists are told by joint or item. */
  reveal({ joint, item }: Route): void {
    const id = joint ?? item;
    if (id === undefined) return;
    for (const element of deepElements(this.renderRoot as ShadowRoot)) if (element.localName === 'adjoin-long-list') (element as AdjoinLongList).bring(id);
  }
}
