import type { LitElement, ReactiveController } from 'lit';
import type { FocusMark } from '../model/focus-mark.ts';
import { FocusKeeper } from './focus-keeper.ts';
import { PlaceChoices } from './place-choices.ts';
import { PlaceMemory } from './place-memory.ts';
import { RouteController } from './route-controller.ts';
import { changedRoute, formatRoute, parseRoute } from './route.ts';
import type { Route, View } from './route.ts';
import { foldEvent, showFolds } from './sections.ts';
import type { Folded } from './sections.ts';

/** What the shell does as one moves. */
export interface WhereaboutsWatch {
  readonly arrived: (route: Route) => void;
  /** Brings into being what leads to a place, where what is shown draws only a part of what it has. */
  readonly reveal: (place: Route) => void;
}

/** Where one is in the workbench, and how one goes elsewhere and finds again what one left: the address, what was chosen, the focus, how far was scrolled. */
export class Whereabouts implements ReactiveController {
  readonly choices = new PlaceChoices();

  constructor(host: LitElement, { arrived, reveal }: WhereaboutsWatch) {
    const content = (): HTMLElement | null => host.renderRoot.querySelector('main');
    const memory = new PlaceMemory(() => host.renderRoot.querySelector('.view'), content, ({ name }: FocusMark) => reveal(parseRoute(name)));
    const focused = new FocusKeeper(host, content);
    this.host = host;
    this.content = content;
    this.told = arrived;
    this.routes = new RouteController(host, {
      changed: (route) => this.arrive(route),
      leaving: (entry) => memory.leave(entry, focused.last),
      cameBack: (entry) => memory.comeBack(entry),
    });
    host.addController(this);
  }

  private readonly host: LitElement;
  private readonly content: () => HTMLElement | null;
  private readonly told: (route: Route) => void;
  private readonly routes: RouteController;
  /** The place that was shown last. */
  private seen: View | undefined;

  hostConnected(): void {
    this.host.addEventListener(foldEvent, this.folded);
    this.arrive(this.route);
  }

  hostDisconnected(): void {
    this.host.removeEventListener(foldEvent, this.folded);
  }

  get route(): Route {
    return this.routes.route;
  }

  /** Resolved once what has to do with the place that was left is done; there while it is not. */
  get left(): Promise<void> | undefined {
    return this.routes.left;
  }

  /** Address of the present place with some of it changed. */
  readonly linkTo = (change: Partial<Route>): string => formatRoute(changedRoute(this.route, change));

  /** Goes there, a new step for the back button, or with `refine` the same step refined; a place without a word of its choices is as it was left. */
  readonly go = (change: Partial<Route>, refine = false): void => {
    const { view } = change;
    const whole = view === undefined || view === this.route.view || 'options' in change ? change : { ...change, ...this.choices.of(view) };
    if (refine) this.routes.refine(whole);
    else this.routes.go(whole);
  };

  refine(change: Partial<Route>): void {
    this.routes.refine(change);
  }

  /** A joint of what is shown, with the choices made here. */
  goToJoint(joint: string): void {
    this.routes.go({ view: 'joint', joint });
  }

  /** A place as a whole, not something in it. */
  goToPlace(view: View): void {
    this.routes.go({ view, item: undefined, joint: undefined, ...this.choices.of(view) });
  }

  /** A place of another document, of which nothing is chosen and which no address names. */
  goToNew(view: View): void {
    this.routes.go({ view, open: undefined, filter: {}, joint: undefined, item: undefined, options: {} });
  }

  private arrive(route: Route): void {
    if (route.view !== this.seen) {
      this.seen = route.view;
      void this.host.updateComplete.then(() => this.toTop());
    }
    this.choices.note(route);
    showFolds(route.folds);
    this.told(route);
  }

  /** Another place begins at its top, however far the one before was scrolled. */
  private toTop(): void {
    for (const scrolled of [this.content(), document.scrollingElement]) scrolled?.scrollTo({ top: 0, left: 0, behavior: 'instant' });
  }

  private readonly folded = (event: Event): void => this.routes.fold((event as CustomEvent<Folded>).detail);
}
