import type { SceneElement } from '../scene.ts';
import type { FigureTheme } from './theme.ts';
import { drawing, element, pathThrough } from '../scene.ts';

export interface RunStepsInput {
  /** Difference of every part of the run from the first one, in order; undefined where there is none. */
  readonly steps: readonly (number | undefined)[];
  readonly limit: number;
  readonly label: string;
}

/** How far each part along a run is from the first: a rising or wandering line under the limit of the run; px. */
export function runSteps(input: RunStepsInput, size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const top = Math.max(input.limit * 1.25, ...input.steps.map((step) => step ?? 0)) || 1;
  const inner = width - 12;
  const x = (index: number): number => 6 + (input.steps.length < 2 ? 0 : (index / (input.steps.length - 1)) * inner);
  const y = (value: number): number => height - 5 - (value / top) * (height - 12);
  const points = input.steps.flatMap((step, index): (readonly [number, number])[] => (step === undefined ? [] : [[x(index), y(step)]]));
  return drawing(width, height, input.label,
    element('line', { x1: 0, y1: y(0), x2: width, y2: y(0), stroke: theme.faint, 'stroke-width': 1 }),
    element('line', { x1: 0, y1: y(input.limit), x2: width, y2: y(input.limit), stroke: theme.ink, 'stroke-width': 0.75, 'stroke-dasharray': '2 3' }),
    element('path', { d: pathThrough(points), fill: 'none', stroke: theme.ink, 'stroke-width': 1.25 }),
    points.map(([cx, cy]) => element('circle', { cx, cy, r: 2.2, fill: theme.ink })));
}
