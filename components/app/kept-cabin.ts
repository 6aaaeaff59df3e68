import { nothing } from 'lit';
import type { ReactiveControllerHost } from 'lit';
import { jointLinks } from '../controllers/joint-links.ts';
import type { OpenCabin } from '../controllers/open-cabin.ts';
import type { JointFilter, Route } from '../controllers/route.ts';
import { resting } from '../model/focus-path.ts';
import '../views/cabin/adjoin-cabin-view.ts';
import type { AdjoinCabinView } from '../views/cabin/adjoin-cabin-view.ts';
import { registeredView } from '../views/view-registry.ts';
import type { ShellParts } from './shell-parts.ts';

/** Map and wall of the open cabin. They stay on the page while one is elsewhere, at rest and out of reach: to lay out a large cabin anew takes long. */
export class KeptCabin {
  constructor(host: ReactiveControllerHost, shell: ShellParts) {
    this.host = host;
    this.shell = shell;
  }

  private readonly host: ReactiveControllerHost;
  private readonly shell: ShellParts;
  private view: AdjoinCabinView | undefined;
  /** The joint that was looked at last. */
  private visited: string | undefined;

  /** A joint that was left for the wall is found there, however far down. */
  reveal({ view, joint }: Route): void {
    if (view === 'joint' && joint !== undefined) this.view?.reveal(joint);
  }

  show(open: OpenCabin | undefined, route: Route): AdjoinCabinView | typeof nothing {
    if (open === undefined) this.view = undefined;
    else if (route.view === 'joint') this.visited = route.joint;
    const isThere = registeredView(route.view) === undefined && route.view !== 'joint';
    if (open !== undefined && isThere) this.view ??= this.make();
    const { view } = this;
    if (view === undefined) return nothing;
    if (isThere && view.classList.contains(resting)) {
      // A dialog that closes has the whole page styled anew, more than once: what rests until it is gone is so just once.
      if (this.shell.views.isCovering) {
        requestAnimationFrame(() => this.host.requestUpdate());
        return view;
      }
      view.wake();
    }
    view.classList.toggle(resting, !isThere);
    return open === undefined || !isThere ? view : this.given(view, open, route);
  }

  private given(view: AdjoinCabinView, open: OpenCabin, route: Route): AdjoinCabinView {
    const { desk, whereabouts, lighting } = this.shell;
    return Object.assign(view, {
      cabin: open.cabin, judgement: open.judgement, judging: open.judging, paths: open.paths, selection: open.selection, locked: open.locked,
      colours: lighting.colours(open), light: lighting.light, filter: route.filter, linkTo: jointLinks(route), desk, route, go: whereabouts.go, visited: this.visited,
    });
  }

  private make(): AdjoinCabinView {
    const { whereabouts } = this.shell;
    const view = document.createElement('adjoin-cabin-view');
    view.addEventListener('adjoin-filter', (event) => whereabouts.refine({ view: 'cabin', filter: (event as CustomEvent<JointFilter>).detail }));
    view.addEventListener('adjoin-open-joint', (event) => whereabouts.goToJoint((event as CustomEvent<string>).detail));
    return view;
  }
}
