import { element } from '../../../src/report/scene.ts';
import type { SceneElement } from '../../../src/report/scene.ts';

const lengths = [0.5, 1, 2, 5, 10, 20, 50, 100, 200] as const;
const longest = 88;

/** The length in mm, of a round number, that a bar of at most 88 px stands for. */
export const barLength = (perMm: number): number => [...lengths].reverse().find((mm) => mm * perMm <= longest) ?? lengths[0];

/** A bar with upright ends, `perMm` px to a millimetre. */
export function scaleBar(perMm: number, ink: string): { readonly mm: number; readonly width: number; readonly bar: SceneElement } {
  const mm = barLength(perMm);
  const width = mm * perMm;
  return { mm, width: width + 2, bar: element('path', { d: `M1 1V9M1 5H${width + 1}M${width + 1} 1V9`, fill: 'none', stroke: ink, 'stroke-width': 1 }) };
}
