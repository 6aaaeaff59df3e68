import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { MendPlan } from '../../../src/plan/index.ts';
import { withReadings } from './with-readings.ts';

/** The cabin with the plan's own spectra and glosses read on its parts, put there by hand: the plan is held to what the check says of it. */
export const metByHand = (cabin: Cabin, cards: MendPlan['cards']): Cabin => withReadings(cabin, ({ id }) => {
  const card = cards.find(({ parts }) => parts.includes(id));
  if (card === undefined) return undefined;
  return (readings) => readings.map((reading) => (reading.quantity === 'gloss' ? { ...reading, gloss: reading.gloss + card.shift.dGloss }
    : reading.quantity === 'spectrum' && card.spectrum !== undefined ? { ...reading, values: reading.values.map((value, index) => value + card.spectrum!.to[index] - card.spectrum!.from[index]) } : reading));
});
