import type { Rgb } from '../../../src/colour/index.ts';
import type { Degrees, Millimetres } from '../../../src/quantities.ts';
import type { GrainPattern, HeightMap } from '../../../src/texture/index.ts';
import type { LampSetting } from './lamp.ts';
import type { StripLayout } from './strip-layout.ts';

/** How a side is to be drawn; measured heights are known to the painter by a number. */
export interface SideRequest {
  /** Encoded channels 0..1; absent where the side is left clear. */
  readonly rgb: Rgb | undefined;
  readonly grain?:
    | { readonly kind: 'made'; readonly saUm: number; readonly salMm: Millimetres; readonly str: number; readonly stdDeg?: Degrees; readonly pattern: GrainPattern }
    | { readonly kind: 'measured'; readonly map: number };
  readonly gloss?: { readonly gloss: number; readonly angle: 20 | 60 | 85 };
  readonly n: number;
  readonly metal: boolean;
  readonly seed: number;
}

export interface StripRequest {
  readonly layout: StripLayout;
  readonly sides: readonly [upper: SideRequest, lower: SideRequest];
  readonly stepMm: Millimetres;
  readonly viewMm: Millimetres;
  readonly lamp: LampSetting;
  /** Fewer samples a pixel, while something is being moved. */
  readonly draft: boolean;
}

export type Painting = 'webgl2' | 'canvas';

export interface StripPicture {
  /** RGBA, 8 bits, rows from the top. */
  readonly pixels: Uint8ClampedArray<ArrayBuffer>;
  readonly width: number;
  readonly height: number;
  readonly painted: Painting;
  /** Share of the true contrast that each side has; below 1 where the screen has no brighter white for its lights. */
  readonly contrast: readonly [number, number];
}

export type PainterMessage =
  | { readonly kind: 'paint'; readonly id: number; readonly request: StripRequest }
  | { readonly kind: 'map'; readonly id: number; readonly map: HeightMap }
  | { readonly kind: 'prefer'; readonly painting: Painting };

export type PainterReply =
  | { readonly kind: 'picture'; readonly id: number; readonly picture: StripPicture }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };
