import type { Route, View } from './route.ts';

/** What is chosen in a place, apart from what it shows. */
type Choices = Pick<Route, 'options' | 'folds'>;

export const noChoices: Choices = { options: {}, folds: undefined };

/** What was chosen in each place as it was left: whatever leads there without a word of its choices leads back to that. */
export class PlaceChoices {
  private readonly known = new Map<View, Choices>();

  note({ view, options, folds }: Route): void {
    this.known.set(view, { options, folds });
  }

  /** Of another document nothing was chosen yet but what the address says. */
  beginWith(route: Route): void {
    this.known.clear();
    this.note(route);
  }

  of(view: View): Choices {
    return this.known.get(view) ?? noChoices;
  }
}
