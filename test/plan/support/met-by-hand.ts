import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { MendPlan } from '../../../src/plan/index.ts';

/** The cabin with the plan's own spectra and glosses read on its parts, put there by hand: the plan is held to what the check says of it. */
export function metByHand(cabin: Cabin, cards: MendPlan['cards']): Cabin {
  return {
    ...cabin,
    parts: cabin.parts.map((part) => {
      const card = cards.find(({ parts }) => parts.includes(part.id));
      if (card === undefined) return part;
      return {
        ...part,
        sources: part.sources.map((source) => ({
          ...source,
          specimens: source.specimens.map((specimen) => ({
            ...specimen,
            readings: specimen.readings.map((reading) => (reading.quantity === 'gloss' ? { ...reading, gloss: reading.gloss + card.shift.dGloss }
              : reading.quantity === 'spectrum' && card.spectrum !== undefined ? { ...reading, values: reading.values.map((value, index) => value + card.spectrum!.to[index] - card.spectrum!.from[index]) } : reading)),
          })),
        })),
      };
    }),
  };
}
