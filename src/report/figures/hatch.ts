import { pathThrough, round } from '../scene.ts';
import type { Point } from './polyline.ts';

/**
 * Path data of diagonal hatching inside a polygon: what has no colour to show.
 * Lines rise to the right, `spacing` px apart; computed so that no clip path or pattern id is needed.
 */
export function hatchPath(polygon: readonly Point[], spacing = 6): string {
  // u runs across the hatching and v along it; a line of constant x + y rises to the right, since y points down.
  const turned = polygon.map(([x, y]): Point => [x + y, x - y]);
  const across = turned.map(([u]) => u);
  const first = Math.ceil(Math.min(...across) / spacing) * spacing;
  let path = '';
  for (let u = first; u < Math.max(...across); u += spacing) {
    const crossings: number[] = [];
    for (let i = 0; i < turned.length; i += 1) {
      const [u0, v0] = turned[i] as Point;
      const [u1, v1] = turned[(i + 1) % turned.length] as Point;
      if (u0 <= u !== u1 <= u) crossings.push(v0 + ((v1 - v0) * (u - u0)) / (u1 - u0));
    }
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const ends = [crossings[i] as number, crossings[i + 1] as number].map((v): Point => [round((u + v) / 2), round((u - v) / 2)]);
      path += pathThrough(ends);
    }
  }
  return path;
}
