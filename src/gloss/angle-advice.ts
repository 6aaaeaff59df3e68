import type { GlossUnits } from '../quantities.ts';
import { highGlossFrom } from './choose-angle.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';

/** GU60 below which 85 degrees separates better by the standards. Source: ASTM D523; ISO 2813:2014. */
export const lowGlossBelow = 10;

export interface AngleAdvice {
  /** The angle to measure at. */
  readonly angle: GlossMeterAngle;
  /** What the standards name for this level, where it is another. */
  readonly formal?: GlossMeterAngle;
  readonly reason: string;
}

/**
 * Angle at which to measure a surface of this level of gloss, with the reason in words.
 *
 * GU60 of 0 and more; NaN or nothing is treated as unknown. Grained surfaces stay at 60 degrees at any level.
 * Source: ASTM D523 and ISO 2813:2014 for smooth surfaces; 60 degrees for grained trim: common practice, no source.
 */
export function adviseAngle(gloss60: GlossUnits | undefined, grained: boolean): AngleAdvice {
  const level = gloss60 !== undefined && gloss60 >= 0 ? gloss60 : undefined;
  if (level === undefined) return { angle: 60, reason: 'the level is not known: measure at 60° first' };
  const text = `${level.toFixed(1)} GU at 60°`;
  if (level > highGlossFrom) {
    return grained
      ? { angle: 60, formal: 20, reason: `${text} is high, but a grain scatters what 20° would need` }
      : { angle: 20, reason: `${text} is above ${highGlossFrom}: 20° separates better` };
  }
  if (level < lowGlossBelow) {
    return grained
      ? { angle: 60, formal: 85, reason: `${text} is below ${lowGlossBelow}, where the standards name 85°; grained trim is quoted at 60°, so state the angle` }
      : { angle: 85, reason: `${text} is below ${lowGlossBelow}: 85° separates better` };
  }
  return { angle: 60, reason: `${text} is within ${lowGlossBelow} to ${highGlossFrom}` };
}
