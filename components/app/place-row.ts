import { noChoices } from '../controllers/place-choices.ts';
import type { View } from '../controllers/route.ts';
import type { Whereabouts } from '../controllers/whereabouts.ts';
import { registeredViews } from '../views/view-registry.ts';
import type { Place } from './adjoin-header.ts';

/** The row of places. A link leads to a place as it was left; that to the present place, to it with nothing chosen. */
export function placeRow({ route, choices, linkTo }: Whereabouts): readonly [Place, ...Place[]] {
  const address = (view: View): string => linkTo({ joint: undefined, item: undefined, ...(view === route.view ? noChoices : choices.of(view)), view });
  return [
    { title: 'Cabin', about: 'Map and joint strips, worst first', address: address('cabin'), here: route.view === 'cabin' || route.view === 'joint', first: false },
    ...registeredViews.map(({ view, title, about, group }, i): Place => ({
      title, about, address: address(view), here: route.view === view, first: group !== (registeredViews[i - 1]?.group ?? 'see'),
    })),
  ];
}
