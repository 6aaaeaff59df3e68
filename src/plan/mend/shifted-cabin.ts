import type { Cabin, Source, Specimen } from '../../cabin/cabin.ts';
import { reachingChange } from '../../colour/reaching-change.ts';
import type { Light } from '../../colour/lights.ts';
import type { ObserverDegrees, Reading } from '../../readings/reading.ts';
import type { Lab } from '../../quantities.ts';
import type { Shift } from './mend-problem.ts';

/** A shift of the specimens that stand for a part or for several. */
export interface SpecimenShift {
  /** Specimens whose colour readings change, and those whose gloss readings do. */
  readonly colour: ReadonlySet<string>;
  readonly gloss: ReadonlySet<string>;
  readonly shift: Shift;
  /** Mean spectrum that the smoothest change is reckoned from; without one only CIELAB readings change. */
  readonly spectrum?: { readonly startNm: number; readonly stepNm: number; readonly values: ArrayLike<number> };
}

/** The change of reflectance with little curvature that gives a shift under the reference light: the same that a proposal is judged by. */
export const impliedChange = (shift: SpecimenShift, light: Light, observer: ObserverDegrees): Float64Array | undefined =>
  (shift.spectrum === undefined ? undefined : reachingChange(shift.spectrum, light, observer, [shift.shift[0], shift.shift[1], shift.shift[2]]));

/** The document with its readings as they would be if every shift were met: a target as a cabin, to be judged by the ordinary check. */
export function shiftedCabin(cabin: Cabin, shifts: readonly SpecimenShift[], light: Light, observer: ObserverDegrees): Cabin {
  const acting = shifts.filter(({ shift }) => shift.some((value) => value !== 0));
  const changes = new Map(acting.map((shift) => [shift, impliedChange(shift, light, observer)]));
  const colourOf = new Map(acting.toReversed().flatMap((shift) => [...shift.colour].map((id) => [id, shift] as const)));
  const glossOf = new Map(acting.toReversed().flatMap((shift) => [...shift.gloss].map((id) => [id, shift] as const)));
  const ofSpecimen = (specimen: Specimen): Specimen => {
    const [colour, gloss] = [colourOf.get(specimen.id), glossOf.get(specimen.id)];
    if (colour === undefined && gloss === undefined) return specimen;
    return {
      ...specimen,
      readings: specimen.readings.map((reading) => {
        if (reading.quantity === 'gloss') return gloss === undefined ? reading : { ...reading, gloss: Math.max(0, reading.gloss + gloss.shift[3]) };
        return colour === undefined ? reading : shiftedColour(reading, colour, changes.get(colour));
      }),
    };
  };
  // What nothing touches stays the same object, so that it need not be judged again.
  const ofSource = (source: Source): Source => {
    const specimens = source.specimens.map(ofSpecimen);
    return specimens.every((specimen, index) => specimen === source.specimens[index]) ? source : { ...source, specimens };
  };
  return {
    ...cabin,
    parts: cabin.parts.map((part) => {
      const sources = part.sources.map(ofSource);
      return sources.every((source, index) => source === part.sources[index]) ? part : { ...part, sources };
    }),
  };
}

function shiftedColour(reading: Reading, { shift, spectrum }: SpecimenShift, change: Float64Array | undefined): Reading {
  const moved = (lab: Lab): Lab => [lab[0] + shift[0], lab[1] + shift[1], lab[2] + shift[2]];
  switch (reading.quantity) {
    case 'cielab':
      return { ...reading, lab: moved(reading.lab) };
    case 'difference':
      return { ...reading, difference: moved(reading.difference) };
    case 'spectrum':
      if (change === undefined || reading.values.length !== change.length || reading.startNm !== spectrum?.startNm) return reading;
      return { ...reading, values: reading.values.map((value, index) => Math.max(0, value + change[index])) };
    default:
      return reading;
  }
}
