import { element, pathThrough } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import { hatchPath } from './hatch.ts';
import type { Point } from './polyline.ts';
import type { FigureTheme } from './theme.ts';

export interface JointStripInput {
  /** Colours of the upper and the lower side; absent where there is nothing to show under this light. */
  readonly fills: readonly [upper: string | undefined, lower: string | undefined];
  readonly kind: 'edge' | 'gap' | 'step' | 'seam' | 'sightline';
  readonly gapMm?: number;
  readonly stepMm?: number;
  readonly viewMm?: number;
}

export interface JointStripSize {
  readonly width: number;
  readonly height: number;
  /** Let the sides touch whatever the gap is. */
  readonly closed?: boolean;
  /** How much larger than seen in the cabin; 1 where absent. */
  readonly magnification?: number;
  /** The sides, the gap and the shadow of a step are drawn by something below: only what else there is. */
  readonly overlay?: boolean;
}

/** Distance from eye to screen or paper, and size of a px, that the gap is drawn for. */
const readerMm = 600;
const pixelMm = 25.4 / 96;
const usualViewMm = 700;

/** Width on the screen, px, of something `mm` wide seen from `viewMm`, so that it fills the same angle to a reader at 600 mm. */
export const pixelsAtAngle = (mm: number, viewMm: number = usualViewMm): number => ((mm / viewMm) * readerMm) / pixelMm;

const rectangle = (top: number, bottom: number, width: number): Point[] => [[0, top], [width, top], [width, bottom], [0, bottom]];

/**
 * Two materials meeting across their joint, the joint running left to right. Gaps and steps are drawn at the
 * angle they have in the cabin; a gap is dark with the light reaching its lower lip, a step throws its shadow on the
 * lower side, a seam shows its stitches, a sightline leaves the surround between parts that do not touch.
 */
export function jointStrip(input: JointStripInput, size: JointStripSize, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const kind = size.closed ? 'edge' : input.kind;
  const opening = jointOpening(input, size);
  const top = height / 2 - opening / 2;
  const bottom = height / 2 + opening / 2;
  const drawn = (fill: string | undefined): boolean => !(size.overlay === true && fill !== undefined);
  return element(
    'g',
    { class: `joint-strip ${kind}` },
    drawn(input.fills[0]) ? side(rectangle(0, top, width), input.fills[0], theme, 'upper') : undefined,
    drawn(input.fills[1]) ? side(rectangle(bottom, height, width), input.fills[1], theme, 'lower') : undefined,
    ...(size.overlay === true && (kind === 'gap' || kind === 'step') ? [] : between(kind, top, bottom, width, input, theme, size.magnification ?? 1)),
  );
}

/** Distance between the two sides on the strip, px. A gap is drawn to scale up to a third of the height. */
export function jointOpening(input: JointStripInput, { height, closed, magnification = 1 }: JointStripSize): number {
  const kind = closed ? 'edge' : input.kind;
  if (kind === 'sightline') return Math.max(8, height * 0.2);
  if (kind !== 'gap') return 0;
  return Math.min(height / 3, Math.max(1, magnification * pixelsAtAngle(input.gapMm ?? 0.5, input.viewMm)));
}

function side(outline: readonly Point[], fill: string | undefined, theme: FigureTheme, name: string): SceneElement {
  if (fill !== undefined) return element('path', { class: `sample ${name}`, d: pathThrough(outline, true), fill });
  return element(
    'g',
    { class: `no-colour ${name}` },
    element('path', { d: pathThrough(outline, true), fill: theme.table }),
    element('path', { d: hatchPath(outline, 7), fill: 'none', stroke: theme.tableInk, 'stroke-width': 0.75 }),
  );
}

function between(
  kind: JointStripInput['kind'], top: number, bottom: number, width: number, input: JointStripInput, theme: FigureTheme, magnification: number,
): SceneElement[] {
  const band = (y: number, depth: number, fill: string, opacity?: number): SceneElement =>
    element('rect', { x: 0, y, width, height: depth, fill, 'fill-opacity': opacity });
  if (kind === 'gap') {
    const depth = bottom - top;
    return [band(top, depth, '#0a0a0a'), ...(depth > 2 ? [band(bottom - depth * 0.28, depth * 0.28, '#262626')] : [])];
  }
  if (kind === 'step') {
    const fall = Math.min(10 * magnification, Math.max(2, magnification * pixelsAtAngle(input.stepMm ?? 0.5, input.viewMm)));
    return [0.5, 0.3, 0.14].map((opacity, i) => band(bottom + (i * fall) / 3, fall / 3, '#000000', opacity));
  }
  if (kind === 'seam') {
    const stitches = element('line', {
      x1: 0, y1: top, x2: width, y2: top, stroke: '#0a0a0a', 'stroke-width': 2, 'stroke-dasharray': '7 4', 'stroke-opacity': 0.75,
    });
    return [band(top - 0.4, 0.8, '#0a0a0a', 0.6), stitches];
  }
  if (kind === 'sightline') {
    const middle = (top + bottom) / 2;
    return [
      band(top, bottom - top, theme.table),
      element('line', { x1: 0, y1: middle, x2: width, y2: middle, stroke: theme.tableInk, 'stroke-width': 1, 'stroke-dasharray': '1 5' }),
    ];
  }
  return [];
}
