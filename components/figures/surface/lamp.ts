import type { Degrees, Millimetres } from '../../../src/quantities.ts';

/** Where the lamp stands and how the sample is held to it. */
export interface LampSetting {
  /** Where the light comes from: 0 above the picture, 90 right of it, -90 left, 180 below. */
  readonly fromDeg: Degrees;
  /** Height above the sample, 0 grazing to 90 straight on. */
  readonly elevationDeg: Degrees;
  /** Turn of the sample about the line of the joint; above 0 its upper edge goes back. */
  readonly tiltDeg: Degrees;
}

/** As instruments of 45:0 light a sample, from above. */
export const usualLamp: LampSetting = { fromDeg: 0, elevationDeg: 45, tiltDeg: 0 };
export const lampRange = { fromDeg: [-180, 180], elevationDeg: [10, 85], tiltDeg: [-45, 45] } as const;

export type Vector = readonly [x: number, y: number, z: number];

/** Lamp and eye in the frame of the sample: x to the right, y down, z towards the viewer, mm from its middle. */
export interface LitScene {
  readonly eye: Vector;
  /** Points that the lamp is made of. */
  readonly lamps: readonly Vector[];
  /** Direction to the middle of the lamp. */
  readonly towards: Vector;
}

/**
 * A lamp of 300 mm by a few at 800 mm, lying along the joint, as points close enough that a mirror shows one bar; beside it light from all sides.
 * Assumptions, no source: a lamp of a light booth seen from where a sample lies.
 */
const lampMm: Millimetres = 800;
const lampLengthMm: Millimetres = 300;
export const lampPoints = 9;
/** Spread of normals over which one point of the lamp is smeared, so that the points melt into a bar. */
export const lampSpread = 0.022;
/** Share of the light that comes evenly from all sides. */
export const evenShare = 0.3;
/** Cosine under which a lamp that grazes the sample lights it no less. */
export const leastCosine = 0.12;

export function litScene({ fromDeg, elevationDeg, tiltDeg }: LampSetting, viewMm: Millimetres): LitScene {
  const [from, elevation, tilt] = [fromDeg, elevationDeg, tiltDeg].map((degrees) => (degrees * Math.PI) / 180);
  const intoSample = ([x, y, z]: Vector): Vector => [x, y * Math.cos(tilt) + z * Math.sin(tilt), z * Math.cos(tilt) - y * Math.sin(tilt)];
  const direction: Vector = [Math.sin(from) * Math.cos(elevation), -Math.cos(from) * Math.cos(elevation), Math.sin(elevation)];
  const middle = direction.map((part) => part * lampMm) as unknown as Vector;
  const lamps = Array.from({ length: lampPoints }, (_, index): Vector =>
    intoSample([middle[0] + lampLengthMm * ((index + 0.5) / lampPoints - 0.5), middle[1], middle[2]]));
  return { eye: intoSample([0, 0, viewMm]), lamps, towards: intoSample(direction) };
}
