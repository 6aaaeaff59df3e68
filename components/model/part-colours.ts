import { displayColour, labToXyz, spectrumToXyz, weightsFor, xyzToLab } from '../../src/colour/index.ts';
import type { Light } from '../../src/colour/index.ts';
import type { Judgement, PartAppearance } from '../../src/harmony/judgement.ts';
import type { Lab, Xyz } from '../../src/quantities.ts';

export type Gamut = 'srgb' | 'display-p3';

/** A part as the screen can show it under one light, or why it cannot be shown. */
export type PartColour =
  | { readonly css: string; readonly lab: Lab; readonly inGamut: boolean; readonly error: number }
  | { readonly css: undefined; readonly why: string };

/** Colour of a CIELAB value on the screen; `white` is the white it was computed with. */
export function colourOfLab(lab: Lab, white: Xyz, gamut: Gamut): PartColour {
  const shown = displayColour(labToXyz(lab, white), white, gamut);
  return { css: shown.css, lab, inGamut: shown.inGamut, error: shown.error };
}

/** Computes what the part looks like under the light from its mean spectrum; CIELAB data is shown under its own light only. */
export function partColour(appearance: PartAppearance | undefined, light: Light, observer: 2 | 10, gamut: Gamut): PartColour {
  if (appearance?.spectrum !== undefined) {
    const { startNm, stepNm, values } = appearance.spectrum;
    const weights = weightsFor(light, observer, startNm, stepNm, values.length);
    return colourOfLab(xyzToLab(spectrumToXyz(values, weights), weights.white), weights.white, gamut);
  }
  const cielab = appearance?.cielab;
  if (cielab === undefined) return { css: undefined, why: 'no colour readings' };
  if (cielab.light !== light.name || cielab.observer !== observer) {
    return { css: undefined, why: `CIELAB under ${cielab.light} only, no data under ${light.name}` };
  }
  return colourOfLab(cielab.lab, weightsFor(light, observer, 400, 10, 31).white, gamut);
}

/** Colours of appearances as they were made last, since an edit changes few of them. */
const made = new WeakMap<PartAppearance, { readonly light: Light; readonly observer: 2 | 10; readonly gamut: Gamut; readonly colour: PartColour }>();

/** Every part's colour under one light, by part id. A part that looks as it did has the same object again. */
export function partColours({ parts, observer }: Judgement, light: Light, gamut: Gamut): ReadonlyMap<string, PartColour> {
  return new Map(parts.map(({ id, appearance }) => {
    const before = made.get(appearance);
    if (before?.light === light && before.observer === observer && before.gamut === gamut) return [id, before.colour];
    const colour = partColour(appearance, light, observer, gamut);
    made.set(appearance, { light, observer, gamut, colour });
    return [id, colour];
  }));
}

/** White of the light for the judgement's observer. */
export const whiteOf = (light: Light, observer: 2 | 10): Xyz => weightsFor(light, observer, 400, 10, 31).white;

/** Two colours moved apart about their mean by a factor, so that a small difference can be seen. */
export function exaggerated(first: Lab, second: Lab, factor: number): [Lab, Lab] {
  const half = (sign: number): Lab =>
    [0, 1, 2].map((i) => {
      const mean = ((first[i] as number) + (second[i] as number)) / 2;
      return mean + (sign * factor * ((second[i] as number) - (first[i] as number))) / 2;
    }) as unknown as Lab;
  return [half(-1), half(1)];
}
