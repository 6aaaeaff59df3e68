import { describe, expect, test } from 'vitest';
import { facetLight, fresnel } from '../../../components/figures/surface/facet-light.ts';
import { evenShare, lampRange, litScene, usualLamp } from '../../../components/figures/surface/lamp.ts';
import type { LampSetting, LitScene, Vector } from '../../../components/figures/surface/lamp.ts';
import { draggedLamp, lampDirection } from '../../../components/figures/surface/lamp-drag.ts';

const lit = (scene: LitScene, slope: readonly [number, number], alpha: number | undefined, place: readonly [number, number] = [0, 0], n = 1.5) => {
  const into = { body: 0, shine: 0 };
  facetLight(scene, place[0], place[1], slope[0], slope[1], 1, alpha, n, into);
  return into;
};

const degrees = (vector: Vector): number => (Math.atan2(Math.hypot(vector[0], vector[1]), vector[2]) * 180) / Math.PI;

test('a flat matt surface has the light of a white one wherever the lamp stands', () => {
  for (const elevationDeg of [20, 45, 85]) for (const fromDeg of [-120, 0, 75]) {
    expect(lit(litScene({ fromDeg, elevationDeg, tiltDeg: 0 }, 700), [0, 0], undefined).body).toBeCloseTo(1, 9);
  }
});

test('a matt facet follows the cosine (Lambert)', () => {
  const scene = litScene({ fromDeg: 0, elevationDeg: 45, tiltDeg: 0 }, 700);
  // A facet of slope tan 20 degrees that faces the lamp above the picture: heights rise downwards. Angle to the lamp 25 degrees instead of 45.
  const slope = Math.tan((20 * Math.PI) / 180);
  const cosine = (angle: number): number => Math.cos((angle * Math.PI) / 180);
  const { body } = lit(scene, [0, slope], undefined);
  expect(body).toBeCloseTo(((1 - evenShare) * cosine(25)) / cosine(45) + (evenShare * (1 + cosine(20))) / 2, 9);
  const away = lit(scene, [0, -slope], undefined).body;
  expect(away).toBeCloseTo(((1 - evenShare) * cosine(65)) / cosine(45) + (evenShare * (1 + cosine(20))) / 2, 9);
});

test('reflectance of a facet is that of the published table of a glossmeter (n 1.567 at 20, 60 and 85 degrees)', () => {
  // ISO 2813:2014 as tabulated: .049078 .100056 .619148.
  for (const [angle, expected] of [[20, 0.049078], [60, 0.100056], [85, 0.619148]] as const) expect(fresnel(Math.cos((angle * Math.PI) / 180), 1.567)).toBeCloseTo(expected, 6);
});

/** Radiance over that of a white surface by the model of Walter et al. 2007 with the shadowing of Heitz 2014, in angles and for one point of light. */
function shineByAngles(eye: Vector, lamp: Vector, alpha: number, n: number): number {
  const norm = (v: Vector): Vector => { const l = Math.hypot(...v); return [v[0] / l, v[1] / l, v[2] / l]; };
  const [v, l] = [norm(eye), norm(lamp)];
  const h = norm([v[0] + l[0], v[1] + l[1], v[2] + l[2]]);
  const tangent = (z: number): number => Math.tan(Math.acos(z));
  const distribution = alpha ** 2 / (Math.PI * h[2] ** 4 * (alpha ** 2 + tangent(h[2]) ** 2) ** 2);
  const lambda = (z: number): number => (Math.sqrt(1 + (alpha * tangent(z)) ** 2) - 1) / 2;
  const half = Math.acos(v[0] * h[0] + v[1] * h[1] + v[2] * h[2]);
  const inside = Math.asin(Math.sin(half) / n);
  const reflectance = ((Math.sin(half - inside) / Math.sin(half + inside)) ** 2 + (Math.tan(half - inside) / Math.tan(half + inside)) ** 2) / 2;
  const brdf = (distribution * reflectance) / (1 + lambda(v[2]) + lambda(l[2])) / (4 * v[2] * l[2]);
  return Math.PI * brdf * l[2];
}

describe('the shine', () => {
  test.each([0.15, 0.3, 0.6])('of facets of width %d is that of the model in angles', (alpha) => {
    for (const elevationDeg of [30, 45, 70]) {
      const scene = litScene({ fromDeg: 30, elevationDeg, tiltDeg: 8 }, 700);
      const middle = scene.lamps[(scene.lamps.length - 1) / 2]!;
      const expected = ((1 - evenShare) * shineByAngles(scene.eye, middle, alpha, 1.5)) / scene.towards[2];
      expect(lit(scene, [0, 0], alpha).shine / expected).toBeCloseTo(1, 9);
    }
  });

  test('of narrow facets is the mean over the points of the lamp', () => {
    const scene = litScene({ fromDeg: 0, elevationDeg: 45, tiltDeg: 20 }, 700);
    const expected = scene.lamps.reduce((sum, lamp) => sum + shineByAngles(scene.eye, lamp, 0.05, 1.5), 0) / scene.lamps.length;
    expect(lit(scene, [0, 0], 0.05).shine / (((1 - evenShare) * expected) / scene.towards[2])).toBeCloseTo(1, 6);
  });

  test('is strongest where the sample is tilted half way to the lamp', () => {
    const at = (tiltDeg: number): number => lit(litScene({ fromDeg: 0, elevationDeg: 45, tiltDeg }, 700), [0, 0], 0.05).shine;
    const best = Array.from({ length: 91 }, (_, index) => index - 45).reduce((found, tilt) => (at(tilt) > at(found) ? tilt : found));
    expect(Math.abs(best - 22.5)).toBeLessThanOrEqual(1);
  });

  test('is there only where there is gloss', () => {
    expect(lit(litScene(usualLamp, 700), [0, 0], undefined).shine).toBe(0);
  });
});

test('a tilt up turns the sample towards a lamp above, away from one below', () => {
  expect(degrees(litScene({ fromDeg: 0, elevationDeg: 45, tiltDeg: 30 }, 700).towards)).toBeCloseTo(15, 9);
  expect(degrees(litScene({ fromDeg: 180, elevationDeg: 45, tiltDeg: 30 }, 700).towards)).toBeCloseTo(75, 9);
});

describe('pulling the picture', () => {
  test('moves the lamp as seen from above and stays within its range', () => {
    const right = draggedLamp(usualLamp, 200, 0, false);
    expect(right.fromDeg).toBeGreaterThan(30);
    expect(right.tiltDeg).toBe(0);
    const down = draggedLamp(usualLamp, 0, 400, false);
    expect(Math.abs(down.fromDeg)).toBeCloseTo(180, 6);
    let lamp: LampSetting = usualLamp;
    for (let step = 0; step < 50; step += 1) lamp = draggedLamp(lamp, 37, -91, step % 3 === 0);
    for (const key of ['fromDeg', 'elevationDeg', 'tiltDeg'] as const) {
      expect(lamp[key]).toBeGreaterThanOrEqual(lampRange[key][0]);
      expect(lamp[key]).toBeLessThanOrEqual(lampRange[key][1]);
    }
  });

  test('with Shift tilts', () => {
    expect(draggedLamp(usualLamp, 50, -40, true)).toEqual({ ...usualLamp, tiltDeg: 10 });
  });

  test('directions have words', () => {
    expect([0, 45, 90, 180, -180, -90].map(lampDirection)).toEqual(['from above', 'from above right', 'from the right', 'from below', 'from below', 'from the left']);
  });
});
