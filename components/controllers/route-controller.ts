import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { formatRoute, parseRoute } from './route.ts';
import type { Route } from './route.ts';

/** Keeps the host in step with the address: views push, choices that refine a view replace. */
export class RouteController implements ReactiveController {
  route: Route = parseRoute(location.hash);

  constructor(
    host: ReactiveControllerHost,
    changed: (route: Route) => void,
  ) {
    this.host = host;
    this.changed = changed;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly changed: (route: Route) => void;

  hostConnected(): void {
    addEventListener('hashchange', this.read);
  }

  hostDisconnected(): void {
    removeEventListener('hashchange', this.read);
  }

  /** A new place in the history. */
  go(change: Partial<Route>): void {
    this.take({ ...this.route, ...change }, true);
  }

  /** The same place, refined: no new step for the back button. */
  refine(change: Partial<Route>): void {
    this.take({ ...this.route, ...change }, false);
  }

  private take(route: Route, push: boolean): void {
    const hash = formatRoute(route);
    if (hash !== location.hash) history[push ? 'pushState' : 'replaceState'](null, '', hash);
    this.route = route;
    this.changed(route);
    this.host.requestUpdate();
  }

  private readonly read = (): void => {
    this.route = parseRoute(location.hash);
    this.changed(this.route);
    this.host.requestUpdate();
  };
}
