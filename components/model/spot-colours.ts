import type { Cabin } from '../../src/cabin/cabin.ts';
import { spectrumToLab } from '../../src/colour/index.ts';
import type { Light } from '../../src/colour/index.ts';
import type { PartAppearance } from '../../src/harmony/judgement.ts';
import type { Lab } from '../../src/quantities.ts';
import { geometryClass } from '../../src/readings/geometry-class.ts';
import type { Reading } from '../../src/readings/reading.ts';
import { spotMeans } from '../../src/readings/spots.ts';

export interface SpotColour {
  readonly name: string;
  readonly lab: Lab;
}

/** The specimen that a part is judged by, wherever it stands: on the part, on its mirror part, or among the masters. */
function readingsOf(cabin: Cabin, appearance: PartAppearance): readonly Reading[] {
  const owner = cabin.parts.find((part) => part.id === (appearance.borrowedFrom ?? appearance.part));
  const specimens = [...(owner?.sources ?? []).flatMap((source) => source.specimens), ...(cabin.masters ?? [])];
  return specimens.find((specimen) => specimen.id === appearance.specimen)?.readings ?? [];
}

/**
 * Colour of every spot of a part under a light, from the readings of the geometry it is judged by;
 * CIELAB readings count under their own light only.
 */
export function spotColours(cabin: Cabin, appearance: PartAppearance | undefined, light: Light, observer: 2 | 10): SpotColour[] {
  if (appearance === undefined) return [];
  const conditions = new Map(cabin.conditions.map((one) => [one.id, one]));
  const colours = readingsOf(cabin, appearance).flatMap((reading): (Reading & { readonly lab: Lab })[] => {
    if (appearance.geometry !== undefined && geometryClass(conditions.get(reading.conditions)?.geometry) !== appearance.geometry) return [];
    if (reading.quantity === 'spectrum') return [{ ...reading, lab: spectrumToLab(reading, light, observer) }];
    return reading.quantity === 'cielab' && reading.light === light.name && reading.observer === observer ? [reading] : [];
  });
  const names = [...new Set(colours.map((colour) => colour.spot.name))];
  return spotMeans(colours, (colour) => colour.lab).map((lab, i) => ({ name: names[i] ?? '', lab: lab as unknown as Lab }));
}
