import type { HeightMap } from '../../../src/texture/height-map.ts';
import { runSteps } from '../../../src/texture/steps.ts';
import { leastStr, synthesiseGrainSteps } from '../../../src/texture/synthesise-grain.ts';
import type { GrainPattern } from '../../../src/texture/synthesise-grain.ts';
import type { GrainSlopes } from './grain-slopes.ts';
import { mapSlopes, unitSlopes } from './grain-slopes.ts';

/** Field of a made grain, points on a side, and how finely Str is told apart. */
const points = 1024;
const strStep = 0.05;
const seed = 1;
const mostKept = 16;

/**
 * Grains that were made or measured, by what they were made from. Heights and lengths scale, so that parts whose Str and pattern are alike
 * share one field and are drawn from different places of it.
 */
export class GrainStore {
  private readonly grains = new Map<string, GrainSlopes>();
  private readonly maps = new Map<number, GrainSlopes>();

  made(pattern: GrainPattern, str: number): GrainSlopes {
    const near = Math.min(1, Math.max(leastStr, Math.round(str / strStep) * strStep));
    const key = `${pattern} ${pattern === 'weave' ? '' : near.toFixed(2)}`;
    const kept = this.grains.get(key);
    const grain = kept ?? unitSlopes(runSteps(synthesiseGrainSteps({ pattern, str: near, seed, width: points, height: points })));
    // Put last, so that the first is the one longest unused.
    this.grains.delete(key);
    this.grains.set(key, grain);
    const oldest = this.grains.keys().next().value;
    if (this.grains.size > mostKept && oldest !== undefined) this.grains.delete(oldest);
    return grain;
  }

  measured(id: number): GrainSlopes | undefined {
    return this.maps.get(id);
  }

  take(id: number, map: HeightMap): void {
    this.maps.set(id, mapSlopes(map));
  }
}
