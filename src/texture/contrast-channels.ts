/** Directions that a spectrum of contrast is sorted into, evenly over 180 degrees. */
export const sectors = 12;
/** Direction in which the waves of a sector run, degrees from +x towards +y. */
export const sectorDegrees = (sector: number): number => (sector * 180) / sectors;

/** Directions of the channels of sight, 45 degrees apart. */
export const channelDirections = 4;
/** Rings of the channels, an octave apart; that at 12 is centred on one cycle a millimetre. */
export const channelRings = 24;
const lowestOctave = -12;

/** Share that a place between two channels has in the upper one; the rest goes to the lower, and both shares sum to one. */
const upperShare = (between: number): number => Math.sin((Math.PI / 2) * between) ** 2;

/** Which two rings a frequency falls into: the lower one, and the share that the next one has. */
export function ringOf(perMm: number): { readonly ring: number; readonly upper: number } {
  const octave = Math.min(channelRings - 1.001, Math.max(0, Math.log2(perMm) - lowestOctave));
  const ring = Math.floor(octave);
  return { ring, upper: upperShare(octave - ring) };
}

/** The octave above one cycle a millimetre that a ring is centred on, as records name it, and back. */
export const octaveOfRing = (ring: number): number => ring + lowestOctave;
export const ringOfOctave = (octave: number): number => octave - lowestOctave;

/** Energy by sectors shared among the channels' directions. */
export function byDirection(energy: ArrayLike<number>): Float64Array {
  const shared = new Float64Array(channelDirections);
  for (let sector = 0; sector < sectors; sector += 1) {
    const turn = (sector * channelDirections) / sectors;
    const lower = Math.floor(turn);
    const upper = upperShare(turn - lower);
    shared[lower] += (1 - upper) * energy[sector];
    shared[(lower + 1) % channelDirections] += upper * energy[sector];
  }
  return shared;
}
