import type { Cabin } from '../cabin/cabin.ts';
import type { Light, Observer } from '../colour/index.ts';
import type { PartAppearance } from '../harmony/judgement.ts';
import type { Lab } from '../quantities.ts';
import { displayColour, labToXyz, lightByName, spectrumToXyz, userLight, weightsFor, whitePoint, xyzToLab } from '../colour/index.ts';

/** The colour of a part under one light, and what an sRGB display can show of it. */
export interface Sample {
  readonly light: string;
  readonly observer: Observer;
  readonly lab: Lab;
  /** sRGB, `#rrggbb`; the nearest one where the colour is out of its gamut. */
  readonly hex: string;
  readonly inGamut: boolean;
  /** CIEDE2000 of the shown colour to the true one. */
  readonly error: number;
}

/** A light of the one list or of the cabin's own, by name. */
export function lightOf(cabin: Cabin, name: string): Light | undefined {
  const known = lightByName(name);
  if (known) return known;
  const own = cabin.lights?.find((light) => light.id === name);
  return own && userLight(own.id, own.startNm, own.stepNm, own.values);
}

/** The part's colour under a light; undefined where its data does not reach that light or observer. */
export function sampleUnder(appearance: PartAppearance, light: Light, observer: Observer): Sample | undefined {
  const { spectrum, cielab } = appearance;
  if (spectrum) {
    const weights = weightsFor(light, observer, spectrum.startNm, spectrum.stepNm, spectrum.values.length);
    const xyz = spectrumToXyz(spectrum.values, weights);
    return shown(light, observer, xyzToLab(xyz, weights.white), xyz, weights.white);
  }
  if (cielab && cielab.light === light.name && cielab.observer === observer) {
    const white = whitePoint(light, observer);
    return shown(light, observer, cielab.lab, labToXyz(cielab.lab, white), white);
  }
  return undefined;
}

function shown(light: Light, observer: Observer, lab: Lab, xyz: Parameters<typeof displayColour>[0], white: Parameters<typeof displayColour>[1]): Sample {
  const { hex, inGamut, error } = displayColour(xyz, white, 'srgb');
  return { light: light.name, observer, lab, hex, inGamut, error };
}
