import { noChange } from 'lit';
import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { AsyncDirective } from 'lit/async-directive.js';
import { directive, PartType } from 'lit/directive.js';
import type { ElementPart, PartInfo } from 'lit/directive.js';
import type { Folds } from './route.ts';

/** A section that was folded or unfolded by hand, for the address. */
export interface Folded {
  readonly name: string;
  readonly unfolded: boolean;
  /** How it begins where nothing is chosen. */
  readonly usual: boolean;
}

export const foldEvent = 'adjoin-fold';

/** What was chosen in the present place. */
let folds: Folds = {};
const watchers = new Set<() => void>();

/** Shows the sections as an address has them; those that it does not name are as they begin. */
export function showFolds(wanted: Folds = {}): void {
  folds = wanted;
  for (const look of watchers) look();
}

const isUnfolded = (name: string, usual: boolean): boolean => folds[name] ?? usual;

function choose(from: EventTarget, folded: Folded): void {
  folds = { ...folds, [folded.name]: folded.unfolded };
  from.dispatchEvent(new CustomEvent<Folded>(foldEvent, { detail: folded, bubbles: true, composed: true }));
}

class Unfolds extends AsyncDirective {
  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.ELEMENT) throw new TypeError('unfolds() belongs to a details element');
  }

  private details: HTMLDetailsElement | undefined;
  private name = '';
  private usual = false;

  private readonly look = (): void => {
    if (this.details !== undefined) this.details.open = isUnfolded(this.name, this.usual);
  };

  /** The event comes after the element has changed, also where that was not by hand: then it is as it should be. */
  private readonly toggled = (): void => {
    const { details, name, usual } = this;
    if (details?.isConnected === true && details.open !== isUnfolded(name, usual)) choose(details, { name, unfolded: details.open, usual });
  };

  override update({ element }: ElementPart, [name, usual = false]: [string, boolean?]): typeof noChange {
    const fresh = this.details === undefined;
    if (fresh) {
      this.details = element as HTMLDetailsElement;
      this.details.addEventListener('toggle', this.toggled);
      if (this.isConnected) watchers.add(this.look);
    }
    if (fresh || name !== this.name || usual !== this.usual) {
      this.name = name;
      this.usual = usual;
      this.look();
    }
    return noChange;
  }

  override render(_name: string, _usual?: boolean): typeof noChange {
    return noChange;
  }

  protected override disconnected(): void {
    watchers.delete(this.look);
  }

  protected override reconnected(): void {
    watchers.add(this.look);
    this.look();
  }
}

/**
 * Makes a `details` element a section whose state stands in the address, under a name that is its own in the place. It begins unfolded where
 * `usual` is true.
 */
export const unfolds = directive(Unfolds);

/** Sections of an element that are drawn only where they are unfolded; the host is drawn anew where one changes. */
export class Sections implements ReactiveController {
  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost & HTMLElement;
  private readonly look = (): void => this.host.requestUpdate();

  hostConnected(): void {
    watchers.add(this.look);
  }

  hostDisconnected(): void {
    watchers.delete(this.look);
  }

  isUnfolded(name: string): boolean {
    return isUnfolded(name, false);
  }

  toggle(name: string): void {
    choose(this.host, { name, unfolded: !isUnfolded(name, false), usual: false });
    this.host.requestUpdate();
  }
}
