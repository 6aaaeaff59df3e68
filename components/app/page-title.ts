import type { OpenCabin } from '../controllers/open-cabin.ts';
import type { Route } from '../controllers/route.ts';
import { registeredView } from '../views/view-registry.ts';

/** A place in a word, as the content is named for those who do not see it. */
export const placeTitle = ({ view }: Route): string => (view === 'joint' ? 'Joint' : registeredView(view)?.title ?? 'Cabin');

/** The title of the page, by which its tab and its step in the history are found again: a joint by the names of its parts. */
export function pageTitle(open: OpenCabin | undefined, route: Route): string {
  if (open === undefined) return 'Adjoin';
  const joint = route.view === 'joint' ? open.cabin.joints.find((one) => one.id === route.joint) : undefined;
  const place = joint === undefined ? registeredView(route.view)?.title : joint.parts.map((id) => open.cabin.parts.find((part) => part.id === id)?.name ?? id).join(' and ');
  return [place, open.cabin.name, 'Adjoin'].filter(Boolean).join(' – ');
}
