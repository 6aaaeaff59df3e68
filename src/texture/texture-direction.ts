import type { Degrees } from '../quantities.ts';
import { powerSpectrumSteps } from './power-spectrum.ts';
import type { Surface } from './sampled-field.ts';
import { sampledField } from './sampled-field.ts';
import type { Steps } from './steps.ts';

const mostPoints = 1024;
/** Frequencies with fewer waves across the field have no direction to speak of. */
const fewestWaves = 3;

/**
 * Std, direction of the lay: degrees 0..180 from +x towards +y (y in the order of the rows), where the angular power spectrum is largest.
 *
 * Waves that run along x have their lay along y, 90 degrees. The spectrum is taken under a Hann window in steps of one degree, smoothed over
 * five, and the peak placed by its centroid; on an isotropic surface (Str near 1) it is a matter of chance. Undefined for a
 * surface without heights or a field under three waves. Source: ISO 25178-2, Std.
 */
export function* textureDirectionSteps(surface: Surface): Steps<Degrees | undefined> {
  let every = 1;
  while (Math.max(surface.width, surface.height) / every > mostPoints) every *= 2;
  const { width, height, spacingMm, values } = sampledField(surface, every, mostPoints);
  const angular = new Float64Array(180);
  const lowest = fewestWaves / Math.min(width * spacingMm[0], height * spacingMm[1]);
  yield* powerSpectrumSteps(values, width, height, spacingMm, (perMmX, perMmY, power) => {
    if (Math.hypot(perMmX, perMmY) < lowest) return;
    const degrees = (Math.atan2(perMmY, perMmX) * 180) / Math.PI;
    // Shared between the two nearest whole degrees, so that no bin is favoured.
    const below = Math.floor(degrees);
    angular[(below + 360) % 180] += power * (1 - (degrees - below));
    angular[(below + 361) % 180] += power * (degrees - below);
  });
  const at = (degrees: number): number => angular[(degrees + 720) % 180];
  const smooth = (degrees: number): number => at(degrees - 2) + 2 * at(degrees - 1) + 3 * at(degrees) + 2 * at(degrees + 1) + at(degrees + 2);
  let peak = 0;
  for (let degrees = 1; degrees < 180; degrees += 1) if (smooth(degrees) > smooth(peak)) peak = degrees;
  let [weight, moment] = [0, 0];
  for (let offset = -5; offset <= 5; offset += 1) {
    weight += at(peak + offset);
    moment += at(peak + offset) * offset;
  }
  return weight > 0 ? (peak + moment / weight + 90 + 360) % 180 : undefined;
}
