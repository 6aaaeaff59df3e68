import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { changedRoute, formatRoute, parseRoute } from './route.ts';
import { turn } from './in-turn-element.ts';
import type { Route } from './route.ts';
import type { Folded } from './sections.ts';

/** What the host does as the address changes. */
export interface RouteWatch {
  readonly changed: (route: Route) => void;
  /** Another step of the history is gone to; `entry` is the number of the one that is left. Called before the view changes. */
  readonly leaving?: (entry: number) => void;
  /** A step that was there before was come back to. */
  readonly cameBack?: (entry: number) => void;
}

/** Keeps the host in step with the address: views push, choices that refine a view replace. Every step of the history has a number. */
export class RouteController implements ReactiveController {
  route: Route = parseRoute(location.hash);
  /** Resolved once what has to do with the place that was left is done; there while it is not. */
  left: Promise<void> | undefined;

  constructor(host: ReactiveControllerHost & EventTarget, watch: RouteWatch) {
    this.host = host;
    this.watch = watch;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost & EventTarget;
  private readonly watch: RouteWatch;
  private entry = 0;

  hostConnected(): void {
    this.host.addEventListener('click', this.follow);
    addEventListener('hashchange', this.read);
    addEventListener('pagehide', this.hide);
    const known = entryOf(history.state);
    this.number(known);
    if (known !== undefined) this.watch.cameBack?.(known);
  }

  hostDisconnected(): void {
    this.host.removeEventListener('click', this.follow);
    removeEventListener('hashchange', this.read);
    removeEventListener('pagehide', this.hide);
  }

  /** A link to a place is followed here: a browser that looks for the fragment in the page takes the focus away from the link. */
  private readonly follow = (event: Event): void => {
    const { button, ctrlKey, metaKey, shiftKey, altKey } = event as MouseEvent;
    if (event.defaultPrevented || button !== 0 || ctrlKey || metaKey || shiftKey || altKey) return;
    const hash = event.composedPath().map((one) => (one instanceof HTMLAnchorElement ? one.getAttribute('href') : undefined)).find((address) => address?.startsWith('#/'));
    if (hash === undefined || hash === null) return;
    event.preventDefault();
    const to = parseRoute(hash);
    // What was unfolded since the link was drawn stays so within its place.
    this.take(to.view === this.route.view && to.folds === undefined ? { ...to, folds: this.route.folds } : to, true);
  };

  /** A new place in the history. */
  go(change: Partial<Route>): void {
    this.take(changedRoute(this.route, change), true);
  }

  /** The same place, refined: no new step for the back button. */
  refine(change: Partial<Route>): void {
    this.take(changedRoute(this.route, change), false);
  }

  /** A section was folded or unfolded: the address tells it, and nothing is drawn anew for it. */
  fold({ name, unfolded, usual }: Folded): void {
    const { [name]: _, ...others } = this.route.folds ?? {};
    const folds = unfolded === usual ? others : { ...others, [name]: unfolded };
    this.route = { ...this.route, folds: Object.keys(folds).length === 0 ? undefined : folds };
    history.replaceState({ entry: this.entry }, '', formatRoute(this.route));
    this.watch.changed(this.route);
  }

  private take(route: Route, push: boolean): void {
    const hash = formatRoute(route);
    if (hash !== location.hash) {
      if (push) {
        this.leave();
        this.entry = newEntry();
      }
      history[push ? 'pushState' : 'replaceState']({ entry: this.entry }, '', hash);
    }
    this.route = route;
    this.watch.changed(route);
    this.host.requestUpdate();
  }

  private leave(): void {
    this.watch.leaving?.(this.entry);
    const left = turn().then(() => {
      if (this.left === left) this.left = undefined;
    });
    this.left = left;
  }

  private number(known: number | undefined): void {
    this.entry = known ?? newEntry();
    if (known === undefined) history.replaceState({ entry: this.entry }, '');
  }

  private readonly read = (): void => {
    const known = entryOf(history.state);
    if (known !== this.entry) this.leave();
    this.number(known);
    this.route = parseRoute(location.hash);
    this.watch.changed(this.route);
    this.host.requestUpdate();
    if (known !== undefined) this.watch.cameBack?.(known);
  };

  private readonly hide = (): void => this.watch.leaving?.(this.entry);
}

/** Numbers grow with time, also over pages of one tab. */
const newEntry = (): number => (latest = Math.max(latest + 1, Date.now()));
let latest = 0;

const entryOf = (state: unknown): number | undefined =>
  (typeof state === 'object' && state !== null && 'entry' in state && typeof state.entry === 'number' ? state.entry : undefined);
