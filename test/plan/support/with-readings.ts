import type { Cabin, Part, Specimen } from '../../../src/cabin/cabin.ts';

/** The cabin with other readings on the specimens of its parts; a part for which nothing is given stays as it is. */
export const withReadings = (cabin: Cabin, of: (part: Part, index: number) => ((readings: Specimen['readings']) => Specimen['readings']) | undefined): Cabin => ({
  ...cabin,
  parts: cabin.parts.map((part, index) => {
    const change = of(part, index);
    return change === undefined ? part : {
      ...part,
      sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, readings: change(specimen.readings) })) })),
    };
  }),
});
