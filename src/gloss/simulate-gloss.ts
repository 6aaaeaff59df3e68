import type { GlossUnits } from '../quantities.ts';
import { blackGlassIndex } from './fresnel-gloss.ts';
import { gaussLegendre } from './gauss-legendre.ts';
import type { GlossMeterAngle } from './gloss-angle.ts';
import { receptorApertures, sourceAperture } from './glossmeter-geometry.ts';
import { facetDistribution, facetsSeen } from './microfacet.ts';

const radians = Math.PI / 180;
const source = gaussLegendre(6);
const receptor = gaussLegendre(24);

/** Fresnel reflectance by the cosine between ray and facet, unpolarised. */
function reflectanceAt(cosine: number, n: number): number {
  const refracted = Math.sqrt(n * n - 1 + cosine * cosine);
  const across = (cosine - refracted) / (cosine + refracted);
  const along = (n * n * cosine - refracted) / (n * n * cosine + refracted);
  return (across * across + along * along) / 2;
}

/** Mean over the source's directions of what reaches the receptor of unit flux, for a surface that `reflected` describes. */
function overSource(angle: GlossMeterAngle, reflected: (inPlane: number, across: number) => number): number {
  let sum = 0;
  for (let row = 0; row < source.nodes.length; row += 1) {
    const inPlane = (angle + (sourceAperture.inPlaneDeg / 2) * source.nodes[row]) * radians;
    // One side of the plane of incidence is the mirror image of the other.
    for (let column = source.nodes.length / 2; column < source.nodes.length; column += 1) {
      const across = (sourceAperture.acrossDeg / 2) * source.nodes[column] * radians;
      sum += source.weights[row] * source.weights[column] * reflected(inPlane, across);
    }
  }
  return sum / 2;
}

const mirrorFlux = (n: number, angle: GlossMeterAngle): number =>
  overSource(angle, (inPlane, across) => reflectanceAt(Math.cos(inPlane) * Math.cos(across), n));

const blackGlassFlux: Readonly<Record<GlossMeterAngle, number>> = {
  20: mirrorFlux(blackGlassIndex, 20), 60: mirrorFlux(blackGlassIndex, 60), 85: mirrorFlux(blackGlassIndex, 85),
};

/**
 * Flux into the receptor from one direction of the source. Both integrals run over the arc tangent of the distance from the mirror
 * direction in units of the lobe's width, so that a lobe of any sharpness is as smooth to the rule as a wide one.
 */
function roughFlux(n: number, alpha: number, angle: GlossMeterAngle, inPlane: number, across: number): number {
  const aperture = receptorApertures[angle];
  const halfAcross = (aperture.acrossDeg / 2) * radians;
  const [ix, iy, iz] = [-Math.sin(inPlane) * Math.cos(across), Math.sin(across), Math.cos(inPlane) * Math.cos(across)];
  const width = 2 * alpha;
  const low = Math.atan(((angle - aperture.inPlaneDeg / 2) * radians - inPlane) / width);
  // No light leaves below the horizon.
  const high = Math.atan((Math.min(90, angle + aperture.inPlaneDeg / 2) * radians - inPlane) / width);
  let sum = 0;
  for (let row = 0; row < receptor.nodes.length; row += 1) {
    const turn = (low + high) / 2 + ((high - low) / 2) * receptor.nodes[row];
    const out = inPlane + width * Math.tan(turn);
    const stretch = (width / Math.cos(turn) ** 2) * ((high - low) / 2) * receptor.weights[row];
    const tilt = (out - inPlane) / 2;
    const lobe = 2 * Math.cos((out + inPlane) / 2) * Math.hypot(alpha, tilt);
    const left = Math.atan((-halfAcross + across) / lobe);
    const right = Math.atan((halfAcross + across) / lobe);
    let line = 0;
    for (let column = 0; column < receptor.nodes.length; column += 1) {
      const side = (left + right) / 2 + ((right - left) / 2) * receptor.nodes[column];
      const outAcross = -across + lobe * Math.tan(side);
      const [ox, oy, oz] = [Math.sin(out) * Math.cos(outAcross), Math.sin(outAcross), Math.cos(out) * Math.cos(outAcross)];
      const [hx, hy, hz] = [ix + ox, iy + oy, iz + oz];
      const level = hx * hx + hy * hy;
      const square = level + hz * hz;
      const value = reflectanceAt(Math.sqrt(square) / 2, n) * facetDistribution(level / square, alpha) * facetsSeen(iz, oz, alpha);
      line += (receptor.weights[column] * value * Math.cos(outAcross)) / Math.cos(side) ** 2;
    }
    sum += stretch * line * lobe * ((right - left) / 2);
  }
  return sum / (4 * iz);
}

/**
 * Reading of an ideal glossmeter on a surface of index n whose facets follow the GGX distribution.
 *
 * n >= 1, alpha 0 (mirror) to 1; gloss units, NaN outside. The flux from the image of the source into the aperture of the receptor,
 * over that of a mirror of n = 1.567. The surface alone: see `bodyGloss` for what the body adds. Geometry only: a real
 * matt film reads higher at 85 degrees, since a surface acts smoother at grazing incidence, which facets do not know.
 * Source: geometry of ISO 2813:2014; facets of Walter et al. 2007 with the shadowing of Heitz 2014. Quadrature within 0.01 %.
 */
export function simulateGloss(n: number, alpha: number, angle: GlossMeterAngle): GlossUnits {
  if (!(n >= 1 && n < Infinity && alpha >= 0 && alpha <= 1)) return NaN;
  const flux = alpha < 1e-7
    ? mirrorFlux(n, angle)
    : overSource(angle, (inPlane, across) => roughFlux(n, alpha, angle, inPlane, across));
  return (100 * flux) / blackGlassFlux[angle];
}

/**
 * Gloss units that a body below the surface adds by scattering diffusely into the receptor.
 *
 * Luminance factor of the body 0..1; the body follows Lambert's law. At 60 degrees 2.5 GU for a white body and 0.1 for a dark one,
 * so that of two equally matt surfaces the lighter one reads glossier.
 * Source: derived from the apertures of ISO 2813:2014.
 */
export function bodyGloss(reflectance: number, angle: GlossMeterAngle): GlossUnits {
  const { inPlaneDeg, acrossDeg } = receptorApertures[angle];
  const top = Math.min(90, angle + inPlaneDeg / 2) * radians;
  const bottom = (angle - inPlaneDeg / 2) * radians;
  const half = (acrossDeg / 2) * radians;
  // The integral of cos(t) cos(b) over cos(b) dt db, directions as in roughFlux.
  const projected = (Math.sin(top) - Math.sin(bottom)) * (half + Math.sin(2 * half) / 2);
  return ((100 * reflectance) / Math.PI) * (projected / blackGlassFlux[angle]);
}
