/**
 * Generic colorants as smooth analytic curves. K (absorption) and S (scattering) are per unit of
 * concentration, relative to the scattering of titania at 550 nm. No curve is a measurement.
 */
export interface Pigment {
  readonly absorption: (nm: number) => number;
  readonly scattering: (nm: number) => number;
}

const bell = (nm: number, at: number, width: number): number => Math.exp(-(((nm - at) / width) ** 2));
const stepDown = (nm: number, at: number, width: number): number => 1 / (1 + Math.exp((nm - at) / width));

export const pigments = {
  titania: { absorption: (nm) => 0.002 + 0.9 * stepDown(nm, 396, 7), scattering: (nm) => (550 / nm) ** 0.5 },
  carbonBlack: { absorption: (nm) => 60 * (nm / 550) ** 0.3, scattering: () => 0.25 },
  ironOxideRed: {
    absorption: (nm) => 0.1 + 11 * stepDown(nm, 572, 15) + 0.5 * bell(nm, 860, 90),
    scattering: (nm) => 0.8 * (nm / 550) ** 0.4,
  },
  ironOxideYellow: { absorption: (nm) => 0.06 + 8 * stepDown(nm, 492, 15) + 0.15 * bell(nm, 640, 60), scattering: () => 0.9 },
  ultramarineBlue: { absorption: (nm) => 0.15 + 9 * bell(nm, 598, 62) + 0.7 * bell(nm, 370, 40), scattering: () => 0.2 },
  phthaloGreen: { absorption: (nm) => 0.2 + 14 * bell(nm, 648, 58) + 7 * bell(nm, 408, 38), scattering: () => 0.1 },
  organicBlue: { absorption: (nm) => 0.02 + 16 * bell(nm, 600, 40), scattering: () => 0.1 },
  organicRed: { absorption: (nm) => 0.02 + 16 * bell(nm, 515, 25), scattering: () => 0.1 },
  organicYellow: { absorption: (nm) => 0.02 + 16 * bell(nm, 430, 40), scattering: () => 0.1 },
} as const satisfies Record<string, Pigment>;

export type PigmentName = keyof typeof pigments;

/** Concentrations by pigment. */
export type Recipe = Readonly<Partial<Record<PigmentName, number>>>;
