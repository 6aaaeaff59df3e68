import type { Rgb } from '../../../src/colour/index.ts';
import type { PartAppearance } from '../../../src/harmony/judgement.ts';
import type { Degrees, GlossUnits, Micrometres, Millimetres } from '../../../src/quantities.ts';
import type { GrainPattern, HeightMap } from '../../../src/texture/index.ts';
import { seedOf } from '../../../src/texture/index.ts';
import type { PartColour } from '../../model/part-colours.ts';

/** Grain of a side: heights that were measured, or what they are made from. */
export type SideGrain =
  | {
    readonly kind: 'made'; readonly saUm: Micrometres; readonly salMm: Millimetres; readonly str: number; readonly stdDeg?: Degrees; readonly pattern: GrainPattern;
  }
  | { readonly kind: 'measured'; readonly map: HeightMap };

/** One side of a joint as it is drawn. */
export interface SurfaceSide {
  /** What the screen shows of it under the light, 0..1 encoded; absent where there is nothing to show. */
  readonly rgb: Rgb | undefined;
  readonly grain?: SideGrain;
  readonly gloss?: { readonly gloss: GlossUnits; readonly angle: 20 | 60 | 85 };
  /** Refractive index of the surface. */
  readonly n: number;
  /** The shine of a metal has the colour of the metal. */
  readonly metal: boolean;
  /** So that two parts of one grain are not drawn with the same hills. */
  readonly seed: number;
}

/**
 * Refractive index that the surface of a material is taken to have: polypropylene for mouldings, PMMA for gloss black, PVC for skins, polyurethane
 * where a lacquer or a finish lies on top. Handbook values of the polymers, from memory; which polymer it is: assumption, no source.
 */
const indices: Readonly<Record<string, number>> = { moulded: 1.49, 'gloss-black': 1.49, 'soft-skin': 1.54, leather: 1.5, painted: 1.5, 'decor-film': 1.5 };
const usualIndex = 1.5;

/** Materials whose grain is commonly made of cells. Common practice, no source. */
const celled: ReadonlySet<string> = new Set(['moulded', 'soft-skin', 'leather']);

/** Sal over RSm between which a textile is taken for a weave: its threads then repeat across the surface (a sine has 0.218). */
const woven = [0.19, 0.33] as const;

/** What is drawn of a part: its colour, and grain and gloss as far as there are readings of them. */
export function surfaceSide(part: string, material: string | undefined, appearance: PartAppearance | undefined, colour: PartColour | undefined, map?: HeightMap): SurfaceSide {
  const gloss = appearance?.gloss.find(({ angle }) => angle === 60) ?? appearance?.gloss[0];
  const grain: SideGrain | undefined = map === undefined ? madeGrain(material, appearance) : { kind: 'measured', map };
  return {
    rgb: colour?.css === undefined ? undefined : channelsOf(colour.css),
    ...(grain === undefined ? {} : { grain }),
    ...(gloss === undefined ? {} : { gloss: { gloss: gloss.mean, angle: gloss.angle } }),
    n: indices[material ?? ''] ?? usualIndex, metal: material === 'metallised', seed: seedOf(part),
  };
}

function madeGrain(material: string | undefined, appearance: PartAppearance | undefined): SideGrain | undefined {
  const { saUm, salMm, str, stdDeg, rsmMm } = appearance?.texture ?? {};
  if (saUm === undefined || salMm === undefined || str === undefined || !(saUm > 0 && salMm > 0)) return undefined;
  const ratio = rsmMm === undefined ? 0 : salMm / rsmMm;
  const pattern: GrainPattern = celled.has(material ?? '') ? 'cells' : material === 'textile' && ratio > woven[0] && ratio < woven[1] ? 'weave' : 'random';
  return { kind: 'made', saUm, salMm, str, pattern, ...(stdDeg === undefined ? {} : { stdDeg }) };
}

/** The channels of a colour as {@link PartColour} writes it. */
function channelsOf(css: string): Rgb | undefined {
  const [red, green, blue] = (/^color\(\S+ ([^)]*)\)$/u.exec(css)?.[1] ?? '').split(' ').map(Number);
  return [red, green, blue].every((channel) => Number.isFinite(channel)) ? [red, green, blue] : undefined;
}
