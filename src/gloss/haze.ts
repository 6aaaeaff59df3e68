import type { GlossUnits } from '../quantities.ts';
import { highGlossFrom } from './choose-angle.ts';
import { hazeIndex } from './haze-index.ts';

export interface HazeReadings {
  readonly gloss20?: GlossUnits;
  readonly gloss60?: GlossUnits;
  readonly grained: boolean;
  readonly metallic: boolean;
}

export type Haze =
  | { readonly applicable: true; readonly index: number; readonly reason: string }
  | { readonly applicable: false; readonly reason: string };

/**
 * Haze of a high-gloss surface from its gloss at two angles, or the reason why it has none.
 *
 * For smooth, non-metallic surfaces above 70 GU at 60 degrees. A negative index means that the two readings are not of one surface or
 * that its index is well above 1.567. Source: ASTM D4039; the bound of 70 GU is that of the 20 degree geometry (ASTM D523).
 */
export function assessHaze({ gloss20, gloss60, grained, metallic }: HazeReadings): Haze {
  const not = (reason: string): Haze => ({ applicable: false, reason });
  if (grained) return not('haze is never taken on a grain');
  if (metallic) return not('gloss of a metal is ruled by its index: haze from gloss is for non-metallic surfaces');
  if (gloss20 === undefined || gloss60 === undefined) return not(`no reading at ${gloss60 === undefined ? 60 : 20}°`);
  if (!(gloss60 > highGlossFrom)) return not(`${gloss60.toFixed(1)} GU at 60° is not high gloss (above ${highGlossFrom})`);
  return { applicable: true, index: hazeIndex(gloss20, gloss60), reason: 'gloss at 60° less gloss at 20° (ASTM D4039)' };
}

/**
 * Haze on the scale that the eye sees as even: 1285 log10(H / 20 + 1), for linear haze H of 0 and more.
 *
 * Source: ISO 13803 (from memory).
 */
export const logarithmicHaze = (haze: number): number => 1285 * Math.log10(haze / 20 + 1);
