import { certainOutcome } from './certain-outcome.ts';
import { lightCovariance } from './stacked-excess.ts';
import type { StackedEvent } from './stacked-event.ts';

/** Per light and criterion what is sure without a draw. */
export type Outcomes = readonly (readonly ('holds' | 'fails' | undefined)[])[];

/** An event with what of it is sure, and the event that is left to be drawn. */
export interface SplitEvent {
  readonly known: Outcomes;
  /** Some criterion fails for certain, and with it the whole. */
  readonly fails: boolean;
  /** Lights that keep a criterion whose outcome is open, by their place. */
  readonly lights: readonly number[];
  /** The event of those criteria alone; undefined where nothing is left. */
  readonly open: StackedEvent | undefined;
}

/** Leaves to drawing only the criteria whose limits lie within reach. */
export function splitEvent(event: StackedEvent): SplitEvent {
  const size = 3 * event.lights.length;
  const known = event.lights.map(({ standard, trial, criteria }, light) => {
    const own = lightCovariance(event.covariance, size, light);
    return criteria.map((criterion) => certainOutcome(criterion, standard, trial, own));
  });
  const lights = known.flatMap((row, light) => (row.includes(undefined) ? [light] : []));
  return { known, fails: known.some((row) => row.includes('fails')), lights, open: lights.length === 0 ? undefined : reduced(event, lights, known) };
}

function reduced(event: StackedEvent, chosen: readonly number[], known: Outcomes): StackedEvent {
  const lights = chosen.map((light) => ({ ...event.lights[light], criteria: event.lights[light].criteria.filter((_, place) => known[light][place] === undefined) }));
  if (chosen.length === event.lights.length) return { ...event, lights };
  const rows = chosen.flatMap((light) => [3 * light, 3 * light + 1, 3 * light + 2]);
  const size = 3 * event.lights.length;
  const covariance = new Float64Array(rows.length * rows.length);
  let at = 0;
  for (const row of rows) for (const column of rows) covariance[at++] = event.covariance[row * size + column];
  return { ...event, lights, covariance };
}
