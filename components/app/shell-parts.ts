import type { Desk } from '../controllers/desk.ts';
import type { Lighting } from '../controllers/lighting.ts';
import type { Whereabouts } from '../controllers/whereabouts.ts';
import type { LoadedViews } from '../views/loaded-views.ts';
import type { EditRequests } from './edit-requests.ts';
import type { Opening } from './opening.ts';

/** What the shell is made of, as its parts see one another: they are given the whole, and read of it only as something happens. */
export interface ShellParts {
  readonly desk: Desk;
  readonly whereabouts: Whereabouts;
  readonly lighting: Lighting;
  readonly opening: Opening;
  readonly views: LoadedViews;
  readonly requests: EditRequests;
}
