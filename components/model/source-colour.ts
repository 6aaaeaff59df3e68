import type { Source } from '../../src/cabin/cabin.ts';
import { standingSpecimen } from '../../src/cabin/standing-specimen.ts';
import type { Light } from '../../src/colour/index.ts';
import { partColour } from './part-colours.ts';
import type { Gamut, PartColour } from './part-colours.ts';

/** What a source looks like that a part does not stand by: the mean of its specimen's spectra under the first conditions among them. Indicative. */
export function sourceColour(source: Source, stage: string, light: Light, observer: 2 | 10, gamut: Gamut): PartColour {
  const readings = standingSpecimen(source, stage, 'colour')?.readings ?? [];
  const spectra = readings.flatMap((reading) => (reading.quantity === 'spectrum' ? [reading] : []));
  const [first] = spectra;
  if (first !== undefined) {
    const alike = spectra.filter((one) => one.conditions === first.conditions && one.startNm === first.startNm && one.values.length === first.values.length);
    const values = first.values.map((_, band) => alike.reduce((sum, one) => sum + (one.values[band] ?? 0), 0) / alike.length);
    return partColour({ part: '', source: source.id, specimen: undefined, colourSpots: alike.length, gloss: [], spectrum: { startNm: first.startNm, stepNm: first.stepNm, values } }, light, observer, gamut);
  }
  const known = readings.find((reading) => reading.quantity === 'cielab');
  return partColour(
    known?.quantity === 'cielab'
      ? { part: '', source: source.id, specimen: undefined, colourSpots: 1, gloss: [], cielab: { lab: known.lab, light: known.light, observer: known.observer } }
      : undefined,
    light, observer, gamut,
  );
}
