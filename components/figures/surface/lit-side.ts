import { lightOf } from './light-of-step.ts';
import type { Rgb } from '../../../src/colour/rgb-gamut.ts';
import { facetsOfGloss, facetsUnderGrain } from '../../../src/gloss/roughness-under-grain.ts';
import type { GrainSlopes } from './grain-slopes.ts';
import type { GrainStore } from './grain-store.ts';
import { lampSpread } from './lamp.ts';
import type { SideRequest } from './strip-request.ts';

/** A side with everything that shading asks of it. */
export interface LitSide {
  /** Linear light of its colour, 0..1. */
  readonly light: Rgb;
  readonly grain?: {
    readonly slopes: GrainSlopes;
    /** Points of the grain to a millimetre, and what its slopes are multiplied by. */
    readonly perMm: readonly [number, number];
    readonly scale: number;
    /** Direction of the lay from +x towards +y, radians. */
    readonly turn: number;
    /** Where on the grain the side begins, points. */
    readonly offset: readonly [number, number];
  };
  /** Width of the facets with the spread of one point of the lamp; absent for a side without gloss. */
  readonly alpha: number | undefined;
  readonly n: number;
  readonly metal: boolean;
}

/** Reflectance that stands for a metal where it is compared with the glass of a glossmeter. Assumption, no source. */
const metalReflectance = 0.6;

const widths = new Map<string, number>();
/** Steps to a tenfold of gloss, and to a luminance factor of 1, between which a picture does not tell. */
const glossSteps = 80;
const reflectanceSteps = 40;

/** Width of the facets with the grain in it. It takes tens of milliseconds to find, so alike readings share it. */
function facetWidth(gloss: number, angle: 20 | 60 | 85, n: number, reflectance: number): number {
  const [level, body] = [Math.round(Math.log10(Math.max(0.01, gloss)) * glossSteps), Math.round(reflectance * reflectanceSteps)];
  const key = [level, angle, n, body].join(' ');
  let width = widths.get(key);
  if (width === undefined) {
    width = facetsOfGloss({ gloss: 10 ** (level / glossSteps), angle, n, reflectance: body / reflectanceSteps }).alpha;
    widths.set(key, width);
  }
  return width;
}

/** Luminance of linear light of sRGB or, near enough for the gloss of a body, Display P3. */
const luminance = ([red, green, blue]: Rgb): number => 0.2126 * red + 0.7152 * green + 0.0722 * blue;

export function litSide({ rgb, grain, gloss, n, metal, seed }: SideRequest, store: GrainStore): LitSide | undefined {
  if (rgb === undefined) return undefined;
  const light = rgb.map(lightOf) as unknown as Rgb;
  const slopes = grain === undefined ? undefined : grain.kind === 'made' ? store.made(grain.pattern, grain.str) : store.measured(grain.map);
  // A unit grain's slopes are Sa in units of Sal.
  const scale = grain?.kind === 'made' ? grain.saUm / 1000 / grain.salMm : 1;
  const length = grain?.kind === 'made' ? grain.salMm : 1;
  const meanSquare = slopes === undefined ? 0 : slopes.meanSquare * scale * scale;
  const metalShare = metal ? 0.1 / metalReflectance : 1;
  const facets = gloss === undefined ? undefined : facetsUnderGrain(
    facetWidth(gloss.gloss * metalShare, gloss.angle, n, metal ? 0 : luminance(light)), meanSquare,
  );
  return {
    light, n, metal, alpha: facets === undefined ? undefined : Math.hypot(facets, lampSpread),
    ...(slopes === undefined ? {} : {
      grain: {
        slopes, scale, perMm: [1 / (slopes.spacing[0] * length), 1 / (slopes.spacing[1] * length)],
        turn: grain?.kind === 'made' ? ((grain.stdDeg ?? 0) * Math.PI) / 180 : 0,
        offset: [(seed % 1021) * 1.37, (Math.floor(seed / 1021) % 1019) * 1.61],
      },
    }),
  };
}
