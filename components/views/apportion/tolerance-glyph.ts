import type { Matrix3 } from '../../../src/quantities.ts';
import type { FigureTheme } from '../../../src/report/figures/theme.ts';
import { drawing, element, pathThrough } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';

/** What { x : x' metric x <= radius^2 } covers: half its height in L*, and its shadow on the a*, b* plane as covariance-like numbers. */
export interface ToleranceExtent {
  readonly L: number;
  readonly aa: number;
  readonly ab: number;
  readonly bb: number;
}

/** The extents of an ellipsoid from the inverse of its metric; all 0 where the metric is singular. */
export function toleranceExtent([a, b, c, , e, f, , , i]: Matrix3, radius: number): ToleranceExtent {
  const determinant = a * (e * i - f * f) - b * (b * i - f * c) + c * (b * f - e * c);
  if (!(Math.abs(determinant) > 0)) return { L: 0, aa: 0, ab: 0, bb: 0 };
  const scale = (radius * radius) / determinant;
  return { L: Math.sqrt(Math.max(0, scale * (e * i - f * f))), aa: scale * (a * i - c * c), ab: -scale * (a * f - b * c), bb: scale * (a * e - b * b) };
}

const [width, height] = [64, 44] as const;

/**
 * A tolerance seen from above, a* to the right and b* upward, and beside it how far it goes in L*; `most` is the half length that fills the
 * height. What would not fit is drawn as large as fits, with a dashed edge.
 */
export function toleranceGlyph({ L, aa, ab, bb }: ToleranceExtent, most: number, theme: FigureTheme): SceneElement {
  const wanted = Math.max(L, Math.sqrt(Math.max(0, aa)), Math.sqrt(Math.max(0, bb)));
  const outsize = wanted > Math.max(most, 1e-6);
  const unit = (height / 2 - 2) / (outsize ? wanted : Math.max(most, 1e-6));
  const dashes = outsize ? '3 2' : undefined;
  const [cx, cy] = [height / 2, height / 2];
  const first = Math.sqrt(Math.max(0, aa));
  const cross = first > 0 ? ab / first : 0;
  const second = Math.sqrt(Math.max(0, bb - cross * cross));
  const outline = Array.from({ length: 36 }, (_, index): [number, number] => {
    const angle = (index * Math.PI) / 18;
    return [cx + unit * first * Math.cos(angle), cy - unit * (cross * Math.cos(angle) + second * Math.sin(angle))];
  });
  const x = width - 9;
  return drawing(
    width, height, undefined,
    element('path', { d: `M2 ${cy}H${height - 2}M${cx} 2V${height - 2}`, stroke: theme.faint, 'stroke-width': 0.75 }),
    element('path', { d: pathThrough(outline, true), fill: theme.quiet, 'fill-opacity': 0.35, stroke: theme.ink, 'stroke-width': 1.25, 'stroke-dasharray': dashes }),
    element('line', { x1: x, y1: 2, x2: x, y2: height - 2, stroke: theme.faint, 'stroke-width': 0.75 }),
    element('line', { x1: x, y1: cy - unit * L, x2: x, y2: cy + unit * L, stroke: theme.ink, 'stroke-width': 4, 'stroke-dasharray': dashes }),
  );
}
