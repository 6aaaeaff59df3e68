import { area, scaleLinear } from 'd3';
import type { Light } from '../../src/colour/index.ts';
import { drawing, element } from '../../src/report/scene.ts';
import type { SceneElement } from '../../src/report/scene.ts';

/** Relative power of a light over 380 nm to 730 nm as a filled silhouette in the ink of its surroundings; decorative. */
export function lightCurve(light: Light, width: number, height: number): SceneElement {
  const first = 20;
  const last = 370;
  const step = 2;
  const values: [number, number][] = [];
  for (let i = first; i <= last; i += step) values.push([i, Math.max(0, light.spd[i] ?? 0)]);
  const x = scaleLinear([first, last], [0, width]);
  const y = scaleLinear([0, Math.max(...values.map(([, power]) => power)) || 1], [height, 1]);
  const silhouette = area<[number, number]>((point) => x(point[0]), height, (point) => y(point[1])).digits(1);
  return drawing(width, height, undefined, element('path', { d: silhouette(values) ?? '', fill: 'currentColor' }));
}
